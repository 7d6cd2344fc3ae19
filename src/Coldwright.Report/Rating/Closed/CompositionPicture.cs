using Coldwright.Report.Charts;
using Coldwright.Report.Html;

namespace Coldwright.Report.Rating.Closed;

/// <summary>What was charged beside what circulates, substance by substance.</summary>
internal sealed class CompositionPicture(ClosedWords words, Readout readout)
{
    public string Caption
    {
        get
        {
            var (gained, lost) = (words.Mixture.MaxBy(m => m.Circulating - m.Charged), words.Mixture.MinBy(m => m.Circulating - m.Charged));
            const string What = "Of every hundred molecules, how many are of each gas: in what was let in, and in the stream that compressor and throttle see while it runs. ";
            return What + (gained.Circulating - gained.Charged < 0.005
                ? "The two agree: hardly any liquid is held up."
                : $"{RatingHeadline.Capital(gained.Substance)} rises from {readout.Percent(gained.Charged)} to {readout.Percent(gained.Circulating)}, {lost.Substance} falls from {readout.Percent(lost.Charged)} to {readout.Percent(lost.Circulating)}, " +
                  "because liquid is held up where it is cold. To change what circulates, change what is charged, and read the result here.");
        }
    }

    public string Draw(ChartSize size) => new PieceChart
    {
        Description = $"Charged and circulating: {string.Join(", ", words.Mixture.Select(m => $"{m.Substance} {readout.Percent(m.Charged)} and {readout.Percent(m.Circulating)}"))}.",
        AxisLabel = "share of the molecules, %",
        Key = [("charged", Ink.Loss), ("circulates", Ink.Cooling)],
        Rows = [.. words.Mixture.Select(m => new PieceRow(m.Substance, [Lane(m.Charged, Ink.Loss, "charged"), Lane(m.Circulating, Ink.Cooling, "circulates")]))],
    }.Draw(size);

    public void Table(HtmlText html) => html.Table(["substance", ">charged\nmol/mol", ">circulates\nmol/mol", ">circulates over charged"],
        words.Mixture.Select(m => new[] { m.Substance, readout.Fixed(m.Charged, 4), readout.Fixed(m.Circulating, 4), m.Charged > 0 ? readout.Figures(m.Circulating / m.Charged, 3) : "" }));

    private PieceLane Lane(double fraction, Ink ink, string what) => new([new(0, 100 * fraction, ink, $"{what} {readout.Percent(fraction)}")], readout.Percent(fraction));
}
