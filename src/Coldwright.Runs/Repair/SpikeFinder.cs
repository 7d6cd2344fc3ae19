using Coldwright.Runs.Record;

namespace Coldwright.Runs.Repair;

/// <summary>
/// Finds one or two samples that stand far from both neighbours: farther than eight times the scatter, than eight steps of the logger and than five times
/// the spread of the neighbours (Hampel's rule, with our factors). A step that stays, such as a compressor starting, is none.
/// </summary>
internal static class SpikeFinder
{
    private const double Scatters = 8, Steps = 8, Spreads = 5;
    private const int Reach = 4;

    /// <summary>Marks the spikes among the good samples; returns how many.</summary>
    /// <param name="values">Values in the logger's own unit.</param>
    /// <param name="flags">Flags; spikes are marked here.</param>
    /// <param name="noise">Scatter, the same unit.</param>
    /// <param name="step">Step of the logger, the same unit.</param>
    public static int Mark(ReadOnlySpan<double> values, Span<SampleFlag> flags, double noise, double step)
    {
        var limit = Math.Max(Scatters * noise, Steps * step);
        if (limit <= 0) return 0;
        var found = 0;
        Span<double> around = stackalloc double[2 * Reach];
        for (var i = 1; i + 1 < values.Length; i++)
        {
            if (flags[i] != SampleFlag.Good || Math.Abs(values[i] - values[i - 1]) <= limit) continue;
            for (var width = 1; width <= 2 && i + width < values.Length; width++)
            {
                if (!IsSpike(values, flags, i, width, limit, around)) continue;
                for (var k = 0; k < width; k++) flags[i + k] = SampleFlag.Spike;
                found += width;
                i += width;
                break;
            }
        }
        return found;
    }

    private static bool IsSpike(ReadOnlySpan<double> values, ReadOnlySpan<SampleFlag> flags, int i, int width, double limit, Span<double> around)
    {
        // back again on the other side
        if (Math.Abs(values[i + width - 1] - values[i + width]) <= limit) return false;
        if (width == 2 && Math.Abs(values[i + 1] - values[i]) > Math.Abs(values[i] - values[i - 1])) return false;
        var n = 0;
        for (int k = i - 1, taken = 0; k >= 0 && taken < Reach; k--)
            if (flags[k] == SampleFlag.Good) (around[n++], taken) = (values[k], taken + 1);
        for (int k = i + width, taken = 0; k < values.Length && taken < Reach; k++)
            if (flags[k] == SampleFlag.Good) (around[n++], taken) = (values[k], taken + 1);
        if (n < 4) return false;
        var near = around[..n];
        near.Sort();
        var middle = n % 2 == 1 ? near[n / 2] : (near[n / 2 - 1] + near[n / 2]) / 2;
        var spread = near[^1] - near[0];
        for (var k = 0; k < width; k++)
        {
            var off = Math.Abs(values[i + k] - middle);
            if (off <= limit || off <= Spreads / 2 * spread) return false;
        }
        return Math.Sign(values[i] - middle) == Math.Sign(values[i + width - 1] - middle);
    }
}
