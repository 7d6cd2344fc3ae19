using Coldwright.Design.Sizing;
using Coldwright.Report.Parts;
using Coldwright.Report.Safety;
using Coldwright.Report.Terminal;

namespace Coldwright.Report.Sizing;

/// <summary>Sizes on a terminal.</summary>
public static class SizeText
{
    private const int Columns = 88, Grave = 4, Margin = 9, MostRows = 8;

    /// <summary>The screen, ending with a line end.</summary>
    /// <param name="report">The sizes.</param>
    /// <param name="colour">True to use ANSI colours.</param>
    public static string Write(SizeReport report, bool colour)
    {
        var (r, units, style) = (report.Readout(typographic: false), report.PartUnits(typographic: false), new TerminalStyle(colour));
        var grave = GraveLines.Of(report.Findings, r, style.Colour, Columns, Grave, 3);
        List<string> lines = [.. grave, .. grave.Count > 0 ? [""] : Array.Empty<string>(), style.Bold(Wrapping.OneLine($"{report.Machine.Name}: size of {report.Result.Part}", Columns)), .. Wrapping.Wrap(SizeWords.Verdict(report, units), Columns), .. Wrapping.Wrap(SizeWords.Target(report, units), Columns), ""];
        if (report.Result.Best is { } best)
        {
            lines.AddRange(Best(report, best, units, r, style));
            lines.Add("");
        }
        lines.AddRange(Others(report, units, r, style));
        lines.Add("");
        foreach (var warning in report.Warnings.Select(r.Say))
            lines.AddRange(Wrapping.Wrap(warning, Columns - Margin, 3).Select((text, i) => (i == 0 ? style.Warm("note") + "     " : new string(' ', Margin)) + text));
        lines.Add("");
        lines.AddRange(OtherLines.Of(report.Findings, r, Columns));
        return string.Join('\n', lines) + "\n";
    }

    private static IEnumerable<string> Best(SizeReport report, SizeOption best, PartUnits units, Readout r, TerminalStyle style)
    {
        yield return style.Bold($"  {best.Stock}");
        foreach (var f in best.Figures) yield return Cut($"    {f.Name,-34}{units.Short(f),14}   {f.Note}".TrimEnd());
        if (best.Cut.Count > 0) yield return style.Quiet("  Buy or cut");
        foreach (var c in best.Cut) yield return Cut($"    {SizeWords.Amount(c, r),10}  {c.What}{(c.Cost is { } cost ? $", {r.Fixed(cost, 2)} {report.Currency}" : "")}");
        yield return style.Quiet("  In machine.yaml");
        foreach (var key in SizeWords.Keys(report, best)) yield return Cut($"    {key}");
    }

    private static string Cut(string line) => line.Length > Columns ? line[..(Columns - 1)] + "…" : line;

    private static IEnumerable<string> Others(SizeReport report, PartUnits units, Readout r, TerminalStyle style)
    {
        yield return style.Bold("  What there is");
        var shown = report.Result.Options.Take(MostRows).ToArray();
        int stock = Math.Min(26, shown.Select(o => o.Stock.Length).DefaultIfEmpty(0).Max());
        foreach (var o in shown)
        {
            string figures = o.Figures.Count == 0 ? "" : string.Join(", ", report.Result.Columns.Take(4).Select(id => SizeWords.Cell(o, id, units)));
            yield return Cut($"    {(o.Stock.Length > 26 ? o.Stock[..25] + "…" : o.Stock).PadRight(stock)}  {figures}{(o.Cost > 0 ? $", {report.Cost(o, r)}" : "")}");
            if (!o.Fits)
                foreach (var line in Wrapping.Wrap(r.Say(o.WhyNot), Columns - 8, 2)) yield return style.Quiet("        " + line);
        }
        yield return style.Quiet(Cut($"    ({string.Join(", ", report.Result.Columns.Take(4).Select(id => SizeWords.Heading(report.Result, id).ToLowerInvariant()))})"));
        if (report.Result.Options.Count > MostRows) yield return style.Quiet($"    and {report.Result.Options.Count - MostRows} more: --report or --json");
    }
}
