namespace Coldwright.Fluids.Envelopes;

/// <summary>A phase of a sample.</summary>
/// <param name="X">Mole fractions.</param>
/// <param name="LnDensity">ln of mol/m3.</param>
/// <param name="LnVolume">ln of the compressibility factor.</param>
/// <param name="ReducedDensity">Density over that of the composition's mean critical volume.</param>
/// <param name="IsGas">Lighter than its critical density, or above the mole-fraction mean of the critical temperatures.</param>
/// <param name="Fraction">mol/mol.</param>
internal sealed record SamplePhase(double[] X, double LnDensity, double LnVolume, double ReducedDensity, bool IsGas, double Fraction);

/// <summary>What a certified flash answered at a place: the phases, lightest (by reduced density) first.</summary>
internal sealed record Sample(Place At, SamplePhase[] Phases, string Names)
{
    public int Count => Phases.Length;

    /// <summary>Index of the phase of least amount: next to a boundary, the one that is about to vanish.</summary>
    public int Least { get; } = Array.IndexOf(Phases, Phases.MinBy(p => p.Fraction));

    public double LeastFraction => Phases[Least].Fraction;

    /// <summary>
    /// How far the phases differ, 0 for the same state. Vapours of equal compressibility and liquids of equal density
    /// count as alike, so that the measure changes little along a region and jumps where a phase is replaced.
    /// </summary>
    public double Unlike(Sample other)
    {
        if (Count != other.Count) return double.PositiveInfinity;
        double most = 0;
        for (int j = 0; j < Count; j++)
        {
            SamplePhase a = Phases[j], b = other.Phases[j];
            most = Math.Max(most, Math.Min(Math.Abs(a.LnDensity - b.LnDensity), Math.Abs(a.LnVolume - b.LnVolume)));
            for (int i = 0; i < a.X.Length; i++) most = Math.Max(most, Math.Abs(a.X[i] - b.X[i]));
        }
        return most;
    }
}
