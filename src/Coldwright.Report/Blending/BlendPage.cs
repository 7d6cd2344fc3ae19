using Coldwright.Design.Blending;
using Coldwright.Report.Html;
using Coldwright.Report.Safety;
using Coldwright.Safety;

namespace Coldwright.Report.Blending;

/// <summary>Mixtures as one self-contained page that needs no network and no script.</summary>
public static class BlendPage
{
    /// <summary>Usual file name.</summary>
    public const string FileName = "blend.html";

    /// <summary>The page's text (UTF-8, LF).</summary>
    /// <param name="report">The mixtures.</param>
    public static string Write(BlendReport report)
    {
        var (r, result) = (report.Readout(typographic: true), report.Result);
        var html = new HtmlText();
        html.Inside("header", "", h => h.Element("h1", report.Machine.Name).Element("p", $"The mixture for {BlendWords.Goal(result, r)}, between {r.PressureFull(result.HighPressurePa)} and {r.PressureFull(result.LowPressurePa)}, out of {string.Join(", ", result.Gases)}."));
        FindingsHtml.GraveFirst(html, report.Findings, r);
        html.Element("p", BlendWords.Verdict(report, r), "verdict");
        var shares = new SharesPicture(report, r);
        html.Section("The mixture", h => Page.Figure(h, shares.Draw, shares.Caption, shares.Table));
        html.Section("What it does", h => h.Table(Cells(report, "figure", ">best", ">the same, cubic model", ">now"), Rows(report, r)));
        html.Section("What each gas is worth", h => shares.Table(h));
        if (result.Near.Count > 0)
        {
            var fewer = new FewerPicture(report, r);
            html.Section("With fewer gases", h => Page.Figure(h, fewer.Draw, fewer.Caption, fewer.Table));
        }
        if (result.Prices.Count > 0)
            html.Section("What each limit costs", h => h.Table(["limit", ">relaxed", ">brings"], result.Prices.Select(p => new[] { p.Limit, BlendText.Limit(p, r), BlendWords.Change(result, p.Gain, r) })));
        if (report.Warnings.Count > 0) html.Section("What to keep in mind", h => h.List(report.Warnings.Select(r.Say)));
        html.Section("How it was sought", h => h.Element("p", BlendWords.Effort(result, r)));
        var cautions = report.Findings.Where(f => f.Grade == Grade.Caution && f.Id != Cautions.LocalCodes.Id).ToArray();
        if (cautions.Length > 0) html.Section("Cautions", h => FindingsHtml.Write(h, cautions, r));
        html.Inside("footer", "", h => h.Element("p", $"How it is computed: docs/theory/blend.md. {char.ToUpperInvariant(Cautions.LocalCodes.Rule[0])}{Cautions.LocalCodes.Rule[1..]}."));
        return Page.Write($"{report.Machine.Name}: blend", html);
    }

    // the cubic model's column stands only where another one answers, the file's mixture only where it may be used here
    private static string[] Cells(BlendReport report, string name, string best, string cubic, string now) =>
        [name, best, .. report.Result.Best.Reference is null ? Array.Empty<string>() : [cubic], .. report.Result.KnowsNow ? [now] : Array.Empty<string>()];

    private static IEnumerable<string[]> Rows(BlendReport report, Readout r)
    {
        var (best, now) = (report.Result.Best, report.Result.Now);
        string[] Row(string name, Func<BlendPoint, string> value) => Cells(report, name, value(best.Main), value(best.Cubic), value(now.Main));
        yield return Row("goal", p => BlendWords.Merit(report.Result, p.Merit, r));
        if (report.Result.Goal != BlendGoal.Endless)
        {
            yield return Row("net cooling", p => double.IsFinite(p.CoolingW) ? r.Watts(p.CoolingW) : "-");
            if (best.Main.CollectedLPerH is not null) yield return Row("collected in the flask", p => p.CollectedLPerH is { } l ? $"{r.Figures(l, 3)} L/h" : "-");
            yield return Row("without load", p => p.NoLoadK is { } k ? r.TemperatureFull(k) : "-");
            yield return Row("discharge", p => p.DischargeK is { } k ? r.TemperatureFull(k) : "-");
            yield return Row("nearest to freezing, margin", p => BlendWords.Freezing(p, r));
            yield return Row("two liquids before the throttle", p => p.TwoLiquids switch { true => "yes", false => "no", null => "-" });
        }
        yield return Row("least isothermal difference", p => double.IsFinite(p.DifferenceJPerMol) ? $"{r.Figures(p.DifferenceJPerMol, 4)} J/mol" : "-");
        yield return Cells(report, "burns", r.Percent(best.Flammable), "", r.Percent(now.Flammable));
        if (best.PricePerKg is { } price) yield return Cells(report, "price of a kilogram", $"{r.Fixed(price, 2)} {report.Currency}", "", now.PricePerKg is { } old ? $"{r.Fixed(old, 2)} {report.Currency}" : "-");
    }
}
