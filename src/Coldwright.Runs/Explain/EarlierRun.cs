namespace Coldwright.Runs.Explain;

/// <summary>
/// Puts the figures of an earlier run, of the same machine in good order, behind those of the run that is explained. No cause acts on them, and all that file, correlations and
/// sensors leave open is nearly the same on both days: what the model has wrong about this machine is then learned from the earlier run and no longer taken for a fault.
/// </summary>
internal static class EarlierRun
{
    // of a doubt's variance; our assumption
    private const double Lasting = 0.9;

    /// <summary>One comparison of both.</summary>
    /// <param name="today">The run to be explained.</param>
    /// <param name="earlier">The run in good order.</param>
    public static Comparison Join(Comparison today, Comparison earlier)
    {
        int n = today.Features.Count, more = earlier.Features.Count;
        double[] Of(string name, Comparison c, int length) => c.Shared.FirstOrDefault(s => s.Name == name).Shift ?? new double[length];
        double[] Only(double[] change) => [.. change, .. new double[more]];
        double[] Part(double[] shift, double share) => [.. shift.Select(v => v * Math.Sqrt(share))];
        // what lasts from day to day, and what each day has for itself
        var shared = today.Shared.Concat(earlier.Shared).Select(s => s.Name).Distinct().SelectMany(name => new (string, double[])[]
        {
            (name, Part([.. Of(name, today, n), .. Of(name, earlier, more)], Lasting)),
            ($"{name}, this day", Part(Only(Of(name, today, n)), 1 - Lasting)),
            ($"{name}, the earlier day", Part([.. new double[n], .. Of(name, earlier, more)], 1 - Lasting)),
        });
        return today with
        {
            Features = [.. today.Features, .. earlier.Features.Select(f => f with { IsEarlier = true })],
            Measured = [.. today.Measured, .. earlier.Measured],
            Expected = [.. today.Expected, .. earlier.Expected],
            Variance = [.. today.Variance, .. earlier.Variance],
            Shared = [.. shared],
            Suspects = [.. today.Suspects.Select(s => s with { First = Only(s.First), Second = Only(s.Second) })],
        };
    }
}
