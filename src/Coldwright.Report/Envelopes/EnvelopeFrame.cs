using Coldwright.Fluids.Envelopes;
using Coldwright.Report.Charts;

namespace Coldwright.Report.Envelopes;

/// <summary>The plot's rectangle, its ticks and the way from a state to px: temperature by differences, pressure by ratios.</summary>
internal sealed class EnvelopeFrame
{
    private readonly double _low, _high;

    public EnvelopeFrame(EnvelopeReport report, Readout readout, ChartSize size)
    {
        (Report, Readout) = (report, readout);
        var window = report.Main.Envelope.Window;
        // the boundaries; a freezing line runs on wherever the window goes
        var points = report.Envelopes.SelectMany(e => e.Envelope.Lines.Where(l => l.Kind != BoundaryKind.Freezing).SelectMany(l => l.Points)).ToArray();
        double top = points.Length == 0 ? window.HighestPa : Math.Min(window.HighestPa, 1.5 * points.Max(p => p.PressurePa));
        double warm = points.Length == 0 ? window.WarmestK!.Value : points.Max(p => p.TemperatureK) + 0.09 * (points.Max(p => p.TemperatureK) - window.ColdestK!.Value);
        (_low, _high) = (Math.Log(report.PressureValue(window.LowestPa)), Math.Log(report.PressureValue(top)));
        Pressures = [.. Decades(Math.Exp(_low), Math.Exp(_high))];
        double left = Pressures.Max(p => TextWidth.Of(Text(p), size.Font)) + 12, above = size.Font + 12;
        Plot = new(left, above, size.Width - left - 16, size.Height - above - 2 * size.Font - 16);
        Temperatures = Fitting(new Axis("", readout.TemperatureValue(window.ColdestK!.Value), readout.TemperatureValue(warm), true), size);
    }

    private EnvelopeReport Report { get; }
    private Readout Readout { get; }

    public Box Plot { get; }
    public Ticks Temperatures { get; }

    /// <summary>Pressures of the ticks, in the unit of the axis: 1, 2, 5 times powers of ten.</summary>
    public IReadOnlyList<double> Pressures { get; }

    /// <summary>Lowest and highest pressure, in the unit of the axis.</summary>
    public (double Low, double High) PressureRange => (Math.Exp(_low), Math.Exp(_high));

    public double X(double temperature) => Plot.X + (temperature - Temperatures.Low) / (Temperatures.High - Temperatures.Low) * Plot.Width;

    public double Y(double pressure) => Plot.Bottom - (Math.Log(pressure) - _low) / (_high - _low) * Plot.Height;

    public (double X, double Y) Px(BoundaryPoint p) => (X(Readout.TemperatureValue(p.TemperatureK)), Y(Report.PressureValue(p.PressurePa)));

    /// <summary>True when a state lies on the paper.</summary>
    public bool Holds(BoundaryPoint p) => Px(p) is var (x, y) && x >= Plot.X - 0.5 && x <= Plot.Right + 0.5 && y >= Plot.Y - 0.5 && y <= Plot.Bottom + 0.5;

    public static string Text(double pressure) => pressure.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture);

    private static IEnumerable<double> Decades(double low, double high)
    {
        for (double power = Math.Pow(10, Math.Floor(Math.Log10(low))); power <= high; power *= 10)
            foreach (double digit in (double[])[1, 2, 5])
                if (digit * power >= low * (1 - 1e-9) && digit * power <= high * (1 + 1e-9)) yield return digit * power;
    }

    private Ticks Fitting(Axis axis, ChartSize size)
    {
        for (var most = 12; most > 2; most--)
        {
            var ticks = Ticks.For(axis, most);
            if (ticks.Step / (ticks.High - ticks.Low) * Plot.Width > ticks.Values.Select(v => TextWidth.Of(ticks.Text(v), size.Font)).DefaultIfEmpty(0).Max() + 18) return ticks;
        }
        return Ticks.For(axis, 2);
    }
}
