using Coldwright.Report.Charts;
using Coldwright.Report.Html;
using Coldwright.Report.Rating;
using Coldwright.Report.Safety;
using Coldwright.Safety;

namespace Coldwright.Report.Next;

/// <summary>The next change as one self-contained page.</summary>
public static class NextPage
{
    /// <summary>Usual file name.</summary>
    public const string FileName = "next.html";

    /// <summary>The page's text (UTF-8, LF).</summary>
    /// <param name="report">What was ranked.</param>
    public static string Write(NextReport report)
    {
        var (readout, html, r) = (report.Readout(typographic: true), new HtmlText(), report.Result);
        html.Inside("header", "", h => h.Element("h1", report.Title).Element("p", $"Charge: {report.Machine.Charge.Mixture}."));
        FindingsHtml.GraveFirst(html, report.Findings, readout);
        html.Element("p", report.Sentence(readout), "verdict");
        html.Section("Changes", h => Page.Figure(h, size => Picture(report, readout, size), r.Product is null ? "Load at the end of a day like the recorded one." : "Liquid per hour; the thin end of each bar is where nine tenths of the fit's uncertainty end.",
            t => t.Table(["change", ">L/h", ">90 %", ">end of the day", ">kWh/L"], report.Rows(readout))));
        if (r.Said.Count > 0) html.Section("What was assumed, and what to know", h => h.List(r.Said));
        html.Inside("footer", "", h => h.Element("p", $"{RatingHeadline.Capital(Cautions.LocalCodes.Rule)}. {RatingHeadline.Capital(Cautions.LocalCodes.Do)}."));
        return Page.Write(report.Title, html);
    }

    private static string Picture(NextReport report, Readout readout, ChartSize size)
    {
        var r = report.Result;
        bool liquid = r.Product is not null;
        return new PieceChart
        {
            Description = "Changes, the one that gains most first.",
            AxisLabel = liquid ? "liquid, L/h" : $"colder than now, {readout.TemperatureSymbol}",
            Rows = [.. r.Changes.Prepend(r.Now).Select(c => new PieceRow(c.What, [liquid
                ? new PieceLane([new Piece(0, c.LitresPerHour, Ink.Cooling, c.What), new Piece(c.LitresPerHour, Math.Max(c.High, c.LitresPerHour), Ink.Second, "upper end of the interval")], $"{readout.Figures(c.LitresPerHour, 2)} L/h")
                : new PieceLane([new Piece(0, readout.DifferenceValue(r.Now.EndK - c.EndK), Ink.Cooling, c.What)], readout.Temperature(c.EndK))]))],
        }.Draw(size);
    }
}
