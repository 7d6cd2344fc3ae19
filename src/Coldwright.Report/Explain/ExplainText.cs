using Coldwright.Report.Safety;
using Coldwright.Report.Terminal;
using Coldwright.Safety;

namespace Coldwright.Report.Explain;

/// <summary>An explained run in a terminal: lines of at most 88 columns, safety first, then the answer.</summary>
public static class ExplainText
{
    /// <summary>Most columns of a line.</summary>
    public const int Columns = 88;

    private const int Margin = 9, Grave = 4, ShownFigures = 8;

    /// <summary>The text, ending with a line end.</summary>
    /// <param name="report">What was explained.</param>
    /// <param name="colour">True to use ANSI colours.</param>
    public static string Write(ExplainReport report, bool colour)
    {
        var (e, readout, style) = (report.Result, report.Readout(typographic: false), new TerminalStyle(colour));
        var lines = new List<string>();
        lines.AddRange(GraveLines.Of(report.Findings, readout, colour, Columns, Grave, 3));
        if (lines.Count > 0) lines.Add("");
        lines.Add(style.Bold(Wrapping.OneLine(report.Title, Columns)));
        foreach (string line in Wrapping.Wrap(readout.Say(e.Paragraph), Columns)) lines.Add(style.Bold(line));
        lines.Add("");
        lines.Add(style.Quiet("causes: figure (x: ratio to the file), 90 % interval, probability"));
        Table(lines, report.Shown.Select(c => new[] { c.Named ? $"{c.Rank}" : "", c.Id == "sensor-offset" ? $"{c.Id} ({c.Detail})" : c.Id, ExplainWords.Figure(c, readout).Value, ExplainWords.Figure(c, readout).Interval, readout.Percent(c.Probability) }));
        if (e.Tests.Count > 0)
        {
            lines.Add(style.Quiet("what would settle most"));
            foreach (var t in e.Tests.Take(4)) Item(lines, $"  {readout.Percent(t.Settles),-7}", t.What);
        }
        lines.Add(style.Quiet("where the watts go, by the model as fitted"));
        Table(lines, ExplainWords.Watts(report, readout));
        lines.Add(style.Quiet("heat of the whole pull-down"));
        Table(lines, ExplainWords.Heat(report, readout));
        if (e.Grams.Count > 0)
        {
            lines.Add(style.Quiet("where the grams went"));
            Table(lines, e.Grams.Select(g => new[] { g.Name, $"{readout.Figures(1000 * g.Kg, 3)} g" }));
        }
        lines.Add(style.Quiet("figures that differ most: measured, described, with what is named"));
        Table(lines, ExplainWords.Figures(report, readout, ShownFigures).Select(r => r[..4]));
        lines.Add(style.Quiet("phases"));
        Table(lines, ExplainWords.Phases(report));
        lines.Add("");
        foreach (string said in e.Said) Item(lines, style.Warm("warning".PadRight(Margin)), said);
        lines.Add($"{Rating.RatingHeadline.Capital(Cautions.LocalCodes.Rule)}.");
        return string.Join('\n', lines) + "\n";
    }

    private static void Item(List<string> lines, string margin, string text) =>
        lines.AddRange(Wrapping.Wrap(text, Columns - Margin, 2).Select((line, i) => (i == 0 ? margin : new string(' ', Margin)) + line));

    private static void Table(List<string> lines, IEnumerable<string[]> rows)
    {
        var all = rows.ToArray();
        if (all.Length == 0) return;
        int columns = all.Max(r => r.Length);
        int[] widths = [.. Enumerable.Range(0, columns).Select(c => all.Max(r => c < r.Length ? r[c].Length : 0))];
        foreach (var row in all) lines.Add(Cut("  " + string.Join("  ", row.Select((cell, c) => c == columns - 1 ? cell : cell.PadRight(widths[c])))).TrimEnd());
    }

    private static string Cut(string line) => line.Length <= Columns ? line : line[..(Columns - 1)] + "…";
}
