namespace Coldwright.Machine.Streams;

/// <summary>Transport properties of one phase.</summary>
/// <param name="Density">kg/m3.</param>
/// <param name="Viscosity">Pa s.</param>
/// <param name="Conductivity">W/(m K).</param>
/// <param name="HeatCapacity">cp of the phase at fixed composition, J/(kg K).</param>
public readonly record struct PhaseTransport(double Density, double Viscosity, double Conductivity, double HeatCapacity)
{
    /// <summary>Prandtl number.</summary>
    public double Prandtl => HeatCapacity * Viscosity / Conductivity;
}
