using Coldwright.Design.Blending;

namespace Coldwright.Report.Blending;

/// <summary>Mixtures and their merit in words.</summary>
internal static class BlendWords
{
    public static string Mixture(BlendChoice c, Readout r) => string.Join(", ", c.Mixture.Names.Zip(c.Mixture.MoleFractions, (n, x) => $"{n} {r.Fixed(x, 3)}"));

    /// <summary>Value of the goal in its unit.</summary>
    public static string Merit(BlendResult result, double merit, Readout r) => merit <= -9999 ? "breaks a limit" : result.Goal switch
    {
        BlendGoal.Cooling => r.Watts(merit),
        BlendGoal.Litres => $"{r.Figures(merit, 3)} L/h",
        BlendGoal.Lowest => r.Temperature(-merit),
        _ => $"{r.Figures(merit, 4)} J/mol",
    };

    /// <summary>A change of the goal's value; for a temperature more is colder.</summary>
    public static string Change(BlendResult result, double? change, Readout r) => change is not { } c ? "-" : result.Goal switch
    {
        BlendGoal.Cooling => $"{(c > 0 ? "+" : "")}{r.Fixed(c, 2)} W",
        BlendGoal.Litres => $"{(c > 0 ? "+" : "")}{r.Fixed(c, 3)} L/h",
        BlendGoal.Lowest => $"{(c < 0 ? "+" : "")}{r.Fixed(r.DifferenceValue(-c), 2)} {r.TemperatureSymbol}",
        _ => $"{(c > 0 ? "+" : "")}{r.Fixed(c, 1)} J/mol",
    };

    public static string Goal(BlendResult result, Readout r) => result.Goal switch
    {
        BlendGoal.Cooling => $"most net cooling at {r.TemperatureFull(result.TemperatureK)}",
        BlendGoal.Litres => $"most liquid collected, with the load at {r.TemperatureFull(result.TemperatureK)}",
        BlendGoal.Lowest => "lowest temperature without load",
        _ => $"the largest least isothermal enthalpy difference down to {r.TemperatureFull(result.TemperatureK)}, whatever the exchanger",
    };

    public static string Verdict(BlendReport report, Readout r)
    {
        var result = report.Result;
        string gain = !result.KnowsNow || !result.Now.Main.IsGood ? "" : $" The file's mixture gives {Merit(result, result.Now.Main.Merit, r)}.";
        return $"{Mixture(result.Best, r)} gives {Merit(result, result.Best.Main.Merit, r)}; with any one gas off by {r.Percent(result.FillingError)} of the molecules{(result.Best.Reference is null ? "" : ", in the worse of the models")}, still {Merit(result, result.Best.WorstMerit, r)}.{gain}";
    }

    public static string Effort(BlendResult result, Readout r)
    {
        double perSecond = (result.Rated.Cubic + result.Rated.Reference) / Math.Max(result.Seconds, 1e-3);
        return $"{result.Rated.Cubic} mixtures rated by the cubic model and {result.Rated.Reference} by the reference model in {r.Fixed(result.Seconds, 1)} s, {r.Fixed(result.ProcessorSeconds, 1)} s of processor time: {r.Figures(perSecond, 3)} ratings a second.";
    }

    public static string Freezing(BlendPoint p, Readout r) => p.Freezing is { } f ? $"{f.Gas} {r.Figures(Math.Min(f.Margin, 999), 2)}" : "nothing can";
}
