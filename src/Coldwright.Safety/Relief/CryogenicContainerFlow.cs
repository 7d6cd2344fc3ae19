namespace Coldwright.Safety.Relief;

/// <summary>Relief flow of cryogenic containers as free air.</summary>
/// <remarks>
/// CGA S-1.3 (2008), in the standard's units: Gu = 633000 / (C L) sqrt(Z T / M), Gi = 73.4 (1660 - T) / (C L) sqrt(Z T / M), T in °R, L in
/// Btu/lb, M in lb/lbmol, C = 520 sqrt(k (2/(k+1))^((k+1)/(k-1))). Fire on a bare container: Qa = F Gu A^0.82 (A in ft2, Qa in ft3/min of free
/// air); insulation that stays: Qa = (590 - T) / (4 (1660 - T)) F Gi U A, U in Btu/(h ft2 °F).
/// </remarks>
public static class CryogenicContainerFlow
{
    /// <summary>Citation.</summary>
    public const string Source = "CGA S-1.3 (2008), Pressure Relief Device Standards, Part 3, fire on a bare container";

    private const double Rankine = 1.8;
    private const double BtuPerPound = 2326.0;
    private const double SquareFoot = 0.09290304;
    private const double CubicFootPerMinute = 0.028316846592 / 60;
    private const double BtuPerHourSquareFootF = 5.678263341;

    /// <summary>Gas factor Gu for bare containers, in the standard's units.</summary>
    /// <param name="gas">Gas at the relieving condition.</param>
    /// <param name="latentHeatJPerKg">Heat of evaporation there, J/kg.</param>
    public static double BareGasFactor(ReliefGas gas, double latentHeatJPerKg) => 633_000 / Denominator(gas, latentHeatJPerKg) * Root(gas);

    /// <summary>Gas factor Gi for insulated containers, in the standard's units.</summary>
    /// <param name="gas">Gas at the relieving condition, below 922 K (1660 °R).</param>
    /// <param name="latentHeatJPerKg">Heat of evaporation there, J/kg.</param>
    public static double InsulatedGasFactor(ReliefGas gas, double latentHeatJPerKg) =>
        73.4 * (1660 - Rankine * gas.TemperatureK) / Denominator(gas, latentHeatJPerKg) * Root(gas);

    /// <summary>Free air in a fire on a bare container, m3/s (60 °F, 1 atm).</summary>
    /// <param name="bareGasFactor">Gu.</param>
    /// <param name="surfaceM2">Outside surface, m2.</param>
    /// <param name="lineFactor">F, 1 or more: pressure drop and warming in the line to the device.</param>
    public static double FireFreeAirM3PerS(double bareGasFactor, double surfaceM2, double lineFactor = 1)
    {
        Guard.Positive(bareGasFactor, nameof(bareGasFactor), "");
        Guard.NotNegative(surfaceM2, nameof(surfaceM2), "m2");
        Guard.Within(lineFactor, 1, 10, nameof(lineFactor), "");
        return lineFactor * bareGasFactor * Math.Pow(surfaceM2 / SquareFoot, 0.82) * CubicFootPerMinute;
    }

    /// <summary>Free air with insulation that stays in place, m3/s (60 °F, 1 atm).</summary>
    /// <param name="insulatedGasFactor">Gi.</param>
    /// <param name="temperatureK">Relieving temperature, K, below 327.8 K (590 °R).</param>
    /// <param name="conductanceWPerM2K">Overall conductance of the insulation, W/(m2 K), with its cells full of the contained gas or air.</param>
    /// <param name="surfaceM2">Mean surface of the insulation, m2.</param>
    /// <param name="lineFactor">F, 1 or more.</param>
    public static double InsulatedFreeAirM3PerS(double insulatedGasFactor, double temperatureK, double conductanceWPerM2K, double surfaceM2, double lineFactor = 1)
    {
        Guard.Positive(insulatedGasFactor, nameof(insulatedGasFactor), "");
        Guard.Within(temperatureK, 1, 590 / Rankine, nameof(temperatureK), "K");
        Guard.NotNegative(conductanceWPerM2K, nameof(conductanceWPerM2K), "W/(m2 K)");
        Guard.NotNegative(surfaceM2, nameof(surfaceM2), "m2");
        Guard.Within(lineFactor, 1, 10, nameof(lineFactor), "");
        var t = Rankine * temperatureK;
        return (590 - t) / (4 * (1660 - t)) * lineFactor * insulatedGasFactor * (conductanceWPerM2K / BtuPerHourSquareFootF) * (surfaceM2 / SquareFoot) * CubicFootPerMinute;
    }

    /// <summary>Area that passes a flow of free air at a relieving pressure, m2.</summary>
    /// <param name="freeAirM3PerS">m3/s at 60 °F and 1 atm.</param>
    /// <param name="pressurePa">Relieving pressure, Pa absolute.</param>
    /// <param name="backPa">Pressure behind the device, Pa absolute.</param>
    /// <param name="discharge">Kd, 0..1.</param>
    public static double AreaM2(double freeAirM3PerS, double pressurePa, double backPa, double discharge = GasReliefArea.DischargeCoefficient)
    {
        Guard.NotNegative(freeAirM3PerS, nameof(freeAirM3PerS), "m3/s");
        var air = new ReliefGas(288.706, 1, 0.02896, 1.4);
        var density = 101_325 * air.MolarMassKgPerMol / (8.314462618 * air.TemperatureK);
        return GasReliefArea.AreaM2(air, freeAirM3PerS * density, pressurePa, backPa, discharge);
    }

    private static double Root(ReliefGas gas) => Math.Sqrt(gas.Compressibility * Rankine * gas.TemperatureK / (gas.MolarMassKgPerMol * 1000));

    private static double Denominator(ReliefGas gas, double latentHeatJPerKg)
    {
        Guard.Positive(latentHeatJPerKg, nameof(latentHeatJPerKg), "J/kg");
        // 520/0.03948 turns the metric nozzle coefficient into the one of the standard.
        return 520 / 0.03948 * GasReliefArea.NozzleCoefficient(gas.HeatCapacityRatio) * latentHeatJPerKg / BtuPerPound;
    }
}
