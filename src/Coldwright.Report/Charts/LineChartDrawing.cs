namespace Coldwright.Report.Charts;

/// <summary>Draws one <see cref="LineChart"/>: areas, grid, lines, marks, then the labels where they find room.</summary>
internal sealed class LineChartDrawing
{
    private const int MostHoverPoints = 60;

    private readonly LineChart _chart;
    private readonly ChartSize _size;
    private readonly PlotFrame _frame;
    private readonly SvgWriter _svg = new();
    private readonly List<Segment> _strokes = [];

    public LineChartDrawing(LineChart chart, ChartSize size)
    {
        (_chart, _size) = (chart, size);
        _frame = new(chart, size);
    }

    public string Draw()
    {
        _svg.Open(_size.Width, _size.Height, _size.Class, _chart.Description, SvgWriter.Scales(_frame.Plot, (_frame.X.Low, _frame.X.High), (_frame.Y.Low, _frame.Y.High)));
        DrawAxes();
        DrawAreas();
        if (_chart.Above is { } above) DrawStrip(above, _frame.Plot.Y - PlotFrame.StripHeight - PlotFrame.StripGap);
        if (_chart.Below is { } below) DrawStrip(below, _frame.Plot.Bottom + PlotFrame.StripGap);
        DrawStrokes();
        DrawLabels();
        DrawHoverPoints();
        return _svg.Close();
    }

    private void DrawAxes()
    {
        var (plot, font) = (_frame.Plot, _size.Font);
        foreach (var y in _frame.Y.Values)
        {
            _svg.Line(new(plot.X, _frame.PxY(y), plot.Right, _frame.PxY(y)), "grid");
            _svg.Text(plot.X - 7, _frame.PxY(y) + 0.35 * font, _frame.Y.Text(y), font, "tick y", "end");
        }
        foreach (var x in _frame.X.Values)
        {
            var px = _frame.PxX(x);
            var half = TextWidth.Of(_frame.X.Text(x), font) / 2;
            _svg.Line(new(px, _frame.AxisY, px, _frame.AxisY + 5), "axis step");
            if (px + half < _size.Width) _svg.Text(px, _frame.AxisY + 6 + font, _frame.X.Text(x), font, "tick x", "middle");
        }
        _svg.Line(new(plot.X, _frame.AxisY, plot.Right, _frame.AxisY), "axis");
        _svg.Text(2, font + 1, _chart.Y.Label, font);
        _svg.Text(plot.Right, _size.Height - 5, _chart.X.Label, font, "", "end");
    }

    private void DrawAreas()
    {
        foreach (var area in _chart.Areas)
            _svg.Polygon(area.Points.Select(p => _frame.Px((p.X, p.High))).Concat(area.Points.Reverse().Select(p => _frame.Px((p.X, p.Low)))),
                $"area {ChartStyle.Class(area.Ink)}");
    }

    private void DrawStrip(Strip strip, double top)
    {
        var font = _size.Font - 1;
        var ink = ChartStyle.Class(strip.Ink);
        _svg.Text(_frame.Plot.X - 7, top + PlotFrame.StripHeight / 2 + 0.35 * font, strip.Name, font, $"label {ink}", "end");
        for (var i = 0; i < strip.Ranges.Count; i++)
        {
            var (from, to, text, shorter) = strip.Ranges[i];
            var (left, right) = (_frame.PxX(from), _frame.PxX(to));
            _svg.Rectangle(new(left, top, right - left, PlotFrame.StripHeight), $"strip {ink}", text, i % 2 == 0 ? 0.3 : 0.14);
            var fitting = new[] { text, shorter }.FirstOrDefault(t => TextWidth.Of(t, font) + 8 < right - left);
            if (fitting is not null) _svg.Text((left + right) / 2, top + PlotFrame.StripHeight / 2 + 0.35 * font, fitting, font, "plain label", "middle");
        }
    }

    private void DrawStrokes()
    {
        foreach (var upright in _chart.Uprights)
            Stroke(new(_frame.PxX(upright.X), _frame.Plot.Y, _frame.PxX(upright.X), _frame.Plot.Bottom), $"rule {ChartStyle.Class(upright.Ink)}");
        foreach (var curve in _chart.Curves)
        {
            var points = curve.Points.Select(_frame.Px).ToArray();
            _svg.Polyline(points, $"line {ChartStyle.Class(curve.Ink)}{(curve.Thin ? " thin" : "")}");
            _strokes.AddRange(points.Zip(points.Skip(1), (a, b) => new Segment(a.X, a.Y, b.X, b.Y)));
        }
        foreach (var span in _chart.Spans)
        {
            var (x, from, to, ink) = (_frame.PxX(span.X), _frame.PxY(span.From), _frame.PxY(span.To), $"span {ChartStyle.Class(span.Ink)}");
            Stroke(new(x, from, x, to), ink);
            Stroke(new(x - 5, from, x + 5, from), ink);
            Stroke(new(x - 5, to, x + 5, to), ink);
        }
        foreach (var mark in _chart.Marks)
            _svg.Circle(_frame.PxX(mark.X), _frame.PxY(mark.Y), 5.5, $"mark {ChartStyle.Class(mark.Ink)}", string.Join(", ", mark.Lines));
    }

    private void Stroke(Segment segment, string cssClass)
    {
        _svg.Line(segment, cssClass);
        _strokes.Add(segment);
    }

    private void DrawLabels()
    {
        var placer = new LabelPlacer(_frame.Plot.Grown(-2), _size.Font, _strokes);
        foreach (var mark in _chart.Marks) placer.Reserve(new Box(_frame.PxX(mark.X), _frame.PxY(mark.Y), 0, 0).Grown(6));
        foreach (var label in Labels())
            if (placer.Place(label) is { } placed) DrawLabel(placed);
    }

    // Scarce places go to what matters most: marks, distances, lines, then the rest.
    private IEnumerable<Label> Labels()
    {
        foreach (var mark in _chart.Marks) yield return new(mark.Lines, mark.Ink, true, [_frame.Px((mark.X, mark.Y))]);
        foreach (var span in _chart.Spans) yield return new(span.Lines, span.Ink, true, Along((_frame.PxX(span.X), _frame.PxY(span.From)), (_frame.PxX(span.X), _frame.PxY(span.To))));
        foreach (var curve in _chart.Curves.Where(c => c.Name != "")) yield return new([curve.Name], curve.Ink, !curve.Thin, Along(curve));
        foreach (var upright in _chart.Uprights) yield return new(upright.Lines, upright.Ink, false, Along((_frame.PxX(upright.X), _frame.Plot.Y), (_frame.PxX(upright.X), _frame.Plot.Bottom)));
        foreach (var area in _chart.Areas)
            if (area.Label is { } text) yield return new([text], area.Ink, false, Inside(area));
    }

    private static (double X, double Y)[] Along((double X, double Y) a, (double X, double Y) b) =>
        [.. new[] { 0.1, 0.3, 0.5, 0.7, 0.9 }.Select(t => (a.X + t * (b.X - a.X), a.Y + t * (b.Y - a.Y)))];

    private (double X, double Y)[] Along(Curve curve) =>
        [.. new[] { 0.15, 0.3, 0.45, 0.6, 0.75, 0.9 }.Select(t => _frame.Px(Between(curve.Points, t * (curve.Points.Count - 1))))];

    // A level has two points only, and is labelled along all of its length.
    private static (double X, double Y) Between(IReadOnlyList<(double X, double Y)> points, double at)
    {
        var (a, b) = (points[(int)at], points[Math.Min((int)at + 1, points.Count - 1)]);
        return (a.X + (at - (int)at) * (b.X - a.X), a.Y + (at - (int)at) * (b.Y - a.Y));
    }

    private (double X, double Y)[] Inside(Area area)
    {
        var widest = area.Points.MaxBy(p => p.High - p.Low);
        return [_frame.Px((widest.X, (widest.Low + widest.High) / 2))];
    }

    private void DrawLabel(PlacedLabel placed)
    {
        var (label, box, anchor) = placed;
        var ink = ChartStyle.Class(label.Ink);
        if (placed.Leader is { } leader) _svg.Line(leader, $"leader {ink}");
        var atRight = box.X >= anchor.X;
        var centred = !atRight && box.Right > anchor.X;
        for (var i = 0; i < label.Lines.Count; i++)
            _svg.Text(centred ? box.X + box.Width / 2 : atRight ? box.X : box.Right, box.Y + (i + 0.95) * _size.Font * 1.25, label.Lines[i], _size.Font,
                $"label {ink}{(label.Bold ? " bold" : "")}", centred ? "middle" : atRight ? "start" : "end");
    }

    private void DrawHoverPoints()
    {
        foreach (var curve in _chart.Curves)
        {
            if (curve.Hover.Count != curve.Points.Count) continue;
            var every = (curve.Points.Count + MostHoverPoints - 1) / MostHoverPoints;
            for (var i = 0; i < curve.Points.Count; i += every)
                _svg.Circle(_frame.PxX(curve.Points[i].X), _frame.PxY(curve.Points[i].Y), 7, $"touch {ChartStyle.Class(curve.Ink)}", curve.Hover[i]);
        }
    }
}
