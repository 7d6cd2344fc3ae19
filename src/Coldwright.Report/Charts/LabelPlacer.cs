namespace Coldwright.Report.Charts;

/// <summary>A label that looks for its place.</summary>
/// <param name="Lines">Text, line by line.</param>
/// <param name="Ink">Colour.</param>
/// <param name="Bold">Bold text.</param>
/// <param name="Anchors">Points that it may stand beside, px; the nearer the better.</param>
internal sealed record Label(IReadOnlyList<string> Lines, Ink Ink, bool Bold, IReadOnlyList<(double X, double Y)> Anchors);

/// <summary>Where a label came to stand.</summary>
internal sealed record PlacedLabel(Label Label, Box Box, (double X, double Y) Anchor)
{
    private const double LeaderFromPx = 16;

    /// <summary>The stroke that joins it to its anchor; null when it stands close.</summary>
    public Segment? Leader => LeaderOf(Box, Anchor);

    /// <summary>The same for a place that is only considered.</summary>
    public static Segment? LeaderOf(Box box, (double X, double Y) anchor) => box.DistanceTo(anchor.X, anchor.Y) <= LeaderFromPx
        ? null
        : new(anchor.X, anchor.Y, Math.Clamp(anchor.X, box.X, box.Right), Math.Clamp(anchor.Y, box.Y, box.Bottom));
}

/// <summary>Puts labels beside their anchors so that they stay inside, never cover one another and cross as few lines as possible.</summary>
internal sealed class LabelPlacer
{
    private const double CrossedLinePerPx = 4;
    private const double DistancePerPx = 1;
    private const double CrossingLeader = 40;
    private const double ClearancePx = 4;

    private static readonly double[] Distances = [8, 12, 19, 28, 40, 56, 76, 100, 130, 165];

    private readonly Box _area;
    private readonly double _fontSize;
    private readonly IReadOnlyList<Segment> _strokes;
    private readonly List<Box> _taken = [];

    /// <param name="area">Labels stay inside.</param>
    /// <param name="fontSize">px.</param>
    /// <param name="strokes">Lines to keep clear of.</param>
    public LabelPlacer(Box area, double fontSize, IReadOnlyList<Segment> strokes)
    {
        _area = area;
        _fontSize = fontSize;
        _strokes = strokes;
    }

    /// <summary>Height of a label of so many lines, px.</summary>
    public static double Height(int lines, double fontSize) => lines * fontSize * 1.25;

    /// <summary>Keeps a rectangle free.</summary>
    public void Reserve(Box box) => _taken.Add(box);

    /// <summary>The cheapest place; null when every place would cover something already there.</summary>
    public PlacedLabel? Place(Label label)
    {
        var width = label.Lines.Max(l => TextWidth.Of(l, _fontSize, label.Bold));
        var height = Height(label.Lines.Count, _fontSize);
        (double Cost, Box Box, (double X, double Y) Anchor)? best = null;
        foreach (var anchor in label.Anchors)
            foreach (var box in Around(anchor, width, height))
            {
                if (!_area.Contains(box) || _taken.Any(t => t.Overlaps(box.Grown(2)))) continue;
                var cost = DistancePerPx * box.DistanceTo(anchor.X, anchor.Y);
                if (best is { } b && cost >= b.Cost) continue;
                var clear = box.Grown(ClearancePx);
                foreach (var stroke in _strokes) cost += CrossedLinePerPx * clear.LengthInside(stroke);
                if (PlacedLabel.LeaderOf(box, anchor) is { } leader) cost += CrossingLeader * _strokes.Count(Away(leader).Crosses);
                if (best is null || cost < best.Value.Cost) best = (cost, box, anchor);
            }
        if (best is null) return null;
        Reserve(best.Value.Box);
        return new(label, best.Value.Box, best.Value.Anchor);
    }

    // The leader without its first pixels, so that the line that it comes from is not one that it crosses.
    private static Segment Away(Segment leader)
    {
        var (dx, dy) = (leader.X2 - leader.X1, leader.Y2 - leader.Y1);
        var share = ClearancePx / Math.Sqrt(dx * dx + dy * dy);
        return leader with { X1 = leader.X1 + share * dx, Y1 = leader.Y1 + share * dy };
    }

    private static IEnumerable<Box> Around((double X, double Y) anchor, double width, double height)
    {
        foreach (var d in Distances)
            for (var direction = 0; direction < 16; direction++)
            {
                var (sin, cos) = Math.SinCos(direction * Math.PI / 8);
                // The box touches a circle around the anchor with its nearest point in that direction.
                yield return new(
                    anchor.X + d * cos + (Math.Abs(cos) < 1e-9 ? -width / 2 : (Math.Sign(cos) - 1) / 2.0 * width),
                    anchor.Y + d * sin + (Math.Abs(sin) < 1e-9 ? -height / 2 : (Math.Sign(sin) - 1) / 2.0 * height),
                    width, height);
                if (Math.Abs(cos) > 1e-9 && Math.Abs(sin) > 0.9) yield return new(anchor.X - width / 2, anchor.Y + d * Math.Sign(sin) + (sin < 0 ? -height : 0), width, height);
            }
    }
}
