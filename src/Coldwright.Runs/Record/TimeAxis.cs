namespace Coldwright.Runs.Record;

/// <summary>When the samples of a log or the hand-noted readings were taken.</summary>
public sealed class TimeAxis
{
    private readonly double[] _times;

    /// <param name="timesS">Times, s from the start, ascending; taken over, not copied.</param>
    internal TimeAxis(double[] timesS) => _times = timesS;

    /// <summary>Times, s from the start, ascending.</summary>
    public ReadOnlySpan<double> TimesS => _times;

    /// <summary>How many.</summary>
    public int Count => _times.Length;

    /// <summary>Index of the last sample at or before a time; -1 when there is none.</summary>
    /// <param name="timeS">s from the start.</param>
    public int IndexAt(double timeS)
    {
        var i = Array.BinarySearch(_times, timeS);
        if (i < 0) return ~i - 1;
        while (i + 1 < _times.Length && _times[i + 1] == timeS) i++;
        return i;
    }
}
