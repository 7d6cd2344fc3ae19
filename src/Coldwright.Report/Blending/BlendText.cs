using Coldwright.Design.Blending;
using Coldwright.Report.Safety;
using Coldwright.Report.Terminal;

namespace Coldwright.Report.Blending;

/// <summary>Mixtures on a terminal.</summary>
public static class BlendText
{
    private const int Columns = 88, Grave = 4, Margin = 9;

    /// <summary>The screen, ending with a line end.</summary>
    /// <param name="report">The mixtures.</param>
    /// <param name="colour">True to use ANSI colours.</param>
    public static string Write(BlendReport report, bool colour)
    {
        var (r, style, result) = (report.Readout(typographic: false), new TerminalStyle(colour), report.Result);
        var grave = GraveLines.Of(report.Findings, r, style.Colour, Columns, Grave, 3);
        List<string> lines = [.. grave, .. grave.Count > 0 ? [""] : Array.Empty<string>(), style.Bold(Wrapping.OneLine($"{report.Machine.Name}: the mixture for {BlendWords.Goal(result, r)}", Columns)), .. Wrapping.Wrap(BlendWords.Verdict(report, r), Columns), ""];
        lines.AddRange(Gases(result, r, style));
        lines.Add("");
        lines.AddRange(Figures(report, r, style));
        if (result.Near.Count > 0)
        {
            lines.Add("");
            lines.Add(style.Bold("  With fewer gases"));
            foreach (var near in result.Near)
                lines.AddRange(Wrapping.Wrap($"{near.Mixture.Names.Count} gases, {BlendWords.Merit(result, near.Main.Merit, r)} (at worst {BlendWords.Merit(result, near.WorstMerit, r)}): {BlendWords.Mixture(near, r)}", Columns - 4).Select(l => "    " + l));
        }
        if (result.Prices.Count > 0)
        {
            lines.Add("");
            lines.Add(style.Bold("  What each limit costs"));
            foreach (var p in result.Prices)
                lines.AddRange(Wrapping.Wrap($"{p.Limit}: {Limit(p, r)} brings {BlendWords.Change(result, p.Gain, r)}", Columns - 4).Select(l => "    " + l));
        }
        lines.Add("");
        lines.AddRange(Wrapping.Wrap(BlendWords.Effort(result, r), Columns).Select(style.Quiet));
        lines.Add("");
        foreach (var warning in report.Warnings.Select(r.Say))
            lines.AddRange(Wrapping.Wrap(warning, Columns - Margin, 3).Select((text, i) => (i == 0 ? style.Warm("note") + "     " : new string(' ', Margin)) + text));
        lines.Add("");
        lines.AddRange(OtherLines.Of(report.Findings, r, Columns));
        return string.Join('\n', lines) + "\n";
    }

    internal static string Limit(LimitPrice p, Readout r) => p.Relaxed is not { } relaxed ? "giving it up" : p.Unit == "K" ? $"{r.Temperature(p.Value)} to {r.Temperature(relaxed)}" : p.Unit == "Pa" ? $"{r.Pressure(p.Value)} to {r.Pressure(relaxed)}" : $"{r.Figures(p.Value, 3)} to {r.Figures(relaxed, 3)}";

    private static IEnumerable<string> Gases(BlendResult result, Readout r, TerminalStyle style)
    {
        yield return style.Quiet($"    {"",-14}{"best",8}{"now",8}{"1 % more",14}{"1 % less",14}{"best without it",18}");
        foreach (var s in result.Sensitivities)
        {
            double now = !result.KnowsNow ? 0 : result.Now.Mixture.Names.ToList().IndexOf(s.Gas) is var i and >= 0 ? result.Now.Mixture.MoleFractions[i] : 0;
            yield return $"    {s.Gas,-14}{(s.Fraction > 0 ? r.Fixed(s.Fraction, 3) : "-"),8}{(now > 0 ? r.Fixed(now, 3) : "-"),8}{BlendWords.Change(result, s.MorePerCent, r),14}{BlendWords.Change(result, s.LessPerCent, r),14}{(s.WithoutMerit is { } without ? BlendWords.Merit(result, without, r) : "-"),18}";
        }
    }

    private static IEnumerable<string> Figures(BlendReport report, Readout r, TerminalStyle style)
    {
        var (best, now) = (report.Result.Best, report.Result.Now);
        yield return style.Quiet($"    {"",-34}{"best",14}{"now",14}{(best.Reference is null ? "" : "best, cubic"),14}");
        string Row(string name, Func<BlendPoint, string> value) => $"    {name,-34}{value(best.Main),14}{(report.Result.KnowsNow && (now.Main.IsGood || now.Main.Broken.Count > 0) ? value(now.Main) : "-"),14}{(best.Reference is null ? "" : value(best.Cubic)),14}".TrimEnd();
        if (report.Result.Goal != BlendGoal.Endless)
        {
            yield return Row("net cooling", p => double.IsFinite(p.CoolingW) ? r.Watts(p.CoolingW) : "-");
            if (best.Main.CollectedLPerH is not null) yield return Row("collected in the flask", p => p.CollectedLPerH is { } l ? $"{r.Figures(l, 3)} L/h" : "-");
            yield return Row("without load", p => p.NoLoadK is { } k ? r.Temperature(k) : "-");
            yield return Row("discharge", p => p.DischargeK is { } k ? r.Temperature(k) : "-");
            yield return Row("nearest to freezing, margin", p => BlendWords.Freezing(p, r));
            yield return Row("two liquids before the throttle", p => p.TwoLiquids switch { true => "yes", false => "no", null => "-" });
        }
        yield return Row("least isothermal difference", p => double.IsFinite(p.DifferenceJPerMol) ? $"{r.Figures(p.DifferenceJPerMol, 4)} J/mol" : "-");
        yield return $"    {"burns",-34}{r.Percent(best.Flammable),14}{(report.Result.KnowsNow ? r.Percent(now.Flammable) : "-"),14}";
        if (best.PricePerKg is { } price) yield return $"    {"price of a kilogram",-34}{$"{r.Fixed(price, 2)} {report.Currency}",14}{(report.Result.KnowsNow && now.PricePerKg is { } old ? $"{r.Fixed(old, 2)} {report.Currency}" : "-"),14}";
    }
}
