namespace Coldwright.Machine.Description;

/// <summary>kind <c>feed</c>: product gas supply at its pressure.</summary>
public sealed record FeedPart : Part
{
    /// <summary>nitrogen, argon, oxygen or methane.</summary>
    public required string Gas { get; init; }
    /// <summary>Pressure in the cold vessel, Pa absolute.</summary>
    public required double PressurePa { get; init; }
    /// <summary>Pressure before the feed compressor, Pa absolute; null when it comes from a cylinder at enough pressure (no work).</summary>
    public double? SupplyPressurePa { get; init; }
    /// <summary>Isentropic power of the feed compression over its electrical power.</summary>
    public double FeedCompressorEfficiency { get; init; } = 1;
    /// <summary>Cylinder or receiver that the gas comes from; null: a supply whose pressure does not fall.</summary>
    public ReceiverDescription? Receiver { get; init; }
    /// <summary>The feed compressor itself; null when it is not described.</summary>
    public FeedCompressorDescription? Compressor { get; init; }
}
