using Coldwright.Report.Charts;
using Coldwright.Report.Html;
using Coldwright.Simulation.Batch;

namespace Coldwright.Report.Batch;

/// <summary>One figure over the time of the batch, the schedule as a row above it.</summary>
/// <param name="report">The batch.</param>
/// <param name="readout">Units.</param>
/// <param name="label">Upright axis with unit.</param>
/// <param name="lines">Lines: name, ink, value in the axis's unit, value in words.</param>
/// <param name="caption">What it shows.</param>
/// <param name="closeUp">True to leave nothing out of sight but the range of the values, as for temperatures; false to begin at nothing.</param>
internal sealed class CoursePicture(BatchReport report, Readout readout, string label, IReadOnlyList<(string Name, Ink Ink, Func<BatchMoment, double> Value, Func<BatchMoment, string> Words)> lines, string caption, bool closeUp = false)
{
    // a row of the schedule narrower than this gets no word
    private const int MostRanges = 24;

    public string Caption => caption;

    public string Draw(ChartSize size) => Chart().Draw(size);

    public void Table(HtmlText html)
    {
        int every = Math.Max(1, report.Run.Series.Count / 40);
        html.Table([">time", .. lines.Select(l => ">" + (l.Name.Length > 0 ? l.Name : label))],
            report.Run.Series.Where((_, i) => i % every == 0 || i == report.Run.Series.Count - 1).Select(m => new[] { BatchWords.Minutes(readout, m.TimeS) }.Concat(lines.Select(l => l.Words(m))).ToArray()));
    }

    private LineChart Chart()
    {
        var series = report.Run.Series;
        var values = lines.SelectMany(l => series.Select(l.Value)).ToArray();
        return new()
        {
            Description = $"{label} over the time of the batch.",
            X = new("time, min", 0, Math.Max(series[^1].TimeS / 60, 0.1), true),
            Y = closeUp ? Axis.Around(label, values, 0.08) : new Axis(label, values.Min() < -0.01 * values.Max() ? values.Min() : 0, Math.Max(values.Max() * 1.05, 1e-3)),
            Curves = [.. lines.Select(l => new Curve(l.Name, l.Ink, [.. series.Select(m => (m.TimeS / 60, l.Value(m)))], [.. series.Select(m => $"{BatchWords.Minutes(readout, m.TimeS)}: {l.Words(m)}")]))],
            Above = new Strip("", Ink.Second, Ranges()),
        };
    }

    private (double, double, string, string)[] Ranges()
    {
        var steps = report.Run.Schedule.Where(s => s.EndS > s.StartS).ToArray();
        // many short rests would be a hatching: they are then one range with the feeding
        return steps.Length <= MostRanges
            ? [.. steps.Select(s => (s.StartS / 60, s.EndS / 60, s.Action, s.Action[..1]))]
            : [(steps[0].StartS / 60, steps.Last(s => s.Action is "feed" or "rest").EndS / 60, "feed with rests", "feed"), .. steps.SkipWhile(s => s.Action is "feed" or "rest").Where(s => s.Action is not ("feed" or "rest")).Select(s => (s.StartS / 60, s.EndS / 60, s.Action, s.Action[..1]))];
    }
}
