namespace Coldwright.Fluids.Envelopes;

/// <summary>Closes in on the change of phases between two samples, along the straight line or the arc that joins them.</summary>
internal static class BoundarySearch
{
    /// <summary>Samples less unlike than this may belong to one region.</summary>
    public const double Alike = 0.35;

    /// <summary>How well a boundary is placed, in units of the window (about 2 mK, 0.007 % of the pressure).</summary>
    public const double Tolerance = 1e-5;

    /// <summary>The same for a jump: near its end a steep but continuous change must not pass for one.</summary>
    public const double JumpTolerance = 1e-9;

    /// <summary>What is left of a jump between two samples as close as that, at least.</summary>
    public const double LeastJump = 0.02;

    private const int MostStates = 250;

    /// <summary>
    /// Closes in between coordinates <paramref name="low"/> (sample <paramref name="a"/>, on the A side) and <paramref name="high"/>.
    /// </summary>
    /// <param name="probe">Asked for samples.</param>
    /// <param name="place">Coordinate to place.</param>
    /// <param name="unit">Length in the window of one unit of the coordinate.</param>
    /// <param name="low">Coordinate on the A side.</param>
    /// <param name="a">Its sample.</param>
    /// <param name="high">Coordinate beyond the boundary; may be below <paramref name="low"/>.</param>
    /// <param name="b">Its sample.</param>
    /// <param name="isA">Whether a sample belongs to the A side.</param>
    public static Crossing Close(PhaseProbe probe, Func<double, Place> place, double unit, double low, Sample a, double high, Sample b, Func<Sample, bool> isA)
    {
        // the vanishing phase's amount at two places beyond the boundary points to where it is 0
        (double At, double Amount)? beyond = null;
        double guess = double.NaN;
        bool secant = true;
        for (int i = 0; i < 60 && Math.Abs(high - low) * unit > (a.Count == b.Count ? JumpTolerance : Tolerance); i++)
        {
            double middle = 0.5 * (low + high);
            if (secant && b.Count == a.Count + 1 && beyond is { } far && far.Amount > 1.001 * b.LeastFraction)
            {
                double root = high - b.LeastFraction * (far.At - high) / (far.Amount - b.LeastFraction);
                if ((root - low) * (high - low) > 0 && (high - root) * (high - low) > 0)
                {
                    if (Math.Abs(high - root) * unit < 0.25 * Tolerance) return new Crossing(place(root), a, b, 0.25 * Tolerance);
                    guess = root;
                    // a little short of the root: a landing just inside makes the next guess final
                    middle = root + 0.01 * (high - root);
                }
            }
            if (Ask(probe, place, ref middle, low, high) is not { } m) break;
            bool landedOnA = isA(m);
            double before = Math.Abs(high - low);
            if (landedOnA) (low, a) = (middle, m);
            else
            {
                if (m.Count == b.Count) beyond = (high, b.LeastFraction);
                (high, b) = (middle, m);
            }
            // a step that hardly narrows the bracket is followed by a halving
            secant = Math.Abs(high - low) < 0.6 * before || !landedOnA && b.LeastFraction < 1e-3;
            if (landedOnA && !double.IsNaN(guess)) secant = false;
        }
        return new Crossing(place(0.5 * (low + high)), a, b, Math.Abs(high - low) * unit);
    }

    // without an answer at the place, others between the ends are tried
    private static Sample? Ask(PhaseProbe probe, Func<double, Place> place, ref double at, double low, double high)
    {
        if (probe.Ask(place(at)) is { } sample) return sample;
        foreach (double share in (double[])[0.37, 0.63, 0.2, 0.8])
        {
            at = low + share * (high - low);
            if (probe.Ask(place(at)) is { } other) return other;
        }
        return null;
    }

    /// <summary>
    /// The elementary changes along the straight line between two samples: one phase more or less, or a jump.
    /// Stretches that <paramref name="isKnown"/> explains are left alone.
    /// </summary>
    public static IReadOnlyList<(Sample From, Sample To)> Changes(PhaseProbe probe, Sample from, Sample to, Func<Sample, Sample, bool> isKnown)
    {
        int left = MostStates;
        var found = new List<(Sample From, Sample To)>();
        Halve(from, to);
        return found;

        void Halve(Sample from, Sample to)
        {
            double unlike = from.Unlike(to), width = from.At.DistanceTo(to.At);
            if (unlike < Alike || isKnown(from, to)) return;
            bool single = Math.Abs(from.Count - to.Count) == 1;
            if (single ? width < 1e-3 : width < 2 * JumpTolerance)
            {
                if (unlike > LeastJump) found.Add((from, to));
                return;
            }
            // a clean change is found with a few dozen states; more mean that neighbours contradict one another
            if (--left < 0)
            {
                if (left == -1) probe.Unsettled.Add(from.At);
                return;
            }
            Sample? middle = null;
            foreach (double share in (double[])[0.5, 0.4, 0.6])
                if ((middle = probe.Ask(from.At + share * (to.At - from.At))) is not null) break;
            if (middle is null) found.Add((from, to));
            else
            {
                Halve(from, middle);
                Halve(middle, to);
            }
        }
    }

    /// <summary>The crossing on the straight line between two samples that differ.</summary>
    public static Crossing Between(PhaseProbe probe, Sample from, Sample to)
    {
        var (a, b) = from.Count <= to.Count ? (from, to) : (to, from);
        double length = a.At.DistanceTo(b.At);
        Func<Sample, bool> isA = a.Count == b.Count ? s => s.Count == a.Count && s.Unlike(a) < s.Unlike(b) : s => s.Count == a.Count && s.Unlike(a) < Alike;
        return Close(probe, t => a.At + t * (b.At - a.At), Math.Max(length, 1e-12), 0, a, 1, b, isA);
    }
}
