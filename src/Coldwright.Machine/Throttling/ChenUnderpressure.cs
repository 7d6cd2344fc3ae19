using Coldwright.Machine.Flow;

namespace Coldwright.Machine.Throttling;

/// <summary>Underpressure of vaporisation in adiabatic capillaries after Chen et al. (1990).</summary>
public static class ChenUnderpressure
{
    private const double Boltzmann = 1.380649e-23;

    /// <summary>Source and uncertainty.</summary>
    public static Correlation Correlation { get; } = new(
        "Chen, Li, Lin, Chen (1990) underpressure of vaporisation",
        "Z. H. Chen, R. Y. Li, S. Lin, Z. Y. Chen, ASHRAE Transactions 96(1), 1990, 550-554; formula and range from memory",
        0.3,
        "R12; bore 0.66 to 1.17 mm, mass flux 1440 to 5090 kg/(m2 s), Re 4640 to 37600, subcooling above 0 to 17 K");

    /// <summary>
    /// Bubble pressure less the pressure at which flashing begins, Pa:
    /// dp = 0.679 sigma^1.5/(k T)^0.5 v"/(v"-v') Re^0.914 (dT/Tc)^-0.208 (D/D')^-3.18, D' = 1e4 (k T/sigma)^0.5.
    /// </summary>
    /// <param name="saturationTemperatureK">Temperature where the liquid is saturated, K, above 0.</param>
    /// <param name="surfaceTensionNPerM">N/m, above 0.</param>
    /// <param name="liquidVolume">Saturated liquid, m3/kg.</param>
    /// <param name="vapourVolume">Vapour in equilibrium with it, m3/kg, above that of the liquid.</param>
    /// <param name="reynolds">G D/viscosity of the liquid.</param>
    /// <param name="subcoolingK">Subcooling at the tube's inlet, K; taken as at least 0.5 K, where the power law would run away.</param>
    /// <param name="criticalTemperatureK">K.</param>
    /// <param name="boreM">m.</param>
    /// <returns>Pa. R12 only was measured; for anything else an extrapolation, and 30 % is our own estimate of one standard deviation.</returns>
    /// <remarks>Source: <see cref="Correlation"/>.</remarks>
    public static double UnderpressurePa(double saturationTemperatureK, double surfaceTensionNPerM, double liquidVolume, double vapourVolume,
        double reynolds, double subcoolingK, double criticalTemperatureK, double boreM)
    {
        double kt = Boltzmann * ThrottleGuard.Positive(saturationTemperatureK, nameof(saturationTemperatureK), "K");
        double sigma = ThrottleGuard.Positive(surfaceTensionNPerM, nameof(surfaceTensionNPerM), "N/m");
        double reference = 1e4 * Math.Sqrt(kt / sigma);
        return 0.679 * Math.Pow(sigma, 1.5) / Math.Sqrt(kt) * vapourVolume / (vapourVolume - liquidVolume)
            * Math.Pow(reynolds, 0.914) * Math.Pow(Math.Max(subcoolingK, 0.5) / criticalTemperatureK, -0.208) * Math.Pow(boreM / reference, -3.18);
    }
}
