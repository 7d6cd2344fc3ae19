using Coldwright.Design.Charging;

namespace Coldwright.Report.Charging;

/// <summary>A filling plan in words.</summary>
internal static class ChargeWords
{
    public static string Grams(Readout r, double kg) => $"{r.Fixed(1e3 * kg, Math.Abs(kg) < 0.1 ? 1 : 0)} g";

    public static string Gauge(Readout r, double pa) => r.Units == UnitSystem.Us ? r.Pressure(pa) : r.PressureBeside(pa);

    public static string Ppm(Readout r, double share) => share > 0 && share < 1e-8 ? "under 0.01 ppm" : $"{r.Figures(1e6 * share, 2)} ppm";

    public static string Verdict(ChargeReport report, Readout r)
    {
        var result = report.Result;
        string limit = result.LowestLimit is not { } l ? "No part of the loop states a limit to hold that against."
            : result.StandsBelowLimits ? $"The lowest limit is that of {l.Name}, {Gauge(r, l.Pa)}." : $"That is more than {l.Name} allows, {Gauge(r, l.Pa)}: charge less, or add a buffer.";
        return $"{Grams(r, result.MassKg)} in {r.Figures(1e3 * result.Places.Sum(p => p.VolumeM3), 3)} L come to {Gauge(r, result.Recipe.StandstillPa)} at {r.Temperature(report.Machine.Room.TemperatureK)}. {limit}";
    }

    public static IEnumerable<string> Pump(ChargeReport report, Readout r)
    {
        var e = report.Result.Evacuation;
        yield return $"Pump down to {r.Figures(e.VacuumPa, 2)} Pa and hold it.";
        if (e.Rinses > 0) yield return $"Rinse {(e.Rinses == 1 ? "once" : $"{e.Rinses} times")}: let in dry {e.RinseGas} to {Gauge(r, e.RinsePa)}, pump down to {r.Figures(e.VacuumPa, 2)} Pa again.";
    }

    public static string Left(ChargeReport report, Readout r) =>
        $"Then at most {Ppm(r, report.Result.Evacuation.AirMol / report.Result.Moles)} of the charge is air, and at most as much water.";

    public static string By(Readout r, FillingStep s) => s.By == FillingMeasure.Pressure ? "gauge" : s.LiquidShare > 1e-6 ? "scale: condenses" : "scale";

    public static string Tolerance(Readout r, FillingStep s) => s.TolerancePa is { } pa ? $"{Grams(r, s.ToleranceKg)} or {r.PressureDifference(pa)}" : Grams(r, s.ToleranceKg);

    public static string Costs(Readout r, FillingStep s) => s.Error?.Cooling is { } c && double.IsFinite(c) ? $"{(c > 0 ? "+" : "")}{r.Fixed(100 * c, 1)} %" : "-";
}
