using Coldwright.Design.Sizing;
using Coldwright.Report.Parts;
using Coldwright.Simulation.Parts;

namespace Coldwright.Report.Sizing;

/// <summary>Sizes in words.</summary>
internal static class SizeWords
{
    public static string Target(SizeReport report, PartUnits units) => $"{report.Result.Target.Name}: {units.Short(report.Result.Target)}{(report.Result.TargetRemark.IsEmpty ? "" : $" ({units.Readout.Say(report.Result.TargetRemark)})")}.";

    public static string Verdict(SizeReport report, PartUnits units)
    {
        if (report.Result.Best is not { } best) return "Nothing of the stock looked at does it; the table says why.";
        var first = best.Figures[0];
        string cost = best.Cost is { } c && c > 0 ? $", {report.Cost(best, units.Readout)}" : "";
        return $"{Capital(best.Stock)}: {first.Name.ToLowerInvariant()} {units.Short(first)}{cost}.";
    }

    /// <summary>Name of a column.</summary>
    public static string Heading(SizeResult r, string id) => r.Options.SelectMany(o => o.Figures).FirstOrDefault(f => f.Id == id)?.Name ?? id;

    public static string Cell(SizeOption o, string id, PartUnits units) => o.Figures.FirstOrDefault(f => f.Id == id) is { } f ? units.Short(f) : "-";

    public static string Amount(CutItem c, Readout r) => c.Unit == "piece" ? $"{c.Amount:0}" : $"{r.Figures(c.Amount, 3)} {c.Unit}";

    public static IEnumerable<string> Keys(SizeReport report, SizeOption best)
    {
        yield return $"{report.Result.Part}:";
        foreach (var (key, text) in best.Keys) yield return $"  {key}: {text}";
    }

    private static string Capital(string text) => text.Length > 0 ? char.ToUpperInvariant(text[0]) + text[1..] : text;
}
