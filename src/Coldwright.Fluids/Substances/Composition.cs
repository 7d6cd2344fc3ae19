namespace Coldwright.Fluids.Substances;

/// <summary>Named substances with their mole fractions, in the order given; fractions sum to 1.</summary>
public sealed class Composition
{
    /// <summary>Canonical substance names (see <c>SubstanceCatalog</c>).</summary>
    public IReadOnlyList<string> Names { get; }

    /// <summary>Mole fractions (mol/mol), same order as <see cref="Names"/>, normalised to sum 1.</summary>
    public IReadOnlyList<double> MoleFractions { get; }

    /// <param name="names">Canonical names, no repeats, 1 to 12 of them.</param>
    /// <param name="moleFractions">Positive or zero amounts; they are normalised to sum 1.</param>
    public Composition(IReadOnlyList<string> names, IReadOnlyList<double> moleFractions)
    {
        if (names.Count == 0 || names.Count != moleFractions.Count)
            throw new ArgumentException($"a composition needs as many fractions as names, got {names.Count} names and {moleFractions.Count} fractions");
        if (names.Distinct().Count() != names.Count)
            throw new ArgumentException($"a substance is named twice in {string.Join(", ", names)}");
        double sum = 0;
        foreach (var x in moleFractions)
        {
            if (!double.IsFinite(x) || x < 0)
                throw new ArgumentException($"a mole fraction must be 0 or more, got {x}");
            sum += x;
        }
        if (sum <= 0) throw new ArgumentException("the mole fractions sum to zero");
        Names = names.ToArray();
        MoleFractions = moleFractions.Select(x => x / sum).ToArray();
    }

    /// <summary>The text a person writes: <c>nitrogen 0.35, methane 0.65</c>.</summary>
    public override string ToString() => string.Join(", ", Names.Zip(MoleFractions, (n, x) => FormattableString.Invariant($"{n} {x:0.####}")));
}
