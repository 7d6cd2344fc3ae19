using Coldwright.Fluids.Envelopes;

namespace Coldwright.Report.Envelopes;

/// <summary>Names of lines and the few figures that sum an envelope up, in words.</summary>
internal static class EnvelopeWords
{
    /// <summary>Name for machines.</summary>
    public static string Key(BoundaryKind kind) => kind switch
    {
        BoundaryKind.Bubble => "bubble",
        BoundaryKind.Dew => "dew",
        BoundaryKind.LiquidLiquid => "liquid_liquid",
        BoundaryKind.ThreePhase => "three_phase",
        _ => "freezing",
    };

    /// <summary>Name for people.</summary>
    public static string Name(BoundaryLine line) => line.Kind switch
    {
        BoundaryKind.Bubble => "bubble line",
        BoundaryKind.Dew => "dew line",
        BoundaryKind.LiquidLiquid => "liquid parts in two",
        BoundaryKind.ThreePhase => "three phases",
        _ => $"{Solid(line)} freezes",
    };

    /// <summary>The component that a freezing line is about.</summary>
    public static string Solid(BoundaryLine line) => line.Between[(line.Between.LastIndexOf("solid ", StringComparison.Ordinal) + 6)..];

    /// <summary>Phase names as words.</summary>
    public static string Between(BoundaryLine line) => line.Between.Replace("+", " + ").Replace('_', ' ').Replace(" | ", " from ");

    /// <summary>The figures that matter first: name, value of the first model, value of the second, and what it means.</summary>
    public static IEnumerable<(string Name, string Value, string Second, string Note)> Figures(EnvelopeReport report, Readout readout)
    {
        (string, string, string, string) Row(string name, Func<EnvelopeResult, string?> value, string note) =>
            (name, value(report.Main.Envelope) ?? "none", report.Second is { } s ? value(s.Envelope) ?? "none" : "", note);
        string Point(BoundaryPoint p) => $"{readout.Temperature(p.TemperatureK)}, {Pressure(report, readout, p.PressurePa)}";

        int most = Math.Clamp(report.Envelopes.Max(e => e.Envelope.CriticalPoints.Count(c => c.Stable)), 1, 3);
        for (int k = 0; k < most; k++)
        {
            int which = k;
            yield return Row(most == 1 ? "Critical point" : $"Critical point {k + 1}", e => e.CriticalPoints.Where(c => c.Stable).ElementAtOrDefault(which) is { } c ? Point(new(c.TemperatureK, c.PressurePa)) : null, "the two phases become one");
        }
        yield return Row("Highest pressure", e => e.HighestPressure is { } p ? Point(p) : e.Lines.Any(l => l.Kind is BoundaryKind.Bubble or BoundaryKind.Dew) ? $"above {Pressure(report, readout, e.Window.HighestPa)}" : null, "of vapour beside liquid (cricondenbar)");
        yield return Row("Highest temperature", e => e.HighestTemperature is { } p ? Point(p) : null, "at which it condenses (cricondentherm)");
        if (report.Envelopes.Any(e => e.Envelope.ThreePhaseRange is not null))
            yield return Row("Three phases", e => e.ThreePhaseRange is { } r ? $"{Range(readout.TemperatureValue(r.ColdestK), readout.TemperatureValue(r.WarmestK), readout, 1)} {readout.TemperatureSymbol}" : null, "vapour above two liquids, in part of it");
        if (report.Envelopes.Any(e => Freezing(e.Envelope).Any()))
            yield return Row("Freezes first", e => FirstSolid(e, readout), "");
    }

    /// <summary>A pressure, absolute in both systems of units.</summary>
    public static string Pressure(EnvelopeReport report, Readout readout, double pressurePa)
    {
        double value = report.PressureValue(pressurePa);
        // an axis or a tile keeps number and unit together
        return Together(readout, $"{readout.Figures(value, value < 1000 ? 3 : 4)} {report.PressureSymbol}");
    }

    private static string Together(Readout readout, string text) => readout.Fixed(-1, 0) == "-1" ? text : text.Replace(' ', '\u00a0');

    private static string? FirstSolid(EnvelopeResult envelope, Readout readout)
    {
        // around the pressures of these coolers' cold ends
        var solids = Freezing(envelope).Select(l => (Solid: Solid(l), Points: l.Points.Where(p => p.PressurePa is > 0.9e5 and < 35e5).ToArray())).Where(l => l.Points.Length > 0)
            .GroupBy(l => l.Solid).Select(g => $"{g.Key} {Range(readout.TemperatureValue(g.Min(l => l.Points.Min(p => p.TemperatureK))), readout.TemperatureValue(g.Max(l => l.Points.Max(p => p.TemperatureK))), readout, 1)} {readout.TemperatureSymbol}").ToArray();
        return solids.Length == 0 ? null : string.Join(", ", solids);
    }

    private static IEnumerable<BoundaryLine> Freezing(EnvelopeResult envelope) => envelope.Lines.Where(l => l.Kind == BoundaryKind.Freezing);

    private static string Range(double a, double b, Readout readout, int decimals) =>
        readout.Fixed(Math.Min(a, b), decimals) is var low && readout.Fixed(Math.Max(a, b), decimals) is var high && low == high ? low : $"{low} to {high}";
}
