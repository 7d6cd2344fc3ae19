namespace Coldwright.Machine.Description;

/// <summary>Key <c>oil</c>: separator and timed return. What is null takes the usual value of <see cref="Oil.OilCircuitInput"/>.</summary>
public sealed record OilDescription
{
    /// <summary>Oil leaving the compressor over gas flow by mass, 0.0005..0.1; null: the usual value of the compressor's kind.</summary>
    public double? Circulation { get; init; }
    /// <summary>Share of that oil which the separator catches, 0..0.9999.</summary>
    public double? SeparatorEfficiency { get; init; }
    /// <summary>Oil that the separator holds between empty and full, m3, 1e-7..0.01.</summary>
    public required double SumpVolumeM3 { get; init; }
    /// <summary>Share of the sump let fill before the return valve opens, 0.05..0.95.</summary>
    public double? UsedShare { get; init; }
    /// <summary>Bore of the return line, m, 2e-4..0.02.</summary>
    public required double ReturnBoreM { get; init; }
    /// <summary>Length of the return line, m, 0.01..20.</summary>
    public required double ReturnLengthM { get; init; }
    /// <summary>Oil density, kg/m3, 700..1200.</summary>
    public double? DensityKgPerM3 { get; init; }
    /// <summary>Kinematic viscosity where it flows back, dissolved gas included, m2/s, 1e-6..1e-3.</summary>
    public double? ViscosityM2PerS { get; init; }
    /// <summary>Oil in the compressor when filled, kg, 0.02..20.</summary>
    public double? ChargeKg { get; init; }
    /// <summary>Molar mass of the oil, kg/mol, 0.15..2; given: gas dissolved in it counts as part of the charge.</summary>
    public double? MolarMass { get; init; }
    /// <summary>Share of the passing oil that a filter ahead of the cold end takes, 0..1.</summary>
    public double? ColdTrapEfficiency { get; init; }
}
