using Coldwright.Simulation.Cooldown;

namespace Coldwright.Report.Cooldown;

/// <summary>Figures and rows of a cooldown, shared by screen and page.</summary>
internal static class CooldownFigures
{
    private const double NearlyWarmK = 5;

    /// <summary>Headline: name, value, note.</summary>
    public static IEnumerable<(string Name, string Value, string Note)> Headline(CooldownReport report, Readout readout)
    {
        var r = report.Result;
        if (r.IsWarmUp)
        {
            string time = CooldownScale.Time(r.Series.TimeS[^1]);
            yield return r.EndK > report.Machine.Room.TemperatureK - NearlyWarmK ? ("Warm again after", time, $"load at {readout.TemperatureFull(r.EndK)}") : ("At the end", readout.Temperature(r.EndK), $"after {time}");
            yield return ("Pressure at rest", readout.Pressure(r.Series.HighPressurePa.Max()), "highest on the way");
            yield break;
        }
        if (r.HasPlateau) yield return ("Plateau", readout.Temperature(r.PlateauK), readout.TemperatureBeside(r.PlateauK));
        if (r.TimeToK.FirstOrDefault(t => t.TemperatureK == r.CondensingK) is { } condensing && (r.HasPlateau || condensing.TimeS is not null)) yield return ("Condensing temperature after", CooldownScale.Time(condensing.TimeS), readout.TemperatureFull(condensing.TemperatureK));
        yield return ("At the end", readout.Temperature(r.EndK), $"after {CooldownScale.Time(r.Series.TimeS[^1])}, {readout.Difference(Math.Abs(r.EndRateKPerH))}/h");
        yield return ("Highest high side", readout.Pressure(r.Series.HighPressurePa.Max()), readout.PressureBeside(r.Series.HighPressurePa.Max()));
        yield return ("Electrical power", readout.Watts(r.Series.PowerW[^1]), $"at the end, at most {readout.Watts(r.Series.PowerW.Max())}");
    }

    /// <summary>Rows: temperature, time, what.</summary>
    public static IEnumerable<string[]> Times(CooldownReport report, Readout readout) => report.Result.TimeToK.Select(t => new[] { readout.Temperature(t.TemperatureK), CooldownScale.Time(t.TimeS), t.What });

    /// <summary>Rows: change, plateau, time to the reference temperature.</summary>
    public static IEnumerable<string[]> Changes(CooldownReport report, Readout readout) => report.Result.Changes.Select(c => new[] { c.What, Colder(c, readout), Sooner(c, readout) });

    /// <summary>Rows: parameter, change of the temperature at the end and of the time for a doubling at this slope.</summary>
    public static IEnumerable<string[]> Slopes(CooldownReport report, Readout readout) => report.Result.Sensitivities.Select(s => new[] { s.Name, $"{readout.Figures(s.EndKPerUnit, 3)} K", s.TimeSPerUnit is { } t ? $"{readout.Figures(t, 3)} s" : "" });

    /// <summary>Rows: mass, kg, heat.</summary>
    public static IEnumerable<string[]> Masses(CooldownReport report, Readout readout) => report.Result.Masses.Select(m => new[] { m.Name, m.MassKg > 0 ? $"{readout.Figures(m.MassKg, 3)} kg" : "", $"{readout.Figures(m.HeatJ / 1e3, 3)} kJ" });

    private static string Colder(CooldownChange c, Readout readout) => Math.Abs(c.PlateauChangeK) < 0.05 ? "the same" : $"{readout.Difference(Math.Abs(c.PlateauChangeK))} {(c.PlateauChangeK < 0 ? "colder" : "warmer")}";

    private static string Sooner(CooldownChange c, Readout readout) => $"{readout.Temperature(c.ReferenceK)} after {CooldownScale.Time(c.TimeAfterS)}{(c.TimeBeforeS is { } b ? $" (now {CooldownScale.Time(b)})" : c.TimeAfterS is null ? "" : " (now never)")}";
}
