namespace Coldwright.Report.Charts;

/// <summary>Draws one <see cref="BarChart"/>: names left of the bars on a page, above them on a telephone.</summary>
internal sealed class BarChartDrawing
{
    private readonly BarChart _chart;
    private readonly ChartSize _size;
    private readonly SvgWriter _svg = new();
    private readonly Ticks _ticks;
    private readonly Box _plot;
    private readonly double _row;

    public BarChartDrawing(BarChart chart, ChartSize size)
    {
        (_chart, _size) = (chart, size);
        _row = size.IsPhone ? 42 : 30;
        var names = chart.Bars.Max(b => TextWidth.Of(b.Name, size.Font, b.Bold)) + 14;
        // A name too long for its column would be the only reason to shrink the bars further; it then goes above its bar as on a telephone.
        NamesAbove = size.IsPhone || names > 0.45 * size.Width;
        if (NamesAbove) _row = 42;
        var left = NamesAbove ? 4 : names;
        _plot = new(left, 4, size.Width - left - 16, _row * chart.Bars.Count);
        var ends = chart.Bars.SelectMany(b => new[] { b.From, b.To }).Append(0).ToArray();
        _ticks = Ticks.For(new Axis("", ends.Min(), ends.Max()), size.IsPhone ? 5 : 7);
    }

    private bool NamesAbove { get; }

    public string Draw()
    {
        var (font, height) = (_size.Font, _plot.Bottom + 2 * _size.Font + 18);
        _svg.Open(_size.Width, height, _size.Class, _chart.Description);
        foreach (var x in _ticks.Values)
        {
            var half = TextWidth.Of(_ticks.Text(x), font) / 2;
            _svg.Line(new(Px(x), _plot.Y, Px(x), _plot.Bottom + 4), "grid");
            _svg.Text(Math.Clamp(Px(x), half, _size.Width - half), _plot.Bottom + 6 + font, _ticks.Text(x), font, "", "middle");
        }
        for (var i = 0; i < _chart.Bars.Count; i++) DrawBar(i);
        _svg.Line(new(Px(0), _plot.Y, Px(0), _plot.Bottom), "axis");
        _svg.Text(_plot.Right, height - 5, _chart.AxisLabel, font, "", "end");
        return _svg.Close();
    }

    private void DrawBar(int i)
    {
        var (bar, font) = (_chart.Bars[i], _size.Font);
        var top = _plot.Y + i * _row;
        var barTop = NamesAbove ? top + font + 6 : top + 5;
        var barHeight = NamesAbove ? _row - font - 12 : _row - 10;
        var (left, right) = (Px(Math.Min(bar.From, bar.To)), Px(Math.Max(bar.From, bar.To)));
        // A bar too thin to see is still drawn as a hairline: it is a loss that was computed, not one that was left out.
        _svg.Rectangle(new(left, barTop, Math.Max(right - left, 1.2), barHeight), $"bar {ChartStyle.Class(bar.Ink)}", $"{bar.Name}: {bar.ValueText}");
        if (i + 1 < _chart.Bars.Count && !_chart.Bars[i + 1].Bold) _svg.Line(new(Px(bar.Bold ? bar.To : bar.From), barTop + barHeight, Px(bar.Bold ? bar.To : bar.From), barTop + _row), "axis");
        var weight = bar.Bold ? " bold" : "";
        // clear of the axis, which runs past it
        if (NamesAbove) _svg.Text(_plot.X + 4, top + font + 1, bar.Name, font, $"label plain{weight}");
        else _svg.Text(_plot.X - 10, barTop + barHeight / 2 + 0.35 * font, bar.Name, font, $"label plain{weight}", "end");
        DrawValue(bar, left, right, barTop + barHeight / 2 + 0.35 * font, weight);
    }

    private void DrawValue(Bar bar, double left, double right, double baseline, string weight)
    {
        var width = TextWidth.Of(bar.ValueText, _size.Font, bar.Bold) + 8;
        if (right + width < _size.Width) _svg.Text(right + 7, baseline, bar.ValueText, _size.Font, $"label plain{weight}");
        else if (left - width > _plot.X) _svg.Text(left - 7, baseline, bar.ValueText, _size.Font, $"label plain{weight}", "end");
        else _svg.Text(right - 8, baseline, bar.ValueText, _size.Font, $"onbar{weight}", "end");
    }

    private double Px(double value) => _plot.X + (value - _ticks.Low) / (_ticks.High - _ticks.Low) * _plot.Width;
}
