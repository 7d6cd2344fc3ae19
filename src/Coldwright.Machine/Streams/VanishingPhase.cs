namespace Coldwright.Machine.Streams;

/// <summary>
/// Where along an isobar the fraction of a phase falls to nought, found from a node that has it: that node's phases are moved along without a
/// certificate, and the last steps end so near that the rest of the way is straight.
/// </summary>
internal static class VanishingPhase
{
    private const double FirstWidthK = 0.1, WidestK = 15, NearK = 2e-3, Straight = 0.05;
    private const int MostTrials = 40;

    /// <summary>The temperature, K; null where it was not found.</summary>
    /// <param name="maker">Makes the nodes.</param>
    /// <param name="pressurePa">Pa.</param>
    /// <param name="nearK">Where it is thought to be, K.</param>
    /// <param name="side">1: the warmer side has the phase; -1: the colder.</param>
    /// <param name="from">A node that has it.</param>
    /// <param name="cancel">Cancels the work.</param>
    public static double? Find(StreamNodeMaker maker, double pressurePa, double nearK, int side, StreamNode from, CancellationToken cancel)
    {
        if (!maker.TryReturn(from, pressurePa)) return null;
        double k = Math.Min(side * (nearK + side * FirstWidthK), side * from.TemperatureK - FirstWidthK) * side, outside = double.NaN, zero = double.NaN;
        (double K, double[] Fractions) near = (from.TemperatureK, from.Fractions);
        for (int trial = 0; trial < MostTrials; trial++)
        {
            cancel.ThrowIfCancellationRequested();
            if (maker.TryKeepFractions(k, pressurePa, from.Phases) is not { } fractions)
            {
                // it is used up on the way there
                outside = k;
                k = 0.5 * (near.K + outside);
                if (Math.Abs(near.K - outside) < NearK) return k;
                continue;
            }
            (var far, near) = (near, (k, fractions));
            // which of two liquids is the lighter may change with them: the phase whose fraction meets nought first
            double distance = double.PositiveInfinity;
            for (int j = 0; j < fractions.Length; j++)
                if (far.Fractions[j] > fractions[j]) distance = Math.Min(distance, fractions[j] * side * (far.K - k) / (far.Fractions[j] - fractions[j]));
            if (distance < NearK) return k - side * distance;
            if (distance > WidestK && double.IsNaN(outside)) return null;
            // one that falls as a root does is not overshot at half the way
            double last = zero;
            zero = k - side * distance;
            k -= side * distance * (Math.Abs(zero - last) < Straight * distance ? 1 - Straight : 0.5);
            if (!(side * (k - outside) > 0) && !double.IsNaN(outside)) k = 0.5 * (near.K + outside);
        }
        return null;
    }
}
