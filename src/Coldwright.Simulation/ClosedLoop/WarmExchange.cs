using Coldwright.Machine.Streams;
using Coldwright.Numerics.Roots;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>Counterflow exchanger of given conductance between two streams of equal flow, by property tables: the heat per mole at which the integral of dq/(T_high - T_low) is UA/n.</summary>
internal static class WarmExchange
{
    private const int Pieces = 24;

    /// <summary>Heat from high to low stream, J/mol.</summary>
    public static double Heat(StreamTable high, double highIn, double highPa, StreamTable low, double lowIn, double lowPa, double conductancePerFlow)
    {
        double hot = high.Temperature(highIn, highPa, out _), cold = low.Temperature(lowIn, lowPa, out _);
        if (hot - cold < 1e-9) return 0;
        // most: either stream reaches the other's inlet
        double most = Math.Min(highIn - high.Enthalpy(Math.Max(cold, high.ColdestK), highPa), low.Enthalpy(Math.Min(hot, low.WarmestK), lowPa) - lowIn);
        // trapezia on the reciprocal difference; 0 where the streams would touch
        double Needed(double q)
        {
            double sum = 0;
            for (int i = 0; i <= Pieces; i++)
            {
                double share = (double)i / Pieces, d = high.Temperature(highIn - q * (1 - share), highPa, out _) - low.Temperature(lowIn + q * share, lowPa, out _);
                if (!(d > 1e-6)) return double.PositiveInfinity;
                sum += (i is 0 or Pieces ? 0.5 : 1) / d;
            }
            return q * sum / Pieces;
        }

        double Off(double q) => 1 - conductancePerFlow / Math.Max(Needed(q), 1e-12);
        double end = most * (1 - 1e-9);
        if (Off(end) <= 0) return end;
        return Brent.Solve(Off, 1e-6 * most, end, 1e-12 * most);
    }
}
