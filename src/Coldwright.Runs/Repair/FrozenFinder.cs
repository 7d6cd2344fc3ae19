using Coldwright.Runs.Record;

namespace Coldwright.Runs.Repair;

/// <summary>
/// Finds stretches where a channel repeats one figure although elsewhere it hardly ever does. How long a run of repeats chance allows follows from the share of
/// repeats outside the stretch; a stretch is frozen when chance would give it
/// less than once in a million logs, and the channel catches up with its course afterwards or its
/// neighbours scatter. Thresholds are our assumptions.
/// </summary>
internal static class FrozenFinder
{
    private const int LeastSamples = 20;
    private const double LeastS = 120;
    // minus ln of one in a million
    private const double Improbable = 13.8;
    // A share of repeats above this says that the channel stands still by nature.
    private const double MostRepeats = 0.98;
    private const int Neighbours = 100;
    private const double LeastScatterInSteps = 0.6;
    private const int SlopeSamples = 20;
    private const double CourseFactor = 3, MostNaturalSteps = 1.5;

    /// <summary>Marks frozen stretches among the good samples; each as first and last sample. The first sample of a stretch is still believed.</summary>
    /// <param name="times">s.</param>
    /// <param name="values">Values in the logger's own unit.</param>
    /// <param name="flags">Flags; frozen samples are marked here.</param>
    /// <param name="noise">Scatter, the same unit.</param>
    /// <param name="step">Step of the logger, the same unit.</param>
    public static IReadOnlyList<(int First, int Last)> Mark(ReadOnlySpan<double> times, ReadOnlySpan<double> values, Span<SampleFlag> flags, double noise, double step)
    {
        var runs = new List<(int First, int Last, int Length)>();
        int repeats = 0, pairs = 0;
        for (var i = 0; i < values.Length;)
        {
            if (flags[i] != SampleFlag.Good)
            {
                i++;
                continue;
            }
            int last = i, length = 1, k = i + 1;
            for (; k < values.Length && (flags[k] != SampleFlag.Good || values[k] == values[i]); k++)
                if (flags[k] == SampleFlag.Good) (last, length) = (k, length + 1);
            repeats += length - 1;
            pairs += length;
            if (length >= LeastSamples && times[last] - times[i] >= LeastS) runs.Add((i, last, length));
            i = k;
        }
        var frozen = new List<(int, int)>();
        foreach (var run in runs)
        {
            var others = pairs - run.Length;
            if (others < 2 * LeastSamples) continue;
            var share = (repeats - run.Length + 1.0) / others;
            if (share > MostRepeats || run.Length <= (Math.Log(pairs) + Improbable) / -Math.Log(Math.Max(share, 1e-3))) continue;
            if (StandsStillByNature(values, flags, run.First, run.Last, step)) continue;
            if (!CatchesUp(times, values, flags, run.First, run.Last, noise, step) && !ScattersAround(values, flags, run.First, run.Last, step)) continue;
            frozen.Add((run.First, run.Last));
            for (var k = run.First + 1; k <= run.Last; k++)
                if (flags[k] == SampleFlag.Good) flags[k] = SampleFlag.Frozen;
        }
        return frozen;
    }

    // A channel that comes back to life jumps to where its course before and after would have brought it. A held pressure that is let off does not.
    private static bool CatchesUp(ReadOnlySpan<double> times, ReadOnlySpan<double> values, ReadOnlySpan<SampleFlag> flags, int first, int last, double noise, double step)
    {
        if (Slope(times, values, flags, first, -1) is not { } before || NextGood(flags, last) is not { } next || Slope(times, values, flags, next, 1) is not { } after) return false;
        var jump = values[next] - values[last];
        if (Math.Abs(jump) <= Math.Max(5 * noise, 3.5 * step) || Math.Sign(before) != Math.Sign(jump) || Math.Sign(after) != Math.Sign(jump)) return false;
        var expected = 0.5 * (Math.Abs(before) + Math.Abs(after)) * (times[next] - times[first]);
        return Math.Abs(jump) > expected / CourseFactor && Math.Abs(jump) < expected * CourseFactor;
    }

    // Where the figures just before and just after are no more than a step away, the logger's step is coarser than what changes: a plateau, and nothing is lost by believing it.
    private static bool StandsStillByNature(ReadOnlySpan<double> values, ReadOnlySpan<SampleFlag> flags, int first, int last, double step)
    {
        foreach (var (edge, direction) in new[] { (first, -1), (last, 1) })
            for (int k = edge + direction, seen = 0; k >= 0 && k < values.Length && seen < SlopeSamples; k += direction)
            {
                if (flags[k] != SampleFlag.Good) continue;
                if (Math.Abs(values[k] - values[first]) > MostNaturalSteps * step) return false;
                seen++;
            }
        return true;
    }

    private static int? NextGood(ReadOnlySpan<SampleFlag> flags, int last)
    {
        for (var k = last + 1; k < flags.Length; k++)
            if (flags[k] == SampleFlag.Good) return k;
        return null;
    }

    private static double? Slope(ReadOnlySpan<double> times, ReadOnlySpan<double> values, ReadOnlySpan<SampleFlag> flags, int from, int direction)
    {
        int reach = from, seen = 0;
        for (var k = from + direction; k >= 0 && k < values.Length && seen < SlopeSamples; k += direction)
            if (flags[k] == SampleFlag.Good) (reach, seen) = (k, seen + 1);
        return seen < SlopeSamples / 2 || times[reach] == times[from] ? null : (values[reach] - values[from]) / (times[reach] - times[from]);
    }

    // A plateau may be quieter than the logger's step. When the samples just before and just after it scatter by about a step, it is not.
    private static bool ScattersAround(ReadOnlySpan<double> values, ReadOnlySpan<SampleFlag> flags, int first, int last, double step)
    {
        var (from, to) = (Math.Max(0, first - Neighbours), Math.Min(values.Length, last + 1 + Neighbours));
        var before = NoiseEstimate.Of(values[from..first], flags[from..first]);
        var after = last + 1 < values.Length ? NoiseEstimate.Of(values[(last + 1)..to], flags[(last + 1)..to]) : before;
        return Math.Min(before, after) > LeastScatterInSteps * step;
    }
}
