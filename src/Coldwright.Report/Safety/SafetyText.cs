using Coldwright.Report.Rating;
using Coldwright.Report.Terminal;
using Coldwright.Safety;

namespace Coldwright.Report.Safety;

/// <summary>A safety review in a terminal: lines of at most 88 columns, gravest first; notes shorter than the rest.</summary>
public static class SafetyText
{
    /// <summary>Most columns of a line.</summary>
    public const int Columns = 88;

    private const int Margin = 9;

    /// <summary>The text, ending with a line end.</summary>
    /// <param name="report">What was found.</param>
    /// <param name="colour">True to use ANSI colours.</param>
    public static string Write(SafetyReport report, bool colour)
    {
        var (words, style, lines) = (new FindingWords(report.Readout(typographic: false)), new TerminalStyle(colour), new List<string>());
        foreach (var f in report.At(Grade.Stop, Grade.Serious)) Full(lines, f, words, f.Grade == Grade.Stop ? style.Alarm : style.Warm, style);
        lines.Add(style.Bold(Wrapping.OneLine($"{report.Machine.Name}: safety", Columns)));
        foreach (var line in Wrapping.Wrap(report.Verdict, Columns)) lines.Add(report.HasGrave ? style.Alarm(line) : style.Bold(line));
        lines.Add("");
        foreach (var f in report.At(Grade.Caution)) Full(lines, f, words, style.Bold, style);
        foreach (var f in report.At(Grade.Note)) Item(lines, style.Quiet("note".PadRight(Margin)), $"{words.Headline(f)}. {RatingHeadline.Capital(f.Do)}.");
        if (report.At(Grade.Note).Length > 0) Item(lines, "", style.Quiet("Rules and sources of the notes: --report or --json."));
        foreach (var warning in report.Review.Warnings) Item(lines, style.Warm("warning".PadRight(Margin)), warning);
        lines.Add("");
        foreach (var line in Wrapping.Wrap($"{RatingHeadline.Capital(Cautions.LocalCodes.Rule)}. {RatingHeadline.Capital(Cautions.LocalCodes.Do)}.", Columns)) lines.Add(line);
        return string.Join('\n', lines) + "\n";
    }

    private static void Full(List<string> lines, Finding f, FindingWords words, Func<string, string> mark, TerminalStyle style)
    {
        Item(lines, mark(FindingWords.Grade(f).PadRight(Margin)), $"{words.Headline(f)}.");
        Item(lines, "", $"Rule: {f.Rule}.");
        Item(lines, "", $"Otherwise {f.Consequence}.");
        Item(lines, "", $"Do: {f.Do}.");
        foreach (var line in Wrapping.Wrap($"Source: {f.Source}.", Columns - Margin)) lines.Add(new string(' ', Margin) + style.Quiet(line));
        lines.Add("");
    }

    private static void Item(List<string> lines, string margin, string text) =>
        lines.AddRange(Wrapping.Wrap(text, Columns - Margin).Select((line, i) => (i == 0 && margin.Length > 0 ? margin : new string(' ', Margin)) + line));
}
