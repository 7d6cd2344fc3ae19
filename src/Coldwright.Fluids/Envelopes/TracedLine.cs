namespace Coldwright.Fluids.Envelopes;

/// <summary>A boundary as it was followed.</summary>
/// <param name="Points">In order.</param>
/// <param name="First">Why it ends before its first point.</param>
/// <param name="Last">Why it ends behind its last point.</param>
internal sealed record TracedLine(IReadOnlyList<Crossing> Points, LineEnd First, LineEnd Last)
{
    /// <summary>Length in units of the window.</summary>
    public double Length => Points.Zip(Points.Skip(1), (a, b) => a.At.DistanceTo(b.At)).Sum();

    /// <summary>How often the line cuts a straight stretch.</summary>
    public int Cuts(Place a, Place b)
    {
        int cuts = 0;
        for (int i = 1; i < Points.Count; i++)
        {
            Place p = Points[i - 1].At, q = Points[i].At;
            if (Side(a, b, p) > 0 != Side(a, b, q) > 0 && Side(p, q, a) > 0 != Side(p, q, b) > 0) cuts++;
        }
        return cuts;
    }

    /// <summary>True when the line passes this crossing: as near as <paramref name="reach"/>, between the same phases.</summary>
    public bool Passes(Crossing crossing, double reach)
    {
        if (Points.Count == 1) return Points[0].At.DistanceTo(crossing.At) < reach && Points[0].IsLike(crossing);
        for (int i = 1; i < Points.Count; i++)
            if (crossing.At.DistanceTo(Points[i - 1].At, Points[i].At) < reach && (Points[i].IsLike(crossing) || Points[i - 1].IsLike(crossing))) return true;
        return false;
    }

    private static double Side(Place a, Place b, Place p) => (b - a).Turned.Dot(p - a);
}
