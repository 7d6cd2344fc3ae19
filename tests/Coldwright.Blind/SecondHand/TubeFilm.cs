namespace Coldwright.Blind.SecondHand;

/// <summary>
/// Film in a tube: Gnielinski (1976) with the friction of Filonenko for gas and for liquid, Cavallini and Zecchin's equivalent flow (1974) while both are there, and the
/// resistance of the gas's own heat as Silver (1947) has it. Constants from memory; properties of gas and liquid are rounded ones of light hydrocarbons, our assumption.
/// </summary>
internal static class TubeFilm
{
    private const double LiquidViscosity = 1.3e-4, LiquidConductivity = 0.12, LiquidCapacity = 2600, LiquidDensity = 520;

    /// <summary>W/(m2 K).</summary>
    /// <param name="flux">kg/(m2 s).</param>
    /// <param name="d">Hydraulic diameter, m.</param>
    /// <param name="vapour">Vapour share, 0..1.</param>
    /// <param name="k">K.</param>
    /// <param name="pa">Pa.</param>
    /// <param name="slope">Slope of the enthalpy with temperature, J/(mol K).</param>
    /// <param name="molarMass">kg/mol.</param>
    public static double Of(double flux, double d, double vapour, double k, double pa, double slope, double molarMass)
    {
        double gasViscosity = 1.0e-5 * Math.Pow(k / 300, 0.85), gasConductivity = 0.030 * k / 300, gasCapacity = 1850;
        double gas = Single(Math.Max(flux * vapour, 0.03 * flux), d, gasViscosity, gasConductivity, gasCapacity);
        if (vapour >= 1) return gas;
        if (vapour <= 0) return Single(flux, d, LiquidViscosity, LiquidConductivity, LiquidCapacity);
        double gasDensity = pa * molarMass / (8.314 * k), equivalent = flux * (1 - vapour + vapour * Math.Sqrt(LiquidDensity / gasDensity));
        double wet = 0.05 * Math.Pow(equivalent * d / LiquidViscosity, 0.8) * Math.Pow(LiquidViscosity * LiquidCapacity / LiquidConductivity, 0.33) * LiquidConductivity / d;
        double own = Math.Clamp(vapour * gasCapacity * molarMass / slope, 0, 1);
        return 1 / (1 / wet + own / gas);
    }

    private static double Single(double flux, double d, double viscosity, double conductivity, double capacity)
    {
        double re = Math.Max(flux * d / viscosity, 100), pr = viscosity * capacity / conductivity;
        double r = Math.Max(re, 3000), f = Math.Pow(1.82 * Math.Log10(r) - 1.64, -2), nu = f / 8 * (r - 1000) * pr / (1 + 12.7 * Math.Sqrt(f / 8) * (Math.Pow(pr, 2.0 / 3) - 1));
        return (re >= 3000 ? nu : 4 + (nu - 4) * re / 3000) * conductivity / d;
    }
}
