using Coldwright.Fluids.Substances;

namespace Coldwright.Safety;

/// <summary>Lower flammability limits in air at room conditions.</summary>
/// <remarks>Volume fractions from IEC 60079-20-1:2010. Hydrogen (same standard), R32 and R1234yf (ISO 817) are from memory.</remarks>
public static class FlammabilityLimits
{
    /// <summary>Citation.</summary>
    public const string Source = "IEC 60079-20-1:2010 (hydrogen, R32 and R1234yf from memory); mixtures by Le Chatelier's rule";

    private static readonly Dictionary<string, double> LowerVolumeFraction = new(StringComparer.Ordinal)
    {
        ["methane"] = 0.044,
        ["ethane"] = 0.024,
        ["ethylene"] = 0.023,
        ["propane"] = 0.017,
        ["propylene"] = 0.020,
        ["isobutane"] = 0.013,
        ["butane"] = 0.014,
        ["isopentane"] = 0.013,
        ["pentane"] = 0.011,
        ["hydrogen"] = 0.040,
        ["R32"] = 0.144,
        ["R1234yf"] = 0.062,
    };

    /// <summary>True for a substance that burns in air at room conditions.</summary>
    /// <param name="substance">Canonical name.</param>
    public static bool Burns(string substance) => LowerVolumeFraction.ContainsKey(substance);

    /// <summary>Lower flammability limit of a mixture, volume fraction of the mixture in air; null when it cannot burn at any share.</summary>
    /// <remarks>Le Chatelier: 1 / L = sum of y_i / L_i over the combustibles; inert gases only dilute, which is cautious.</remarks>
    /// <param name="mixture">Mole fractions as charged.</param>
    public static double? LowerLimit(Composition mixture)
    {
        double sum = 0;
        for (var i = 0; i < mixture.Names.Count; i++)
            if (LowerVolumeFraction.TryGetValue(mixture.Names[i], out var limit)) sum += mixture.MoleFractions[i] / limit;
        return sum > 1 ? 1 / sum : null;
    }
}
