namespace Coldwright.Safety.Relief;

/// <summary>Flow area of a relief device for gas.</summary>
/// <remarks>
/// API Standard 520 Part I, SI equations, W in kg/h, P in kPa absolute, M in g/mol, A in mm2:
/// critical A = W / (C Kd Kb Kc P1) sqrt(T Z / M), C = 0.03948 sqrt(k (2/(k+1))^((k+1)/(k-1)));
/// subcritical A = 17.9 W / (F2 Kd Kc) sqrt(T Z / (M P1 (P1 - P2))),
/// F2 = sqrt(k/(k-1) r^(2/k) (1 - r^((k-1)/k)) / (1 - r)), r = P2/P1.
/// </remarks>
public static class GasReliefArea
{
    /// <summary>Citation.</summary>
    public const string Source = "API Standard 520 Part I, critical and subcritical gas";

    /// <summary>Coefficient of discharge of a relief valve that was not tested, as the standard takes it.</summary>
    public const double DischargeCoefficient = 0.975;

    private const double Hour = 3600;
    private const double Kilo = 1000;

    /// <summary>C of the critical equation, in the standard's own units.</summary>
    /// <param name="heatCapacityRatio">k, above 1 to 2.</param>
    public static double NozzleCoefficient(double heatCapacityRatio)
    {
        Guard.Within(heatCapacityRatio, 1.001, 2, nameof(heatCapacityRatio), "");
        var k = heatCapacityRatio;
        return 0.03948 * Math.Sqrt(k * Math.Pow(2 / (k + 1), (k + 1) / (k - 1)));
    }

    /// <summary>Pressure ratio p2/p1 below which the flow is critical.</summary>
    /// <param name="heatCapacityRatio">k, above 1 to 2.</param>
    public static double CriticalRatio(double heatCapacityRatio)
    {
        Guard.Within(heatCapacityRatio, 1.001, 2, nameof(heatCapacityRatio), "");
        return Math.Pow(2 / (heatCapacityRatio + 1), heatCapacityRatio / (heatCapacityRatio - 1));
    }

    /// <summary>Area needed, m2; critical or subcritical as the pressures say.</summary>
    /// <param name="gas">Gas at the device.</param>
    /// <param name="massFlowKgPerS">Flow to relieve, kg/s.</param>
    /// <param name="inletPa">Pressure at the device when it relieves, Pa absolute.</param>
    /// <param name="backPa">Pressure behind it, Pa absolute, below the inlet's.</param>
    /// <param name="discharge">Kd, 0..1.</param>
    /// <param name="correction">Kb times Kc (back pressure, burst disc ahead), 0..1.</param>
    public static double AreaM2(ReliefGas gas, double massFlowKgPerS, double inletPa, double backPa, double discharge = DischargeCoefficient, double correction = 1)
    {
        Guard.NotNegative(massFlowKgPerS, nameof(massFlowKgPerS), "kg/s");
        Guard.Positive(inletPa, nameof(inletPa), "Pa");
        Guard.Within(backPa, 0, inletPa * (1 - 1e-9), nameof(backPa), "Pa");
        Guard.Within(discharge, 0.01, 1, nameof(discharge), "");
        Guard.Within(correction, 0.01, 1, nameof(correction), "");
        var (w, p1, p2) = (massFlowKgPerS * Hour, inletPa / Kilo, backPa / Kilo);
        var tzOverM = gas.TemperatureK * gas.Compressibility / (gas.MolarMassKgPerMol * Kilo);
        var k = gas.HeatCapacityRatio;
        if (p2 / p1 <= CriticalRatio(k)) return w / (NozzleCoefficient(k) * discharge * correction * p1) * Math.Sqrt(tzOverM) * 1e-6;
        var r = p2 / p1;
        var f2 = Math.Sqrt(k / (k - 1) * Math.Pow(r, 2 / k) * (1 - Math.Pow(r, (k - 1) / k)) / (1 - r));
        return 17.9 * w / (f2 * discharge * correction) * Math.Sqrt(tzOverM / (p1 * (p1 - p2))) * 1e-6;
    }

    /// <summary>Bore of a round opening of that area, m.</summary>
    /// <param name="areaM2">Area, m2.</param>
    public static double BoreM(double areaM2)
    {
        Guard.NotNegative(areaM2, nameof(areaM2), "m2");
        return Math.Sqrt(4 * areaM2 / Math.PI);
    }
}
