using Coldwright.Report.Safety;
using Coldwright.Report.Terminal;
using Coldwright.Safety;
using Coldwright.Simulation.Batch;

namespace Coldwright.Report.Batch;

/// <summary>A batch on a terminal: where the gas went, what to do when, what waiting is worth.</summary>
public static class BatchText
{
    private const int Columns = 88, Grave = 4, BarWidth = 34, Margin = 9;

    /// <summary>The screen, ending with a line end.</summary>
    /// <param name="report">What was simulated and found.</param>
    /// <param name="colour">True to use ANSI colours.</param>
    public static string Write(BatchReport report, bool colour)
    {
        var (readout, style) = (report.Readout(typographic: false), new TerminalStyle(colour));
        var grave = GraveLines.Of(report.Findings, readout, style.Colour, Columns, Grave, 3);
        List<string> lines =
        [
            .. grave, .. grave.Count > 0 ? [""] : Array.Empty<string>(),
            .. Head(report, readout, style), "", .. Ledger(report, readout, style), "", .. Figures(report, readout, style), "", .. Schedule(report, readout, style),
            .. Waiting(report, readout, style), .. Feed(report, readout), .. Impurities(report, readout), "", .. Warnings(report, readout, style), .. Safety(report, style),
        ];
        return string.Join('\n', lines) + "\n";
    }

    private static IEnumerable<string> Head(BatchReport report, Readout r, TerminalStyle style)
    {
        yield return style.Bold(Wrapping.OneLine($"{report.Machine.Name}: {BatchWords.Batches(report)} of {report.Result.Substance}, {BatchWords.Chosen(report)}", Columns));
        foreach (var line in Wrapping.Wrap(BatchWords.Verdict(report, r), Columns)) yield return line;
    }

    private static IEnumerable<string> Ledger(BatchReport report, Readout r, TerminalStyle style)
    {
        var run = report.Run;
        double fed = Math.Max(run.Grams.FedKg, 1e-9), left = run.Grams.FedKg;
        string Bar(double from, double to)
        {
            int a = Math.Clamp((int)Math.Round(BarWidth * from / fed), 0, BarWidth), b = Math.Clamp((int)Math.Round(BarWidth * to / fed), 0, BarWidth);
            return new string(' ', a) + new string('█', Math.Max(b - a, to - from > 1e-4 ? 1 : 0));
        }
        yield return style.Bold($"  {"fed",-22}{BatchWords.Grams(r, run.Grams.FedKg),9}  {Bar(0, run.Grams.FedKg)}");
        foreach (var (name, kg, _) in GramRows.Of(run))
        {
            yield return $"  {name,-22}{BatchWords.Grams(r, kg),9}  {style.Warm(Bar(Math.Max(0, left - kg), left))}".TrimEnd();
            left -= kg;
        }
        yield return style.Bold($"  {"in the flask",-22}{BatchWords.Grams(r, run.Grams.CollectedKg),9}  {style.Cold(Bar(0, run.Grams.CollectedKg))}".TrimEnd());
        yield return style.Quiet($"  The ledger closes to {r.Error(run.Grams.Error)} of the grams and {r.Error(run.Joules.Error)} of the joules.");
    }

    private static IEnumerable<string> Figures(BatchReport report, Readout r, TerminalStyle style)
    {
        var run = report.Run;
        yield return $"  {"Collected",-22}{style.Bold($"{r.Figures(run.CollectedLPerH, 3)} L/h".PadLeft(12))}   {style.Quiet($"it takes {BatchWords.Minutes(r, run.DurationS)}")}";
        if (run.EnergyKWhPerL is { } energy)
        {
            var split = run.FeedJ > 0 ? $"loop {r.Figures(run.LoopJ / 3.6e6, 2)} kWh, feed compressor {r.Figures(run.FeedJ / 3.6e6, 2)} kWh in all" : $"{r.Figures(run.LoopJ / 3.6e6, 2)} kWh in all";
            yield return $"  {"Electricity",-22}{style.Bold($"{r.Figures(energy, 3)} kWh/L".PadLeft(12))}   {style.Quiet(split)}";
        }
        if (report.Result.OtherGoal is { EnergyKWhPerL: { } e } other)
        {
            var goal = report.Result.Goal == BatchGoal.LitresPerHour ? "Least electricity" : "Most per hour";
            if (other.Plan == run.Plan) yield return $"  {goal,-22}{"the same".PadLeft(12)}";
            else
            {
                var figure = report.Result.Goal == BatchGoal.LitresPerHour ? $"{r.Figures(e, 3)} kWh/L" : $"{r.Figures(other.CollectedLPerH, 3)} L/h";
                yield return $"  {goal,-22}{figure.PadLeft(12)}   {style.Quiet(Wrapping.OneLine($"fed at {r.Pressure(other.Plan.FeedPressurePa)}, opened at {r.Pressure(other.Plan.OpeningPressurePa)}, {r.Percent(other.Plan.FillShare)} full", Columns - 39))}";
            }
        }
        yield return $"  {"Standing flask loses",-22}{style.Bold($"{r.Figures(3.6e6 * run.FlaskLossKgPerS, 2)} g/h".PadLeft(12))}";
    }

    private static IEnumerable<string> Schedule(BatchReport report, Readout r, TerminalStyle style)
    {
        yield return style.Bold("  What to do");
        var rows = BatchWords.Schedule(report, r).ToArray();
        // rests come in dozens: the first and the last tell the tale
        var shown = rows.Length <= 10 ? rows : [.. rows[..5], ("...", "", $"{rows.Length - 9} more like these", ""), .. rows[^4..]];
        foreach (var (start, action, until, length) in shown)
            yield return $"    {start,8}  {action,-10} {Wrapping.OneLine(length.Length > 0 ? $"for {length}, until {until}" : until, Columns - 26)}".TrimEnd();
    }

    private static IEnumerable<string> Waiting(BatchReport report, Readout r, TerminalStyle style)
    {
        var points = report.Result.Waiting;
        if (points.Count < 2) yield break;
        yield return "";
        yield return style.Bold("  What waiting before the discharge is worth");
        yield return style.Quiet($"  {"wait",8}  {"opened at",12}  {"in the flask",13}  {"per hour",10}  {"the next minute brings",22}");
        foreach (var p in points)
            yield return $"  {BatchWords.Minutes(r, p.WaitS),8}  {r.Pressure(p.OpeningPressurePa),12}  {BatchWords.Grams(r, p.CollectedKg),13}  {r.Figures(p.CollectedLPerH, 3) + " L/h",10}  {r.Fixed(1e3 * p.GainKgPerMinute, 1) + " g",22}";
    }

    private static IEnumerable<string> Feed(BatchReport report, Readout r)
    {
        if (report.Result.Feed is not { } f) yield break;
        yield return "";
        var duty = f.DutyShare < 1 ? $"It may run {BatchWords.Minutes(r, f.RunS!.Value)} and must rest {BatchWords.Minutes(r, f.RestS!.Value)}: {r.Percent(f.DutyShare)} of the time." : "It may run all the time.";
        foreach (var line in Wrapping.Wrap($"Feed compressor: {r.Figures(1e3 * f.FlowKgPerS, 3)} g/s, discharge {r.Temperature(f.DischargeK)} (allowed {r.Temperature(f.AllowedDischargeK)}), shell {r.Temperature(f.SteadyShellK)} if it ran on (allowed {r.Temperature(f.AllowedShellK)}). {duty}", Columns - 2)) yield return "  " + line;
    }

    private static IEnumerable<string> Impurities(BatchReport report, Readout r)
    {
        var i = report.Result.Impurities;
        if (i.Feed.Names.Count == 1 && i.Traces.Count == 0) yield break;
        yield return "";
        var text = $"Feed: {string.Join(", ", i.Feed.Names.Zip(i.Feed.MoleFractions, (n, x) => $"{n} {r.Figures(100 * x, x > 0.99 ? 5 : 3)} %"))}.";
        if (i.GlideK is { } glide && glide > 0) text += $" It condenses over {r.Difference(glide)}.";
        if (i.Oxygen is { } o) text += $" Oxygen: {r.Percent(o.Fresh)} in the fresh liquid, {r.Percent(o.TenthLeft)} when a tenth is left.";
        foreach (var t in i.Traces) text += t.FrozenKg > 0 ? $" Of {r.Figures(1e6 * t.FedKg, 2)} mg of {t.Name} {r.Figures(1e6 * t.FrozenKg, 2)} mg freeze." : $" {r.Figures(1e6 * t.FedKg, 2)} mg of {t.Name} stay dissolved.";
        foreach (var line in Wrapping.Wrap(text, Columns - 2)) yield return "  " + line;
    }

    private static IEnumerable<string> Warnings(BatchReport report, Readout readout, TerminalStyle style)
    {
        foreach (var warning in report.Warnings.Select(readout.Say))
            foreach (var line in Wrapping.Wrap(warning, Columns - Margin, 3).Select((text, i) => (i == 0 ? style.Warm("note") + "     " : new string(' ', Margin)) + text)) yield return line;
        if (report.Warnings.Count > 0) yield return "";
    }

    private static IEnumerable<string> Safety(BatchReport report, TerminalStyle style)
    {
        var cautions = report.Findings.Count(f => f.Grade == Grade.Caution && f.Id != Cautions.LocalCodes.Id);
        if (cautions > 0) yield return style.Quiet($"{cautions} {(cautions == 1 ? "caution" : "cautions")} on safety: coldwright safety, --report or --json.");
        yield return $"{char.ToUpperInvariant(Cautions.LocalCodes.Rule[0])}{Cautions.LocalCodes.Rule[1..]}.";
    }
}
