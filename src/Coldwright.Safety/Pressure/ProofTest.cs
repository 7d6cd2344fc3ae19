namespace Coldwright.Safety.Pressure;

/// <summary>Pressure test before first use.</summary>
/// <remarks>From memory: water 1.3 times the allowed pressure (ASME VIII-1 UG-99, times the ratio of stresses cold to hot) and 1.43 times
/// (Pressure Equipment Directive 2014/68/EU, EN 378-2); gas 1.1 times (UG-100, ASME B31.5, EN 378-2).</remarks>
public static class ProofTest
{
    /// <summary>Citation.</summary>
    public const string Source = "test factors from memory: water 1.3 (ASME VIII-1 UG-99) to 1.43 (2014/68/EU, EN 378-2), gas 1.1 (UG-100, EN 378-2)";

    /// <summary>Water test over allowed gauge pressure, European rule.</summary>
    public const double WaterFactor = 1.43;

    /// <summary>Water test over allowed gauge pressure, ASME VIII-1.</summary>
    public const double WaterFactorAsme = 1.3;

    /// <summary>Gas test over allowed gauge pressure; only where water cannot be used, and never near people.</summary>
    public const double GasFactor = 1.1;

    /// <summary>Gauge pressure of the water test, Pa.</summary>
    /// <param name="allowedGaugePa">Highest pressure ever allowed in use, above the surroundings, Pa.</param>
    public static double WaterGaugePa(double allowedGaugePa)
    {
        Guard.NotNegative(allowedGaugePa, nameof(allowedGaugePa), "Pa");
        return WaterFactor * allowedGaugePa;
    }
}
