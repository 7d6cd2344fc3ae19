namespace Coldwright.Machine.Insulation;

/// <summary>Dew point of room air.</summary>
public static class DewPoint
{
    /// <summary>Temperature at which water of the room's air condenses, K.</summary>
    /// <remarks>
    /// Magnus form, ln(e/6.1094 hPa) = 17.625 t/(t + 243.04), t in degrees Celsius over water: O. A. Alduchov, R. E. Eskridge, J. Appl. Meteorol. 35
    /// (1996) 601; within 0.4 % of e from -40 to 50 degrees Celsius.
    /// </remarks>
    /// <param name="roomK">Room temperature, K, 233 to 323.</param>
    /// <param name="relativeHumidity">Above 0 to 1.</param>
    public static double Of(double roomK, double relativeHumidity)
    {
        if (!(relativeHumidity is > 0 and <= 1)) throw new ArgumentException(FormattableString.Invariant($"the relative humidity must be above 0 and not above 1, got {relativeHumidity}"), nameof(relativeHumidity));
        var t = roomK - 273.15;
        var x = Math.Log(relativeHumidity) + 17.625 * t / (t + 243.04);
        return 243.04 * x / (17.625 - x) + 273.15;
    }
}
