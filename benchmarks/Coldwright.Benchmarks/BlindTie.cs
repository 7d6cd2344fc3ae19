using Coldwright.Blind;

namespace Coldwright.Benchmarks;

/// <summary>
/// Whether a fault and what was named in its place are truly alike: the generator's own machine is fitted again with the other in the fault's stead, and the two logs may differ
/// by no more than 2 in chi-square under the noise of the sensors, everything else being as it truly was.
/// </summary>
internal static class BlindTie
{
    private const double Most = 2;
    private const int Rounds = 7;

    /// <summary>True when no size of the other fault makes a log that can be told from the true one.</summary>
    public static bool Holds(IBlindHand hand, BlindCase c, string fault, string other, SensorSet set)
    {
        if (other is "none" || CaseMaker.Faults.All(f => f.Id != other)) return other is "none" && Distance(hand, c, c.Truth.Without(fault), set) < Most;
        var (_, from, to) = CaseMaker.Faults.First(f => f.Id == other);
        // golden section over the size, from nothing to twice the largest drawn
        double a = other is "exchanger" or "coil" or "compressor-flow" or "capillary-blocked" or "precooler-weak" ? 0.5 * from : 0, b = other is "exchanger" or "coil" or "compressor-flow" or "capillary-blocked" or "precooler-weak" ? 1 : 2 * to;
        double golden = (Math.Sqrt(5) - 1) / 2, x = b - golden * (b - a), y = a + golden * (b - a), fx = At(x), fy = At(y);
        for (int i = 0; i < Rounds && Math.Min(fx, fy) >= Most; i++)
        {
            if (fx < fy)
            {
                (b, y, fy) = (y, x, fx);
                x = b - golden * (b - a);
                fx = At(x);
            }
            else
            {
                (a, x, fx) = (x, y, fy);
                y = a + golden * (b - a);
                fy = At(y);
            }
        }
        return Math.Min(fx, fy) < Most;
        double At(double size) => Distance(hand, c, c.Truth.Without(fault) with { Faults = [.. c.Truth.Without(fault).Faults, (other, size)] }, set);
    }

    private static double Distance(IBlindHand hand, BlindCase c, Truth truth, SensorSet set) => hand.Distance(c, hand.Again(c, truth), set);
}
