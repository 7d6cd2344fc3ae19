using Coldwright.Report.Charts;
using Coldwright.Report.Html;

namespace Coldwright.Report.Blending;

/// <summary>The best mixture beside the file's.</summary>
internal sealed class SharesPicture(BlendReport report, Readout readout)
{
    public string Caption => $"Of every hundred molecules, how many are of each gas: in the best mixture found{(Knows ? " and in the file's" : "")}. It is the mixture that circulates; what has to be charged for it holds more of the heavy gases, which stay behind as liquid.";

    public string Draw(ChartSize size) => new PieceChart
    {
        Description = $"Mole fractions of the best mixture{(Knows ? " and of the file's" : "")}.", AxisLabel = "share of the molecules, %", Key = Knows ? [("best", Ink.Cooling), ("now", Ink.Loss)] : [("best", Ink.Cooling)],
        Rows = [.. report.Result.Sensitivities.Select(s => new PieceRow(s.Gas, Knows ? [Lane(s.Fraction, Ink.Cooling), Lane(Now(s.Gas), Ink.Loss)] : [Lane(s.Fraction, Ink.Cooling)]))],
    }.Draw(size);

    public void Table(HtmlText html) => html.Table(["gas", ">best\nmol/mol", .. Knows ? [">now\nmol/mol"] : Array.Empty<string>(), ">1 % more", ">1 % less", ">best without it"],
        report.Result.Sensitivities.Select(s => (string[])[s.Gas, readout.Fixed(s.Fraction, 4), .. Knows ? [readout.Fixed(Now(s.Gas), 4)] : Array.Empty<string>(), BlendWords.Change(report.Result, s.MorePerCent, readout), BlendWords.Change(report.Result, s.LessPerCent, readout), s.WithoutMerit is { } m ? BlendWords.Merit(report.Result, m, readout) : "-"]));

    // The file's own mixture may hold a gas that was not to be used.
    private bool Knows => report.Result.KnowsNow;

    private double Now(string gas) => report.Result.Now.Mixture.Names.ToList().IndexOf(gas) is var i and >= 0 ? report.Result.Now.Mixture.MoleFractions[i] : 0;

    private PieceLane Lane(double fraction, Ink ink) => new([new(0, 100 * fraction, ink, readout.Percent(fraction))], readout.Percent(fraction));
}
