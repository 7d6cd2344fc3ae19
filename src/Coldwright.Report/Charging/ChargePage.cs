using Coldwright.Report.Html;
using Coldwright.Report.Safety;
using Coldwright.Safety;

namespace Coldwright.Report.Charging;

/// <summary>A filling plan as one self-contained page that needs no network and no script.</summary>
public static class ChargePage
{
    /// <summary>Usual file name.</summary>
    public const string FileName = "charge.html";

    /// <summary>The page's text (UTF-8, LF).</summary>
    /// <param name="report">The plan.</param>
    public static string Write(ChargeReport report)
    {
        var (r, result) = (report.Readout(typographic: true), report.Result);
        var html = new HtmlText();
        html.Inside("header", "", h => h.Element("h1", report.Machine.Name).Element("p", $"How to fill it: {result.Mixture}. Filling by the {result.Model} model. Room {r.TemperatureFull(report.Machine.Room.TemperatureK)}."));
        FindingsHtml.GraveFirst(html, result.Findings, r);
        html.Element("p", ChargeWords.Verdict(report, r), result.StandsBelowLimits ? "verdict" : "verdict short");
        html.Section("Before anything goes in", h => h.List(ChargeWords.Pump(report, r).Append(ChargeWords.Left(report, r))));
        var stair = new StairPicture(report, r);
        html.Section("Gas after gas", h =>
        {
            h.Table([">", "gas", ">grams", ">gauge shows\nthen", "tell it by", ">may be off by", ">cooling with so\nmuch too much"],
                result.Recipe.Steps.Select((s, i) => new[] { $"{i + 1}", s.Gas, ChargeWords.Grams(r, s.MassKg), ChargeWords.Gauge(r, s.UntilPa), ChargeWords.By(r, s), ChargeWords.Tolerance(r, s), ChargeWords.Costs(r, s) }));
            h.Element("p", "Off by so much, a gas's own share of the molecules is wrong by the half per cent that is allowed, or by what was asked for. The last column says what that does to the smallest enthalpy difference between the file's two pressures: the cooling that an endless exchanger would leave.");
            Page.Figure(h, stair.Draw, stair.Caption, stair.Table);
        });
        if (result.Cold is { Closed: { } closed } cold)
        {
            var picture = new ChargedPicture(report, r);
            html.Section("Once it is cold", h =>
            {
                h.Element("p", $"{r.Percent(closed.LiquidShare)} of the charge is liquid then. The gauges show {ChargeWords.Gauge(r, cold.Loop.HighPressurePa)} and {ChargeWords.Gauge(r, cold.Loop.LowPressurePa)}. {r.Say(closed.StartUp.Sentence)}");
                Page.Figure(h, picture.Draw, picture.Caption, picture.Table);
            });
        }
        if (result.Traces.Count > 0)
            html.Section("What does not belong in it", h => h.Table(["what", ">left by the pump,\nat most", ">from\nthe gases", ">begins to\nfreeze at", ">dissolves at\nthe coldest"],
                result.Traces.Select(t => new[] { t.Name.Replace('-', ' '), ChargeWords.Ppm(r, t.FromPump), ChargeWords.Ppm(r, t.FromGases), t.FreezesAtK is { } k ? r.TemperatureFull(k) : "-", t.AllowedAtColdest is { } a ? a >= 1 ? "any amount" : ChargeWords.Ppm(r, a) : "-" })));
        if (result.TopUps.Count > 0)
            html.Section("Topping up after a leak", h =>
            {
                h.Element("p", "A wide leak lets all gases out alike; through a fine one the light gases go first. The truth lies between the two. Add what both agree on, run it, and compare temperatures and pressures.");
                h.Table(["", .. result.TopUps.Select(t => ">" + t.Leak.Replace(": ", ":\n", StringComparison.Ordinal))],
                [
                    ["lost", .. result.TopUps.Select(t => ChargeWords.Grams(r, t.LostKg))], ["gauge at rest", .. result.TopUps.Select(t => ChargeWords.Gauge(r, t.PressurePa))],
                    .. result.Mixture.Names.Select((n, i) => (string[])[$"add {n}", .. result.TopUps.Select(t => ChargeWords.Grams(r, t.AddKg[i]))]),
                ]);
            });
        html.Section("Where it goes", h => h.Table(["place", ">litres"], result.Places.Select(p => new[] { p.Name, r.Figures(1e3 * p.VolumeM3, 3) })));
        if (report.Warnings.Count > 0) html.Section("What to keep in mind", h => h.List(report.Warnings.Select(r.Say)));
        var cautions = result.Findings.Where(f => f.Grade == Grade.Caution && f.Id != Cautions.LocalCodes.Id).ToArray();
        if (cautions.Length > 0) html.Section("Cautions", h => FindingsHtml.Write(h, cautions, r));
        html.Inside("footer", "", h => h.Element("p", $"How it is computed: docs/theory/charge.md. {char.ToUpperInvariant(Cautions.LocalCodes.Rule[0])}{Cautions.LocalCodes.Rule[1..]}."));
        return Page.Write($"{report.Machine.Name}: charge", html);
    }
}
