namespace Coldwright.Machine.Description;

/// <summary>kind <c>flask</c>: the open flask that collects the liquid at room pressure.</summary>
public sealed record FlaskPart : Part
{
    /// <summary>Liquid volume, m3.</summary>
    public required double VolumeM3 { get; init; }
}
