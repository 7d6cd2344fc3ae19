namespace Coldwright.Machine.Description;

/// <summary>Which of its two pressures a rating holds.</summary>
public enum HeldPressure
{
    /// <summary>Both follow from hardware and charge.</summary>
    Neither,
    /// <summary>The high one.</summary>
    High,
    /// <summary>The low one.</summary>
    Low,
    /// <summary>Both.</summary>
    Both,
}

/// <summary>What follows from a pressure that is held.</summary>
public enum HeldAnswer
{
    /// <summary>The charge.</summary>
    Charge,
    /// <summary>The throttle's length or opening.</summary>
    Throttle,
}

/// <summary>Pressures it runs at or is meant to run at, absolute.</summary>
public sealed record OperationDescription
{
    /// <summary>High side before the recuperator, Pa absolute.</summary>
    public required double HighPressurePa { get; init; }
    /// <summary>Low side at the cold end and at the compressor's suction, Pa absolute.</summary>
    public required double LowPressurePa { get; init; }
    /// <summary>Pressure of the whole loop when it has stood warm, Pa absolute; null when it was not read.</summary>
    public double? StandstillPressurePa { get; init; }
    /// <summary>What the file wants held; null when it does not say.</summary>
    public HeldPressure? Hold { get; init; }
    /// <summary>What follows from a held pressure.</summary>
    public HeldAnswer SolveFor { get; init; }
}
