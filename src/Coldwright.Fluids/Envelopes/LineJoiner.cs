namespace Coldwright.Fluids.Envelopes;

/// <summary>Joins scattered points of one boundary to lines: each point to its nearest free neighbour, from the ends inwards.</summary>
internal static class LineJoiner
{
    // in units of the window: neighbours further apart than this are not joined
    private const double LargestGap = 0.075;

    public static IEnumerable<IReadOnlyList<BoundaryPoint>> Join(IEnumerable<BoundaryPoint> points, double spanT, double spanLogP)
    {
        var free = points.Distinct().ToList();
        double Distance(BoundaryPoint a, BoundaryPoint b)
        {
            double dt = (a.TemperatureK - b.TemperatureK) / spanT, dp = Math.Log(a.PressurePa / b.PressurePa) / spanLogP;
            return Math.Sqrt(dt * dt + dp * dp);
        }

        while (free.Count > 0)
        {
            var line = new LinkedList<BoundaryPoint>();
            // an end of the cloud: lowest pressure first
            var start = free.MinBy(p => p.PressurePa);
            free.Remove(start);
            line.AddLast(start);
            Extend(line, free, Distance, forward: true);
            Extend(line, free, Distance, forward: false);
            if (line.Count > 1) yield return line.ToArray();
        }
    }

    private static void Extend(LinkedList<BoundaryPoint> line, List<BoundaryPoint> free, Func<BoundaryPoint, BoundaryPoint, double> distance, bool forward)
    {
        while (free.Count > 0)
        {
            var tip = forward ? line.Last!.Value : line.First!.Value;
            var next = free.MinBy(p => distance(tip, p));
            if (distance(tip, next) > LargestGap) return;
            free.Remove(next);
            if (forward) line.AddLast(next); else line.AddFirst(next);
        }
    }
}
