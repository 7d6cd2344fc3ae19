namespace Coldwright.Fluids.Envelopes;

/// <summary>
/// Finds all boundaries in the window: a coarse grid of states shows where phases change, each change not yet explained by
/// a known line is followed, and where lines meet a small circle shows which others set out from there.
/// </summary>
internal sealed class BoundaryNetwork(PhaseProbe probe)
{
    // nearer than this a crossing of the same kind lies on the line; meeting places nearer than this are one
    private const double Near = 1e-3, JunctionReach = 6e-3, CircleRadius = 3e-3;
    private const int CirclePlaces = 40, MostLines = 60;

    private readonly List<TracedLine> _lines = [];
    private readonly List<Place> _junctions = [], _lost = [];
    private readonly Queue<Place> _open = new();

    /// <summary>Lines, each from end to end; those that meet share their end points.</summary>
    public IReadOnlyList<TracedLine> Lines => _lines;

    /// <summary>Places at which a line was lost.</summary>
    public IReadOnlyList<Place> Lost => _lost;

    /// <summary>Meeting places at which only one line ends.</summary>
    public IEnumerable<Place> Dangling => _junctions.Where(j => _lines.Sum(l => (l.Points[0].At.DistanceTo(j) < JunctionReach ? 1 : 0) + (l.Points[^1].At.DistanceTo(j) < JunctionReach ? 1 : 0)) < 2)
        .Where(j => Plane.Holds(j, -1e-3));

    /// <summary>Widest uncertainty of a point, in units of the window.</summary>
    public double WidestPoint => _lines.SelectMany(l => l.Points).Select(p => p.Width).DefaultIfEmpty(0).Max();

    /// <summary>States of the first scan.</summary>
    public IEnumerable<Sample> Samples { get; private set; } = [];

    public void Search(int isobars)
    {
        var grid = Grid(2 * isobars, isobars);
        Samples = grid.Cast<Sample?>().OfType<Sample>();
        for (int j = 0; j < grid.GetLength(1); j++)
            for (int i = 0; i < grid.GetLength(0); i++)
            {
                if (i > 0) Look(grid[i - 1, j], grid[i, j]);
                if (j > 0) Look(grid[i, j - 1], grid[i, j]);
                while (_open.TryDequeue(out var junction)) LookAround(junction);
            }
    }

    private Sample?[,] Grid(int columns, int rows)
    {
        var grid = new Sample?[columns + 1, rows + 1];
        Parallel.For(0, rows + 1, probe.Threads, j =>
        {
            var own = probe.Another();
            for (int i = 0; i <= columns; i++) grid[i, j] = own.Ask(new Place((double)i / columns, (double)j / rows));
        });
        return grid;
    }

    private void Look(Sample? from, Sample? to)
    {
        if (from is null || to is null) return;
        foreach (var (a, b) in BoundarySearch.Changes(probe, from, to, IsExplained)) Add(BoundarySearch.Between(probe, a, b));
    }

    // an odd number of known lines between these numbers of phases lies between; for equal numbers an even one, or a jump
    private bool IsExplained(Sample a, Sample b)
    {
        int cuts = 0, jumps = 0, least = Math.Min(a.Count, b.Count), most = Math.Max(a.Count, b.Count);
        foreach (var line in _lines)
        {
            var kind = line.Points[0];
            int here = line.Cuts(a.At, b.At);
            if (kind.IsJump && kind.A.Count == least) jumps += here;
            else if (least == most ? kind.A.Count == least || kind.B.Count == least : kind.A.Count == least && kind.B.Count == most) cuts += here;
        }
        return least == most ? jumps > 0 || cuts >= 2 && cuts % 2 == 0 : most == least + 1 && cuts % 2 == 1;
    }

    private void Add(Crossing crossing)
    {
        if (_lines.Count >= MostLines || IsKnown(crossing)) return;
        var line = new BoundaryFollower(probe, IsKnown).Trace(crossing);
        // what is left next to a place where lines meet is no line of its own
        if (line.Points.Count < 2 || (line.First == LineEnd.Known || line.Last == LineEnd.Known) && line.Length < 2 * JunctionReach) return;
        line = WithEnd(WithEnd(line, atEnd: true), atEnd: false);
        // nor is one that stays inside the circle around it
        if (line.First == LineEnd.Junction && line.Last == LineEnd.Junction && line.Points.All(p => p.At.DistanceTo(line.Points[0].At) < CircleRadius)) return;
        _lines.Add(line);
    }

    private bool IsKnown(Crossing crossing) => _lines.Any(l => l.Passes(crossing, Near));

    // lines that end together share the point
    private TracedLine WithEnd(TracedLine line, bool atEnd)
    {
        var (why, tip) = atEnd ? (line.Last, line.Points[^1]) : (line.First, line.Points[0]);
        if (why == LineEnd.Lost) _lost.Add(tip.At);
        if (why is not (LineEnd.Junction or LineEnd.Lost or LineEnd.Known)) return line;
        int known = _junctions.FindIndex(j => j.DistanceTo(tip.At) < JunctionReach);
        if (known < 0)
        {
            if (why != LineEnd.Junction) return line;
            _junctions.Add(tip.At);
            _open.Enqueue(tip.At);
            return line;
        }
        if (_junctions[known].DistanceTo(tip.At) < BoundarySearch.Tolerance) return line;
        var shared = tip with { At = _junctions[known] };
        return line with { Points = atEnd ? [.. line.Points, shared] : [shared, .. line.Points] };
    }

    private void LookAround(Place junction)
    {
        Sample? first = null, previous = null;
        for (int k = 0; k <= CirclePlaces; k++)
        {
            double angle = 2 * Math.PI * k / CirclePlaces;
            var here = k == CirclePlaces ? first : probe.Ask(junction + CircleRadius * new Place(Math.Cos(angle), Math.Sin(angle)));
            // lines end short of the place where they meet, so none of them explains a change here
            if (previous is not null && here is not null)
                foreach (var (a, b) in BoundarySearch.Changes(probe, previous, here, (_, _) => false)) Add(BoundarySearch.Between(probe, a, b));
            if (k == 0) first = here;
            previous = here;
        }
    }
}
