namespace Coldwright.Safety.Pressure;

/// <summary>Energy that a vessel sets free when it bursts.</summary>
public static class StoredEnergy
{
    /// <summary>Citation of the gas formula.</summary>
    public const string Source = "Baker, Cox, Westine, Kulesz, Strehlow, Explosion Hazards and Evaluation (1983), in the form E = p V / (k - 1) [1 - (p0/p)^((k-1)/k)]; citation from memory";

    // Adiabatic bulk modulus of water near 20 °C, from memory.
    private const double WaterBulkModulusPa = 2.2e9;

    /// <summary>Isentropic expansion of an ideal gas to the surroundings, J.</summary>
    /// <param name="pressurePa">Pressure inside, Pa absolute.</param>
    /// <param name="surroundingsPa">Pressure outside, Pa absolute, at most that inside.</param>
    /// <param name="volumeM3">Volume, m3.</param>
    /// <param name="heatCapacityRatio">k, above 1 to 1.67; 1.4 for nitrogen and air.</param>
    public static double GasJ(double pressurePa, double surroundingsPa, double volumeM3, double heatCapacityRatio = 1.4)
    {
        Guard.Positive(surroundingsPa, nameof(surroundingsPa), "Pa");
        Guard.Within(pressurePa, surroundingsPa, double.MaxValue, nameof(pressurePa), "Pa");
        Guard.NotNegative(volumeM3, nameof(volumeM3), "m3");
        Guard.Within(heatCapacityRatio, 1.001, 1.67, nameof(heatCapacityRatio), "");
        var k = heatCapacityRatio;
        return pressurePa * volumeM3 / (k - 1) * (1 - Math.Pow(surroundingsPa / pressurePa, (k - 1) / k));
    }

    /// <summary>Water pressed into the same volume, J: p2 V / (2 K), the stretch of the wall left out.</summary>
    /// <param name="gaugePressurePa">Pressure above the surroundings, Pa.</param>
    /// <param name="volumeM3">Volume, m3.</param>
    public static double WaterJ(double gaugePressurePa, double volumeM3)
    {
        Guard.NotNegative(gaugePressurePa, nameof(gaugePressurePa), "Pa");
        Guard.NotNegative(volumeM3, nameof(volumeM3), "m3");
        return gaugePressurePa * gaugePressurePa * volumeM3 / (2 * WaterBulkModulusPa);
    }
}
