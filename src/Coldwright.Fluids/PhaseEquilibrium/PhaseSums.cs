namespace Coldwright.Fluids.PhaseEquilibrium;

/// <summary>Sums over a list of phases.</summary>
internal static class PhaseSums
{
    /// <summary>Gibbs energy of one evaluated phase, per mole of it and RT, up to a term that depends on T, p and amounts only.</summary>
    public static double Gibbs(PhaseBuffer phase)
    {
        double g = phase.ResidualGibbs;
        for (int i = 0; i < phase.X.Length; i++) if (phase.X[i] > 0) g += phase.X[i] * phase.LnX[i];
        return g;
    }

    /// <summary>The same of all phases together, per mole of mixture.</summary>
    public static double Gibbs(ReadOnlySpan<PhaseBuffer> phases)
    {
        double g = 0;
        foreach (var phase in phases) g += phase.Fraction * Gibbs(phase);
        return g;
    }

    /// <summary>Residual enthalpy of all phases together, per mole of mixture and RT.</summary>
    public static double ResidualEnthalpy(ReadOnlySpan<PhaseBuffer> phases)
    {
        double h = 0;
        foreach (var phase in phases) h += phase.Fraction * phase.ResidualEnthalpy;
        return h;
    }

    /// <summary>Entropy of all phases together over that of the unmixed ideal gases, per mole of mixture and R: (h - g)/(RT).</summary>
    public static double EntropyOfMixing(ReadOnlySpan<PhaseBuffer> phases) => ResidualEnthalpy(phases) - Gibbs(phases);

    /// <summary>Rounding to expect in the Gibbs energy of all phases together.</summary>
    public static double Rounding(ReadOnlySpan<PhaseBuffer> phases)
    {
        double sum = 0;
        foreach (var phase in phases) sum += phase.Fraction * phase.Rounding;
        return sum;
    }

    /// <summary>Largest difference of ln f between the phases; infinite when it is not a number.</summary>
    public static double FugacityDifference(ReadOnlySpan<PhaseBuffer> phases, ReadOnlySpan<double> z)
    {
        double error = 0;
        for (int i = 0; i < z.Length; i++)
        {
            if (z[i] == 0) continue;
            double reference = phases[0].LnX[i] + phases[0].LnPhi[i];
            for (int j = 1; j < phases.Length; j++)
                error = Math.Max(error, Math.Abs(phases[j].LnX[i] + phases[j].LnPhi[i] - reference));
        }
        return double.IsNaN(error) ? double.PositiveInfinity : error;
    }

    /// <summary>True when every phase has some amount.</summary>
    public static bool AllPositive(ReadOnlySpan<PhaseBuffer> phases)
    {
        foreach (var phase in phases) if (!(phase.Fraction > 0)) return false;
        return true;
    }

    /// <summary>Index of the phase with the largest fraction.</summary>
    public static int Largest(ReadOnlySpan<PhaseBuffer> phases)
    {
        int r = 0;
        for (int j = 1; j < phases.Length; j++) if (phases[j].Fraction > phases[r].Fraction) r = j;
        return r;
    }

    /// <summary>Index of the phase with the smallest fraction.</summary>
    public static int Smallest(ReadOnlySpan<PhaseBuffer> phases)
    {
        int r = 0;
        for (int j = 1; j < phases.Length; j++) if (phases[j].Fraction < phases[r].Fraction) r = j;
        return r;
    }

    /// <summary>Puts the amounts of <paramref name="from"/> into <paramref name="into"/> (composition and fraction only).</summary>
    public static void Pour(PhaseBuffer from, PhaseBuffer into)
    {
        double total = from.Fraction + into.Fraction;
        for (int i = 0; i < into.X.Length; i++) into.X[i] = (into.Fraction * into.X[i] + from.Fraction * from.X[i]) / total;
        into.Fraction = total;
    }
}
