using Coldwright.Report.Rating;
using Coldwright.Report.Terminal;
using Coldwright.Safety;

namespace Coldwright.Report.Safety;

/// <summary>The findings that come before everything else in a command's answer: danger and serious.</summary>
public static class GraveLines
{
    private const int Margin = 9;

    /// <summary>True for a finding that has to be shown first.</summary>
    /// <param name="finding">Finding.</param>
    public static bool IsGrave(Finding finding) => finding.Grade is Grade.Stop or Grade.Serious;

    /// <summary>Lines of at most so many columns: grade, part, rule, figures, what to do. Empty when nothing is grave.</summary>
    /// <param name="findings">Findings of the machine, in any order.</param>
    /// <param name="readout">Units.</param>
    /// <param name="colour">True to use ANSI colours.</param>
    /// <param name="columns">Most columns.</param>
    /// <param name="most">Most findings shown; the others are counted in a last line.</param>
    /// <param name="wrap">Most lines of one finding.</param>
    public static IReadOnlyList<string> Of(IEnumerable<Finding> findings, Readout readout, bool colour, int columns = 88, int most = int.MaxValue, int wrap = int.MaxValue)
    {
        var (words, style, lines) = (new FindingWords(readout), new TerminalStyle(colour), new List<string>());
        var grave = findings.Where(IsGrave).OrderBy(f => f.Grade).ToArray();
        foreach (var f in grave.Take(most))
        {
            var grade = FindingWords.Grade(f).PadRight(Margin);
            var margin = f.Grade == Grade.Stop ? style.Alarm(grade) : style.Warm(grade);
            // Where it has to be short, what is wrong and by how much, and the remedy, come before the rule.
            var rule = wrap < 3 ? "" : $" {RatingHeadline.Capital(f.Rule)}.";
            foreach (var line in Wrapping.Wrap($"{words.Headline(f)}.{rule} Do: {f.Do}.", columns - Margin, wrap))
            {
                lines.Add(margin + line);
                margin = new string(' ', Margin);
            }
        }
        if (grave.Length > most) lines.Add(new string(' ', Margin) + style.Quiet($"and {grave.Length - most} more like these: coldwright safety shows all"));
        return lines;
    }
}
