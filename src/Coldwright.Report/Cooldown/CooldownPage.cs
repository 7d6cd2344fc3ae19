using Coldwright.Report.Html;
using Coldwright.Report.Rating;
using Coldwright.Report.Safety;
using Coldwright.Safety;

namespace Coldwright.Report.Cooldown;

/// <summary>A cooldown as one self-contained page that needs no network and no script.</summary>
public static class CooldownPage
{
    /// <summary>Usual file name.</summary>
    /// <param name="warmUp">True for a warm-up.</param>
    public static string FileName(bool warmUp) => warmUp ? "warm-up.html" : "cooldown.html";

    /// <summary>The page's text (UTF-8, LF).</summary>
    /// <param name="report">What was followed.</param>
    public static string Write(CooldownReport report)
    {
        var (r, readout, html) = (report.Result, report.Readout(typographic: true), new HtmlText());
        var pictures = new CooldownPictures(report, readout);
        html.Inside("header", "", h => h.Element("h1", report.Title)
            .Element("p", $"{(r.IsWarmUp ? "Compressor standing still" : "From the start")}, by the {r.Model} model. Charge: {report.Machine.Charge.Mixture}. Room {readout.TemperatureFull(report.Machine.Room.TemperatureK)}."));
        FindingsHtml.GraveFirst(html, report.Findings, readout);
        html.Element("p", readout.Say(r.Sentence), !r.IsWarmUp && (r.CondensingK is not { } c || r.PlateauK < c) ? "verdict" : "verdict short");
        html.Inside("div", "tiles", h =>
        {
            foreach (var (name, value, note) in CooldownFigures.Headline(report, readout))
                h.Inside("div", "tile", t => t.Element("span", name, "name").Element("span", value, "value").Element("span", note, "note"));
        });
        html.Section("Temperatures", h => Page.Figure(h, pictures.Temperatures, "The load is what is to get cold: vessel, coil and what is in it." + pictures.EventWords, pictures.Table));
        html.Section(r.IsWarmUp ? "Where the heat goes" : "What the cooling is used for", h => Page.Figure(h, pictures.Split,
            r.IsWarmUp ? "Heat that comes in from the room; the masses take it up." : "Areas stand on one another: heat that leaks in from the room, and heat that has to be taken out of insulation, masses and metal before it is cold. Together they are what the streams carry off. At the plateau only leak and load are left.", pictures.SplitTable));
        if (r.StoppedBy.Count > 0) html.Section("What stops it", h =>
        {
            h.Table(["term", ">power", ">share"], r.StoppedBy.Select(t => new[] { RatingHeadline.Capital(t.Name), readout.Watts(t.Watts), readout.Percent(t.Share) }));
            h.Element("p", "At the end of the time followed, of the cooling that an endless recuperator would leave.", "quiet");
        });
        if (r.Changes.Count > 0) html.Section("What would change it", h =>
        {
            h.Table(["change", ">plateau", "time"], CooldownFigures.Changes(report, readout));
            h.Element("p", "Each line is a cooldown of its own with nothing else changed.", "quiet");
        });
        html.Section("Pressures", h => Page.Figure(h, pictures.Pressures, r.IsWarmUp ? "The charge boils out of the cold end and the pressure rises." : "Pressures follow from hardware and charge, while more and more of the charge condenses into the cold end.", pictures.Table));
        if (!r.IsWarmUp) html.Section("Electrical power", h => Page.Figure(h, pictures.Power, report.HasPrecooler ? "Compressor, precooler and fans." : "Compressor and fans.", pictures.Table));
        html.Section("When the load passes temperatures", h => h.Table([">temperature", ">after", ""], CooldownFigures.Times(report, readout)));
        html.Section("What has to be cooled", h => h.Table(["mass", ">", ">heat given up"], CooldownFigures.Masses(report, readout)));
        if (r.Sensitivities.Count > 0) html.Section("Slopes", h =>
        {
            h.Table(["parameter", ">temperature at the end", ">time"], CooldownFigures.Slopes(report, readout));
            h.Element("p", "For a doubling of the parameter at this slope.", "quiet");
        });
        if (r.Warnings.Count > 0) html.Section("What was assumed, and what to know", h => h.List(r.Warnings.Select(readout.Say)));
        var cautions = report.Findings.Where(f => f.Grade == Grade.Caution && f.Id != Cautions.LocalCodes.Id).ToArray();
        if (cautions.Length > 0) html.Section("Cautions", h => FindingsHtml.Write(h, cautions, readout));
        html.Section("How far the numbers close", h => h.List(
        [
            $"Energy: heat stored, carried off and let in differ by {readout.Error(r.EnergyError)} of what is carried off, over the whole run ({r.Steps} steps).",
            $"Charge: no substance's amount in the loop was further than {readout.Percent(r.LargestDrift)} from the charge.",
            $"Circulating at the end: {r.Circulating}.",
            .. r.DirectResidual is { } residual ? (string[])[$"Without tables: the model's own properties see {readout.Percent(residual)} of the cooling flow otherwise at most."] : [],
        ]));
        html.Inside("footer", "", h => h.Element("p", $"{RatingHeadline.Capital(Cautions.LocalCodes.Rule)}. {RatingHeadline.Capital(Cautions.LocalCodes.Do)}."));
        return Page.Write(report.Title, html);
    }
}
