using Coldwright.Machine.Flow;

namespace Coldwright.Machine.Throttling;

/// <summary>The sizing equations for control valves: turbulent flow, no fittings attached.</summary>
public static class ControlValveEquations
{
    /// <summary>Water at 15 C, kg/m3: the reference density of the flow coefficient.</summary>
    public const double ReferenceDensity = 999.103;

    /// <summary>Source and uncertainty.</summary>
    public static Correlation Correlation { get; } = new(
        "Control valve sizing, IEC 60534-2-1 / ISA-75.01.01",
        "IEC 60534-2-1:2011, clauses for incompressible and compressible fluids; equations from memory, checked against the standard's Example 1 as printed in the documentation of the open library fluids",
        0.05,
        "turbulent flow; FL, xT and the flow coefficient as measured by the maker");

    /// <summary>Liquid, kg/s: m = A (2 rho dp)^0.5 with dp = min(p1 - p2, FL^2 (p1 - FF pv)), FF = 0.96 - 0.28 (pv/pc)^0.5.</summary>
    /// <param name="effectiveAreaM2"><see cref="ControlValve.EffectiveAreaM2"/>, m2.</param>
    /// <param name="density">kg/m3.</param>
    /// <param name="inletPa">Pa.</param>
    /// <param name="outletPa">Pa, not above the inlet's.</param>
    /// <param name="vapourPressurePa">Bubble pressure at the inlet's temperature, Pa.</param>
    /// <param name="criticalPressurePa">Pa; of a mixture the mole-fraction mean.</param>
    /// <param name="pressureRecovery">FL, 0.3 to 1.</param>
    /// <returns>kg/s.</returns>
    /// <remarks>Source: <see cref="Correlation"/>.</remarks>
    public static double Liquid(double effectiveAreaM2, double density, double inletPa, double outletPa, double vapourPressurePa, double criticalPressurePa, double pressureRecovery)
    {
        double ff = CriticalPressureRatio(vapourPressurePa, criticalPressurePa);
        double choked = pressureRecovery * pressureRecovery * (inletPa - ff * vapourPressurePa);
        return effectiveAreaM2 * Math.Sqrt(2 * density * Math.Max(Math.Min(inletPa - outletPa, choked), 0));
    }

    /// <summary>FF = 0.96 - 0.28 (pv/pc)^0.5: pressure in the throat of a choked liquid over its vapour pressure.</summary>
    /// <param name="vapourPressurePa">Pa.</param>
    /// <param name="criticalPressurePa">Pa.</param>
    public static double CriticalPressureRatio(double vapourPressurePa, double criticalPressurePa) =>
        0.96 - 0.28 * Math.Sqrt(Math.Min(vapourPressurePa / criticalPressurePa, 1));

    /// <summary>Gas, kg/s: m = A Y (2 rho1 x p1)^0.5, Y = 1 - x/(3 F xT), x = min(1 - p2/p1, F xT), F = gamma/1.4.</summary>
    /// <param name="effectiveAreaM2"><see cref="ControlValve.EffectiveAreaM2"/>, m2.</param>
    /// <param name="density">At the inlet, kg/m3.</param>
    /// <param name="inletPa">Pa.</param>
    /// <param name="outletPa">Pa, not above the inlet's.</param>
    /// <param name="heatCapacityRatio">gamma, 1.08 to 1.65 in the standard.</param>
    /// <param name="gasChokingRatio">xT, 0.1 to 0.95.</param>
    /// <returns>kg/s.</returns>
    /// <remarks>Source: <see cref="Correlation"/>.</remarks>
    public static double Gas(double effectiveAreaM2, double density, double inletPa, double outletPa, double heatCapacityRatio, double gasChokingRatio)
    {
        double limit = heatCapacityRatio / 1.4 * gasChokingRatio, x = Math.Min(1 - outletPa / inletPa, limit);
        return effectiveAreaM2 * (1 - x / (3 * limit)) * Math.Sqrt(2 * density * Math.Max(x, 0) * inletPa);
    }

    /// <summary>
    /// Throat over effective area that makes the critical flow of an ideal gas the choked flow of <see cref="Gas"/>:
    /// (2/3) (2 F xT)^0.5 / psi, psi = gamma^0.5 (2/(gamma+1))^((gamma+1)/(2 (gamma-1))).
    /// </summary>
    /// <param name="heatCapacityRatio">gamma, above 1.</param>
    /// <param name="gasChokingRatio">xT.</param>
    public static double GasThroat(double heatCapacityRatio, double gasChokingRatio)
    {
        double g = heatCapacityRatio, psi = Math.Sqrt(g) * Math.Pow(2 / (g + 1), (g + 1) / (2 * (g - 1)));
        return 2.0 / 3 * Math.Sqrt(2 * g / 1.4 * gasChokingRatio) / psi;
    }
}
