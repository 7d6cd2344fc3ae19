using Coldwright.Report.Terminal;

namespace Coldwright.Report.Charts;

/// <summary>Draws one <see cref="PieceChart"/>: names left of the bars on a page, above them on a telephone; room for every bar's words on its side.</summary>
internal sealed class PieceChartDrawing
{
    private const double Gap = 8, KeySquare = 11;
    private const int NameLetters = 34, PhoneNameLetters = 46;

    private readonly PieceChart _chart;
    private readonly ChartSize _size;
    private readonly SvgWriter _svg = new();
    private readonly IReadOnlyList<string>[] _names;
    private readonly double _lane, _line;
    private readonly Box _plot, _bars;
    private readonly Ticks _ticks;

    public PieceChartDrawing(PieceChart chart, ChartSize size)
    {
        (_chart, _size) = (chart, size);
        (_lane, _line) = (size.IsPhone ? 17 : 18, 1.2 * size.Font);
        _names = [.. chart.Rows.Select(r => Wrapping.Wrap(r.Name, size.IsPhone ? PhoneNameLetters : NameLetters, 2))];
        var left = size.IsPhone ? 4 : _names.SelectMany(n => n).Max(n => TextWidth.Of(n, size.Font)) + 14;
        var top = chart.Key.Count > 0 ? KeyRows() * 1.5 * size.Font + 6 : 4;
        _plot = new(left, top, size.Width - left - 6, Enumerable.Range(0, chart.Rows.Count).Sum(RowHeight));
        var lanes = chart.Rows.SelectMany(r => r.Lanes).ToArray();
        double Room(bool negative) => lanes.Where(l => IsNegative(l) == negative).Select(l => TextWidth.Of(l.Text, size.Font) + Gap + 3).DefaultIfEmpty(0).Max();
        var (before, after) = (Room(true), Room(false));
        _bars = new(left + before, top, _plot.Width - before - after, _plot.Height);
        var ends = lanes.SelectMany(l => l.Pieces).SelectMany(p => new[] { p.From, p.To }).Append(0).ToArray();
        _ticks = Fitting(new Axis("", ends.Min(), ends.Max(), Exact: true));
    }

    public string Draw()
    {
        var (font, height) = (_size.Font, _plot.Bottom + 2 * _size.Font + 18);
        _svg.Open(_size.Width, height, _size.Class, _chart.Description);
        DrawKey();
        foreach (var x in _ticks.Values)
        {
            var half = TextWidth.Of(_ticks.Text(x), font) / 2;
            _svg.Line(new(Px(x), _plot.Y, Px(x), _plot.Bottom + 4), "grid");
            _svg.Text(Math.Clamp(Px(x), half, _size.Width - half), _plot.Bottom + 6 + font, _ticks.Text(x), font, "", "middle");
        }
        // Before the names, which on a telephone run across it.
        _svg.Line(new(Px(0), _plot.Y, Px(0), _plot.Bottom), "axis");
        var top = _plot.Y;
        for (var i = 0; i < _chart.Rows.Count; i++)
        {
            DrawRow(_chart.Rows[i], _names[i], top, RowHeight(i));
            top += RowHeight(i);
        }
        _svg.Text(_size.Width - 6, height - 5, _chart.AxisLabel, font, "", "end");
        return _svg.Close();
    }

    private double RowHeight(int i)
    {
        var (bars, names) = (_chart.Rows[i].Lanes.Count * _lane, _names[i].Count * _line);
        return (_size.IsPhone ? bars + names + 3 : Math.Max(bars, names)) + 12;
    }

    private void DrawRow(PieceRow row, IReadOnlyList<string> name, double top, double height)
    {
        var font = _size.Font;
        var barsTop = _size.IsPhone ? top + 5 + name.Count * _line + 3 : top + (height - row.Lanes.Count * _lane) / 2;
        var nameTop = _size.IsPhone ? top + 5 : top + (height - name.Count * _line) / 2;
        for (var i = 0; i < name.Count; i++)
            _svg.Text(_size.IsPhone ? _plot.X : _plot.X - 12, nameTop + i * _line + 0.85 * font, name[i], font, "label plain", _size.IsPhone ? "start" : "end");
        for (var i = 0; i < row.Lanes.Count; i++)
        {
            var (lane, y) = (row.Lanes[i], barsTop + i * _lane);
            // A piece too thin to see is still a hairline: it was computed, not left out.
            foreach (var p in lane.Pieces)
                _svg.Rectangle(new(Px(Math.Min(p.From, p.To)), y + 1.5, Math.Max(Px(Math.Max(p.From, p.To)) - Px(Math.Min(p.From, p.To)), 1.2), _lane - 3), $"bar {ChartStyle.Class(p.Ink)}", $"{row.Name}: {p.Hover}");
            var baseline = y + _lane / 2 + 0.35 * font;
            if (IsNegative(lane)) _svg.Text(Px(lane.Pieces.Min(p => Math.Min(p.From, p.To))) - Gap, baseline, lane.Text, font, "label plain", "end");
            else _svg.Text(Px(lane.Pieces.Select(p => Math.Max(p.From, p.To)).Append(0).Max()) + Gap, baseline, lane.Text, font, "label plain");
        }
    }

    private void DrawKey()
    {
        var (x, y) = (_size.IsPhone ? 4.0 : _plot.X, 0.0);
        foreach (var (text, ink) in _chart.Key)
        {
            var width = KeyWidth(text);
            if (x > _plot.X && x + width > _size.Width) (x, y) = (_size.IsPhone ? 4.0 : _plot.X, y + 1.5 * _size.Font);
            _svg.Rectangle(new(x, y + 3, KeySquare, KeySquare), $"bar {ChartStyle.Class(ink)}", null);
            _svg.Text(x + KeySquare + 6, y + 3 + 0.85 * KeySquare, text, _size.Font, "label plain");
            x += width;
        }
    }

    // On a telephone the words of the key may take more than one row.
    private int KeyRows()
    {
        if (!_size.IsPhone) return 1;
        var (rows, x) = (1, 4.0);
        foreach (var (text, _) in _chart.Key)
        {
            if (x > 4 && x + KeyWidth(text) > _size.Width) (rows, x) = (rows + 1, 4);
            x += KeyWidth(text);
        }
        return rows;
    }

    private double KeyWidth(string text) => KeySquare + 6 + TextWidth.Of(text, _size.Font) + 20;

    // Fewer ticks until their numbers stand apart.
    private Ticks Fitting(Axis axis)
    {
        for (var most = 8; most > 2; most--)
        {
            var ticks = Ticks.For(axis, most);
            var widest = ticks.Values.Select(v => TextWidth.Of(ticks.Text(v), _size.Font)).DefaultIfEmpty(0).Max();
            if (ticks.Step / (ticks.High - ticks.Low) * _bars.Width > widest + 9) return ticks;
        }
        return Ticks.For(axis, 2);
    }

    private static bool IsNegative(PieceLane lane) => lane.Pieces.Count > 0 && lane.Pieces.All(p => p.From <= 0 && p.To <= 0) && lane.Pieces.Any(p => p.From < 0 || p.To < 0);

    private double Px(double value) => _bars.X + (value - _ticks.Low) / (_ticks.High - _ticks.Low) * _bars.Width;
}
