using Coldwright.Machine.Description;
using Coldwright.Machine.Files;
using Coldwright.Machine.Layout;
using Coldwright.Report.Charts;
using Coldwright.Report.Loops.Signs;

namespace Coldwright.Report.Loops;

/// <summary>Valves, reliefs and the buffer that hang on a line: each below the one before it, forks one step further to the side.</summary>
internal sealed class Branches
{
    private Canvas _canvas;
    private readonly Dictionary<string, Part> _parts;
    private readonly ILookup<string, Line> _outgoing;
    private readonly string _suction;
    private readonly double _suctionX;
    private readonly HashSet<string> _drawn = new(StringComparer.Ordinal);
    private readonly HashSet<Line> _taken = new(ReferenceEqualityComparer.Instance);

    public Branches(Canvas canvas, MachineDescription machine, LoopLayout layout, double suctionX)
    {
        (_canvas, _suction, _suctionX) = (canvas, layout.Compressor.Name, suctionX);
        _parts = machine.Parts.ToDictionary(p => p.Name, StringComparer.Ordinal);
        var main = MainLines(layout);
        _outgoing = machine.Lines.Where(l => !main.Contains(l)).ToLookup(l => l.From, StringComparer.Ordinal);
        foreach (var step in layout.LoopPath.Concat(layout.ProductPath)) _drawn.Add(step.Part.Name);
        HasColdBox = layout.ColdBox is not null;
    }

    /// <summary>True when there is a box, so that a branch may stand on its other side.</summary>
    public bool HasColdBox { get; }

    /// <summary>Where the buffer's bleed meets the suction line, y; null before it is drawn.</summary>
    public double? JoinY { get; private set; }

    /// <summary>Lines between two parts that were both drawn elsewhere: named in words instead.</summary>
    public List<Line> LeftOut { get; } = [];

    /// <summary>How many steps the deepest branch goes sideways: of the loop, of the product's line above the vessel, and of the vessel.</summary>
    public static (int Loop, int Product, int Vessel) Depth(MachineDescription machine, LoopLayout layout)
    {
        var main = MainLines(layout);
        var outgoing = machine.Lines.Where(l => !main.Contains(l)).ToLookup(l => l.From, StringComparer.Ordinal);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        int Below(string port)
        {
            if (!seen.Add(port)) return 0;
            var next = outgoing[port].ToArray();
            return next.Length == 0 ? 0 : (next.Length > 1 ? 1 : 0) + next.Max(l => Below(l.To));
        }
        var product = layout.ProductPath.TakeWhile(s => s.Part is not VesselPart).Select(s => s.Port).ToHashSet(StringComparer.Ordinal);
        var depths = machine.Lines.Where(l => !main.Contains(l)).Select(l => (l.From, Depth: 1 + Below(l.To))).ToArray();
        int Deepest(Func<string, bool> isFrom) => depths.Where(d => isFrom(d.From)).Select(d => d.Depth).DefaultIfEmpty(0).Max();
        var vessel = layout.Vessel?.Name;
        var several = depths.Count(d => d.From == vessel) > 1 ? 1 : 0;
        return (Deepest(p => !product.Contains(p) && p != vessel), Deepest(product.Contains), Deepest(p => p == vessel) + several);
    }

    /// <summary>The branches that leave a port.</summary>
    public IReadOnlyList<Line> From(string port) => [.. _outgoing[port].Where(l => !_taken.Contains(l))];

    /// <summary>Hangs the branches of a port on the line that leaves it.</summary>
    public void Hang(Track track, string port, bool isInBox)
    {
        foreach (var line in From(port)) track.Y = Math.Max(track.Y, Hang(line, track.X, track.Side, track.Edge, track.Form.Side, isInBox, track.Y + 6));
    }

    /// <summary>Hangs a branch with everything behind it on an upright line, at the highest place that holds all of it; the result is its lowest y.</summary>
    /// <param name="line">The branch's first line.</param>
    /// <param name="fromX">x of the upright line.</param>
    /// <param name="side">Right (1) or left (-1).</param>
    /// <param name="edge">How far texts may reach.</param>
    /// <param name="form">How lines are drawn.</param>
    /// <param name="isInBox">True when this place on the drawing is inside the cold box.</param>
    /// <param name="y">Least top.</param>
    public double Hang(Line line, double fromX, int side, double edge, WireForm form, bool isInBox, double y)
    {
        // Drawn on a sheet of its own first: a branch is moved as a whole, so that nothing comes to stand between its parts.
        var (sheet, joined) = (_canvas, JoinY);
        _canvas = sheet.NewSheet();
        var bottom = Node(line, [], fromX, fromX + side * sheet.Size.Step, side, edge, form, isInBox, 0);
        var moved = sheet.Take(_canvas, y);
        _canvas = sheet;
        if (JoinY != joined) JoinY += moved;
        return bottom + moved;
    }

    /// <summary>Draws a part on a branch with everything behind it; the result is the lowest y used.</summary>
    /// <param name="line">The line that leads to it.</param>
    /// <param name="start">Points the line has already passed; empty when it leaves an upright line level with the part.</param>
    /// <param name="fromX">x of the upright line that it leaves.</param>
    /// <param name="x">x of the part.</param>
    /// <param name="side">Right (1) or left (-1).</param>
    /// <param name="edge">How far texts may reach.</param>
    /// <param name="form">How lines are drawn.</param>
    /// <param name="isInBox">True when this place on the drawing is inside the cold box.</param>
    /// <param name="y">Least top.</param>
    public double Node(Line line, IReadOnlyList<(double X, double Y)> start, double fromX, double x, int side, double edge, WireForm form, bool isInBox, double y)
    {
        _taken.Add(line);
        var part = _parts[Ports.PartName(line.To)];
        if (!_drawn.Add(part.Name))
        {
            LeftOut.Add(line);
            return y;
        }
        var sign = side > 0 ? PartSigns.OnBranch(part) : PartSigns.OnBranch(part).Mirrored();
        var box = _canvas.BoxOf(sign, x, 0);
        var textX = side > 0 ? box.Right + Canvas.TextGap : box.X - Canvas.TextGap;
        var elsewhere = HasColdBox && (line.Place == Place.ColdBox) != isInBox ? isInBox ? "in the room" : "in the cold box" : null;
        var text = _canvas.TextOf(part, Math.Abs(edge - textX), elsewhere);
        var height = Math.Max(box.Height, text.Height);
        box = box with { Y = (height - box.Height) / 2 };
        var isStraight = start.Count > 0 && Math.Abs(start[^1].X - x) < 0.5;
        var near = side > 0 ? box.X : box.Right;
        // A tank is entered at its top, whatever the way there.
        var entersTop = part is BufferPart || isStraight;
        var level = part is BufferPart ? box.Y - 8 : height / 2;
        var twig = isStraight ? box : new Box(Math.Min(fromX, entersTop ? x : near), level - 2, Math.Abs((entersTop ? x : near) - fromX), 4);
        if (part is BufferPart && !isStraight) y += 10;
        y = _canvas.Packing.Fit(y, box, Canvas.TextBox(text, textX, side < 0) with { Y = (height - text.Height) / 2 }, twig);
        var placed = box with { Y = box.Y + y };

        var points = new List<(double X, double Y)>(start);
        if (!isStraight) points.Add((fromX, y + level));
        if (!isStraight && entersTop) points.Add((x, y + level));
        points.Add(entersTop ? (x, placed.Y) : (near, y + level));
        _canvas.Add(line, form, points);
        _canvas.Add(part, sign, placed);
        _canvas.Add(part.Name, text, textX, y + (height - text.Height) / 2, side < 0);
        return Behind(part, (x, placed.Bottom), side, edge, form, isInBox, y + height);
    }

    /// <summary>A part that nothing leads to, with what is behind it.</summary>
    public double Root(Part part, double x, double edge, double y)
    {
        _drawn.Add(part.Name);
        var sign = PartSigns.OnBranch(part);
        var box = _canvas.BoxOf(sign, x, y);
        var text = _canvas.TextOf(part, edge - box.Right - Canvas.TextGap);
        _canvas.Add(part, sign, box);
        _canvas.Add(part.Name, text, box.Right + Canvas.TextGap, y, false);
        return Behind(part, (x, box.Bottom), 1, edge, WireForm.High.Side, false, Math.Max(box.Bottom, y + text.Height));
    }

    /// <summary>True when the part of that name was drawn or lies on a main line.</summary>
    public bool IsDrawn(string name) => _drawn.Contains(name);

    private double Behind(Part part, (double X, double Y) bottom, int side, double edge, WireForm form, bool isInBox, double y)
    {
        var onward = From(part.Name);
        var bleed = onward.FirstOrDefault(l => l.To == _suction);
        foreach (var line in onward.Where(l => l != bleed))
            y = onward.Count == 1
                ? Node(line, [bottom], bottom.X, bottom.X, side, edge, form, isInBox, Math.Max(y, bottom.Y + Canvas.LineGap))
                : Node(line, [bottom], bottom.X, bottom.X + side * _canvas.Size.Step, side, edge, form, isInBox, y + 6);
        return bleed is null ? y : Bleed(bleed, bottom, y);
    }

    private double Bleed(Line line, (double X, double Y) bottom, double y)
    {
        _taken.Add(line);
        var join = _canvas.Packing.Fit(Math.Max(y + 6, bottom.Y + 10), new Box(bottom.X, -2, _suctionX - bottom.X, 4));
        _canvas.Add(line, WireForm.Low.Side, [bottom, (bottom.X, join), (_suctionX - 3, join)]);
        JoinY = join;
        return join;
    }

    private static HashSet<Line> MainLines(LoopLayout layout) =>
        layout.LoopPath.Concat(layout.ProductPath).Where(s => s.Line is not null).Select(s => s.Line!).ToHashSet((IEqualityComparer<Line>)ReferenceEqualityComparer.Instance);
}
