using Coldwright.Report.Charts;
using Coldwright.Report.Html;

namespace Coldwright.Report.Batch;

/// <summary>The gram ledger: what was fed, each loss taken off, what is in the flask.</summary>
internal sealed class GramPicture(BatchReport report, Readout readout)
{
    public string Caption => "The top bar is the gas that left the supply. Each loss takes its piece off, in the order in which the gas meets it; the last bar is the liquid in the flask at the end. " +
        $"The ledger closes: fed less all the others leaves {readout.Error(report.Run.Grams.Error)} of it.";

    public string Draw(ChartSize size) => Chart().Draw(size);

    public void Table(HtmlText html) => html.Table(["where", ">grams", ">share of fed", "what it is"],
    [
        ["fed", BatchWords.Grams(readout, report.Run.Grams.FedKg), readout.Percent(1), "gas that left the supply"],
        .. GramRows.Of(report.Run).Select(x => new[] { x.Name, BatchWords.Grams(readout, x.Kg), Share(x.Kg), x.What }),
        ["in the flask", BatchWords.Grams(readout, report.Run.Grams.CollectedKg), Share(report.Run.Grams.CollectedKg), "liquid, when the flask has stood"],
    ]);

    private string Share(double kg) => readout.Percent(kg / Math.Max(report.Run.Grams.FedKg, 1e-9));

    private BarChart Chart()
    {
        double left = 1e3 * report.Run.Grams.FedKg;
        var bars = new List<Bar> { new("fed", 0, left, Ink.Plain, BatchWords.Grams(readout, report.Run.Grams.FedKg), true) };
        foreach (var (name, kg, _) in GramRows.Of(report.Run))
        {
            bars.Add(new(name, left - 1e3 * kg, left, Ink.Loss, $"{BatchWords.Grams(readout, kg)} · {Share(kg)}"));
            left -= 1e3 * kg;
        }
        bars.Add(new("in the flask", 0, 1e3 * report.Run.Grams.CollectedKg, Ink.Cooling, $"{BatchWords.Grams(readout, report.Run.Grams.CollectedKg)} · {Share(report.Run.Grams.CollectedKg)}", true));
        return new()
        {
            Description = $"Grams: {BatchWords.Grams(readout, report.Run.Grams.FedKg)} fed, {BatchWords.Grams(readout, report.Run.Grams.CollectedKg)} in the flask, losses by name.",
            AxisLabel = "grams",
            Bars = bars,
        };
    }
}
