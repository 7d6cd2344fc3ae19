namespace Coldwright.Machine.Description;

/// <summary>Key <c>capillary</c>: a capillary as a throttle.</summary>
public sealed record CapillaryDescription
{
    /// <summary>Bore, m, 5e-5..0.02.</summary>
    public required double BoreM { get; init; }
    /// <summary>Length, m, above 0 to 200.</summary>
    public required double LengthM { get; init; }
    /// <summary>Roughness of the bore, m, at most a tenth of it; null: that of a drawn capillary.</summary>
    public double? RoughnessM { get; init; }
    /// <summary>Mean diameter of the coil it is wound to, m, at least four bores; null when straight.</summary>
    public double? CoilDiameterM { get; init; }
}
