using Coldwright.Report.Rating.Closed;
using Coldwright.Simulation.Rating;

namespace Coldwright.Report.Rating;

/// <summary>One of the few numbers that matter first.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Value">With its unit.</param>
/// <param name="Note">One remark, may be empty.</param>
/// <param name="Second">The second model's value, empty when there is none.</param>
/// <param name="Band">One standard deviation, empty without sensitivities.</param>
internal sealed record HeadlineNumber(string Name, string Value, string Note, string Second, string Band = "");

/// <summary>The few numbers that matter first, the same on the page and in the terminal.</summary>
internal static class RatingHeadline
{
    /// <summary>Figures in order of interest.</summary>
    public static IEnumerable<HeadlineNumber> Figures(RatingReport report, Readout readout)
    {
        var (main, second) = (report.Main, report.Result.SecondOpinion);
        string Other(Func<ModelRating, string> value) => second is null ? "" : value(second);
        var closed = main.Closed is { } c ? new ClosedWords(report, c, readout) : null;
        string Band(string figure) => closed?.Band(figure) ?? "";

        yield return new("No-load temperature", Cold(main, readout), main.NoLoadTemperatureK is { } noLoad ? readout.TemperatureBeside(noLoad) : "no lowest temperature found", Other(r => Cold(r, readout)), main.NoLoadTemperatureK is null ? "" : Band("no_load_temperature_K"));
        if (main.Liquid is { } liquid)
        {
            yield return new($"{Capital(liquid.Substance)} collected", Litres(main, readout),
                report.MakesLiquid ? $"{readout.Percent(liquid.FlashFraction)} of the liquid flashes off when let down" : "no liquid is made", Other(r => Litres(r, readout)), report.MakesLiquid ? Band("collected_L_h") : "");
            yield return new("Energy", Energy(main, readout), main.EnergyKWhPerL is null ? "" : "electricity per litre collected", Other(r => Energy(r, readout)), main.EnergyKWhPerL is null ? "" : Band("energy_kWh_L"));
            yield return new("Cost", Cost(main, readout), main.CostPerL is { } cost
                ? $"electricity {readout.Fixed(cost.Electricity, 2)}, gas {readout.Fixed(cost.Gas, 2)}, charge {readout.Fixed(cost.Charge, 2)}"
                : "", Other(r => Cost(r, readout)));
        }
        else
        {
            yield return new("Net cooling", Net(main, readout), $"with the load at {readout.Temperature(main.OperatingTemperatureK)}", Other(r => Net(r, readout)), Band("net_cooling_W"));
        }
        yield return new("Electrical power", readout.Watts(main.Power.TotalW), PowerNote(main.Power, readout), Other(r => readout.Watts(r.Power.TotalW)), Band("power_W"));
        yield return new("Share of Carnot", readout.Percent(main.CarnotFraction), "ideal work over electricity used", Other(r => readout.Percent(r.CarnotFraction)));
    }

    /// <summary>How far apart the two models are, in a sentence; null without a second opinion.</summary>
    public static string? Spread(RatingReport report, Readout readout)
    {
        if (report.Result.SecondOpinion is not { } second) return null;
        var parts = new List<string>();
        if (report.Main.NoLoadTemperatureK is { } a && second.NoLoadTemperatureK is { } b) parts.Add($"{readout.Difference(Math.Abs(a - b))} in no-load temperature");
        if (report.Main.Liquid is { CollectedLPerH: > 0 } mine && second.Liquid is { } other) parts.Add($"{readout.Percent(Math.Abs(other.CollectedLPerH / mine.CollectedLPerH - 1))} in litres per hour");
        return parts.Count == 0
            ? $"The {second.Model} model gives a different kind of answer; see the second opinion."
            : $"The {report.Main.Model} and {second.Model} models differ by {string.Join(" and ", parts)}: trust the answer no further than that.";
    }

    /// <summary>That the band reaches to nothing, when it does; null otherwise.</summary>
    public static string? Doubt(RatingReport report, Readout readout)
    {
        if (report.Main.LimitedBy.Kind != LimitationKind.Works) return null;
        var id = report.MakesLiquid ? "collected_L_h" : "net_cooling_W";
        if (report.Main.Closed?.Sensitivity?.Figures.FirstOrDefault(f => f.Id == id) is not { Value: > 0 } figure || figure.Deviation < figure.Value) return null;
        var words = new SensitivityWords(readout, report.Machine.Room.PressurePa);
        return $"The band of {words.Deviation(figure)} is wider than the {words.Value(figure)} themselves: {(report.MakesLiquid ? "that liquid comes at all" : "that any cooling is left")} is likely, not certain.";
    }

    /// <summary>First letter large.</summary>
    public static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    private static string Cold(ModelRating rating, Readout readout) => rating.NoLoadTemperatureK is { } noLoad ? readout.Temperature(noLoad) : "none";

    private static string Litres(ModelRating rating, Readout readout) => $"{readout.Figures(rating.Liquid?.CollectedLPerH ?? 0, 3)} L/h";

    private static string Energy(ModelRating rating, Readout readout) => rating.EnergyKWhPerL is { } energy ? $"{readout.Figures(energy, 3)} kWh/L" : "none";

    private static string Cost(ModelRating rating, Readout readout) => rating.CostPerL is { } cost ? $"{cost.Currency} {readout.Fixed(cost.Total, 2)}/L" : "none";

    private static string Net(ModelRating rating, Readout readout) =>
        CoolingReading.At(rating.CoolingCurve, rating.OperatingTemperatureK) is { } at ? readout.Watts(at.GrossW - at.LeakW) : "not computed";

    private static string PowerNote(PowerSplit power, Readout readout)
    {
        (string Name, double Watts)[] parts = [("compressor", power.MainW), ("precooler", power.PrecoolW), ("feed", power.FeedW), ("fans", power.FansW)];
        return string.Join(", ", parts.Where(p => p.Watts > 0).Select(p => $"{p.Name} {readout.Watts(p.Watts)}"));
    }
}
