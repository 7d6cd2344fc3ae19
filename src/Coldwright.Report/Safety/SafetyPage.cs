using Coldwright.Report.Html;
using Coldwright.Report.Rating;
using Coldwright.Safety;

namespace Coldwright.Report.Safety;

/// <summary>A safety review as one self-contained page that needs no network and no script.</summary>
public static class SafetyPage
{
    /// <summary>Usual file name.</summary>
    public const string FileName = "safety.html";

    /// <summary>The page's text (UTF-8, LF).</summary>
    /// <param name="report">What was found.</param>
    public static string Write(SafetyReport report)
    {
        var (html, readout) = (new HtmlText(), report.Readout(typographic: true));
        var machine = report.Machine;
        html.Inside("header", "", h =>
        {
            h.Element("h1", $"{machine.Name}: safety");
            h.Element("p", $"Charge: {machine.Charge.Mixture}. Pressures {readout.PressureFull(machine.Operation.HighPressurePa)} and {readout.PressureFull(machine.Operation.LowPressurePa)}. " +
                $"Room {readout.Figures(machine.Room.VolumeM3, 3)} m3, {readout.TemperatureFull(machine.Room.TemperatureK)}.");
        });
        html.Element("p", report.Verdict, report.HasGrave ? "verdict short" : "verdict");
        FindingsHtml.GraveFirst(html, report.Review.Findings, readout);
        Section(html, "Cautions", report.At(Grade.Caution), readout);
        Figures(html, report.At(Grade.Note), readout);
        if (report.Review.Warnings.Count > 0) html.Section("What could not be worked out", h => h.List(report.Review.Warnings));
        html.Inside("footer", "", h => h.Element("p", $"{RatingHeadline.Capital(Cautions.LocalCodes.Rule)}. {RatingHeadline.Capital(Cautions.LocalCodes.Do)}."));
        return Page.Write($"{machine.Name}: safety", html);
    }

    private static void Section(HtmlText html, string heading, Finding[] findings, Readout readout)
    {
        if (findings.Length > 0) html.Section(heading, h => FindingsHtml.Write(h, findings, readout));
    }

    private static void Figures(HtmlText html, Finding[] notes, Readout readout)
    {
        if (notes.Length == 0) return;
        var words = new FindingWords(readout);
        html.Section("Figures for the build", h => h.Table(["figure", "what it means, and what to do", "source"],
            notes.Select(f => new[] { words.Headline(f), $"{RatingHeadline.Capital(f.Rule)}.\nDo: {f.Do}.", f.Source })));
    }
}
