using Coldwright.Report.Html;
using Coldwright.Safety;

namespace Coldwright.Report.Safety;

/// <summary>Findings on a page: grade, part, rule; figures; consequence; remedy; source.</summary>
internal static class FindingsHtml
{
    /// <summary>Heading of the section that stands first on every page about a machine.</summary>
    public const string First = "Before anything is built or run";

    /// <summary>The section with danger and serious, when there is any.</summary>
    public static void GraveFirst(HtmlText html, IEnumerable<Finding> findings, Readout readout)
    {
        var grave = findings.Where(GraveLines.IsGrave).OrderBy(f => f.Grade).ToArray();
        if (grave.Length > 0) html.Section(First, h => Write(h, grave, readout));
    }

    /// <summary>One box each.</summary>
    public static void Write(HtmlText html, IEnumerable<Finding> findings, Readout readout)
    {
        var words = new FindingWords(readout);
        foreach (var f in findings)
            html.Inside("div", $"finding {f.Grade.ToString().ToLowerInvariant()}", h =>
            {
                h.Inside("p", "", p => p.Element("span", FindingWords.Grade(f), "grade").Raw(" &nbsp; ").Element("strong", $"{words.Headline(f)}"));
                h.Element("p", $"Rule: {f.Rule}.");
                h.Element("p", $"Otherwise: {f.Consequence}.");
                h.Inside("p", "", p => p.Element("strong", "Do:").Raw(" " + Markup.Escape(f.Do) + "."));
                h.Element("p", $"Source: {f.Source}", "source");
            });
    }
}
