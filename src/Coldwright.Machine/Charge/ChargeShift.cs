namespace Coldwright.Machine.Charge;

/// <summary>
/// How a mixture's charge changes while it leaks. Molecular flow through a pore finer than the free path lets each gas go by itself, at its partial pressure and
/// 1/sqrt(M) (Knudsen 1909; Graham's law of effusion), so the light ones go first. Viscous flow and an orifice carry the mixture as it is.
/// The two are bounds: a real leak lies between them.
/// </summary>
public static class ChargeShift
{
    /// <summary>Time until some mole fraction has moved by a given amount in molecular flow, s; null when not before 99 % of the charge is gone.</summary>
    /// <param name="fractions">Mole fractions.</param>
    /// <param name="molarMassesKgPerMol">kg/mol.</param>
    /// <param name="amountMol">Charge, mol.</param>
    /// <param name="leakMolS">Leak at the beginning, mol/s; above 0.</param>
    /// <param name="shift">Change of a mole fraction that matters.</param>
    public static double? MolecularTime(IReadOnlyList<double> fractions, IReadOnlyList<double> molarMassesKgPerMol, double amountMol, double leakMolS, double shift)
    {
        if (!(leakMolS > 0)) return null;
        var rates = Rates(fractions, molarMassesKgPerMol, amountMol, leakMolS);
        double low = 0, high = Math.Log(100) / rates.Min();
        if (Moved(high) < shift) return null;
        for (var i = 0; i < 200 && high - low > 1e-9 * high; i++)
        {
            var middle = 0.5 * (low + high);
            if (Moved(middle) < shift) low = middle;
            else high = middle;
        }
        return high;

        double Moved(double t) => After(fractions, rates, t).Zip(fractions, (a, b) => Math.Abs(a - b)).Max();
    }

    /// <summary>Mole fractions after a time of molecular flow.</summary>
    /// <param name="fractions">Mole fractions at the start.</param>
    /// <param name="molarMassesKgPerMol">kg/mol.</param>
    /// <param name="amountMol">Charge at the start, mol.</param>
    /// <param name="leakMolS">Leak at the start, mol/s.</param>
    /// <param name="timeS">s.</param>
    public static IReadOnlyList<double> MolecularAfter(IReadOnlyList<double> fractions, IReadOnlyList<double> molarMassesKgPerMol, double amountMol, double leakMolS, double timeS) =>
        After(fractions, Rates(fractions, molarMassesKgPerMol, amountMol, leakMolS), timeS);

    /// <summary>Moles of each gas left after a time of molecular flow.</summary>
    /// <param name="fractions">Mole fractions at the start.</param>
    /// <param name="molarMassesKgPerMol">kg/mol.</param>
    /// <param name="amountMol">Charge at the start, mol.</param>
    /// <param name="leakMolS">Leak at the start, mol/s.</param>
    /// <param name="timeS">s.</param>
    public static IReadOnlyList<double> MolecularLeft(IReadOnlyList<double> fractions, IReadOnlyList<double> molarMassesKgPerMol, double amountMol, double leakMolS, double timeS) =>
        [.. fractions.Zip(Rates(fractions, molarMassesKgPerMol, amountMol, leakMolS), (x, r) => amountMol * x * Math.Exp(-r * timeS))];

    // Each gas falls off on its own: dn/dt = -r n with r in proportion to 1/sqrt(M), so that all together begin with the given leak.
    private static double[] Rates(IReadOnlyList<double> x, IReadOnlyList<double> m, double amount, double leak)
    {
        var mean = x.Zip(m, (xi, mi) => xi / Math.Sqrt(mi)).Sum();
        return [.. m.Select(mi => leak / amount / Math.Sqrt(mi) / mean)];
    }

    private static double[] After(IReadOnlyList<double> x, double[] rates, double t)
    {
        var left = x.Zip(rates, (xi, r) => xi * Math.Exp(-r * t)).ToArray();
        var sum = left.Sum();
        return [.. left.Select(l => l / sum)];
    }
}
