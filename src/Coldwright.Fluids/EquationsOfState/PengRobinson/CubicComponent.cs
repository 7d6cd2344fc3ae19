namespace Coldwright.Fluids.EquationsOfState.PengRobinson;

/// <summary>Constants of one component of the cubic model.</summary>
/// <param name="CriticalTemperatureK">Critical temperature, K.</param>
/// <param name="CriticalPressurePa">Critical pressure, Pa.</param>
/// <param name="AcentricFactor">Acentric factor.</param>
/// <param name="Translation">Volume translation c, m3/mol: the model's volume is the untranslated one less c.</param>
public sealed record CubicComponent(double CriticalTemperatureK, double CriticalPressurePa, double AcentricFactor, double Translation);
