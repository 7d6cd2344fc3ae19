namespace Coldwright.Report.Charts;

/// <summary>The plot's rectangle, its ticks and the way from axis units to px.</summary>
internal sealed class PlotFrame
{
    public const double StripHeight = 20;
    public const double StripGap = 8;

    // Pictures that stand under one another then begin at the same place.
    private const double LeastLeft = 36;

    private readonly LineChart _chart;
    private readonly ChartSize _size;

    public PlotFrame(LineChart chart, ChartSize size)
    {
        (_chart, _size) = (chart, size);
        var top = size.Font + 12 + (chart.Above is null ? 0 : StripHeight + StripGap);
        var bottom = size.Height - 2 * size.Font - 16 - (chart.Below is null ? 0 : StripHeight + StripGap);
        Y = Ticks.For(chart.Y, (int)((bottom - top) / 52) + 1);
        var names = new[] { chart.Above, chart.Below }.Where(s => s is not null).Select(s => TextWidth.Of(s!.Name, size.Font));
        var left = Y.Values.Select(v => TextWidth.Of(Y.Text(v), size.Font)).Concat(names).Append(LeastLeft).Max() + 10;
        Plot = new(left, top, size.Width - left - 16, bottom - top);
        X = TicksThatFit();
    }

    public Box Plot { get; }
    public Ticks X { get; }
    public Ticks Y { get; }

    /// <summary>y of the axis, below the lower strip.</summary>
    public double AxisY => Plot.Bottom + (_chart.Below is null ? 0 : StripHeight + StripGap);

    public double PxX(double x) => Plot.X + (x - X.Low) / (X.High - X.Low) * Plot.Width;

    public double PxY(double y) => Plot.Bottom - (y - Y.Low) / (Y.High - Y.Low) * Plot.Height;

    public (double X, double Y) Px((double X, double Y) p) => (PxX(p.X), PxY(p.Y));

    // Fewer ticks until their numbers stand apart.
    private Ticks TicksThatFit()
    {
        for (var most = 12; most > 2; most--)
        {
            var ticks = Ticks.For(_chart.X, most);
            var widest = ticks.Values.Select(v => TextWidth.Of(ticks.Text(v), _size.Font)).DefaultIfEmpty(0).Max();
            if (ticks.Step / (ticks.High - ticks.Low) * Plot.Width > widest + 18) return ticks;
        }
        return Ticks.For(_chart.X, 2);
    }
}
