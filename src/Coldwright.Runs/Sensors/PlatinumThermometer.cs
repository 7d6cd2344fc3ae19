namespace Coldwright.Runs.Sensors;

/// <summary>
/// Platinum resistance thermometer: R/R0 = 1 + A t + B t^2 + C (t - 100) t^3, the last term below 0 °C only; t in °C, range -200 to 850 °C.
/// IEC 60751:2008 (A 3.9083e-3, B -5.775e-7, C -4.183e-12).
/// </summary>
public static class PlatinumThermometer
{
    private const double A = 3.9083e-3, B = -5.775e-7, C = -4.183e-12;
    private const double ZeroK = 273.15;

    /// <summary>Lowest temperature of the equation, K.</summary>
    public const double LowestK = 73.15;
    /// <summary>Highest temperature of the equation, K.</summary>
    public const double HighestK = 1123.15;

    /// <summary>R/R0; range <see cref="LowestK"/> to <see cref="HighestK"/>.</summary>
    /// <param name="temperatureK">K.</param>
    public static double Ratio(double temperatureK)
    {
        var t = temperatureK - ZeroK;
        return 1 + t * (A + t * (B + (t < 0 ? C * (t - 100) * t : 0)));
    }

    /// <summary>Slope of <see cref="Ratio"/>, 1/K.</summary>
    /// <param name="temperatureK">K.</param>
    public static double RatioPerK(double temperatureK)
    {
        var t = temperatureK - ZeroK;
        return A + 2 * B * t + (t < 0 ? C * t * t * (4 * t - 300) : 0);
    }

    /// <summary>Temperature from R/R0; false outside the equation.</summary>
    /// <param name="ratio">R/R0.</param>
    /// <param name="temperatureK">K; the nearest end when outside.</param>
    public static bool TryTemperatureK(double ratio, out double temperatureK)
    {
        // written so that a NaN is outside as well
        if (!(ratio >= Ratio(LowestK) && ratio <= Ratio(HighestK)))
        {
            temperatureK = ratio > Ratio(HighestK) ? HighestK : LowestK;
            return false;
        }
        // The quadratic is exact above 0 °C and the start of Newton's steps below.
        var t = (-A + Math.Sqrt(A * A - 4 * B * (1 - ratio))) / (2 * B) + ZeroK;
        for (var i = 0; i < 20 && ratio < 1; i++)
        {
            var step = (Ratio(t) - ratio) / RatioPerK(t);
            t -= step;
            if (Math.Abs(step) < 1e-10) break;
        }
        temperatureK = t;
        return true;
    }
}
