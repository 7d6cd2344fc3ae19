namespace Coldwright.Simulation.Batch;

/// <summary>How a batch is run. SI, pressures absolute.</summary>
public sealed record BatchPlan
{
    /// <summary>Pressure that feeding keeps in the vessel, Pa.</summary>
    public required double FeedPressurePa { get; init; }
    /// <summary>Feeding ends when the vessel holds this share of what it would hold brimful of liquid, kg/kg, 0.05..0.95.</summary>
    public required double FillShare { get; init; }
    /// <summary>The vessel is opened when the pressure has fallen to this, Pa.</summary>
    public required double OpeningPressurePa { get; init; }
    /// <summary>Longest feeding, rests included, s.</summary>
    public double LongestFeedS { get; init; } = 6 * 3600;
    /// <summary>Longest wait before opening, s.</summary>
    public double LongestWaitS { get; init; } = 4 * 3600;
    /// <summary>Longest discharge, s.</summary>
    public double LongestDischargeS { get; init; } = 1800;
    /// <summary>The flask stands so long after the discharge before it is weighed, s.</summary>
    public double StandS { get; init; } = 120;
}
