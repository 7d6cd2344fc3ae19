using Coldwright.Report.Html;
using Coldwright.Report.Safety;
using Coldwright.Safety;

namespace Coldwright.Report.Views;

/// <summary>Safety findings for a page that always shows them: a line that never leaves, and all of them behind it.</summary>
public static class FindingsView
{
    /// <summary>How many of each grade, gravest first: danger, serious, caution.</summary>
    /// <param name="findings">Findings of any grade.</param>
    public static (int Danger, int Serious, int Caution) Count(IReadOnlyList<Finding> findings)
    {
        int Of(Grade grade) => findings.Count(f => f.Grade == grade && f.Id != Cautions.LocalCodes.Id);
        return (Of(Grade.Stop), Of(Grade.Serious), Of(Grade.Caution));
    }

    /// <summary>What each danger, serious finding and caution is, in a few words, gravest first.</summary>
    /// <param name="findings">Findings of any grade.</param>
    public static IReadOnlyList<string> Brief(IReadOnlyList<Finding> findings) =>
        [.. findings.Where(f => f.Grade != Grade.Note && f.Id != Cautions.LocalCodes.Id).OrderBy(f => f.Grade).Select(f => f.Part == "machine" ? FindingWords.What(f) : $"{f.Part}: {FindingWords.What(f)}")];

    /// <summary>All of them as HTML, the standing reminder last.</summary>
    /// <param name="findings">Findings of any grade.</param>
    /// <param name="units">Units a person reads first.</param>
    /// <param name="roomPressurePa">Barometric pressure, Pa absolute.</param>
    public static string Write(IReadOnlyList<Finding> findings, UnitSystem units, double roomPressurePa)
    {
        var html = new HtmlText();
        FindingsHtml.Write(html, findings, new Readout(units, roomPressurePa, typographic: true));
        return html.ToString();
    }
}
