using Coldwright.Report.Charts;
using Coldwright.Report.Html;
using Coldwright.Report.Rating;
using Coldwright.Simulation.Rating;

namespace Coldwright.Report.Views;

/// <summary>A cooler to be compared: its name for the reader and its rating.</summary>
/// <param name="Name">Short name.</param>
/// <param name="Report">Its rating.</param>
public sealed record Compared(string Name, RatingReport Report);

/// <summary>A value in which two machine files differ.</summary>
/// <param name="Place">Where it stands.</param>
/// <param name="First">In the first file; null when it is not there.</param>
/// <param name="Second">In the second.</param>
public sealed record FileDifference(string Place, string? First, string? Second);

/// <summary>Two ratings side by side: what differs in the files, the figures, both cooling curves in one picture.</summary>
public static class CompareView
{
    /// <summary>As HTML, in the units of the first report.</summary>
    /// <param name="first">One cooler.</param>
    /// <param name="second">The other.</param>
    /// <param name="differences">Where their files differ.</param>
    public static string Write(Compared first, Compared second, IReadOnlyList<FileDifference> differences)
    {
        var readout = first.Report.Readout(typographic: true);
        var html = new HtmlText();
        html.Section("What the files say differently", h =>
        {
            if (differences.Count == 0) h.Element("p", "Nothing: both describe the same cooler.");
            else h.Table(["where", first.Name, second.Name], differences.Select(d => new[] { d.Place, d.First ?? "not there", d.Second ?? "not there" }));
        });
        html.Section("What comes of it", h =>
        {
            h.Table(["", $">{first.Name}", $">{second.Name}", ">change"], Rows(first, second, readout));
            h.Element("p", $"{first.Name}: {readout.Say(first.Report.Main.LimitedBy.Sentence)}");
            h.Element("p", $"{second.Name}: {readout.Say(second.Report.Main.LimitedBy.Sentence)}");
        });
        if (first.Report.Main.CoolingCurve.Count > 1 && second.Report.Main.CoolingCurve.Count > 1)
            html.Section("What is left at each temperature", h => Page.Figure(h, size => Chart(first, second, readout, size.IsPhone).Draw(size),
                "Net cooling, the heat leak taken off, against the temperature of the load. Where a line crosses zero, that cooler is as cold as it gets.", t => Table(t, first, second, readout)));
        return html.ToString();
    }

    private static IEnumerable<IReadOnlyList<string>> Rows(Compared first, Compared second, Readout readout)
    {
        var (a, b) = (first.Report.Main, second.Report.Main);
        // The reports' own headline, each with the change where both have a number.
        var others = RatingHeadline.Figures(second.Report, readout).ToDictionary(f => f.Name, f => f.Value);
        foreach (var figure in RatingHeadline.Figures(first.Report, readout))
            yield return [figure.Name, figure.Value, others.GetValueOrDefault(figure.Name, "none"), Change(figure.Name, a, b, readout)];
        yield return ["Throttle outlet", readout.Temperature(a.ThrottleOutletK), readout.Temperature(b.ThrottleOutletK), Signed(b.ThrottleOutletK - a.ThrottleOutletK, readout.Difference)];
        yield return ["High pressure", readout.Pressure(a.Loop.HighPressurePa), readout.Pressure(b.Loop.HighPressurePa), Signed(b.Loop.HighPressurePa - a.Loop.HighPressurePa, readout.PressureDifference)];
        yield return ["Low pressure", readout.Pressure(a.Loop.LowPressurePa), readout.Pressure(b.Loop.LowPressurePa), Signed(b.Loop.LowPressurePa - a.Loop.LowPressurePa, readout.PressureDifference)];
        yield return ["Discharge temperature", readout.Temperature(a.Loop.DischargeTemperatureK), readout.Temperature(b.Loop.DischargeTemperatureK), Signed(b.Loop.DischargeTemperatureK - a.Loop.DischargeTemperatureK, readout.Difference)];
    }

    private static string Change(string name, ModelRating a, ModelRating b, Readout readout) => name switch
    {
        "No-load temperature" when (a.NoLoadTemperatureK, b.NoLoadTemperatureK) is ({ } x, { } y) => Signed(y - x, readout.Difference),
        "Energy" when (a.EnergyKWhPerL, b.EnergyKWhPerL) is ({ } x, { } y) => Signed(y - x, v => $"{readout.Figures(v, 2)} kWh/L"),
        "Electrical power" => Signed(b.Power.TotalW - a.Power.TotalW, readout.Watts),
        _ when name.EndsWith(" collected", StringComparison.Ordinal) && (a.Liquid, b.Liquid) is ({ } x, { } y) => Signed(y.CollectedLPerH - x.CollectedLPerH, v => $"{readout.Figures(v, 2)} L/h"),
        _ => "",
    };

    private static string Signed(double change, Func<double, string> text) => Math.Abs(change) < 1e-9 ? "none" : change > 0 ? $"+{text(change)}" : $"\u2212{text(-change)}";

    private static LineChart Chart(Compared first, Compared second, Readout readout, bool phone)
    {
        Curve Line(Compared c, Ink ink) => new(c.Name, ink, [.. c.Report.Main.CoolingCurve.Select(p => (readout.TemperatureValue(p.TemperatureK), p.NetCoolingW))],
            [.. c.Report.Main.CoolingCurve.Select(p => $"{c.Name}: {readout.Watts(p.NetCoolingW)} left at {readout.TemperatureFull(p.TemperatureK)}")]);
        Curve[] curves = [Line(first, Ink.Low), Line(second, Ink.High)];
        var points = curves.SelectMany(c => c.Points).ToArray();
        return new()
        {
            Description = $"Net cooling against load temperature for {first.Name} and {second.Name}.",
            X = Axis.Around($"load temperature, {readout.TemperatureSymbol}", points.Select(p => p.X)),
            Y = Axis.Around(phone ? "left, W" : "cooling left, W", points.Select(p => p.Y).Append(0)),
            Curves = [.. curves, new("", Ink.Plain, [(points.Min(p => p.X), 0), (points.Max(p => p.X), 0)], [], Thin: true)],
        };
    }

    private static void Table(HtmlText html, Compared first, Compared second, Readout readout)
    {
        foreach (var c in (Compared[])[first, second])
            html.Table([$">{c.Name}: load temperature", ">left (net)"], c.Report.Main.CoolingCurve.Select(p => new[] { readout.TemperatureFull(p.TemperatureK), readout.Watts(p.NetCoolingW) }));
    }
}
