using Coldwright.Fluids.Envelopes;
using Coldwright.Report.Charts;

namespace Coldwright.Report.Envelopes;

/// <summary>Draws one envelope: grid, lines, critical points, then names where they find room.</summary>
internal sealed class EnvelopeDrawing
{
    private readonly EnvelopeReport _report;
    private readonly Readout _readout;
    private readonly ChartSize _size;
    private readonly EnvelopeFrame _frame;
    private readonly SvgWriter _svg = new();
    private readonly List<Segment> _strokes = [];

    public EnvelopeDrawing(EnvelopeReport report, Readout readout, ChartSize size)
    {
        (_report, _readout, _size) = (report, readout, size);
        _frame = new(report, readout, size);
    }

    public string Draw()
    {
        _svg.Open(_size.Width, _size.Height, _size.Class, Description(), SvgWriter.Scales(_frame.Plot, (_frame.Temperatures.Low, _frame.Temperatures.High), _frame.PressureRange, isLogarithmicY: true));
        DrawAxes();
        if (_report.Second is { } second) DrawLines(second, thin: true);
        DrawLines(_report.Main, thin: false);
        DrawMarksAndLabels();
        DrawHovers();
        return _svg.Close();
    }

    private string Description()
    {
        var figures = EnvelopeWords.Figures(_report, _readout).Select(f => $"{f.Name}: {f.Value}");
        return $"Phase envelope of {_report.Mixture}. {string.Join(". ", figures)}.";
    }

    private void DrawAxes()
    {
        var (plot, font) = (_frame.Plot, _size.Font);
        foreach (var p in _frame.Pressures)
        {
            _svg.Line(new(plot.X, _frame.Y(p), plot.Right, _frame.Y(p)), "grid");
            _svg.Text(plot.X - 7, _frame.Y(p) + 0.35 * font, EnvelopeFrame.Text(p), font, "tick y", "end");
        }
        foreach (var t in _frame.Temperatures.Values)
        {
            double x = _frame.X(t), half = TextWidth.Of(_frame.Temperatures.Text(t), font) / 2;
            _svg.Line(new(x, plot.Y, x, plot.Bottom), "grid");
            _svg.Line(new(x, plot.Bottom, x, plot.Bottom + 5), "axis step");
            if (x + half < _size.Width) _svg.Text(x, plot.Bottom + 6 + font, _frame.Temperatures.Text(t), font, "tick x", "middle");
        }
        _svg.Line(new(plot.X, plot.Bottom, plot.Right, plot.Bottom), "axis");
        _svg.Text(2, font + 1, $"pressure, {_report.PressureSymbol}", font);
        _svg.Text(plot.Right, _size.Height - 5, $"temperature, {_readout.TemperatureSymbol}", font, "", "end");
    }

    private void DrawLines(ModelEnvelope model, bool thin)
    {
        foreach (var line in model.Envelope.Lines)
        {
            var points = Shown(line);
            if (points.Length < 2) continue;
            bool broken = thin || line.Kind == BoundaryKind.Freezing;
            _svg.Polyline(points, $"line {ChartStyle.Class(InkOf(line.Kind))}{(broken ? " thin" : "")}");
            _strokes.AddRange(points.Zip(points.Skip(1), (a, b) => new Segment(a.X, a.Y, b.X, b.Y)));
        }
    }

    private void DrawMarksAndLabels()
    {
        var critical = _report.Main.Envelope.CriticalPoints.Where(c => _frame.Holds(At(c))).ToArray();
        var placer = new LabelPlacer(_frame.Plot.Grown(-2), _size.Font, _strokes);
        foreach (var c in critical)
        {
            var (x, y) = _frame.Px(At(c));
            _svg.Circle(x, y, c.Stable ? 5.5 : 3.5, $"mark {ChartStyle.Class(Ink.Plain)}", CriticalText(c));
            placer.Reserve(new Box(x, y, 0, 0).Grown(6));
        }
        foreach (var label in Labels(critical))
            if (placer.Place(label) is { } placed && (label.Ink != Ink.Loss || IsClear(placed))) DrawLabel(placed);
    }

    // a region's name on its border, or far from its middle, would name the wrong one
    private bool IsClear(PlacedLabel placed) => placed.Box.DistanceTo(placed.Anchor.X, placed.Anchor.Y) < 30 && !_strokes.Any(s => placed.Box.LengthInside(s) > 0);

    // scarce places go to what matters most: critical points, the regions, the lines' names
    private IEnumerable<Label> Labels(IReadOnlyList<CriticalPoint> critical)
    {
        foreach (var c in critical.Where(c => c.Stable))
            yield return new(_size.IsPhone ? ["critical point"] : ["critical point", $"{_readout.Temperature(c.TemperatureK)}, {EnvelopeWords.Pressure(_report, _readout, c.PressurePa)}"], Ink.Plain, true, [_frame.Px(At(c))]);
        foreach (var group in _report.Main.Envelope.Lines.GroupBy(l => (l.Kind, Name: EnvelopeWords.Name(l))))
        {
            var places = group.SelectMany(Shown).ToArray();
            if (places.Length < 2) continue;
            double[] shares = group.Key.Kind == BoundaryKind.Freezing ? [0.95, 0.8, 0.65, 0.5, 0.35] : [0.15, 0.3, 0.45, 0.6, 0.75, 0.9];
            yield return new([group.Key.Name], InkOf(group.Key.Kind), group.Key.Kind != BoundaryKind.Freezing, [.. shares.Select(s => places[(int)(s * (places.Length - 1))])]);
        }
        foreach (var region in _report.Main.Envelope.Regions.Where(r => r.Room > 0.012 && _frame.Holds(r.Inside)))
            yield return new(region.Phases == "vapour + two liquids" ? ["VAPOUR +", region.Phases[9..].ToUpperInvariant()] : [region.Phases.ToUpperInvariant()], Ink.Loss, false, [_frame.Px(region.Inside)]);
    }

    private void DrawLabel(PlacedLabel placed)
    {
        var (label, box, anchor) = placed;
        string ink = ChartStyle.Class(label.Ink);
        if (label.Ink != Ink.Loss && box.DistanceTo(anchor.X, anchor.Y) > 16)
            _svg.Line(new(anchor.X, anchor.Y, Math.Clamp(anchor.X, box.X, box.Right), Math.Clamp(anchor.Y, box.Y, box.Bottom)), $"leader {ink}");
        bool atRight = box.X >= anchor.X, centred = !atRight && box.Right > anchor.X;
        for (var i = 0; i < label.Lines.Count; i++)
            _svg.Text(centred ? box.X + box.Width / 2 : atRight ? box.X : box.Right, box.Y + (i + 0.95) * _size.Font * 1.25, label.Lines[i], _size.Font,
                $"label {ink}{(label.Bold ? " bold" : "")}", centred ? "middle" : atRight ? "start" : "end");
    }

    private void DrawHovers()
    {
        foreach (var line in _report.Main.Envelope.Lines)
        {
            var shown = line.Points.Where(_frame.Holds).ToArray();
            var every = (shown.Length + 39) / 40;
            for (var i = 0; i < shown.Length; i += every)
                _svg.Circle(_frame.Px(shown[i]).X, _frame.Px(shown[i]).Y, 7, $"touch {ChartStyle.Class(InkOf(line.Kind))}",
                    $"{EnvelopeWords.Name(line)}: {_readout.TemperatureFull(shown[i].TemperatureK)}, {_readout.PressureFull(shown[i].PressurePa)}");
        }
    }

    private (double X, double Y)[] Shown(BoundaryLine line) => [.. line.Points.Where(_frame.Holds).Select(_frame.Px)];

    private string CriticalText(CriticalPoint c) =>
        $"{(c.Stable ? "critical point" : "critical point hidden by other phases")}: {_readout.TemperatureFull(c.TemperatureK)}, {_readout.PressureFull(c.PressurePa)}";

    private static BoundaryPoint At(CriticalPoint c) => new(c.TemperatureK, c.PressurePa);

    private static Ink InkOf(BoundaryKind kind) => kind switch
    {
        BoundaryKind.Bubble => Ink.Low,
        BoundaryKind.Dew => Ink.High,
        BoundaryKind.LiquidLiquid => Ink.Cooling,
        BoundaryKind.ThreePhase => Ink.Second,
        _ => Ink.Plain,
    };
}
