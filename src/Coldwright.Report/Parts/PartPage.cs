using Coldwright.Report.Html;
using Coldwright.Report.Rating;
using Coldwright.Report.Safety;
using Coldwright.Safety;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Parts.Pictures;

namespace Coldwright.Report.Parts;

/// <summary>A part's rating as one self-contained page that needs no network and no script.</summary>
public static class PartPage
{
    /// <summary>File name: <c>part-NAME.html</c>, whatever is no letter, digit, hyphen or underscore turned into a hyphen.</summary>
    /// <param name="part">Name of the part.</param>
    public static string FileName(string part) => $"part-{string.Concat(part.Select(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' ? c : '-'))}.html";

    /// <summary>The page's text (UTF-8, LF).</summary>
    /// <param name="report">What was rated.</param>
    public static string Write(PartReport report)
    {
        var (units, rating, html) = (report.PartUnits(typographic: true), report.Rating, new HtmlText());
        Head(html, report, units);
        FindingsHtml.GraveFirst(html, report.Findings, units.Readout);
        Answer(html, report, units);
        if (rating.Warnings.Count > 0) html.Section("What to keep in mind", h => h.List(rating.Warnings.Select(units.Readout.Say)));
        foreach (var picture in rating.Pictures) html.Section(picture.Title, h => Draw(h, picture, units));
        foreach (var section in rating.Sections) html.Section(section.Title, h => Section(h, section, units));
        if (rating.Limits.Count > 0) html.Section("Limits", h => Limits(h, rating, units));
        var cautions = report.OwnFindings.Where(f => f.Grade == Grade.Caution).ToArray();
        if (cautions.Length > 0) html.Section("Cautions about this part", h => FindingsHtml.Write(h, cautions, units.Readout));
        html.Section("How far the numbers close, and where they come from", h =>
        {
            h.Table(["balance", ">relative error"], rating.Balances.Select(b => new[] { b.Name, units.Readout.Error(b.Error) }));
            h.List([.. rating.Sources, ModelSources.Of(rating.FluidModel), "Bands are one standard deviation either way unless a note says otherwise."]);
        });
        html.Inside("footer", "", h => h.Element("p", $"{RatingHeadline.Capital(Cautions.LocalCodes.Rule)}. {RatingHeadline.Capital(Cautions.LocalCodes.Do)}."));
        return Page.Write($"{report.Title}", html);
    }

    private static void Head(HtmlText html, PartReport report, PartUnits units)
    {
        var rating = report.Rating;
        html.Inside("header", "", h =>
        {
            h.Element("h1", report.Title);
            h.Element("p", $"One part alone, by {rating.Method}; {rating.FluidModel} fluid model. Charge: {report.Machine.Charge.Mixture}. {PartFigures.Point(rating.Point, units)}");
        });
    }

    private static void Answer(HtmlText html, PartReport report, PartUnits units)
    {
        var rating = report.Rating;
        html.Element("p", rating.Verdict, rating.BreaksLimit ? "verdict short" : "verdict");
        html.Inside("div", "tiles", h =>
        {
            foreach (var f in PartFigures.Headline(rating))
                h.Inside("div", "tile", t => t.Element("span", f.Name, "name").Element("span", units.Short(f), "value").Element("span", Note(f, units), "note"));
        });
    }

    private static string Note(PartFigure f, PartUnits units) => units.Band(f) is { Length: > 0 } band ? f.Note == "" ? band : $"{band}; {f.Note}" : f.Note;

    /// <summary>One picture with its reading and its numbers.</summary>
    internal static void Draw(HtmlText html, PartPicture picture, PartUnits units)
    {
        switch (picture)
        {
            case LinePicture lines:
                var drawing = new PartPictureDrawing(lines, units);
                Page.Figure(html, drawing.Draw, lines.Reading, drawing.Table);
                break;
            case BarPicture bars:
                var drawn = new PartBars(bars, units);
                Page.Figure(html, drawn.Draw, bars.Reading, drawn.Table);
                break;
        }
    }

    private static void Section(HtmlText html, PartSection section, PartUnits units)
    {
        var rows = PartFigures.Rows(section, units);
        if (rows.Count > 0)
        {
            bool bands = rows.Any(r => r.Band != ""), notes = rows.Any(r => r.Note != "");
            string[] headings = ["", ">value", .. bands ? [">band"] : Array.Empty<string>(), .. notes ? [""] : Array.Empty<string>()];
            html.Table(headings, rows.Select(r => (IReadOnlyList<string>)[r.Name, r.Value, .. bands ? [r.Band] : Array.Empty<string>(), .. notes ? [r.Note] : Array.Empty<string>()]));
        }
        if (section.Notes.Count > 0) html.List(section.Notes);
    }

    private static void Limits(HtmlText html, PartRating rating, PartUnits units) => html.Table(["limit", ">here", ">allowed", "", "why"], rating.Limits.Select(l =>
    {
        var (value, limit) = units.Texts(l);
        return new[] { l.What, value, limit, l.Broken ? "broken" : "kept", units.Readout.Say(l.Reason) };
    }));
}
