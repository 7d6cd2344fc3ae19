using Coldwright.Report.Charts;
using Coldwright.Report.Html;
using Coldwright.Simulation.Rating;

namespace Coldwright.Report.Rating.Closed;

/// <summary>Where the charge is while the cooler runs: grams by place, liquid and gas.</summary>
internal sealed class ChargePicture(ClosedLoopResult closed, ClosedWords words, Readout readout)
{
    public string Caption
    {
        get
        {
            var fullest = words.Contents[0];
            var text = $"Every gram of the {words.Grams(closed.ChargeKg)} in the loop by the place it is in. {readout.Percent(closed.LiquidShare)} of the molecules are liquid, the heavier gases before the others. " +
                $"The {fullest.Place} holds most, {words.Grams(fullest.Kg)}. Liquid that lies in the tubes is richer in heavy gases than the stream, so what circulates is lighter than what was let in.";
            return words.Buffer is { } buffer ? $"{text} The buffer {buffer}." : text;
        }
    }

    public string Draw(ChartSize size) => new PieceChart
    {
        Description = $"Charge by place: {words.Ledger}.",
        AxisLabel = "charge, g",
        Key = [("liquid", Ink.Low), ("gas", Ink.Loss)],
        Rows = [.. words.Contents.Select(Row)],
    }.Draw(size);

    public void Table(HtmlText html) => html.Table(["place", ">holds", ">of it liquid", ">share of the charge"],
        words.Contents.Select(c => new[] { c.Place, words.Grams(c.Kg), words.Grams(c.LiquidKg), readout.Percent(c.Kg / closed.ChargeKg) })
            .Append(["all", words.Grams(closed.ChargeKg), words.Grams(closed.Contents.Sum(c => c.LiquidKg)), ""]));

    private PieceRow Row(LoopContent c)
    {
        var (liquid, all) = (c.LiquidKg * 1e3, c.Kg * 1e3);
        return new(c.Place, [new([new(0, liquid, Ink.Low, $"{words.Grams(c.LiquidKg)} liquid"), new(liquid, all, Ink.Loss, $"{words.Grams(c.Kg - c.LiquidKg)} gas")], words.Grams(c.Kg))]);
    }
}
