namespace Coldwright.Machine.Insulation;

/// <summary>Water in an insulation: k = k_dry exp(f psi), psi the water's share of the volume.</summary>
/// <remarks>
/// Source: ISO 10456:2007, conversion for moisture; the factors f are from its table 4, from memory. Measured above freezing. Ice conducts
/// four times better than water and grows as bridges along the heat flow, so where a wall is below 273 K the law is a lower bound; half of the
/// rise is carried as one standard deviation.
/// </remarks>
/// <param name="VolumeShare">psi, m3 of water per m3 of insulation, 0 to 0.15.</param>
/// <param name="Factor">f, 0 to 10.</param>
public sealed record Moisture(double VolumeShare, double Factor)
{
    /// <summary>Dry.</summary>
    public static Moisture None { get; } = new(0, 0);

    /// <summary>Rigid polyurethane foam, f = 6.</summary>
    /// <param name="volumeShare">psi, 0 to 0.15.</param>
    public static Moisture InPolyurethane(double volumeShare) => new(volumeShare, 6);

    /// <summary>Expanded polystyrene, f = 4.</summary>
    /// <param name="volumeShare">psi, 0 to 0.10.</param>
    public static Moisture InExpandedPolystyrene(double volumeShare) => new(volumeShare, 4);

    /// <summary>Extruded polystyrene, f = 2.5.</summary>
    /// <param name="volumeShare">psi, 0 to 0.10.</param>
    public static Moisture InExtrudedPolystyrene(double volumeShare) => new(volumeShare, 2.5);

    /// <summary>Glass or rock wool, f = 4.</summary>
    /// <param name="volumeShare">psi, 0 to 0.15.</param>
    public static Moisture InMineralWool(double volumeShare) => new(volumeShare, 4);

    /// <summary>Multiplier of the dry conductivity, 1 or more.</summary>
    public double Multiplier => VolumeShare is >= 0 and <= 0.15 && Factor is >= 0 and <= 10
        ? Math.Exp(Factor * VolumeShare)
        : throw new ArgumentException(FormattableString.Invariant($"moisture must be 0 to 0.15 of the volume with a factor of 0 to 10, got {VolumeShare} and {Factor}"));

    /// <summary>One standard deviation of the multiplier divided by it.</summary>
    public double RelativeUncertainty => 0.5 * (Multiplier - 1) / Multiplier;
}
