using System.Globalization;

namespace Coldwright.Machine.HeatTransfer;

/// <summary>Says where a flow leaves the data behind the default two-phase correlations.</summary>
public static class FlowRange
{
    /// <summary>Warnings for a condensing flow, against Shah (1979).</summary>
    /// <param name="flow">The flow; properties not known are not judged.</param>
    /// <returns>One sentence each with value, limit and unit; empty inside the range.</returns>
    public static IReadOnlyList<string> Condensing(in TwoPhaseFlow flow)
    {
        var warnings = new List<string>();
        Judge(warnings, "Shah condensation", "bore", flow.DiameterM * 1000, 7, 40, "mm");
        Judge(warnings, "Shah condensation", "mass flux", flow.MassFlux, 11, 211, "kg/(m2 s)");
        Judge(warnings, "Shah condensation", "reduced pressure", flow.ReducedPressure, 0.002, 0.44, "");
        Judge(warnings, "Shah condensation", "all-liquid Reynolds number", flow.AllLiquidReynolds, 350, double.PositiveInfinity, "");
        return warnings;
    }

    /// <summary>Warnings for a boiling flow, against Gungor and Winterton (1987).</summary>
    /// <param name="flow">The flow; properties not known are not judged.</param>
    /// <returns>One sentence each with value, limit and unit; empty inside the range.</returns>
    public static IReadOnlyList<string> Boiling(in TwoPhaseFlow flow)
    {
        var warnings = new List<string>();
        Judge(warnings, "Gungor-Winterton boiling", "bore", flow.DiameterM * 1000, 3, 32, "mm");
        Judge(warnings, "Gungor-Winterton boiling", "mass flux", flow.MassFlux, 12, 8180, "kg/(m2 s)");
        Judge(warnings, "Gungor-Winterton boiling", "quality", flow.Quality, 0, 0.95, "");
        return warnings;
    }

    private static void Judge(List<string> warnings, string law, string name, double value, double least, double most, string unit)
    {
        if (value < least || value > most)
        {
            (string side, double limit) = value < least ? ("below", least) : ("above", most);
            warnings.Add($"{law}: {name} {WithUnit(value, unit)} is {side} its data ({WithUnit(limit, unit)})");
        }
    }

    private static string WithUnit(double value, string unit) =>
        value.ToString("G4", CultureInfo.InvariantCulture) + (unit.Length == 0 ? "" : " " + unit);
}
