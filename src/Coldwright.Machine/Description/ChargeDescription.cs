using Coldwright.Fluids.Substances;

namespace Coldwright.Machine.Description;

/// <summary>Loop charge.</summary>
public sealed record ChargeDescription
{
    /// <summary>Mole fractions of the circulating mixture.</summary>
    public required Composition Mixture { get; init; }
    /// <summary>Charged mass, kg; null when not weighed.</summary>
    public double? MassKg { get; init; }
    /// <summary>Height above the floor of the lowest part that holds it, from which it would leak into the room, m, 0.6..2.2.</summary>
    public double ReleaseHeightM { get; init; } = 0.6;
    /// <summary>Pressure to which the loop is evacuated before it is filled, Pa absolute; null when not said.</summary>
    public double? EvacuatedToPa { get; init; }
}
