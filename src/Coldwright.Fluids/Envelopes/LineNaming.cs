namespace Coldwright.Fluids.Envelopes;

/// <summary>
/// Names the pieces of a followed boundary. Between one phase and two, the piece is a bubble line where the phase about to
/// vanish is the lighter one and a dew line where it is the denser one; it changes from one to the other at a critical
/// point, which is put between the two pieces.
/// </summary>
internal sealed class LineNaming(Plane plane, IReadOnlyList<CriticalPoint> critical)
{
    // a critical point further from the change than this (of the window) is not its own
    private const double Reach = 0.03, TipReach = 0.01, Distinct = 0.4, ShortRun = 0.15;

    /// <summary>Critical points read off a line because the search for them found none there.</summary>
    public List<BoundaryPoint> ReadOff { get; } = [];

    /// <summary>Where bubble and dew line touch without a critical point.</summary>
    public List<BoundaryPoint> Touching { get; } = [];

    /// <summary>Critical points that lie on a line.</summary>
    public HashSet<CriticalPoint> Met { get; } = [];

    public IEnumerable<BoundaryLine> Name(TracedLine line)
    {
        var kind = line.Points[0];
        if (!kind.IsJump && kind.A.Count == 1 && kind.B.Count == 2) return VapourLiquid(line);
        var middle = line.Points[line.Points.Count / 2];
        var points = line.Points.Select(c => plane.Point(c.At)).ToArray();
        if (kind.IsJump && kind.A.Count == 1) return [new BoundaryLine(BoundaryKind.Bubble, points, "liquid | vapour"), new BoundaryLine(BoundaryKind.Dew, points, "vapour | liquid")];
        return [new BoundaryLine(BoundaryKind.ThreePhase, points, $"{middle.A.Names} | {middle.B.Names}")];
    }

    /// <summary>Leads lines that end short of a stable critical point (domes narrower than a step) up to it.</summary>
    public IEnumerable<BoundaryLine> JoinToCritical(IEnumerable<BoundaryLine> lines)
    {
        var open = critical.Where(c => c.Stable && !Met.Contains(c)).ToArray();
        foreach (var line in lines)
        {
            var points = line.Points.ToList();
            if (line.Kind != BoundaryKind.ThreePhase)
                foreach (var point in open)
                {
                    var target = plane.At(point.TemperatureK, point.PressurePa);
                    double first = Reached(points[0]) ? 1 : target.DistanceTo(At(points[0])), last = Reached(points[^1]) ? 1 : target.DistanceTo(At(points[^1]));
                    if (Math.Min(first, last) > TipReach) continue;
                    points.Insert(last <= first ? points.Count : 0, plane.Point(target));
                    Met.Add(point);
                }
            yield return line with { Points = points };
        }
    }

    // an end that is a critical point already has nothing to be led to
    private bool Reached(BoundaryPoint p) => Met.Any(c => At(p).DistanceTo(plane.At(c.TemperatureK, c.PressurePa)) < 1e-9);

    private Place At(BoundaryPoint p) => plane.At(p.TemperatureK, p.PressurePa);

    private IEnumerable<BoundaryLine> VapourLiquid(TracedLine line)
    {
        var c = line.Points;
        var lighter = WithoutAzeotropes(c, Settled(c.Select(p => p.B.Least == 0).ToArray()));
        int from = 0;
        Place? start = null;
        bool afterCritical = false;
        while (from < c.Count)
        {
            int to = from;
            while (to + 1 < c.Count && lighter[to + 1] == lighter[from]) to++;
            Place? end = to + 1 < c.Count ? Critical(c[to].At, c[to + 1].At) : null;
            foreach (var piece in ByNames(c, from, to, start, end, lighter[from], afterCritical)) yield return piece;
            (from, start, afterCritical) = (to + 1, end, true);
        }
    }

    // at a critical point the lighter and the denser phase exchange their parts once; single points astray are rounding
    private static bool[] Settled(bool[] lighter)
    {
        var settled = (bool[])lighter.Clone();
        for (int i = 0; i < lighter.Length; i++)
        {
            int votes = 0, count = 0;
            for (int k = Math.Max(0, i - 2); k <= Math.Min(lighter.Length - 1, i + 2); k++, count++) votes += lighter[k] ? 1 : -1;
            if (votes != 0 && count > 2) settled[i] = votes > 0;
        }
        return settled;
    }

    // Where bubble and dew line touch without being critical (an azeotrope) the walk may pass from one to the other and
    // back: the stretches between critical points are one line each.
    private bool[] WithoutAzeotropes(IReadOnlyList<Crossing> c, bool[] lighter)
    {
        int from = 0;
        for (int i = 0; i < c.Count; i++)
        {
            if (i + 1 < c.Count && (lighter[i] == lighter[i + 1] || Own(c[i].At, c[i + 1].At).Point is null && Contrast(c[i]) > Distinct)) continue;
            var stretch = lighter[from..(i + 1)];
            int votes = stretch.Sum(l => l ? 1 : -1);
            if (stretch.Contains(votes <= 0)) Touching.Add(plane.Point(c[from + Array.FindIndex(stretch, l => l != votes > 0)].At));
            Array.Fill(lighter, votes > 0, from, stretch.Length);
            from = i + 1;
        }
        return lighter;
    }

    private static double Contrast(Crossing c) => Math.Abs(c.B.Phases[0].LnDensity - c.B.Phases[^1].LnDensity);

    private Place Critical(Place a, Place b)
    {
        var own = Own(a, b);
        if (own.Point is not null)
        {
            Met.Add(own.Point);
            return own.At;
        }
        var between = 0.5 * (a + b);
        ReadOff.Add(plane.Point(between));
        return between;
    }

    private (CriticalPoint? Point, Place At) Own(Place a, Place b)
    {
        return critical.Where(p => p.Stable).Select(p => ((CriticalPoint?)p, At: plane.At(p.TemperatureK, p.PressurePa)))
            .Where(p => p.At.DistanceTo(a, b) < Reach).OrderBy(p => p.At.DistanceTo(a, b)).FirstOrDefault();
    }

    // two liquids or vapour and liquid: whether the lighter phase is a gas, which says little next to a critical point
    private IEnumerable<BoundaryLine> ByNames(IReadOnlyList<Crossing> c, int from, int to, Place? start, Place? end, bool lighter, bool afterCritical)
    {
        var runs = Runs(c, from, to);
        bool anyVapour = runs.Any(r => r.Vapour);
        for (int k = 0; k < runs.Count; k++)
        {
            var (first, last, vapour) = runs[k];
            bool atCritical = k == 0 && afterCritical || k == runs.Count - 1 && end is not null;
            if (!vapour && anyVapour && (last - first < 4 || atCritical && Length(c, first, last) < ShortRun)) runs[k] = (first, last, true);
            if (vapour && last - first < 4 && runs.Any(r => !r.Vapour && r.Last - r.First > 8)) runs[k] = (first, last, false);
        }
        for (int k = 0; k < runs.Count; k++)
        {
            int m = k;
            while (m + 1 < runs.Count && runs[m + 1].Vapour == runs[k].Vapour) m++;
            var points = new List<BoundaryPoint>();
            if (k == 0 && start is { } s) points.Add(plane.Point(s));
            for (int i = runs[k].First; i <= runs[m].Last; i++) points.Add(plane.Point(c[i].At));
            // pieces of different names share the point at which the name changes
            if (m + 1 < runs.Count) points.Add(plane.Point(c[runs[m].Last + 1].At));
            else if (end is { } e) points.Add(plane.Point(e));
            var kind = !runs[k].Vapour ? BoundaryKind.LiquidLiquid : lighter ? BoundaryKind.Bubble : BoundaryKind.Dew;
            if (points.Count > 1)
                yield return new BoundaryLine(kind, WithoutBackward(points), kind switch
                {
                    BoundaryKind.Bubble => "liquid | vapour+liquid",
                    BoundaryKind.Dew => "vapour | vapour+liquid",
                    _ => "liquid | liquid+second_liquid",
                });
            k = m;
        }
    }

    private static List<(int First, int Last, bool Vapour)> Runs(IReadOnlyList<Crossing> c, int from, int to)
    {
        var runs = new List<(int First, int Last, bool Vapour)>();
        for (int i = from; i <= to; i++)
        {
            bool vapour = c[i].B.Phases[0].IsGas;
            if (runs.Count > 0 && runs[^1].Vapour == vapour) runs[^1] = (runs[^1].First, i, vapour);
            else runs.Add((i, i, vapour));
        }
        return runs;
    }

    private static double Length(IReadOnlyList<Crossing> c, int first, int last)
    {
        double sum = 0;
        for (int i = first + 1; i <= last; i++) sum += c[i].At.DistanceTo(c[i - 1].At);
        return sum;
    }

    // next to a critical point a followed point may lie a hair beyond it: the line must not run back
    private List<BoundaryPoint> WithoutBackward(List<BoundaryPoint> points)
    {
        for (int pass = 0; pass < 2; pass++)
        {
            for (int i = points.Count - 2; points.Count > 3 && i >= points.Count - 3 && i > 0; i--)
            {
                Place a = At(points[i - 1]), b = At(points[i]), e = At(points[^1]);
                if ((b - a).Dot(e - b) < 0) points.RemoveAt(i);
            }
            points.Reverse();
        }
        return points;
    }
}
