using Coldwright.Runs.Record;

namespace Coldwright.Runs.Repair;

/// <summary>How much a channel scatters from sample to sample, without its slow course and without its outliers.</summary>
internal static class NoiseEstimate
{
    private const int MostSamples = 20001;
    // Median of |x| of a normal distribution over its standard deviation.
    private const double MedianToSigma = 0.6745;

    /// <summary>One standard deviation, from the median of the second differences (whose variance is six times that of the samples).</summary>
    public static double Of(ReadOnlySpan<double> values, ReadOnlySpan<SampleFlag> flags)
    {
        var stride = Math.Max(1, values.Length / MostSamples);
        var bends = new List<double>();
        for (var i = 1; i + 1 < values.Length; i += stride)
            if (flags[i - 1] == SampleFlag.Good && flags[i] == SampleFlag.Good && flags[i + 1] == SampleFlag.Good) bends.Add(Math.Abs(values[i - 1] - 2 * values[i] + values[i + 1]));
        if (bends.Count < 5) return 0;
        bends.Sort();
        return bends[bends.Count / 2] / (MedianToSigma * Math.Sqrt(6));
    }
}
