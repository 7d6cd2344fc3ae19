using Coldwright.Report.Safety;
using Coldwright.Report.Terminal;
using Coldwright.Safety;

namespace Coldwright.Report.Cooldown;

/// <summary>A cooldown in a terminal: lines of at most 88 columns, safety first, then the answer.</summary>
public static class CooldownText
{
    /// <summary>Most columns of a line.</summary>
    public const int Columns = 88;

    private const int Margin = 9, MostTimes = 12, Curve = 44, CurveRows = 9, Grave = 4;

    /// <summary>The text, ending with a line end.</summary>
    /// <param name="report">What was followed.</param>
    /// <param name="colour">True to use ANSI colours.</param>
    public static string Write(CooldownReport report, bool colour)
    {
        var (r, readout, style) = (report.Result, report.Readout(typographic: false), new TerminalStyle(colour));
        var lines = new List<string>();
        lines.AddRange(GraveLines.Of(report.Findings, readout, colour, Columns, Grave, 3));
        if (lines.Count > 0) lines.Add("");
        lines.Add(style.Bold(Wrapping.OneLine($"{report.Title}, {r.Model} model", Columns)));
        foreach (string line in Wrapping.Wrap(readout.Say(r.Sentence), Columns)) lines.Add(style.Bold(line));
        lines.Add("");
        Table(lines, CooldownFigures.Headline(report, readout).Select(f => new[] { f.Name, f.Value, f.Note }));
        lines.Add("");
        lines.AddRange(Picture(report, readout).Select(style.Cold));
        lines.Add("");
        if (r.TimeToK.Count > 0)
        {
            lines.Add(style.Quiet("load passes"));
            Table(lines, CooldownFigures.Times(report, readout).Take(MostTimes));
        }
        if (r.Changes.Count > 0)
        {
            lines.Add(style.Quiet("what would change it"));
            Table(lines, CooldownFigures.Changes(report, readout));
        }
        if (r.Sensitivities.Count > 0)
        {
            lines.Add(style.Quiet("slopes, for a doubling: temperature at the end, time"));
            Table(lines, CooldownFigures.Slopes(report, readout));
        }
        lines.Add(style.Quiet("heat that is given up"));
        Table(lines, CooldownFigures.Masses(report, readout).Take(6));
        if (r.Events.Count > 0)
        {
            lines.Add(style.Quiet("on the way"));
            Table(lines, r.Events.Select(e => new[] { CooldownScale.Time(e.TimeS), readout.Say(e.Text) }));
        }
        lines.Add("");
        foreach (var warning in r.Warnings) Item(lines, style.Warm("warning".PadRight(Margin)), readout.Say(warning));
        lines.Add(style.Quiet($"Energy closes to {readout.Error(r.EnergyError)}; {r.Steps} steps."));
        if (r.DirectResidual is { } residual)
            foreach (string line in Wrapping.Wrap($"Without tables: the model's own properties see {readout.Percent(residual)} of the cooling flow otherwise at most.", Columns)) lines.Add(style.Quiet(line));
        lines.Add($"{Capital(Cautions.LocalCodes.Rule)}.");
        return string.Join('\n', lines) + "\n";
    }

    private static string Capital(string text) => Rating.RatingHeadline.Capital(text);

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

    // load temperature against time, one column a time step
    private static IEnumerable<string> Picture(CooldownReport report, Readout readout)
    {
        var s = report.Result.Series;
        double end = s.TimeS[^1], high = s.TemperatureK.Max(), low = s.TemperatureK.Min(), span = Math.Max(high - low, 1);
        var at = new int[Curve];
        for (int c = 0; c < Curve; c++)
        {
            double time = end * (c + 0.5) / Curve;
            int i = 0;
            while (i < s.TimeS.Count - 1 && s.TimeS[i + 1] <= time) i++;
            at[c] = (int)Math.Round((high - s.TemperatureK[i]) / span * (CurveRows - 1));
        }
        for (int row = 0; row < CurveRows; row++)
        {
            string label = row is 0 or CurveRows - 1 || row == CurveRows / 2 ? readout.Temperature(high - span * row / (CurveRows - 1)) : "";
            yield return $"{label,12} |{new string([.. at.Select(v => v == row ? '*' : ' ')])}".TrimEnd();
        }
        string left = "0", right = CooldownScale.Time(end);
        yield return $"{"",12} +{new string('-', Curve)}";
        yield return $"{"",14}{left}{right.PadLeft(Curve - left.Length)}";
    }
}
