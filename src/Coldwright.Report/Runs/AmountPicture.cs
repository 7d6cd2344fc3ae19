using Coldwright.Report.Charts;
using Coldwright.Report.Html;
using Coldwright.Runs.Tightness;

namespace Coldwright.Report.Runs;

/// <summary>The amount of gas shut in during a leak test, with the line through it.</summary>
internal sealed class AmountPicture(LeakTestResult leak, RunUnits units)
{
    private const int MostRows = 40;
    private readonly (double Scale, string Word) _time = leak.DurationS > 5400 ? (3600.0, "h") : leak.DurationS > 300 ? (60.0, "min") : (1.0, "s");

    /// <summary>What to see.</summary>
    public static string Caption => "The amount follows from pressure and temperature with the real gas, so warming and cooling do not show. A level course is a tight vessel; the broken line is the leak that was found.";

    /// <summary>The picture.</summary>
    public string Draw(ChartSize size)
    {
        var points = leak.Series.Select(p => (X: p.TimeS / _time.Scale, Y: p.AmountMol * 1e3)).ToArray();
        var middle = leak.Series.Average(p => p.TimeS);
        (double, double) Line(double t) => (t / _time.Scale, 1e3 * (leak.AmountMol - leak.LeakMolS * (t - middle)));
        return new LineChart
        {
            Description = $"Amount of gas against time, {points[0].Y:0.###} mmol at the beginning, {points[^1].Y:0.###} mmol at the end.",
            X = new($"time from the start, {_time.Word}", points[0].X, points[^1].X, true),
            Y = Axis.Around("gas shut in, mmol", points.Select(p => p.Y), 0.1),
            Curves =
            [
                new("readings, temperature taken out", Ink.Cooling, points, [.. leak.Series.Select(p => $"{p.AmountMol * 1e3:0.###} mmol at {units.Moment(p.TimeS)}")]),
                new("line through them", Ink.Plain, [Line(leak.Series[0].TimeS), Line(leak.Series[^1].TimeS)], [], true),
            ],
        }.Draw(size);
    }

    /// <summary>The numbers.</summary>
    public void Table(HtmlText html)
    {
        var every = Math.Max(1, leak.Series.Count / MostRows);
        html.Table([">time", ">pressure", ">amount, mmol"], leak.Series.Where((_, i) => i % every == 0).Select(p => new[] { units.Moment(p.TimeS), units.Readout.Pressure(p.PressurePa), units.Readout.Figures(p.AmountMol * 1e3, 6) }));
    }
}
