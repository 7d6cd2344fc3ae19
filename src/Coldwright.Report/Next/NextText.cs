using Coldwright.Report.Safety;
using Coldwright.Report.Terminal;
using Coldwright.Safety;

namespace Coldwright.Report.Next;

/// <summary>The next change in a terminal: lines of at most 88 columns.</summary>
public static class NextText
{
    private const int Columns = 88, Grave = 4, Name = 46;

    /// <summary>The text, ending with a line end.</summary>
    /// <param name="report">What was ranked.</param>
    /// <param name="colour">True to use ANSI colours.</param>
    public static string Write(NextReport report, bool colour)
    {
        var (readout, style) = (report.Readout(typographic: false), new TerminalStyle(colour));
        var lines = new List<string>();
        lines.AddRange(GraveLines.Of(report.Findings, readout, colour, Columns, Grave, 3));
        if (lines.Count > 0) lines.Add("");
        lines.Add(style.Bold(Wrapping.OneLine(report.Title, Columns)));
        foreach (string line in Wrapping.Wrap(report.Sentence(readout), Columns)) lines.Add(style.Bold(line));
        lines.Add("");
        lines.Add(style.Quiet($"  {"",-Name}  L/h    90 %           end       kWh/L"));
        foreach (var r in report.Rows(readout)) lines.Add($"  {Wrapping.OneLine(r[0], Name),-Name}  {r[1],-6} {r[2],-14} {r[3],-9} {r[4]}".TrimEnd());
        lines.Add("");
        foreach (string said in report.Result.Said) lines.AddRange(Wrapping.Wrap($"warning  {said}", Columns));
        lines.Add($"{Rating.RatingHeadline.Capital(Cautions.LocalCodes.Rule)}.");
        return string.Join('\n', lines) + "\n";
    }
}
