using Coldwright.Report.Safety;
using Coldwright.Report.Terminal;

namespace Coldwright.Report.Charging;

/// <summary>A filling plan on a terminal.</summary>
public static class ChargeText
{
    private const int Columns = 88, Grave = 4, Margin = 9;

    /// <summary>The screen, ending with a line end.</summary>
    /// <param name="report">The plan.</param>
    /// <param name="colour">True to use ANSI colours.</param>
    public static string Write(ChargeReport report, bool colour)
    {
        var (r, style) = (report.Readout(typographic: false), new TerminalStyle(colour));
        var grave = GraveLines.Of(report.Result.Findings, r, style.Colour, Columns, Grave, 3);
        List<string> lines =
        [
            .. grave, .. grave.Count > 0 ? [""] : Array.Empty<string>(), style.Bold(Wrapping.OneLine($"{report.Machine.Name}: how to fill it", Columns)), .. Wrapping.Wrap(ChargeWords.Verdict(report, r), Columns), "",
            .. Pump(report, r, style), "", .. Steps(report, r, style), .. Cold(report, r, style), .. Traces(report, r, style), .. TopUps(report, r, style), "",
            .. report.Warnings.Select(r.Say).SelectMany(w => Wrapping.Wrap(w, Columns - Margin, 3).Select((text, i) => (i == 0 ? style.Warm("note") + "     " : new string(' ', Margin)) + text)), "",
            .. OtherLines.Of(report.Result.Findings, r, Columns),
        ];
        return string.Join('\n', lines) + "\n";
    }

    private static IEnumerable<string> Pump(ChargeReport report, Readout r, TerminalStyle style)
    {
        yield return style.Bold("  Before anything goes in");
        foreach (var sentence in ChargeWords.Pump(report, r).Append(ChargeWords.Left(report, r)))
            foreach (var line in Wrapping.Wrap(sentence, Columns - 4)) yield return "    " + line;
    }

    private static IEnumerable<string> Steps(ChargeReport report, Readout r, TerminalStyle style)
    {
        yield return style.Bold("  Then, each time until the gas has the room's temperature");
        yield return style.Quiet($"    {"",-2}{"gas",-12}{"grams",10}{"gauge shows",17}{"may be off by",22}   tell it by");
        int k = 0;
        foreach (var s in report.Result.Recipe.Steps)
            yield return $"    {++k,-2}{s.Gas,-12}{ChargeWords.Grams(r, s.MassKg),10}{ChargeWords.Gauge(r, s.UntilPa),17}{ChargeWords.Tolerance(r, s),22}   {ChargeWords.By(r, s)}";
        yield return style.Quiet("  So much too much changes the cooling that an endless exchanger would leave by");
        yield return style.Quiet($"    {string.Join(", ", report.Result.Recipe.Steps.GroupBy(s => s.Gas).Select(g => $"{g.Key} {ChargeWords.Costs(r, g.First())}"))}");
    }

    private static IEnumerable<string> Cold(ChargeReport report, Readout r, TerminalStyle style)
    {
        if (report.Result.Cold is not { Closed: { } closed } cold) yield break;
        yield return "";
        yield return style.Bold("  Once it is cold");
        yield return style.Quiet($"    {"",-14}{"charged",10}{"circulates",12}");
        for (int i = 0; i < report.Result.Mixture.Names.Count; i++)
            yield return $"    {report.Result.Mixture.Names[i],-14}{r.Percent(report.Result.Mixture.MoleFractions[i]),10}{r.Percent(cold.Loop.Composition.MoleFractions[i]),12}";
        foreach (var line in Wrapping.Wrap($"{r.Percent(closed.LiquidShare)} of the charge is liquid then, and the gauges show {ChargeWords.Gauge(r, cold.Loop.HighPressurePa)} and {ChargeWords.Gauge(r, cold.Loop.LowPressurePa)}" +
            (cold.NoLoadTemperatureK is { } noLoad ? $"; without load it comes to {r.TemperatureFull(noLoad)}." : "; it does not cool."), Columns - 4)) yield return "    " + line;
    }

    private static IEnumerable<string> Traces(ChargeReport report, Readout r, TerminalStyle style)
    {
        if (report.Result.Traces.Count == 0) yield break;
        yield return "";
        yield return style.Bold("  What does not belong in it");
        foreach (var t in report.Result.Traces)
            foreach (var line in Wrapping.Wrap($"{t.Name.Replace('-', ' ')}: at most {ChargeWords.Ppm(r, t.FromPump)} left by the pump, {ChargeWords.Ppm(r, t.FromGases)} from the gases" +
                (t.FreezesAtK is { } k ? $"; freezes at {r.TemperatureFull(k)}" : t.AllowedAtColdest is not null ? "; stays dissolved" : "") + (t.Freezes ? $", where {ChargeWords.Ppm(r, t.AllowedAtColdest!.Value)} would stay dissolved at the coldest place." : "."), Columns - 4)) yield return "    " + line;
    }

    private static IEnumerable<string> TopUps(ChargeReport report, Readout r, TerminalStyle style)
    {
        foreach (var t in report.Result.TopUps)
        {
            yield return "";
            yield return style.Bold($"  After {t.Leak}: {ChargeWords.Grams(r, t.LostKg)} lost, {ChargeWords.Gauge(r, t.PressurePa)} at rest");
            foreach (var line in Wrapping.Wrap($"left: {string.Join(", ", report.Result.Mixture.Names.Zip(t.Left, (n, x) => $"{n} {r.Percent(x)}"))}", Columns - 4)) yield return "    " + line;
            foreach (var line in Wrapping.Wrap($"add: {string.Join(", ", report.Result.Mixture.Names.Zip(t.AddKg, (n, kg) => $"{n} {ChargeWords.Grams(r, kg)}"))}", Columns - 4)) yield return "    " + line;
        }
    }
}
