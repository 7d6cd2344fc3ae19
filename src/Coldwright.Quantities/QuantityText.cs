using System.Globalization;

namespace Coldwright.Quantities;

/// <summary>SI values as a person reads them, always with the unit, for messages.</summary>
public static class QuantityText
{
    /// <summary>A pressure: <c>18.01 bara</c>.</summary>
    /// <param name="pressurePa">Pa absolute.</param>
    public static string Pressure(double pressurePa) => (pressurePa / 1e5).ToString("0.##", CultureInfo.InvariantCulture) + " bara";

    /// <summary>A temperature: <c>-35 °C</c>.</summary>
    /// <param name="temperatureK">K.</param>
    public static string Temperature(double temperatureK) => (temperatureK - 273.15).ToString("0.##", CultureInfo.InvariantCulture) + " °C";

    /// <summary>A length: <c>0.8 mm</c>, <c>1.25 m</c>.</summary>
    /// <param name="lengthM">m.</param>
    public static string Length(double lengthM) => Math.Abs(lengthM) < 0.1
        ? (lengthM * 1e3).ToString("0.###", CultureInfo.InvariantCulture) + " mm"
        : lengthM.ToString("0.###", CultureInfo.InvariantCulture) + " m";
}
