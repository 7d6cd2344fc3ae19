using Coldwright.Machine.Layout;
using Coldwright.Report.Html;
using Coldwright.Report.Loops;
using Coldwright.Report.Rating;
using Coldwright.Report.Rating.Closed;
using Coldwright.Simulation.Rating;

namespace Coldwright.Report.Views;

/// <summary>A rating in pieces of HTML, for a page that renews each on its own. No findings are in them.</summary>
public static class RatingView
{
    /// <summary>Verdict, headline figures, how far to trust them.</summary>
    /// <param name="report">What was rated.</param>
    public static string Answer(RatingReport report) => Written(report, (html, readout) => RatingPage.Answer(html, report, readout));

    /// <summary>The pictures of the rating, of the closed loop where there is one.</summary>
    /// <param name="report">What was rated.</param>
    public static string Pictures(RatingReport report) => Written(report, (html, readout) =>
    {
        RatingPage.Pictures(html, report, readout);
        if (report.Main.Closed is { } closed) new ClosedPage(report, closed, readout).Write(html);
    });

    /// <summary>What to keep in mind, tables, balances, sources.</summary>
    /// <param name="report">What was rated.</param>
    public static string Tables(RatingReport report) => Written(report, (html, readout) =>
    {
        RatingPage.Background(html, report, readout);
        RatingPage.Rest(html, report with { Findings = [] }, readout);
    });

    /// <summary>What matters most and what is in doubt; empty without sensitivities.</summary>
    /// <param name="report">What was rated.</param>
    public static string Sensitivities(RatingReport report) => Written(report, (html, readout) =>
    {
        if (report.Main.Closed is { } closed) new ClosedPage(report, closed, readout).Sensitivities(html);
    });

    /// <summary>Verdict and figures of a closed loop with inputs moved, along the slopes of its last answer.</summary>
    /// <param name="report">The rating with the slopes.</param>
    /// <param name="forecast">The forecast.</param>
    public static string Forecast(RatingReport report, SlopeForecast forecast) => Written(report, (html, _) => new ForecastTiles(report, forecast).Write(html));

    /// <summary>The loop with the figures of the rating, parts and lines to be clicked.</summary>
    /// <param name="report">What was rated.</param>
    /// <param name="layout">Its layout.</param>
    /// <param name="isPhone">True for the narrow drawing.</param>
    public static string Loop(RatingReport report, LoopLayout layout, bool isPhone) =>
        LoopDrawing.Svg(report.Machine, layout, Figures(report, layout), report.Units, isPhone, hasLegend: true, isClickable: true);

    /// <summary>The same figures as a table.</summary>
    /// <param name="report">What was rated.</param>
    /// <param name="layout">Its layout.</param>
    public static string LoopTable(RatingReport report, LoopLayout layout) =>
        new HtmlText().Table(["place", "what", "figure"], LoopDrawing.Rows(report.Machine, layout, Figures(report, layout), report.Units)).ToString();

    private static LoopFigures Figures(RatingReport report, LoopLayout layout) => LoopFigures.From(report.Main, layout).With(report.Findings);

    private static string Written(RatingReport report, Action<HtmlText, Readout> write)
    {
        var html = new HtmlText();
        write(html, report.Readout(typographic: true));
        return html.ToString();
    }
}
