namespace Coldwright.Safety.Relief;

/// <summary>What a vessel boils off when heat falls on it from outside, and the opening it needs, by the refrigeration standard.</summary>
/// <remarks>EN 13136 (ISO 24664), from memory: Q = phi A / h with phi = 10 kW/m2;
/// A_c = Q / (0.2883 C Kdr Kb) sqrt(v0 / p0), Q in kg/h, v0 in m3/kg, p0 in bar absolute, A_c in mm2,
/// C = 3.948 sqrt(k (2/(k+1))^((k+1)/(k-1))).</remarks>
public static class HeatedVessel
{
    /// <summary>Citation.</summary>
    public const string Source = "EN 13136 / ISO 24664: heat of 10 kW/m2 on the outside, flow through a critical nozzle; equations from memory";

    /// <summary>Heat on the outside surface by the standard, W/m2.</summary>
    public const double StandardHeatFluxWPerM2 = 10_000;

    /// <summary>Flow to relieve, kg/s.</summary>
    /// <param name="surfaceM2">Outside surface, m2.</param>
    /// <param name="latentHeatJPerKg">Heat of evaporation at the relieving pressure, J/kg.</param>
    /// <param name="heatFluxWPerM2">Heat on the surface, W/m2.</param>
    public static double FlowKgPerS(double surfaceM2, double latentHeatJPerKg, double heatFluxWPerM2 = StandardHeatFluxWPerM2)
    {
        Guard.NotNegative(surfaceM2, nameof(surfaceM2), "m2");
        Guard.Positive(latentHeatJPerKg, nameof(latentHeatJPerKg), "J/kg");
        Guard.NotNegative(heatFluxWPerM2, nameof(heatFluxWPerM2), "W/m2");
        return heatFluxWPerM2 * surfaceM2 / latentHeatJPerKg;
    }

    /// <summary>Area needed at critical flow, m2.</summary>
    /// <param name="flowKgPerS">Flow, kg/s.</param>
    /// <param name="specificVolumeM3PerKg">Specific volume ahead of the device, m3/kg.</param>
    /// <param name="pressurePa">Relieving pressure, Pa absolute.</param>
    /// <param name="heatCapacityRatio">k, above 1 to 2.</param>
    /// <param name="discharge">Kdr, the derated coefficient of discharge, 0..1.</param>
    public static double AreaM2(double flowKgPerS, double specificVolumeM3PerKg, double pressurePa, double heatCapacityRatio, double discharge)
    {
        Guard.NotNegative(flowKgPerS, nameof(flowKgPerS), "kg/s");
        Guard.Positive(specificVolumeM3PerKg, nameof(specificVolumeM3PerKg), "m3/kg");
        Guard.Positive(pressurePa, nameof(pressurePa), "Pa");
        Guard.Within(discharge, 0.01, 1, nameof(discharge), "");
        var c = 100 * GasReliefArea.NozzleCoefficient(heatCapacityRatio);
        return flowKgPerS * 3600 / (0.2883 * c * discharge) * Math.Sqrt(specificVolumeM3PerKg / (pressurePa / 1e5)) * 1e-6;
    }
}
