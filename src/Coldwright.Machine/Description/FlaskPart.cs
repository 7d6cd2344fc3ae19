namespace Coldwright.Machine.Description;

/// <summary>kind <c>flask</c>: the open flask that collects the liquid at room pressure.</summary>
public sealed record FlaskPart : Part
{
    /// <summary>Liquid volume, m3.</summary>
    public required double VolumeM3 { get; init; }
    /// <summary>Liquid it loses when it stands, m3/s of nitrogen; null when not measured.</summary>
    public double? BoilOffM3PerS { get; init; }
    /// <summary>Inner wall that liquid must cool, kg; null: estimated from the volume.</summary>
    public double? WallMassKg { get; init; }
    /// <summary>Material of the inner wall (key of the materials data); null when not given.</summary>
    public string? WallMaterial { get; init; }
}
