using Coldwright.Report.Charts;
using Coldwright.Report.Html;

namespace Coldwright.Report.Charging;

/// <summary>What is charged beside what circulates once it is cold.</summary>
internal sealed class ChargedPicture(ChargeReport report, Readout readout)
{
    private IReadOnlyList<double> Circulating => report.Result.Cold!.Loop.Composition.MoleFractions;

    public string Caption => "Of every hundred molecules, how many are of each gas: in the bottle's recipe, and in what compressor and throttle see once it is cold. Liquid that stays in the cold parts keeps the heavy gases back.";

    public string Draw(ChartSize size) => new PieceChart
    {
        Description = "Charged and circulating mole fractions.",
        AxisLabel = "share of the molecules, %",
        Key = [("charged", Ink.Loss), ("circulates", Ink.Cooling)],
        Rows = [.. report.Result.Mixture.Names.Select((n, i) => new PieceRow(n, [Lane(report.Result.Mixture.MoleFractions[i], Ink.Loss), Lane(Circulating[i], Ink.Cooling)]))],
    }.Draw(size);

    public void Table(HtmlText html) => html.Table(["gas", ">charged\nmol/mol", ">circulates\nmol/mol"],
        report.Result.Mixture.Names.Select((n, i) => new[] { n, readout.Fixed(report.Result.Mixture.MoleFractions[i], 4), readout.Fixed(Circulating[i], 4) }));

    private PieceLane Lane(double fraction, Ink ink) => new([new(0, 100 * fraction, ink, readout.Percent(fraction))], readout.Percent(fraction));
}
