using Coldwright.Fluids.Substances;
using Coldwright.Machine.Charge;
using Coldwright.Numerics.Roots;

namespace Coldwright.Design.Charging;

/// <summary>What is left after a leak, and what to let in again, for one kind of leak.</summary>
/// <param name="Leak">In words: how it leaked.</param>
/// <param name="LostKg">kg.</param>
/// <param name="Left">Mole fractions of what is left, in the mixture's order.</param>
/// <param name="PressurePa">Standstill pressure then, Pa absolute.</param>
/// <param name="AddKg">kg of each gas that brings the charge back.</param>
public sealed record TopUpCase(string Leak, double LostKg, IReadOnlyList<double> Left, double PressurePa, IReadOnlyList<double> AddKg);

/// <summary>Topping up: a fine leak lets the light gases out first, a wide one all alike. Both are bounds; between them lies the truth.</summary>
public static class TopUp
{
    private const double LongestShare = 0.99;

    /// <summary>Both bounds.</summary>
    /// <param name="gas">Space and gases.</param>
    /// <param name="moles">Charge as it was, mol.</param>
    /// <param name="lostKg">Mass lost, kg; null: told by the pressure.</param>
    /// <param name="nowPa">Standstill pressure now, Pa absolute; null: told by the mass.</param>
    /// <exception cref="ArgumentException">More is lost than there was, or the pressure now is not below that of the full charge.</exception>
    public static IReadOnlyList<TopUpCase> Of(RestingGas gas, IReadOnlyList<double> moles, double? lostKg, double? nowPa)
    {
        if (lostKg is null && nowPa is null) return [];
        double total = moles.Sum();
        double[] masses = [.. gas.Names.Select(n => SubstanceCatalog.Get(n).MolarMass)], z = [.. moles.Select(n => n / total)];
        double kg = moles.Zip(masses, (n, m) => n * m).Sum(), full = gas.At(moles).PressurePa;
        if (lostKg is { } lost && !(lost < LongestShare * kg)) throw new ArgumentException(FormattableString.Invariant($"{1e3 * lost:0.#} g are said to be lost; of {1e3 * kg:0.#} g at most {100 * LongestShare:0} % can be"), nameof(lostKg));
        if (lostKg is null && nowPa is { } p && !(p < full)) throw new ArgumentException(FormattableString.Invariant($"the standstill pressure now, {p / 1e5:0.###} bar absolute, is not below that of the full charge, {full / 1e5:0.###} bar absolute: nothing is lost"), nameof(nowPa));
        return [Case("a wide leak: all gases alike", s => [.. moles.Select(n => n * (1 - s))]),
            Case("a fine leak: light gases first", s => [.. ChargeShift.MolecularLeft(z, masses, total, total, -Math.Log(1 - s))])];

        TopUpCase Case(string leak, Func<double, double[]> after)
        {
            double Off(double s)
            {
                var n = after(s);
                return lostKg is { } l ? kg - n.Zip(masses, (a, m) => a * m).Sum() - l : nowPa!.Value - gas.At(n).PressurePa;
            }
            // a share of the leak's own time; its longest loses nearly all of every gas
            double high = 1 - 1e-9, low = 0, offLow = Off(low), offHigh = Off(high);
            double share = Brent.Solve(Off, low, offLow, high, offHigh, 1e-12);
            var left = after(share);
            double sum = left.Sum();
            return new(leak, kg - left.Zip(masses, (a, m) => a * m).Sum(), [.. left.Select(n => n / sum)], gas.At(left).PressurePa, [.. moles.Select((n, i) => (n - left[i]) * masses[i])]);
        }
    }
}
