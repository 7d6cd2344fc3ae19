namespace Coldwright.Machine.Description;

/// <summary>What a nameplate's cooling capacity belongs to.</summary>
public enum NameplateRating
{
    /// <summary>A whole appliance in its test room; its pressures are not on the plate and must be assumed.</summary>
    Appliance,
    /// <summary>The compressor alone, at the conditions of its sheet.</summary>
    Compressor,
}

/// <summary>Key <c>nameplate</c>: the rating that a compressor, or the appliance it came from, carries.</summary>
public sealed record NameplateDescription
{
    /// <summary>What was rated.</summary>
    public required NameplateRating Rating { get; init; }
    /// <summary>Rated cooling capacity, W, 10..1e6.</summary>
    public required double CapacityW { get; init; }
    /// <summary>Rated electrical power of the compressor, W, 5..1e6; null when the plate does not say.</summary>
    public double? PowerW { get; init; }
    /// <summary>Rated refrigerant: a substance or a blend of the library.</summary>
    public required string Refrigerant { get; init; }
    /// <summary>Dew point at the suction pressure of the rating, K, 150..320; null when not said. Only with <see cref="NameplateRating.Compressor"/>.</summary>
    public double? EvaporatingK { get; init; }
    /// <summary>Dew point at the discharge pressure of the rating, K, 200..400; null when not said.</summary>
    public double? CondensingK { get; init; }
    /// <summary>Gas at the suction port during the rating, K; null when not said.</summary>
    public double? ReturnGasK { get; init; }
    /// <summary>Liquid before the expansion device during the rating, K; null when not said.</summary>
    public double? LiquidK { get; init; }
}
