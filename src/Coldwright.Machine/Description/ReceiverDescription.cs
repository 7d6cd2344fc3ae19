namespace Coldwright.Machine.Description;

/// <summary>Key <c>receiver</c> of a feed: the cylinder or tank that the product gas comes from; its pressure falls as gas is taken.</summary>
public sealed record ReceiverDescription
{
    /// <summary>Volume, m3, 1e-4..10.</summary>
    public required double VolumeM3 { get; init; }
    /// <summary>Pressure at the start, Pa absolute.</summary>
    public required double PressurePa { get; init; }
    /// <summary>Pressure at which feeding ends, Pa absolute; null: the room's.</summary>
    public double? LowestPressurePa { get; init; }
}
