using Coldwright.Fluids.Substances;

namespace Coldwright.Fluids.Envelopes;

/// <summary>Where an envelope is looked for, and how closely.</summary>
public sealed record EnvelopeWindow
{
    /// <summary>Coldest temperature, K; null: 0.95 of the harmonic mean of the triple points, but not below 60 K.</summary>
    public double? ColdestK { get; init; }
    /// <summary>Warmest temperature, K; null: a little above the highest critical temperature of a component.</summary>
    public double? WarmestK { get; init; }
    /// <summary>Lowest pressure, Pa.</summary>
    public double LowestPa { get; init; } = 0.2e5;
    /// <summary>Highest pressure, Pa.</summary>
    public double HighestPa { get; init; } = 150e5;
    /// <summary>Isobars of the first scan; twice as many isotherms. The lines themselves are followed, whatever the scan.</summary>
    public int Scans { get; init; } = 18;
    /// <summary>True to add the line of the first solid on cooling.</summary>
    public bool Freezing { get; init; } = true;
    /// <summary>True to report critical points that another phase hides, too.</summary>
    public bool HiddenCriticalPoints { get; init; }

    internal EnvelopeWindow For(IReadOnlyList<Substance> substances, IReadOnlyList<double> z)
    {
        double coldest = ColdestK ?? Math.Max(60, 0.95 / substances.Select((s, i) => z[i] / s.TripleTemperatureK).Sum());
        double warmest = WarmestK ?? 1.04 * substances.Where((_, i) => z[i] > 1e-6).Max(s => s.CriticalTemperatureK);
        if (!(coldest > 0 && warmest > coldest)) throw new ArgumentException($"the window's temperatures must rise from above 0 K, got {coldest} K to {warmest} K");
        if (!(LowestPa > 0 && HighestPa > LowestPa)) throw new ArgumentException($"the window's pressures must rise from above 0, got {LowestPa} Pa to {HighestPa} Pa");
        if (Scans < 4) throw new ArgumentException($"at least 4 isobars are scanned, got {Scans}");
        return this with { ColdestK = coldest, WarmestK = warmest };
    }
}
