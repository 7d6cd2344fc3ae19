namespace Coldwright.Blind.Physics;

/// <summary>Films of a mixture that boils or condenses in a tube: Dittus and Boelter (1930) for gas and for all as liquid, Shah's (1979) rise with the vapour share, and the sensible heat of the gas in series as Bell and Ghaly (1973) have it.</summary>
internal static class Films
{
    private const double LiquidViscosity = 1.6e-4, LiquidConductivity = 0.13, LiquidCapacityPerKg = 2500;

    /// <summary>W/(m2 K).</summary>
    public static double Of(GasTable t, double k, double p, double n, double hydraulicM, double areaM2)
    {
        double massFlux = n * t.MolarMass / areaM2, x = t.Vapour(k, p), gasMu = 1.05e-5 * Math.Pow(Math.Max(k, 90) / 300, 0.8), gasK = 0.032 * Math.Pow(Math.Max(k, 90) / 300, 0.95), gasCp = 1900;
        double gas = Turbulent(massFlux * Math.Max(x, 0.05), hydraulicM, gasMu, gasK, gasCp);
        if (x > 0.999) return gas;
        double liquid = Turbulent(massFlux, hydraulicM, LiquidViscosity, LiquidConductivity, LiquidCapacityPerKg);
        if (x < 0.001) return liquid;
        double both = liquid * (Math.Pow(1 - x, 0.8) + 3.8 * Math.Pow(x, 0.76) * Math.Pow(1 - x, 0.04) / Math.Pow(0.35, 0.38));
        double z = Math.Clamp(x * gasCp * t.MolarMass / t.Capacity(k, p), 0, 1);
        return 1 / (1 / both + z / gas);
    }

    private static double Turbulent(double flux, double d, double mu, double k, double cp) =>
        Math.Max(4.4 * k / d, 0.023 * Math.Pow(Math.Max(flux * d / mu, 10), 0.8) * Math.Pow(mu * cp / k, 0.4) * k / d);
}
