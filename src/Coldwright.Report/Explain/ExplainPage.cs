using Coldwright.Report.Html;
using Coldwright.Report.Rating;
using Coldwright.Report.Safety;
using Coldwright.Safety;

namespace Coldwright.Report.Explain;

/// <summary>An explained run as one self-contained page that needs no network and no script.</summary>
public static class ExplainPage
{
    /// <summary>Usual file name.</summary>
    public const string FileName = "explain.html";

    private const int ShownFigures = 30;

    /// <summary>The page's text (UTF-8, LF).</summary>
    /// <param name="report">What was explained.</param>
    public static string Write(ExplainReport report)
    {
        var (e, readout, html) = (report.Result, report.Readout(typographic: true), new HtmlText());
        var pictures = new ExplainPictures(report, readout);
        bool sound = e.Causes.Any(c => c.Named && c.Id == "none");
        html.Inside("header", "", h => h.Element("h1", report.Title).Element("p", $"The log against the machine file. Charge: {report.Machine.Charge.Mixture}."));
        FindingsHtml.GraveFirst(html, report.Findings, readout);
        html.Element("p", readout.Say(e.Paragraph), sound ? "verdict" : "verdict short");
        html.Section("Causes", h =>
        {
            h.Table([">", "cause", "figure,\n90 % interval", ">likely", ">of what\nis missing"], ExplainWords.Causes(report, readout));
            h.Element("p", "Figures with an x are ratios to the machine file. In brackets the cause's id. Likely: how probable it is that the cause is among what is wrong, given this record, the doubts of file and correlations, and the sensors' classes. The last column is its share of what is missing.", "quiet");
            if (e.Indistinguishable.Count > 0) h.Element("p", "This record cannot tell apart: " + string.Join("; ", e.Indistinguishable.Select(g => string.Join(", ", g))) + ".");
            if (e.Correlations.Count > 0) h.Folded("Estimates that hang together", f => f.Table(["one", "other", ">correlation"], e.Correlations.Select(c => new[] { c.A, c.B, readout.Fixed(c.Correlation, 2) })));
        });
        if (e.Tests.Count > 0) html.Section("What to measure next", h => h.Table(["test", ">would settle"], e.Tests.Select(t => new[] { RatingHeadline.Capital(t.What), readout.Percent(t.Settles) })));
        html.Section("The load", h => Page.Figure(h, pictures.Load, "Measured, as the machine file has it, and as fitted: with what is named above and what the record says of the doubts of file and correlations.", pictures.LoadTable));
        html.Section("Where the watts go", h => Page.Figure(h, pictures.Watts, "By the model as fitted, at the end of the run.", t => t.Table(["term", ">power", ">share"], ExplainWords.Watts(report, readout))));
        html.Section("Heat of the whole pull-down", h => h.Table(["term", ">heat", ">share"], ExplainWords.Heat(report, readout)));
        if (e.Grams.Count > 0) html.Section("Where the grams went", h => Page.Figure(h, pictures.Grams, "From what the machine as described would have put into the flask to what was found there.", t => t.Table(["step", ">grams"], e.Grams.Select(g => new[] { g.Name, readout.Figures(1000 * g.Kg, 3) }))));
        if (pictures.HasPressures) html.Section("Pressures", h => Page.Figure(h, pictures.Pressures, "Full lines measured, thin ones as described.", t => t.Table(["figure", ">measured", ">described", ">with what is named", ">off before", ">off after"], ExplainWords.Figures(report, readout, 12))));
        html.Section("Figures that differ most", h =>
        {
            h.Table(["figure", ">measured", ">described", ">with what is named", ">off before", ">off after"], ExplainWords.Figures(report, readout, ShownFigures));
            h.Element("p", $"Off: difference over its standard uncertainty, sensors and model together. All {e.Figures.Count} figures: weighted squares {readout.Fixed(e.Misfit, 2)} of what the doubts allow.", "quiet");
        });
        html.Section("Phases", h => h.Table(["phase", ">from", ">to"], ExplainWords.Phases(report)));
        if (e.Said.Count > 0) html.Section("What was assumed, and what to know", h => h.List(e.Said));
        html.Inside("footer", "", h => h.Element("p", $"{RatingHeadline.Capital(Cautions.LocalCodes.Rule)}. {RatingHeadline.Capital(Cautions.LocalCodes.Do)}."));
        return Page.Write(report.Title, html);
    }
}
