namespace Coldwright.Machine.Compression;

/// <summary>
/// What the gas left in the clearance takes from the swept volume: eta_v = 1 - c (v_suction/v_discharge - 1), where the
/// clearance gas re-expands along the path it was compressed on.
/// </summary>
public static class ClearanceReExpansion
{
    /// <summary>
    /// Volumetric efficiency of clearance alone with a polytrope p v^n: 1 - c (r^(1/n) - 1). Textbook formula (W. F. Stoecker,
    /// J. W. Jones, Refrigeration and Air Conditioning, 1982, chapter 11; from memory). Below 0 nothing is drawn in.
    /// </summary>
    /// <param name="clearanceFraction">Clearance over swept volume, 0 to 0.5.</param>
    /// <param name="pressureRatio">Discharge over suction pressure (absolute), 1 or more.</param>
    /// <param name="exponent">Polytropic exponent n, 1 or more.</param>
    public static double Polytropic(double clearanceFraction, double pressureRatio, double exponent)
    {
        InputCheck.Within(pressureRatio, 1, 1e6, "", nameof(pressureRatio));
        InputCheck.Within(exponent, 1, 3, "", nameof(exponent));
        return FromDensityRatio(clearanceFraction, Math.Pow(pressureRatio, 1 / exponent));
    }

    /// <summary>Volumetric efficiency of clearance alone from real-gas densities: 1 - c (rho_discharge/rho_suction - 1).</summary>
    /// <param name="clearanceFraction">Clearance over swept volume, 0 to 0.5.</param>
    /// <param name="densityRatio">Density at the end of the stroke over that of the gas drawn in, along one path.</param>
    public static double FromDensityRatio(double clearanceFraction, double densityRatio) =>
        1 - InputCheck.Within(clearanceFraction, 0, 0.5, "", nameof(clearanceFraction)) * (densityRatio - 1);
}
