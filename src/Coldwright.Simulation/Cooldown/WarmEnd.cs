using Coldwright.Machine.Streams;

namespace Coldwright.Simulation.Cooldown;

/// <summary>
/// Counterflow exchanger of given conductance between two streams of equal flow, as <see cref="ClosedLoop.WarmExchange"/> has it, for inner loops: fewer places, and the heat found
/// by Newton's method on q = UA/n D(q), D the harmonic mean of the temperature differences along it, which falls nearly in proportion to q.
/// </summary>
internal static class WarmEnd
{
    private const int Pieces = 12, MostRounds = 40;
    private const double Settled = 1e-12, LeastDifferenceK = 1e-6;

    /// <summary>Heat from high to low stream, J/mol.</summary>
    /// <param name="high">Properties of the high stream.</param>
    /// <param name="highIn">As it enters, J/mol.</param>
    /// <param name="highPa">Pa.</param>
    /// <param name="low">Properties of the low stream.</param>
    /// <param name="lowIn">As it enters, J/mol.</param>
    /// <param name="lowPa">Pa.</param>
    /// <param name="conductancePerFlow">UA/n, J/(mol K), at least 0.</param>
    public static double Heat(StreamTable high, double highIn, double highPa, StreamTable low, double lowIn, double lowPa, double conductancePerFlow)
    {
        double hot = high.Temperature(highIn, highPa, out double slopeHigh), cold = low.Temperature(lowIn, lowPa, out double slopeLow), apart = hot - cold;
        if (!(apart > LeastDifferenceK)) return 0;
        // of constant heat capacities, each that at its inlet; held so that neither end crosses
        double q = conductancePerFlow * apart / (1 + conductancePerFlow * 0.5 * (slopeHigh + slopeLow)), from = 0, to = double.PositiveInfinity;
        for (int round = 0; round < MostRounds; round++)
        {
            double reciprocal = 0, bySquare = 0;
            bool crossed = false;
            for (int i = 0; i <= Pieces && !crossed; i++)
            {
                double share = (double)i / Pieces, weight = i is 0 or Pieces ? 0.5 : 1;
                double d = high.Temperature(highIn - q * (1 - share), highPa, out double sh) - low.Temperature(lowIn + q * share, lowPa, out double sl);
                crossed = !(d > LeastDifferenceK);
                reciprocal += weight / d;
                bySquare += weight * ((1 - share) * sh + share * sl) / (d * d);
            }
            double mean = Pieces / reciprocal, off = crossed ? -q : conductancePerFlow * mean - q;
            if (off < 0) to = q; else from = q;
            double next = crossed ? 0.5 * (from + to) : q + off / (1 + conductancePerFlow * mean * mean * bySquare / Pieces);
            if (!(next > from && next < to)) next = double.IsFinite(to) ? 0.5 * (from + to) : 2 * q;
            double change = next - q;
            q = next;
            if (Math.Abs(change) < Settled * q) break;
        }
        return q;
    }
}
