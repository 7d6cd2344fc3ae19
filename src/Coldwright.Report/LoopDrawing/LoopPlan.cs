using Coldwright.Machine.Description;
using Coldwright.Machine.Files;
using Coldwright.Machine.Layout;
using Coldwright.Report.Charts;
using Coldwright.Report.Loops.Signs;
using Coldwright.Report.Parts;

namespace Coldwright.Report.Loops;

/// <summary>
/// Makes the picture from above, as the temperature falls: compressor, aftercooler, warm exchanger, precooler in the room; then the wall of the
/// cold box, recuperator, throttle, coil and load; below the box what the liquid runs into. Three upright lines carry the streams.
/// </summary>
internal sealed class LoopPlan
{
    private readonly MachineDescription _machine;
    private readonly LoopLayout _layout;
    private readonly LoopFigures _figures;
    private readonly Readout _readout;
    private readonly LoopSize _size;
    private readonly Canvas _canvas;
    private readonly Branches _branches;
    private readonly Track _high, _low, _product;

    public LoopPlan(MachineDescription machine, LoopLayout layout, LoopFigures figures, UnitSystem units, bool isPhone)
    {
        (_machine, _layout, _figures) = (machine, layout, figures);
        _readout = new(units, machine.Room.PressurePa, typographic: true);
        _size = LoopSize.For(isPhone, layout, Branches.Depth(machine, layout));
        _canvas = new(_size, figures, new PartUnits(_readout, machine.Room.PressurePa));
        _branches = new(_canvas, machine, layout, _size.LowX);
        _high = new(_size.HighX, WireForm.High, false, 1, _size.LowX - 12);
        _low = _size.LowLabelsRight ? new(_size.LowX, WireForm.Low, true, 1, _size.Right) : new(_size.LowX, WireForm.Low, true, -1, _size.HighX + 12);
        _product = new(_size.ProductX, WireForm.Product, false, -1, _size.Left);
    }

    /// <summary>The picture.</summary>
    public LoopPicture Make()
    {
        var stations = new Stations(_canvas);
        var head = Head();
        stations.Compressor(_layout.Compressor, _high, _low, head);
        var product = _layout.Feed is { } feed ? Product(stations, feed, head) : null;

        var at = Run(_layout.Compressor.Name);
        at.Draw(null, false);
        _canvas.InLine(_high, _layout.Aftercooler, RoomSigns.Aftercooler(), at.Last);
        at = Run(_layout.Aftercooler.Name);
        if (_layout.WarmExchanger is { } warm)
        {
            at.Draw(null, false);
            var back = Upward($"{warm.Name}.low");
            back.Draw(null, false);
            stations.Exchanger(warm, ExchangerSigns.WarmExchanger, 100, _high, at.Last, _low, back.Last);
            at = Run($"{warm.Name}.high");
        }
        if (_layout.Precooler is { } precooler)
        {
            at.Draw(null, false);
            if (_layout.FeedPrecooled) product!.Draw(null, false);
            stations.Precooler(precooler, _high, at.Last, _layout.FeedPrecooled ? _product : null, product?.Last);
            at = Run($"{precooler.Name}.high");
            if (_layout.FeedPrecooled) product = new(_canvas, _branches, _product, After(_layout.ProductPath, $"{precooler.Name}.feed"));
        }
        var up = Upward($"{_layout.Recuperator.Name}.low");
        var wall = IntoTheBox(at, up, product);
        stations.Exchanger(_layout.Recuperator, h => ExchangerSigns.Recuperator(_layout.Recuperator, h), 160, _high, at.Last, _low, up.Last);

        at = Run($"{_layout.Recuperator.Name}.high");
        at.Draw(null, wall is not null);
        _canvas.InLine(_high, _layout.Throttle, ColdSigns.Throttle(_layout.Throttle), at.Last);
        _high.Form = WireForm.Low;
        at = Run(_layout.Throttle.Name);
        at.Draw(null, wall is not null);
        up = new(_canvas, _branches, _low, After(_layout.LoopPath, _layout.Coil.Name));
        up.Draw(null, wall is not null);
        var end = new ColdEnd(_layout, _figures, _canvas, _branches);
        end.Load(_high, at.Last, _low, up.Last, product is null ? null : _product, product?.Last);
        var enclosure = wall is null ? null : end.Close(wall, _layout.ColdBox!);
        end.Below(enclosure is not null);
        Rest();
        return new()
        {
            Size = _size, Height = _canvas.Packing.Bottom(0, _size.Width) + 10, Signs = _canvas.Signs, Wires = _canvas.Wires, Texts = _canvas.Texts,
            Leads = _canvas.Leads, OilReturn = _canvas.OilReturn, ColdBox = enclosure,
        };
    }

    /// <summary>A stretch of the loop that flows down, from a port to the next large part.</summary>
    private Run Run(string port) => new(_canvas, _branches, _high, After(_layout.LoopPath, port));

    /// <summary>The stretch of the loop that flows up from a port; below a buffer's bleed, which ends in its uppermost line.</summary>
    private Run Upward(string port)
    {
        if (_branches.JoinY is { } join) _low.Y = Math.Max(_low.Y, join + 6);
        return new(_canvas, _branches, _low, After(_layout.LoopPath, port));
    }

    private static PathStep[] After(IReadOnlyList<PathStep> path, string port)
    {
        var from = path.Select((s, i) => (s, i)).First(p => p.s.Port == port).i + 1;
        var steps = path.Skip(from).ToList();
        var to = steps.FindIndex(s => s.Part is not ValvePart);
        return [.. to < 0 ? steps : steps.Take(to + 1)];
    }

    private Run Product(Stations stations, FeedPart feed, double head)
    {
        stations.Feed(feed, _product, _layout.ProductPath[1].Line!, head);
        return new(_canvas, _branches, _product, After(_layout.ProductPath, feed.Name));
    }

    // What stands in the room on either side, then the wall, then what stands inside above the recuperator.
    private Wall? IntoTheBox(Run down, Run up, Run? product)
    {
        if (_layout.ColdBox is not { } box)
        {
            down.Draw(null, false);
            up.Draw(null, false);
            product?.Draw(null, false);
            return null;
        }
        foreach (var run in (Run?[])[down, up, product]) run?.Draw(false, false);
        Track[] tracks = product is null ? [_high, _low] : [_product, _high, _low];
        var y = Math.Max(_canvas.Packing.Bottom(0, _size.Width), tracks.Max(t => t.Y)) + 10;
        var wall = new Wall(y, [.. tracks.Select(t => t.X)]);
        foreach (var track in tracks) track.Y = y + _size.EndWall;
        _canvas.Packing.Take(new(0, y, _size.Width, _size.EndWall));
        var x = _low.X + _low.Side * 14;
        var text = _canvas.TextOf(box, Math.Abs(_low.Edge - x));
        _canvas.Add(box.Name, text, x, _canvas.Packing.Fit(y + _size.EndWall + 4, Canvas.TextBox(text, x, _low.Side < 0)), _low.Side < 0);
        foreach (var run in (Run?[])[down, up, product]) run?.Draw(null, true);
        return wall;
    }

    // The room, and every finding that belongs to no part or line.
    private double Head()
    {
        var places = _machine.Parts.Select(p => p.Name).Concat(_machine.Lines.Select(LoopFigures.PlaceOf)).ToHashSet(StringComparer.Ordinal);
        var text = new TextBlock(_size, _size.Right - _size.Left);
        foreach (var place in _figures.Marks.Select(m => m.Place).Where(p => !places.Contains(p)).Distinct())
            text.Add($"{place}: {_figures.MarkAt(place)!.Word}", TextTone.Warn);
        text.Add($"room {_readout.Temperature(_machine.Room.TemperatureK)}", TextTone.Quiet);
        _canvas.Add("", text, _size.Left, 6, false);
        return 6 + text.Height;
    }

    // What hangs on no line that was drawn, and lines that could only be named.
    private void Rest()
    {
        var x = _size.Left + 12;
        double Below() => _canvas.Packing.Bottom(0, _size.Width) + 14;
        void Write(string place, string words)
        {
            var text = new TextBlock(_size, _size.Right - _size.Left).Add(words, TextTone.Quiet);
            _canvas.Add(place, text, _size.Left, Below(), false);
        }
        foreach (var port in _machine.Lines.Select(l => l.From).Distinct().Where(p => _branches.IsDrawn(Ports.PartName(p))).ToArray())
            foreach (var line in _branches.From(port))
            {
                Write("", $"from {port}:");
                var y = Below();
                _branches.Node(line, [(x, y - 10)], x, x, 1, _size.Right, WireForm.High.Side, false, y + 8);
            }
        var led = _machine.Lines.Select(l => l.To).ToHashSet(StringComparer.Ordinal);
        foreach (var part in _machine.Parts.Where(p => p is ValvePart or ReliefPart).OrderBy(p => led.Contains(p.Name)))
            if (!_branches.IsDrawn(part.Name))
            {
                Write("", "joined to nothing that is drawn:");
                _branches.Root(part, x, _size.Right, Below());
            }
        foreach (var line in _branches.LeftOut) Write(LoopFigures.PlaceOf(line), $"also joined: {line.From} to {line.To}");
    }
}
