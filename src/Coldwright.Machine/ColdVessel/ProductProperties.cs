namespace Coldwright.Machine.ColdVessel;

/// <summary>One phase of the product at one temperature and the vessel's pressure.</summary>
/// <param name="MassEnthalpy">J/kg on the documented caloric zero.</param>
/// <param name="Density">kg/m3.</param>
/// <param name="Viscosity">Pa s.</param>
/// <param name="Conductivity">W/(m K).</param>
/// <param name="HeatCapacity">J/(kg K).</param>
public readonly record struct ProductProperties(double MassEnthalpy, double Density, double Viscosity, double Conductivity, double HeatCapacity);
