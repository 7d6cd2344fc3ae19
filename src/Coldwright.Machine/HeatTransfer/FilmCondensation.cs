using Coldwright.Machine.Flow;

namespace Coldwright.Machine.HeatTransfer;

/// <summary>Condensation on an outer surface, the film draining by gravity (product on the outside of the cold coil).</summary>
public static class FilmCondensation
{
    private const double StandardGravity = 9.80665;

    /// <summary>Source and uncertainty of both forms.</summary>
    public static Correlation NusseltCorrelation { get; } = new(
        "Nusselt (1916) film condensation",
        "W. Nusselt, Z. VDI 60, 1916, 541 and 569; uncertainty: our assumption (ripples raise it by up to 20 %)",
        0.15,
        "laminar film, still pure vapour, film Reynolds number 4 G/mu below 1800");

    /// <summary>Mean over the height: h = (2 sqrt 2 / 3) [rhoL (rhoL - rhoV) g h_fg kL^3 / (muL dT L)]^(1/4); a vertical tube of bore well above the film likewise.</summary>
    /// <param name="liquidDensity">kg/m3, above the vapour's.</param>
    /// <param name="vapourDensity">kg/m3.</param>
    /// <param name="liquidConductivity">W/(m K).</param>
    /// <param name="liquidViscosity">Pa s.</param>
    /// <param name="latentHeat">J/kg.</param>
    /// <param name="subcoolingK">Saturation less wall temperature, K, above 0.</param>
    /// <param name="heightM">Height of the surface, m.</param>
    /// <returns>W/(m2 K). One standard deviation 15 %.</returns>
    /// <remarks>Source: Nusselt (1916); worked value in Hewitt, Shires, Bott, Process Heat Transfer (1994) p. 578.</remarks>
    public static double VerticalPlate(
        double liquidDensity, double vapourDensity, double liquidConductivity, double liquidViscosity,
        double latentHeat, double subcoolingK, double heightM)
    {
        FlowGuard.Positive(heightM, nameof(heightM), "m");
        return 2 * Math.Sqrt(2) / 3
            * Group(liquidDensity, vapourDensity, liquidConductivity, liquidViscosity, latentHeat, subcoolingK, heightM);
    }

    /// <summary>Mean round the outside: h = 0.728 [rhoL (rhoL - rhoV) g h_fg kL^3 / (muL dT D)]^(1/4).</summary>
    /// <param name="liquidDensity">kg/m3, above the vapour's.</param>
    /// <param name="vapourDensity">kg/m3.</param>
    /// <param name="liquidConductivity">W/(m K).</param>
    /// <param name="liquidViscosity">Pa s.</param>
    /// <param name="latentHeat">J/kg.</param>
    /// <param name="subcoolingK">Saturation less wall temperature, K, above 0.</param>
    /// <param name="outerDiameterM">Outside diameter, m.</param>
    /// <returns>W/(m2 K). One standard deviation 15 %.</returns>
    /// <remarks>Source: Nusselt (1916); the constant 0.728 is the integral of his theory.</remarks>
    public static double HorizontalTube(
        double liquidDensity, double vapourDensity, double liquidConductivity, double liquidViscosity,
        double latentHeat, double subcoolingK, double outerDiameterM)
    {
        FlowGuard.Positive(outerDiameterM, nameof(outerDiameterM), "m");
        return 0.728 * Group(liquidDensity, vapourDensity, liquidConductivity, liquidViscosity, latentHeat, subcoolingK, outerDiameterM);
    }

    private static double Group(
        double liquidDensity, double vapourDensity, double liquidConductivity, double liquidViscosity,
        double latentHeat, double subcoolingK, double lengthM)
    {
        FlowGuard.Positive(liquidDensity - vapourDensity, "liquidDensity less vapourDensity", "kg/m3");
        FlowGuard.Positive(liquidConductivity, nameof(liquidConductivity), "W/(m K)");
        FlowGuard.Positive(liquidViscosity, nameof(liquidViscosity), "Pa s");
        FlowGuard.Positive(latentHeat, nameof(latentHeat), "J/kg");
        FlowGuard.Positive(subcoolingK, nameof(subcoolingK), "K");
        double weight = liquidDensity * (liquidDensity - vapourDensity) * StandardGravity * latentHeat;
        return Math.Pow(weight * Math.Pow(liquidConductivity, 3) / (liquidViscosity * subcoolingK * lengthM), 0.25);
    }
}
