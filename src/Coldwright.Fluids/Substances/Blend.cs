using System.Diagnostics.CodeAnalysis;

namespace Coldwright.Fluids.Substances;

/// <summary>A named mixture of fixed composition.</summary>
/// <param name="Name">Canonical name.</param>
/// <param name="IsByMass">True when the shares are mass fractions, false for mole fractions.</param>
/// <param name="Parts">Canonical substance names with their shares; they sum to 1.</param>
/// <param name="Source">Published source of the composition.</param>
public sealed record Blend(string Name, bool IsByMass, IReadOnlyList<(string Substance, double Share)> Parts, string Source)
{
    private const string Standard34 = "ANSI/ASHRAE Standard 34, nominal composition";

    /// <summary>The blends that are known by name.</summary>
    public static IReadOnlyList<Blend> All { get; } =
    [
        new("air", false, [("nitrogen", 0.7812), ("argon", 0.0092), ("oxygen", 0.2096)],
            "Lemmon, Jacobsen, Penoncello, Friend, J. Phys. Chem. Ref. Data 29 (2000) 331"),
        new("R410A", true, [("R32", 0.50), ("R125", 0.50)], Standard34),
        new("R407C", true, [("R32", 0.23), ("R125", 0.25), ("R134a", 0.52)], Standard34),
    ];

    /// <summary>Finds a blend by name; case, hyphens and spaces do not matter.</summary>
    public static bool TryFind(string text, [NotNullWhen(true)] out Blend? blend)
    {
        var key = SubstanceNames.Key(text);
        blend = All.FirstOrDefault(b => SubstanceNames.Key(b.Name) == key);
        return blend is not null;
    }

    /// <summary>Mole fractions of the parts.</summary>
    /// <param name="molarMassKgPerMol">Molar mass (kg/mol) of a canonical name.</param>
    public IEnumerable<(string Substance, double MoleFraction)> MoleFractions(Func<string, double> molarMassKgPerMol)
    {
        if (!IsByMass) return Parts;
        var total = Parts.Sum(p => p.Share / molarMassKgPerMol(p.Substance));
        return Parts.Select(p => (p.Substance, p.Share / molarMassKgPerMol(p.Substance) / total));
    }

    /// <summary>Molar mass of the blend, kg/mol.</summary>
    /// <param name="molarMassKgPerMol">Molar mass (kg/mol) of a canonical name.</param>
    public double MolarMass(Func<string, double> molarMassKgPerMol) =>
        MoleFractions(molarMassKgPerMol).Sum(p => p.MoleFraction * molarMassKgPerMol(p.Substance));
}
