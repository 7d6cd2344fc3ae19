namespace Coldwright.Machine.Streams;

/// <summary>
/// Where along an isobar the fraction of a phase falls to nought, found from the side that has it: that side's phases are moved along without a
/// certificate, and the last steps end so near that the rest of the way is straight.
/// </summary>
internal static class VanishingPhase
{
    private const double FirstWidthK = 0.1, WidestK = 15, NearK = 2e-3, BackShare = 0.3;
    private const int MostTrials = 40;

    /// <summary>The temperature, K; null where it was not found.</summary>
    /// <param name="maker">Makes the nodes.</param>
    /// <param name="pressurePa">Pa.</param>
    /// <param name="nearK">Where it is thought to be, K.</param>
    /// <param name="side">1: the warmer side has the phase; -1: the colder.</param>
    /// <param name="poor">Phases on the other.</param>
    /// <param name="from">A node that has it, whose phases are taken along at first.</param>
    /// <param name="cancel">Cancels the work.</param>
    public static double? Find(StreamNodeMaker maker, double pressurePa, double nearK, int side, StreamNode from, string poor, CancellationToken cancel)
    {
        string rich = from.Phases;
        maker.TryReturn(from, pressurePa);
        double k = nearK + side * FirstWidthK, width = 3 * FirstWidthK, outside = double.NaN, beyond = double.NaN;
        (double K, double[] Fractions)? near = null, far = null;
        for (int trial = 0; trial < MostTrials; trial++)
        {
            cancel.ThrowIfCancellationRequested();
            // once inside, phases that cannot be kept have been left behind
            (string Phases, double[] Fractions)? found = near is null || !maker.Holds(rich) ? maker.TryFollowFractions(k, pressurePa, rich)
                : maker.TryKeepFractions(k, pressurePa, rich) is { } kept ? (rich, kept) : null;
            if (found is null && near is null) return null;
            if (found is not var (phases, fractions) || phases == poor)
            {
                if (double.IsNaN(outside) || side * (k - outside) > 0) outside = k;
                if (near is { } inner) k = 0.5 * (inner.K + outside);
                else if (Further(-side) is { } next) k = next;
                else return null;
                continue;
            }
            if (phases != rich)
            {
                // beyond a narrow region's other end
                if (far is not null) return null;
                if (near is null) beyond = k;
                if (near is { } start) k = start.K + BackShare * (k - start.K);
                else if (Further(side) is { } next) k = next;
                else return null;
                continue;
            }
            var here = (K: k, Fractions: fractions);
            if (near is null)
            {
                (near, k) = (here, k + side * 2 * FirstWidthK);
                continue;
            }
            if (side * (here.K - near.Value.K) > 0) far = here;
            else (far, near) = (near, here);
            var (a, b) = (near.Value, far!.Value);
            // which of two liquids is the lighter may change with them: the phase whose fraction meets nought first
            double distance = double.PositiveInfinity;
            for (int j = 0; j < a.Fractions.Length; j++)
                if (b.Fractions[j] > a.Fractions[j]) distance = Math.Min(distance, a.Fractions[j] * side * (b.K - a.K) / (b.Fractions[j] - a.Fractions[j]));
            if (distance > WidestK) return null;
            if (distance < NearK) return a.K - side * distance;
            // one that falls as a root does is not overshot at half the way
            k = a.K - side * 0.5 * distance;
            if (side * (k - outside) <= 0) k = 0.5 * (a.K + outside);
        }
        return null;

        // before the region is found: on the way to it, or between a place beyond it and one outside
        double? Further(int back)
        {
            if (!double.IsNaN(outside) && !double.IsNaN(beyond)) return Math.Abs(outside - beyond) > NearK ? 0.5 * (outside + beyond) : null;
            return (width *= 3) > WidestK ? null : k - back * width;
        }
    }
}
