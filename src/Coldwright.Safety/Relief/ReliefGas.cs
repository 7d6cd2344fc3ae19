namespace Coldwright.Safety.Relief;

/// <summary>Gas as a relief device sees it.</summary>
/// <param name="TemperatureK">Temperature at the device, K.</param>
/// <param name="Compressibility">Z = p v / (R T), above 0.</param>
/// <param name="MolarMassKgPerMol">Molar mass, kg/mol.</param>
/// <param name="HeatCapacityRatio">k of the ideal gas, above 1 to 2.</param>
public sealed record ReliefGas(double TemperatureK, double Compressibility, double MolarMassKgPerMol, double HeatCapacityRatio);
