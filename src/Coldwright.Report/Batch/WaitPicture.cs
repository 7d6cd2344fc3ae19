using Coldwright.Report.Charts;
using Coldwright.Report.Html;

namespace Coldwright.Report.Batch;

/// <summary>Grams in the flask and litres per hour against the wait before the discharge.</summary>
internal sealed class WaitPicture(BatchReport report, Readout readout)
{
    public string Caption => "The same batch, opened after longer and longer waits. While the vessel waits it cools and its pressure falls, so less of the liquid flashes when it is let down; but the hour goes on meanwhile. Where the line bends over, a further minute brings less than it costs.";

    public string Draw(ChartSize size) => Chart().Draw(size);

    public void Table(HtmlText html) => html.Table([">wait", ">opened at", ">in the flask", ">per hour", ">kWh per litre", ">the next minute brings"],
        report.Result.Waiting.Select(p => new[]
        {
            BatchWords.Minutes(readout, p.WaitS), readout.PressureFull(p.OpeningPressurePa), BatchWords.Grams(readout, p.CollectedKg), $"{readout.Figures(p.CollectedLPerH, 3)} L/h",
            p.EnergyKWhPerL is { } e ? readout.Figures(e, 3) : "-", $"{readout.Fixed(1e3 * p.GainKgPerMinute, 2)} g",
        }));

    private LineChart Chart()
    {
        var points = report.Result.Waiting;
        var best = points.MaxBy(p => p.CollectedLPerH)!;
        return new()
        {
            Description = "Litres per hour against the wait before the discharge.",
            X = new("wait before the discharge, min", 0, points[^1].WaitS / 60, true),
            Y = Axis.Around("litres per hour", points.Select(p => p.CollectedLPerH), 0.15),
            Curves = [new("", Ink.Cooling, [.. points.Select(p => (p.WaitS / 60, p.CollectedLPerH))], [.. points.Select(p => $"{BatchWords.Minutes(readout, p.WaitS)}: {readout.Figures(p.CollectedLPerH, 3)} L/h, {BatchWords.Grams(readout, p.CollectedKg)}")])],
            Marks = [new(best.WaitS / 60, best.CollectedLPerH, Ink.Cooling, ["most per hour", $"{readout.Figures(best.CollectedLPerH, 3)} L/h"])],
        };
    }
}
