using Coldwright.Report.Rating.Closed;
using Coldwright.Report.Safety;
using Coldwright.Report.Terminal;
using Coldwright.Safety;
using Coldwright.Simulation.Rating;

namespace Coldwright.Report.Rating;

/// <summary>
/// A rating on one screen of a terminal: at most 40 lines of 88 columns, what matters first. A closed loop has more to say and takes up to
/// 60; sensitivities, when they were asked for, follow as tables of their own.
/// </summary>
public static class RatingText
{
    /// <summary>Most columns of a line.</summary>
    public const int Columns = 88;

    /// <summary>Most lines of a rating between given pressures.</summary>
    public const int MostLines = 40;

    /// <summary>Most lines of a closed loop, its sensitivities apart.</summary>
    public const int MostClosedLines = 60;

    private const int Grave = 4;
    private const int Margin = 9;

    /// <summary>The screen, ending with a line end.</summary>
    /// <param name="report">What was rated and found.</param>
    /// <param name="colour">True to use ANSI colours.</param>
    public static string Write(RatingReport report, bool colour)
    {
        var most = report.Main.Closed is null ? MostLines : MostClosedLines;
        // As many words as the screen holds: notes and findings over three lines if they fit, else two, else one.
        for (var wrap = 3; wrap > 1; wrap--)
            if (Screen(report, colour, wrap, int.MaxValue) is { } lines && lines.Count <= most) return Text(report, lines, colour);
        return Text(report, Screen(report, colour, 1, most), colour);
    }

    // The tables stand before the last line, which belongs to local codes.
    private static string Text(RatingReport report, List<string> screen, bool colour)
    {
        if (report.Main.Closed?.Sensitivity is { } sensitivity)
        {
            var tables = new SensitivityText(new SensitivityRanking(sensitivity, report.MakesLiquid), new SensitivityWords(report.Readout(typographic: false), report.Machine.Room.PressurePa), new TerminalStyle(colour), Columns);
            screen.InsertRange(screen.Count - 1, [.. tables.Lines(), ""]);
        }
        return string.Join('\n', screen) + "\n";
    }

    private static List<string> Screen(RatingReport report, bool colour, int wrap, int most)
    {
        var (readout, style) = (report.Readout(typographic: false), new TerminalStyle(colour));
        var grave = GraveLines.Of(report.Findings, readout, style.Colour, Columns, Grave, wrap);
        List<string> lines =
        [
            .. grave, .. grave.Count > 0 ? [""] : Array.Empty<string>(),
            .. Head(report, readout, style), "", .. Figures(report, readout, style, report.Main.Closed is null ? Math.Min(wrap, 2) : 2), "", .. Verdict(report, readout, style), "",
            .. Closed(report, readout, style),
            .. CoolingBars.Lines(report.Main, readout, style), .. Losses(report, readout, style), "",
        ];
        var safety = SafetyLines(report, style).ToArray();
        return [.. lines, .. Warnings(report, readout, style, wrap, most - lines.Count - safety.Length), .. safety];
    }

    private static IEnumerable<string> Head(RatingReport report, Readout readout, TerminalStyle style)
    {
        var loop = report.Main.Loop;
        if (report.Main.Closed is { } closed)
        {
            var words = new ClosedWords(report, closed, readout);
            yield return style.Bold(Wrapping.OneLine($"{report.Machine.Name}: steady rating from hardware and charge, {report.Main.Model} model", Columns));
            foreach (var line in Wrapping.Wrap(words.Held, Columns, 3)) yield return style.Quiet(line);
            yield break;
        }
        yield return style.Bold(Wrapping.OneLine($"{report.Machine.Name}: steady rating between given pressures, {report.Main.Model} model", Columns));
        yield return style.Quiet(Wrapping.OneLine($"{loop.Composition}", Columns));
        yield return style.Quiet(Wrapping.OneLine($"{readout.PressureFull(loop.HighPressurePa)} to {readout.PressureFull(loop.LowPressurePa)}, {readout.Figures(loop.MassFlow * 1e3, 3)} g/s", Columns));
    }

    private static IEnumerable<string> Closed(RatingReport report, Readout readout, TerminalStyle style)
    {
        if (report.Main.Closed is not { } closed) yield break;
        foreach (var line in ClosedText.Lines(new ClosedWords(report, closed, readout), readout, style, Columns)) yield return line;
        yield return "";
    }

    private static IEnumerable<string> Figures(RatingReport report, Readout readout, TerminalStyle style, int wrap)
    {
        var figures = RatingHeadline.Figures(report, readout).ToArray();
        var (names, values, seconds, bands) = (figures.Max(f => f.Name.Length), figures.Max(f => f.Value.Length), figures.Max(f => f.Second.Length), figures.Max(f => f.Band.Length));
        if (bands > 0) bands++;
        var notes = Columns - 2 - names - 2 - values - bands - (seconds > 0 ? seconds + 3 : 0) - 3;
        if (report.Result.SecondOpinion is { } second)
            yield return style.Quiet($"  {"".PadRight(names)}  {"".PadLeft(Math.Max(values - report.Main.Model.Length, 0))}{report.Main.Model}{"".PadRight(bands)}   {Cut(second.Model, seconds).PadLeft(seconds)}");
        foreach (var f in figures)
        {
            var other = seconds > 0 ? "   " + style.Quiet(f.Second.PadLeft(seconds)) : "";
            var note = Wrapping.Wrap(f.Note, notes, wrap);
            yield return $"  {f.Name.PadRight(names)}  {style.Bold(f.Value.PadLeft(values))}{(bands > 0 ? $" {f.Band}".PadRight(bands) : "")}{other}   {style.Quiet(note.Count > 0 ? note[0] : "")}".TrimEnd();
            foreach (var line in note.Skip(1)) yield return new string(' ', Columns - notes) + style.Quiet(line);
        }
    }

    private static IEnumerable<string> Verdict(RatingReport report, Readout readout, TerminalStyle style)
    {
        foreach (var line in Wrapping.Wrap(readout.Say(report.Main.LimitedBy.Sentence), Columns, report.Main.Closed is null ? 3 : 5))
            yield return report.Main.LimitedBy.Kind == LimitationKind.Works ? style.Bold(line) : style.Alarm(line);
        if (RatingHeadline.Doubt(report, readout) is { } doubt)
            foreach (var line in Wrapping.Wrap(doubt, Columns, 2)) yield return style.Warm(line);
        foreach (var limit in report.Main.Limits.Where(l => l.Broken).Take(2))
            yield return style.Alarm(Wrapping.OneLine($"Limit broken: {limit.What} of {limit.Part} is {readout.Any(limit.Value, limit.Unit, limit.What, true)}, allowed {readout.Any(limit.Limit, limit.Unit, limit.What, true)}", Columns));
    }

    private static IEnumerable<string> Losses(RatingReport report, Readout readout, TerminalStyle style)
    {
        var account = report.Main.Exergy;
        var input = account.TotalW;
        if (input <= 0) yield break;
        var largest = ExergyPicture.Sorted(account).Take(4).Select(l => $"{l.Name} {readout.Percent(l.Watts / input)}");
        foreach (var line in Wrapping.Wrap($"Work is lost in: {string.Join(", ", largest)}.", Columns - 2, 2)) yield return "  " + style.Quiet(line);
    }

    private static IEnumerable<string> Warnings(RatingReport report, Readout readout, TerminalStyle style, int wrap, int room)
    {
        var warnings = report.Warnings;
        if (warnings.Count == 0 || room < 3) yield break;
        // Where room is scarce it is one line each, the last one saying how many were left out; a blank line follows.
        var shown = warnings.Count <= room - 1 ? warnings.Count : room - 2;
        foreach (var warning in warnings.Take(shown).Select(readout.Say))
            foreach (var line in Item(style.Warm("note") + "     ", warning, wrap)) yield return line;
        if (shown < warnings.Count) yield return $"         {style.Quiet($"and {warnings.Count - shown} more: see --report or --json")}";
        yield return "";
    }

    private static IEnumerable<string> SafetyLines(RatingReport report, TerminalStyle style)
    {
        var cautions = report.FindingsAt(Grade.Caution).Count();
        if (cautions > 0) yield return style.Quiet($"{cautions} {(cautions == 1 ? "caution" : "cautions")} on safety: coldwright safety, or --report.");
        yield return Wrapping.OneLine($"{RatingHeadline.Capital(Cautions.LocalCodes.Rule)}.", Columns);
    }

    // A sentence behind its word in the margin.
    private static IEnumerable<string> Item(string margin, string text, int wrap) =>
        Wrapping.Wrap(text, Columns - Margin, wrap).Select((line, i) => (i == 0 ? margin : new string(' ', Margin)) + line);

    private static string Cut(string text, int width) => text.Length <= width ? text : text[..width];
}
