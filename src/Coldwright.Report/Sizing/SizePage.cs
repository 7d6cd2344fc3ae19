using Coldwright.Report.Html;
using Coldwright.Report.Safety;
using Coldwright.Safety;

namespace Coldwright.Report.Sizing;

/// <summary>Sizes as one self-contained page that needs no network and no script.</summary>
public static class SizePage
{
    /// <summary>File name for a part.</summary>
    /// <param name="part">Its name.</param>
    public static string FileName(string part) => $"size-{part}.html";

    /// <summary>The page's text (UTF-8, LF).</summary>
    /// <param name="report">The sizes.</param>
    public static string Write(SizeReport report)
    {
        var (r, units, result) = (report.Readout(typographic: true), report.PartUnits(typographic: true), report.Result);
        var html = new HtmlText();
        html.Inside("header", "", h => h.Element("h1", report.Machine.Name).Element("p", $"Size of {result.Part}. {SizeWords.Target(report, units)} {char.ToUpperInvariant(result.Method[0])}{result.Method[1..]}."));
        FindingsHtml.GraveFirst(html, report.Findings, r);
        html.Element("p", SizeWords.Verdict(report, units), result.Best is null ? "verdict short" : "verdict");
        if (result.Best is { } best)
        {
            html.Section("The best of the stock", h => h.Table(["figure", ">value", "note"], best.Figures.Select(f => new[] { f.Name, units.Text(f), f.Note })));
            if (best.Cut.Count > 0)
                html.Section("Buy or cut", h => h.Table(["what", ">how much", ">cost"], best.Cut.Select(c => new[] { c.What, SizeWords.Amount(c, r), c.Cost is { } cost ? $"{r.Fixed(cost, 2)} {report.Currency}" : "no price in shop.yaml" })));
            html.Section("In machine.yaml", h => h.Element("pre", string.Join('\n', SizeWords.Keys(report, best))));
        }
        var picture = new StockPicture(report, units);
        html.Section("What there is", h =>
        {
            picture.Table(h);
            if (picture.HasBars) h.Raw(picture.Draw(Charts.ChartSize.Wide)).Raw(picture.Draw(Charts.ChartSize.Phone)).Element("p", picture.Caption);
        });
        if (report.Warnings.Count > 0) html.Section("What to keep in mind", h => h.List(report.Warnings.Select(units.Readout.Say)));
        html.Section("Where it comes from", h => h.List(result.Sources));
        var cautions = report.Findings.Where(f => f.Grade == Grade.Caution && f.Id != Cautions.LocalCodes.Id).ToArray();
        if (cautions.Length > 0) html.Section("Cautions", h => FindingsHtml.Write(h, cautions, r));
        html.Inside("footer", "", h => h.Element("p", $"How it is computed: docs/theory/size.md. {char.ToUpperInvariant(Cautions.LocalCodes.Rule[0])}{Cautions.LocalCodes.Rule[1..]}."));
        return Page.Write($"{report.Machine.Name}: size of {result.Part}", html);
    }
}
