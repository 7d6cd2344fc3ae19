namespace Coldwright.Machine.Recuperation;

/// <summary>A stream given by what a person knows of it: temperature or enthalpy.</summary>
/// <param name="Composition">Mole fractions, sum 1.</param>
/// <param name="MolarFlow">mol/s, above 0.</param>
/// <param name="PressurePa">Pa, above 0.</param>
/// <param name="TemperatureK">K; not a number when the enthalpy is given.</param>
/// <param name="MolarEnthalpy">J/mol; not a number when the temperature is given.</param>
public sealed record StreamCondition(IReadOnlyList<double> Composition, double MolarFlow, double PressurePa, double TemperatureK, double MolarEnthalpy)
{
    /// <summary>By temperature (K).</summary>
    public static StreamCondition AtTemperature(IReadOnlyList<double> composition, double molarFlow, double pressurePa, double temperatureK) =>
        new(composition, molarFlow, pressurePa, temperatureK, double.NaN);

    /// <summary>By enthalpy (J/mol): what leaves a throttle.</summary>
    public static StreamCondition AtEnthalpy(IReadOnlyList<double> composition, double molarFlow, double pressurePa, double molarEnthalpy) =>
        new(composition, molarFlow, pressurePa, double.NaN, molarEnthalpy);
}
