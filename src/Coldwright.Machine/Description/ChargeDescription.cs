using Coldwright.Fluids.Substances;

namespace Coldwright.Machine.Description;

/// <summary>Loop charge.</summary>
public sealed record ChargeDescription
{
    /// <summary>Mole fractions of the circulating mixture.</summary>
    public required Composition Mixture { get; init; }
    /// <summary>Charged mass, kg; null when not weighed.</summary>
    public double? MassKg { get; init; }
}
