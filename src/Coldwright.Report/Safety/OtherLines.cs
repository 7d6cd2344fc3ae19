using Coldwright.Report.Rating;
using Coldwright.Report.Terminal;
using Coldwright.Safety;

namespace Coldwright.Report.Safety;

/// <summary>The findings after a command's answer: cautions, and the standing reminder.</summary>
public static class OtherLines
{
    private const int Margin = 9;

    /// <summary>Lines of at most so many columns: grade, part, what, figures, what to do.</summary>
    /// <param name="findings">Findings of the machine, in their order; the grave ones are left out.</param>
    /// <param name="readout">Units.</param>
    /// <param name="columns">Most columns.</param>
    public static IEnumerable<string> Of(IEnumerable<Finding> findings, Readout readout, int columns = 88)
    {
        var words = new FindingWords(readout);
        foreach (var f in findings.Where(f => !GraveLines.IsGrave(f)))
        {
            var margin = FindingWords.Grade(f).PadRight(Margin);
            foreach (var line in Wrapping.Wrap(Text(f, words), columns - Margin))
            {
                yield return margin + line;
                margin = new string(' ', Margin);
            }
        }
    }

    // The standing reminder is its own sentence.
    private static string Text(Finding f, FindingWords words) =>
        f.Id == Cautions.LocalCodes.Id ? $"{RatingHeadline.Capital(f.Rule)}. {RatingHeadline.Capital(f.Do)}." : $"{words.Headline(f)}. Do: {f.Do}.";
}
