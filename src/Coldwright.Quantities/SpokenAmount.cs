using System.Globalization;

namespace Coldwright.Quantities;

/// <summary>What an amount in a sentence is, so far as its unit depends on the reader.</summary>
public enum SpokenKind
{
    /// <summary>A temperature, K.</summary>
    Temperature,
    /// <summary>A difference of temperatures, K.</summary>
    TemperatureDifference,
    /// <summary>A pressure, Pa absolute.</summary>
    Pressure,
    /// <summary>A difference of pressures, Pa.</summary>
    PressureDifference,
}

/// <summary>An amount inside a sentence: its SI value, for a face that says it in other units, and its words in SI.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Value">Value, SI (K, Pa; pressures absolute).</param>
/// <param name="SiText">As the sentence says it in SI.</param>
public readonly record struct SpokenAmount(SpokenKind Kind, double Value, string SiText)
{
    /// <summary>A temperature: <c>98.4 K</c>.</summary>
    /// <param name="temperatureK">K.</param>
    /// <param name="format">Number format of the kelvins.</param>
    public static SpokenAmount Temperature(double temperatureK, string format = "0.0") => new(SpokenKind.Temperature, temperatureK, Text(temperatureK, format, " K"));

    /// <summary>A temperature near the room's: <c>-12.5 °C</c>.</summary>
    /// <param name="temperatureK">K.</param>
    /// <param name="format">Number format of the degrees.</param>
    public static SpokenAmount Celsius(double temperatureK, string format = "0.#") => new(SpokenKind.Temperature, temperatureK, Text(temperatureK - 273.15, format, " °C"));

    /// <summary>A difference of temperatures: <c>2.1 K</c>.</summary>
    /// <param name="differenceK">K.</param>
    /// <param name="format">Number format of the kelvins.</param>
    public static SpokenAmount Difference(double differenceK, string format = "0.0") => new(SpokenKind.TemperatureDifference, differenceK, Text(differenceK, format, " K"));

    /// <summary>A pressure: <c>18.0 bar absolute</c>.</summary>
    /// <param name="pressurePa">Pa absolute.</param>
    /// <param name="format">Number format of the bars.</param>
    public static SpokenAmount Pressure(double pressurePa, string format = "0.0") => new(SpokenKind.Pressure, pressurePa, Text(pressurePa / 1e5, format, " bar absolute"));

    /// <summary>A difference of pressures: <c>0.35 bar</c>.</summary>
    /// <param name="differencePa">Pa.</param>
    /// <param name="format">Number format of the bars.</param>
    public static SpokenAmount PressureDifference(double differencePa, string format = "0.##") => new(SpokenKind.PressureDifference, differencePa, Text(differencePa / 1e5, format, " bar"));

    /// <summary>In SI.</summary>
    public override string ToString() => SiText;

    private static string Text(double value, string format, string unit) => value.ToString(format, CultureInfo.InvariantCulture) + unit;
}
