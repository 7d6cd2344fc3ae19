namespace Coldwright.Machine.Description;

/// <summary>kind <c>buffer</c>: a volume filled from the high side above a set pressure and bled back to the suction.</summary>
public sealed record BufferPart : Part
{
    /// <summary>Volume, m3, 1e-5..1.</summary>
    public required double VolumeM3 { get; init; }
    /// <summary>High-side pressure at which its valve begins to open, Pa absolute.</summary>
    public required double OpeningPressurePa { get; init; }
    /// <summary>High-side pressure at which the valve is fully open, Pa absolute, above the opening pressure; null when not known.</summary>
    public double? FullyOpenPressurePa { get; init; }
    /// <summary>High-side pressure at which it shuts again, Pa absolute, at most the opening pressure; null: where it opened.</summary>
    public double? ClosingPressurePa { get; init; }
    /// <summary>Bore of the open valve, m; null when not known.</summary>
    public double? ValveBoreM { get; init; }
    /// <summary>Bore of the bleed to the suction, m, 5e-5..0.02.</summary>
    public required double BleedBoreM { get; init; }
    /// <summary>Length of the bleed when it is a capillary, m, 0..20; 0 is an orifice.</summary>
    public double BleedLengthM { get; init; }
}
