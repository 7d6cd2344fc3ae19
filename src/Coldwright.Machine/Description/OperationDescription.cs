namespace Coldwright.Machine.Description;

/// <summary>Pressures held during the rating, absolute.</summary>
public sealed record OperationDescription
{
    /// <summary>High side before the recuperator, Pa absolute.</summary>
    public required double HighPressurePa { get; init; }
    /// <summary>Low side at the cold end and at the compressor's suction, Pa absolute.</summary>
    public required double LowPressurePa { get; init; }
    /// <summary>Pressure of the whole loop when it has stood warm, Pa absolute; null when it was not read.</summary>
    public double? StandstillPressurePa { get; init; }
}
