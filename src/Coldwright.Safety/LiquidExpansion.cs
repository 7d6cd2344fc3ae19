namespace Coldwright.Safety;

/// <summary>How much gas a boiled cryogenic liquid makes, and what it does when shut in.</summary>
/// <remarks>
/// Computed from the reference equations: nitrogen Span et al., J. Phys. Chem. Ref. Data 29 (2000) 1361; argon Tegeler, Span, Wagner,
/// 28 (1999) 779; oxygen Schmidt, Wagner, Fluid Phase Equilib. 19 (1985) 175; methane Setzmann, Wagner, 20 (1991) 1061.
/// </remarks>
public static class LiquidExpansion
{
    /// <summary>Citation.</summary>
    public const string Source = "computed from Span et al. 2000 (nitrogen), Tegeler et al. 1999 (argon), Schmidt and Wagner 1985 (oxygen), Setzmann and Wagner 1991 (methane)";

    // Volume of gas at 294.26 K and 1 atm over volume of liquid at the normal boiling point; pressure at 300 K of a space full of that liquid.
    private static readonly Dictionary<string, (double Ratio, double? ShutInPa)> Values = new(StringComparer.Ordinal)
    {
        ["nitrogen"] = (694.6, 2929e5),
        ["argon"] = (842.9, 3386e5),
        ["oxygen"] = (860.5, null),
        ["methane"] = (634.5, null),
    };

    /// <summary>Gas volume (294.26 K, 1 atm) over liquid volume (normal boiling point); null for other substances.</summary>
    /// <param name="substance">Canonical name.</param>
    public static double? GasOverLiquid(string substance) => Values.TryGetValue(substance, out var v) ? v.Ratio : null;

    /// <summary>Pressure, Pa absolute, at 300 K of a space filled with liquid at the normal boiling point, at constant volume; null where not computed.</summary>
    /// <param name="substance">Canonical name.</param>
    public static double? ShutInPressurePa(string substance) => Values.TryGetValue(substance, out var v) ? v.ShutInPa : null;
}
