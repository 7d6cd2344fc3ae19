namespace Coldwright.Fluids.Envelopes;

/// <summary>Why a line ended.</summary>
internal enum LineEnd
{
    /// <summary>It left the window.</summary>
    Window,
    /// <summary>It came back to its start.</summary>
    Closed,
    /// <summary>A third region begins: lines meet.</summary>
    Junction,
    /// <summary>The two sides became one: a critical end point.</summary>
    Merged,
    /// <summary>From here on it runs along a line that is known.</summary>
    Known,
    /// <summary>The flashes had no answers, or the line was too long.</summary>
    Lost,
}

/// <summary>
/// Follows a boundary from one of its points. Each step draws a circle around the last point and looks for the next
/// crossing on it, first straight ahead: bends, kinks, retrograde parts and critical points need no special care, and
/// every point is the change between two certified states.
/// </summary>
internal sealed class BoundaryFollower(PhaseProbe probe, Func<Crossing, bool> isKnown)
{
    private const double Largest = 0.03, Smallest = 1e-4, First = 2e-3, SharpTurn = 0.13, GentleTurn = 0.06;
    private const int MostPoints = 1200;

    // angles at which the other side is looked for, from straight ahead
    private static readonly double[] Swing = [0.008, 0.03, 0.1, 0.35, 0.8, 1.4, 2.0, 2.6];

    /// <summary>The line through a crossing, from end to end.</summary>
    public TracedLine Trace(Crossing start)
    {
        var across = (start.B.At - start.A.At) is { Length: > 0 } d ? 1 / d.Length * d : new Place(0, 1);
        var forward = new List<Crossing>();
        var backward = new List<Crossing>();
        LineEnd end = default, first = default;
        // each half with flashes of its own: the answer does not depend on which is faster
        Parallel.Invoke(probe.Threads,
            () => end = new BoundaryFollower(probe.Another(), isKnown).Follow(start, -1.0 * across.Turned, across, forward),
            () => first = new BoundaryFollower(probe.Another(), isKnown).Follow(start, across.Turned, across, backward));
        // round a closed line both halves come back
        if (end == LineEnd.Closed) return new TracedLine([start, .. forward], LineEnd.Closed, LineEnd.Closed);
        backward.Reverse();
        return new TracedLine([.. backward, start, .. forward], first, end);
    }

    // toB points from the A side to the B side, at right angles to ahead
    private LineEnd Follow(Crossing start, Place ahead, Place toB, List<Crossing> line)
    {
        var last = start;
        double step = First, travelled = 0, bend = 0, before = 0;
        bool free = true;
        while (line.Count < MostPoints)
        {
            // the last bend goes on
            double expected = free ? 0 : Math.Clamp(0.5 * bend * (step + before), -SharpTurn, SharpTurn);
            var (sin, cos) = Math.SinCos(expected);
            var outcome = Next(last, cos * ahead + sin * toB, cos * toB - sin * ahead, step, free, out var next, out double turn);
            turn += expected;
            bool sharp = outcome == null && !free && Math.Abs(turn) > SharpTurn && step > 4 * Smallest;
            if (outcome is not null || sharp)
            {
                step *= 0.45;
                if (step >= Smallest) continue;
                return outcome ?? LineEnd.Lost;
            }
            var direction = 1 / last.At.DistanceTo(next!.At) * (next.At - last.At);
            toB = direction.Turned.Dot(ahead.Turned) >= 0 == toB.Dot(ahead.Turned) >= 0 ? direction.Turned : -1.0 * direction.Turned;
            if (free) toB = (next.B.At - next.A.At).Dot(direction.Turned) >= 0 ? direction.Turned : -1.0 * direction.Turned;
            ahead = direction;
            bend = before > 0 ? 2 * turn / (step + before) : 0;
            (before, free) = (step, false);
            if (!Plane.Holds(next.At))
            {
                // a start on the edge has nothing more to add
                if (AtEdge(last, next) is { } edge) line.Add(edge);
                return LineEnd.Window;
            }
            line.Add(next);
            if (isKnown(next)) return LineEnd.Known;
            travelled += step;
            if (line.Count > 6 && travelled > 0.05 && next.At.DistanceTo(start.At) < 0.8 * step && next.IsLike(start))
            {
                line.Add(start);
                return LineEnd.Closed;
            }
            last = next;
            // on to a rounder step where the line hardly turned
            if (Math.Abs(turn) < GentleTurn) step = Math.Min(1.7 * step, Largest);
        }
        return LineEnd.Lost;
    }

    // null: found; otherwise why not
    private LineEnd? Next(Crossing last, Place ahead, Place toB, double step, bool free, out Crossing? next, out double turn)
    {
        next = null;
        turn = 0;
        Place On(double angle) => last.At + step * (Math.Cos(angle) * ahead + Math.Sin(angle) * toB);
        bool IsA(Sample s) => s.Count == last.A.Count && (last.IsJump ? s.Unlike(last.A) < s.Unlike(last.B) : s.Unlike(last.A) < BoundarySearch.Alike);
        if (probe.Ask(On(0)) is not { } here) return LineEnd.Lost;
        bool aheadIsA = IsA(here);
        double from = 0;
        foreach (double swing in Swing)
        {
            double to = aheadIsA ? swing : -swing;
            if (probe.Ask(On(to)) is not { } there) return LineEnd.Lost;
            if (IsA(there) == aheadIsA)
            {
                (from, here) = (to, there);
                continue;
            }
            next = aheadIsA
                ? BoundarySearch.Close(probe, On, step, from, here, to, there, IsA)
                : BoundarySearch.Close(probe, On, step, to, there, from, here, IsA);
            turn = Math.Atan2((next.At - last.At).Dot(toB), (next.At - last.At).Dot(ahead));
            if (next.IsJump && next.A.Unlike(next.B) < BoundarySearch.LeastJump) return LineEnd.Merged;
            return Continues(last, next) ? null : LineEnd.Junction;
        }
        // nothing on this side of the circle: at the start the line may lie the other way
        return free ? LineEnd.Lost : LineEnd.Junction;
    }

    // the same change of phases as before
    private static bool Continues(Crossing last, Crossing next) =>
        next.B.Unlike(last.B) < BoundarySearch.Alike && next.A.Unlike(last.A) < BoundarySearch.Alike;

    // the last stretch cut off where it leaves the window
    private static Crossing? AtEdge(Crossing inside, Crossing outside)
    {
        double share = 1;
        void Cut(double a, double b, double edge)
        {
            if ((a - edge) * (b - edge) <= 0 && a != b) share = Math.Min(share, (edge - a) / (b - a));
        }
        Cut(inside.At.X, outside.At.X, 0);
        Cut(inside.At.X, outside.At.X, 1);
        Cut(inside.At.Y, outside.At.Y, 0);
        Cut(inside.At.Y, outside.At.Y, 1);
        return share < 1e-9 ? null : outside with { At = inside.At + share * (outside.At - inside.At) };
    }
}
