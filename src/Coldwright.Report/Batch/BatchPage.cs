using Coldwright.Fluids.IdealGas;
using Coldwright.Report.Charts;
using Coldwright.Report.Html;
using Coldwright.Report.Safety;
using Coldwright.Safety;
using Coldwright.Simulation.Batch;

namespace Coldwright.Report.Batch;

/// <summary>A batch as one self-contained page that needs no network and no script.</summary>
public static class BatchPage
{
    /// <summary>Usual file name.</summary>
    public const string FileName = "batch.html";

    /// <summary>The page's text (UTF-8, LF).</summary>
    /// <param name="report">What was simulated and found.</param>
    public static string Write(BatchReport report)
    {
        var r = report.Readout(typographic: true);
        var html = new HtmlText();
        html.Inside("header", "", h => h.Element("h1", report.Machine.Name).Element("p", $"{char.ToUpperInvariant(BatchWords.Batches(report)[0])}{BatchWords.Batches(report)[1..]} of {report.Result.Substance}, from the supply to the flask: {BatchWords.Chosen(report)}. Cold end by the {report.Result.Rating.Model} model. Room {r.TemperatureFull(report.Machine.Room.TemperatureK)}."));
        FindingsHtml.GraveFirst(html, report.Findings, r);
        html.Element("p", BatchWords.Verdict(report, r), report.Run.Grams.CollectedKg > 1e-6 ? "verdict" : "verdict short");
        Tiles(html, report, r);
        var grams = new GramPicture(report, r);
        html.Section("Where did the gas go?", h => Page.Figure(h, grams.Draw, grams.Caption, grams.Table));
        html.Section("What to do when", h => h.Table([">at", "do", "until", ">takes"], BatchWords.Schedule(report, r).Select(s => new[] { s.Start, s.Action, s.Until, s.For })));
        if (report.Run.Series.Count > 2) Courses(html, report, r);
        if (report.Result.Waiting.Count > 2)
        {
            var wait = new WaitPicture(report, r);
            html.Section("What each further minute of cooling buys", h => Page.Figure(h, wait.Draw, wait.Caption, wait.Table));
        }
        if (report.Result.Coil is { } coil)
            html.Section("The coil as the vessel fills", h => h.Element("p", "Turns under liquid no longer condense. What the coil passes for each kelvin, with the mixture as it leaves the throttle; the rating counts the vessel as half full.")
                .Table([">liquid in the vessel", ">W/K"], coil.Levels.Zip(coil.Conductances, (v, g) => new[] { r.Percent(v), r.Figures(g, 3) })));
        Feed(html, report, r);
        Impurities(html, report, r);
        Joules(html, report, r);
        if (report.Warnings.Count > 0) html.Section("What to keep in mind", h => h.List(report.Warnings.Select(r.Say)));
        var cautions = report.Findings.Where(f => f.Grade == Grade.Caution && f.Id != Cautions.LocalCodes.Id).ToArray();
        if (cautions.Length > 0) html.Section("Cautions", h => FindingsHtml.Write(h, cautions, r));
        html.Inside("footer", "", h => h.Element("p", $"Caloric zero: {CaloricZero.Text}. How it is computed: docs/theory/batch.md. {char.ToUpperInvariant(Cautions.LocalCodes.Rule[0])}{Cautions.LocalCodes.Rule[1..]}."));
        return Page.Write($"{report.Machine.Name}: batch", html);
    }

    private static void Tiles(HtmlText html, BatchReport report, Readout r) => html.Inside("div", "tiles", h =>
    {
        void Tile(string name, string value, string note) => h.Inside("div", "tile", t => t.Element("span", name, "name").Element("span", value, "value").Element("span", note, "note"));
        var run = report.Run;
        Tile("In the flask", BatchWords.Grams(r, run.Grams.CollectedKg), $"of {BatchWords.Grams(r, run.Grams.FedKg)} fed");
        Tile("Per hour", $"{r.Figures(run.CollectedLPerH, 3)} L/h", $"it takes {BatchWords.Minutes(r, run.DurationS)}");
        if (run.EnergyKWhPerL is { } energy) Tile("Electricity", $"{r.Figures(energy, 3)} kWh/L", run.FeedJ > 0 ? $"feed compressor {r.Percent(run.FeedJ / (run.FeedJ + run.LoopJ))} of it" : "loop, precooler and fans");
        if (report.Result.OtherGoal is { EnergyKWhPerL: { } least } other && other.Plan != run.Plan)
            Tile(report.Result.Goal == BatchGoal.LitresPerHour ? "Least electricity" : "Most per hour", report.Result.Goal == BatchGoal.LitresPerHour ? $"{r.Figures(least, 3)} kWh/L" : $"{r.Figures(other.CollectedLPerH, 3)} L/h", $"{r.Percent(other.Plan.FillShare)} full at {r.Pressure(other.Plan.FeedPressurePa)}, opened at {r.Pressure(other.Plan.OpeningPressurePa)}");
        Tile("The flask loses", $"{r.Figures(3.6e6 * run.FlaskLossKgPerS, 2)} g/h", "as it stands at the end");
    });

    private static void Courses(HtmlText html, BatchReport report, Readout r)
    {
        bool us = report.Units == UnitSystem.Us;
        double Pressure(double pa) => us ? (pa - report.Machine.Room.PressurePa) / PascalPerPsi : pa / 1e5;
        bool receiver = report.Run.Series.Max(m => m.SupplyPa) - report.Run.Series.Min(m => m.SupplyPa) > 1000;
        var pressure = new CoursePicture(report, r, us ? "pressure, psig" : "pressure, bar abs",
            [("vessel", Ink.High, m => Pressure(m.PressurePa), m => r.Pressure(m.PressurePa)), .. receiver ? [("supply", Ink.Second, (Func<BatchMoment, double>)(m => Pressure(m.SupplyPa)), (Func<BatchMoment, string>)(m => r.Pressure(m.SupplyPa)))] : Array.Empty<(string, Ink, Func<BatchMoment, double>, Func<BatchMoment, string>)>()],
            "Pressure in the vessel. It stays where the feed keeps it while gas condenses, falls along the vapour pressure while the vessel waits and cools, and falls again when the liquid is let out.");
        var temperature = new CoursePicture(report, r, $"temperature, {r.TemperatureSymbol}", [("", Ink.Low, m => r.TemperatureValue(m.TemperatureK), m => r.TemperatureFull(m.TemperatureK))],
            "Temperature of content and vessel. Incoming gas warms it first; from then on it follows the pressure.", closeUp: true);
        var level = new CoursePicture(report, r, "grams", [("vessel", Ink.Low, m => 1e3 * m.VesselKg, m => $"{BatchWords.Grams(r, m.VesselKg)}, {r.Percent(m.Level)} full of liquid"), ("flask", Ink.Cooling, m => 1e3 * m.FlaskKg, m => BatchWords.Grams(r, m.FlaskKg))],
            "Grams in the vessel, liquid and vapour, and liquid in the flask. What leaves the vessel and does not arrive in the flask is vapour by then.");
        html.Section("Pressure", h => Page.Figure(h, pressure.Draw, pressure.Caption, pressure.Table));
        html.Section("Temperature", h => Page.Figure(h, temperature.Draw, temperature.Caption, temperature.Table));
        html.Section("Level and flask", h => Page.Figure(h, level.Draw, level.Caption, level.Table));
        if (report.Result.Feed is not { } feed) return;
        var shell = new CoursePicture(report, r, $"shell, {r.TemperatureSymbol}", [("", Ink.High, m => r.TemperatureValue(m.ShellK), m => r.TemperatureFull(m.ShellK))],
            $"Shell of the feed compressor; {r.TemperatureFull(feed.AllowedShellK)} is allowed.", closeUp: true);
        html.Section("The feed compressor's shell", h => Page.Figure(h, shell.Draw, shell.Caption, shell.Table));
    }

    private const double PascalPerPsi = 6894.757293168;

    private static void Feed(HtmlText html, BatchReport report, Readout r)
    {
        if (report.Result.Feed is not { } f) return;
        html.Section("The feed compressor", h => h.Table(["figure", ">value"],
        [
            ["delivers at the feed pressure", $"{r.Figures(1e3 * f.FlowKgPerS, 3)} g/s"], ["of the swept volume", r.Percent(f.VolumetricEfficiency)], ["discharge, allowed", $"{r.TemperatureFull(f.DischargeK)}, {r.TemperatureFull(f.AllowedDischargeK)}"],
            ["shell if it ran on, allowed", $"{r.TemperatureFull(f.SteadyShellK)}, {r.TemperatureFull(f.AllowedShellK)}"],
            ["may run", f.DutyShare < 1 ? $"{BatchWords.Minutes(r, f.RunS!.Value)}, then rests {BatchWords.Minutes(r, f.RestS!.Value)} ({r.Percent(f.DutyShare)} of the time)" : "all the time"],
        ]));
    }

    private static void Impurities(HtmlText html, BatchReport report, Readout r)
    {
        var i = report.Result.Impurities;
        html.Section("What the gas brings with it", h =>
        {
            h.Table(["gas", ">fed", ">vapour when half has condensed", ">liquid collected"],
                i.Feed.Names.Select((n, k) => new[] { n, r.Percent(i.Feed.MoleFractions[k]), i.VapourThatStays is { } v ? r.Percent(v[k]) : "-", r.Percent(i.Collected[k]) }));
            if (i.GlideK is { } glide) h.Element("p", $"At the feed pressure it condenses over {r.Difference(glide)}.");
            if (i.Oxygen is { } o) h.Element("p", $"Oxygen gathers in what is left of a flask: {r.Percent(o.Fresh)} fresh, {r.Percent(o.TenthLeft)} when a tenth is left.");
            if (i.Traces.Count > 0) h.Table(["trace", ">fed", ">freezes", ">begins to freeze at"], i.Traces.Select(t => new[] { t.Name, $"{r.Figures(1e6 * t.FedKg, 2)} mg", $"{r.Figures(1e6 * t.FrozenKg, 2)} mg", t.FreezesAtK is { } k ? r.TemperatureFull(k) : "stays dissolved" }));
        });
    }

    private static void Joules(HtmlText html, BatchReport report, Readout r) => html.Section("The same in joules", h =>
    {
        h.Element("p", "Heat into vessel, drain line and flask: positive came in, negative went out or was stored. Enthalpies count from the product's gas in the room, so cold vapour that leaves counts as heat brought in: its cold is lost.");
        h.Table(["what", ">kJ"], report.Run.Joules.Entries.Select(e => new[] { e.Name.Replace('_', ' '), r.Fixed(e.Joules / 1e3, 3) }).Append(["left over", r.Error(report.Run.Joules.Error) + " of the largest"]));
    });
}
