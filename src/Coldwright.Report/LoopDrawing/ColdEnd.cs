using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Report.Charts;
using Coldwright.Report.Loops.Signs;

namespace Coldwright.Report.Loops;

/// <summary>The foot of the drawing: the load with its coil, the lower wall, what leaves the vessel, and the flask.</summary>
internal sealed class ColdEnd(LoopLayout layout, LoopFigures figures, Canvas canvas, Branches branches)
{
    private readonly LoopSize _size = canvas.Size;
    private readonly double _scale = canvas.Size.Scale;
    private readonly IReadOnlyList<Line> _vents = layout.Vessel is { } vessel ? branches.From(vessel.Name) : [];
    private readonly PathStep[] _drain = [.. layout.ProductPath.SkipWhile(s => s.Part is not VesselPart).Skip(1)];
    private Track? _drainTrack;
    private Run? _drainRun;
    private IReadOnlyList<(double X, double Y)> _vent = [];
    private Line[] _ventsOutside = [];

    /// <summary>Load and coil, joined to the lines that come from above.</summary>
    public void Load(Track high, Line toCoil, Track low, Line fromCoil, Track? product, Line? toVessel)
    {
        Part load = layout.Vessel is { } v ? v : layout.Block!;
        var isInside = layout.Vessel is not null && layout.Coil.Place != CoilPlace.Around;
        var level = figures.At(load.Name).FirstOrDefault(f => f.Kind == FigureKind.Level && f.Value is { } share && double.IsFinite(share))?.Value;
        var signs = VesselSigns.Of(layout.Vessel, isInside, product is null ? null : (high.X - product.X) / _scale, level);
        var left = Math.Max(product is null ? _size.Left + 4 : 0, (product?.X ?? high.X) - (signs.ProductX ?? signs.Coil.LineX) * _scale);
        double inX = left + signs.Coil.LineX * _scale, outX = left + signs.Coil.OutletX!.Value * _scale, right = left + signs.Coil.Width * _scale;
        var isStraight = Math.Abs(inX - high.X) < 1;
        var y = Math.Max(Math.Max(high.Y, low.Y) + (isStraight ? 24 : 34), canvas.Packing.Bottom(left - 4, low.X + 4) + 22);
        if (product is not null) y = Math.Max(y, product.Y + Canvas.LineGap);
        var box = new Box(left, y, right - left, VesselSigns.Height * _scale);
        canvas.Add(toCoil, high.Form, isStraight ? high.To((high.X, y)) : high.To((high.X, y - 22), (inX, y - 22), (inX, y)));
        canvas.Add(fromCoil, low.Form, low.To((low.X, y - 10), (outX, y - 10), (outX, y)));
        if (product is not null) canvas.Add(toVessel!, product.Form, product.To((product.X, y)));
        canvas.Add(load, signs.Load, box);
        canvas.Add(layout.Coil, signs.Coil, box);
        Leave(box, signs, isInside, product is not null);
        Words(load, right, y);
        if (_ventsOutside.Length < _vents.Count) VentsInside(box, low);
    }

    // Vapour leaves at the side of the vessel, liquid below.
    private void Leave(Box box, VesselSigns signs, bool isInside, bool holdsProduct)
    {
        var x = box.X + signs.DrainX * _scale;
        // One way out for all of them, so that none passes through another.
        _ventsOutside = !isInside || (branches.HasColdBox && _vents.Any(l => l.Place == Place.Room)) ? [.. _vents] : [];
        if (_ventsOutside.Length > 0)
        {
            // far enough from the drain for the words beside that
            var trunk = Math.Max(box.Right + 12, x + (_size.IsPhone ? 116 : 140));
            var y = box.Y + VesselSigns.VentY * _scale;
            _vent = isInside ? [(box.Right, y), (trunk, y)]
                : [(box.X + signs.VentX * _scale - 12, box.Bottom - 4), (box.X + signs.VentX * _scale - 12, box.Bottom + 8), (trunk, box.Bottom + 8)];
            canvas.Packing.Take(new(trunk - 3, _vent[^1].Y, 6, Math.Max(0, box.Bottom - _vent[^1].Y) + 4));
            if (!isInside) canvas.Packing.Take(new(_vent[0].X, box.Bottom, trunk - _vent[0].X, 11));
        }
        if (!holdsProduct || _drain.Length == 0) return;
        _drainTrack = new(x, WireForm.Product, false, 1, _vent.Count > 0 ? _vent[^1].X - 18 : _size.Right);
        _drainTrack.Start((x, box.Bottom - 4 * _scale));
        _drainTrack.Y = box.Bottom + (isInside || _vent.Count == 0 ? 0 : 10);
        _drainRun = new(canvas, branches, _drainTrack, _drain, hangsOwn: false);
    }

    private void Words(Part load, double right, double top)
    {
        var x = _vent.Count > 0 ? _vent[^1].X + 12 : right + 10;
        var y = top;
        foreach (var part in new[] { layout.Coil, load })
        {
            var text = canvas.TextOf(part, _size.Right - x);
            y = canvas.Packing.Fit(y, Canvas.TextBox(text, x, false));
            canvas.Add(part.Name, text, x, y, false);
            y += text.Height + 8;
        }
    }

    private void VentsInside(Box box, Track low)
    {
        var y = box.Y + 4;
        foreach (var line in _vents.Except(_ventsOutside))
            y = branches.Hang(line, box.Right, 1, low.X - 12, WireForm.Product.Side, branches.HasColdBox, y) + 6;
    }

    /// <summary>The lower wall below everything in the box; the enclosure is then complete.</summary>
    public Enclosure Close(Wall top, ColdBoxPart box)
    {
        _drainRun?.Draw(true, true);
        var y = Math.Max(canvas.Packing.Bottom(0, _size.Width), _drainTrack?.Y ?? 0) + 10;
        var (outer, inner) = (new Box(_size.Outside, top.Y, _size.Width - _size.Outside - 2, y + _size.EndWall - top.Y),
            new Box(_size.Outside + _size.SideWall, top.Y + _size.EndWall, _size.Width - _size.Outside - 2 - 2 * _size.SideWall, y - top.Y - _size.EndWall));
        var sleeves = top.Crossings.Select(x => new Box(x - 6, top.Y, 12, _size.EndWall)).ToList();
        foreach (var x in (double?[])[_drainTrack?.X, _vent.Count > 0 ? _vent[^1].X : null])
            if (x is { } crossing) sleeves.Add(new(crossing - 6, y, 12, _size.EndWall));
        canvas.Packing.Take(new(0, y, _size.Width, _size.EndWall));
        if (_drainTrack is not null) _drainTrack.Y = y + _size.EndWall;
        return new(box, outer, inner, sleeves);
    }

    /// <summary>What stands below the box, or below the load where there is none.</summary>
    /// <param name="hasBox">True when the lower wall was drawn.</param>
    public void Below(bool hasBox)
    {
        var y = canvas.Packing.Bottom(0, _size.Width);
        if (_drainRun is not null)
        {
            _drainRun.Draw(null, false);
            if (_drain[^1].Part is FlaskPart flask) canvas.InLine(_drainTrack!, flask, RoomSigns.Flask(), _drainRun.Last);
        }
        foreach (var line in _ventsOutside)
        {
            var trunk = _vent[^1].X;
            var x = _ventsOutside.Length == 1 ? trunk : trunk + _size.Step;
            y = branches.Node(line, _vent, trunk, x, 1, _size.Right, WireForm.Product.Side, false, y + (hasBox ? 16 : 10));
        }
    }
}
