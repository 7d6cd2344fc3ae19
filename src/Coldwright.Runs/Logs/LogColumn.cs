using Coldwright.Runs.Record;

namespace Coldwright.Runs.Logs;

/// <summary>The numbers of one column as they stand in the log, row by row.</summary>
internal sealed class LogColumn(int index)
{
    private double[] _values = new double[1024];
    private SampleFlag[] _flags = new SampleFlag[1024];

    /// <summary>Column, from 0.</summary>
    public int Index => index;
    /// <summary>Rows.</summary>
    public int Count { get; private set; }
    /// <summary>Most digits behind the decimal sign.</summary>
    public int Decimals { get; private set; }
    /// <summary>Numbers; 0 where there is none.</summary>
    public Span<double> Values => _values.AsSpan(0, Count);
    /// <summary>Good, missing, unreadable or beyond the range.</summary>
    public Span<SampleFlag> Flags => _flags.AsSpan(0, Count);

    public void Add(double value, SampleFlag flag, int decimals)
    {
        if (Count == _values.Length)
        {
            Array.Resize(ref _values, 2 * Count);
            Array.Resize(ref _flags, 2 * Count);
        }
        _values[Count] = value;
        _flags[Count++] = flag;
        if (decimals > Decimals) Decimals = decimals;
    }

    /// <summary>Turns the rows round: the last becomes the first.</summary>
    public void TurnRound()
    {
        Values.Reverse();
        Flags.Reverse();
    }
}
