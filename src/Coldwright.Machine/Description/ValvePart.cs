namespace Coldwright.Machine.Description;

/// <summary>kind <c>valve</c>: a shut-off; closes a volume when shut.</summary>
public sealed record ValvePart : Part
{
    /// <summary>Flow coefficient as far as it is opened, m3/h of water at 1 bar, above 0 to 100; null when not known.</summary>
    public double? FlowCoefficientKv { get; init; }
    /// <summary>What it lets past when shut, kg/s of liquid at the vessel's pressure; 0 for a tight seat.</summary>
    public double SeatLeakKgPerS { get; init; }
    /// <summary>Metal of its body that is cooled by what flows through it, kg; 0 when left out.</summary>
    public double BodyMassKg { get; init; }
}
