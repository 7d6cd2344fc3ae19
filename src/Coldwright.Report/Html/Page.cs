using Coldwright.Report.Charts;
using Coldwright.Report.Loops;

namespace Coldwright.Report.Html;

/// <summary>The frame around a report: one file, no script, nothing asked for from outside.</summary>
internal static class Page
{
    /// <summary>The whole page.</summary>
    public static string Write(string title, HtmlText body) =>
        $"""
        <!DOCTYPE html>
        <html lang="en">
        <head>
        <meta charset="utf-8">
        <meta name="viewport" content="width=device-width,initial-scale=1">
        <title>{Markup.Escape(title)}</title>
        <style>
        {ChartStyle.Css}
        {LoopStyle.Css}
        {PageStyle.Css}
        </style>
        </head>
        <body>
        <main>
        {body}</main>
        </body>
        </html>

        """.ReplaceLineEndings("\n");

    /// <summary>A picture in both sizes with its caption and, folded away, its table.</summary>
    public static void Figure(HtmlText html, Func<ChartSize, string> draw, string caption, Action<HtmlText> table) => html.Inside("figure", "", h =>
    {
        h.Raw(draw(ChartSize.Wide)).Raw(draw(ChartSize.Phone));
        h.Element("figcaption", caption);
        h.Folded("The numbers behind this picture", table);
    });
}
