namespace Coldwright.Machine.Description;

/// <summary>Ends of a vessel.</summary>
public enum CapShape
{
    /// <summary>Flat discs.</summary>
    Flat,
    /// <summary>Domed caps.</summary>
    Domed,
}

/// <summary>kind <c>vessel</c>: the cold pressure vessel in which the product condenses.</summary>
public sealed record VesselPart : Part
{
    /// <summary>Body tube.</summary>
    public required Tube Tube { get; init; }
    /// <summary>Inside length of the body, m; domed caps come on top of it.</summary>
    public required double LengthM { get; init; }
    /// <summary>Inside volume of the body, m3.</summary>
    public double VolumeM3 => Tube.BoreAreaM2 * LengthM;
    /// <summary>Its ends; null when not given.</summary>
    public CapShape? Caps { get; init; }
    /// <summary>Thickness of its ends, m; null when not given.</summary>
    public double? CapThicknessM { get; init; }
    /// <summary>Material of the wall (key of the materials data); null when not given.</summary>
    public string? WallMaterial { get; init; }
}
