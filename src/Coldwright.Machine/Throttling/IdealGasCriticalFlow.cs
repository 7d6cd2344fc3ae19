namespace Coldwright.Machine.Throttling;

/// <summary>Critical state and flow of an ideal gas of constant heat capacities in a frictionless nozzle: the limit the march must meet.</summary>
/// <remarks>Source: A. H. Shapiro, The Dynamics and Thermodynamics of Compressible Fluid Flow I (1953), ch. 4.</remarks>
public static class IdealGasCriticalFlow
{
    /// <summary>T*/T0 = 2/(k + 1).</summary>
    /// <param name="heatCapacityRatio">k = cp/cv, above 1.</param>
    public static double TemperatureRatio(double heatCapacityRatio) => 2 / (Checked(heatCapacityRatio) + 1);

    /// <summary>p*/p0 = (2/(k + 1))^(k/(k - 1)).</summary>
    /// <param name="heatCapacityRatio">k = cp/cv, above 1.</param>
    public static double PressureRatio(double heatCapacityRatio) => Math.Pow(TemperatureRatio(heatCapacityRatio), heatCapacityRatio / (heatCapacityRatio - 1));

    /// <summary>Mass flux, kg/(m2 s): G* = p0 (k/(R T0))^0.5 (2/(k + 1))^((k + 1)/(2 (k - 1))).</summary>
    /// <param name="heatCapacityRatio">k = cp/cv, above 1.</param>
    /// <param name="pressurePa">At rest, Pa.</param>
    /// <param name="temperatureK">At rest, K.</param>
    /// <param name="molarMass">kg/mol.</param>
    public static double MassFlux(double heatCapacityRatio, double pressurePa, double temperatureK, double molarMass) =>
        pressurePa * Math.Sqrt(heatCapacityRatio * molarMass / (GasConstant * temperatureK))
            * Math.Pow(TemperatureRatio(heatCapacityRatio), (heatCapacityRatio + 1) / (2 * (heatCapacityRatio - 1)));

    private const double GasConstant = 8.31446261815324;

    private static double Checked(double k) => k > 1 && double.IsFinite(k) ? k
        : throw new ArgumentException(FormattableString.Invariant($"heatCapacityRatio is {k}; it must be above 1 (dimensionless)"), nameof(k));
}
