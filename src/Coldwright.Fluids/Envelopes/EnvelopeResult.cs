namespace Coldwright.Fluids.Envelopes;

/// <summary>What a line of the envelope separates.</summary>
public enum BoundaryKind
{
    /// <summary>Liquid from vapour+liquid: the first bubble.</summary>
    Bubble,
    /// <summary>Vapour from vapour+liquid: the first drop (or, in the retrograde part, the last).</summary>
    Dew,
    /// <summary>One liquid from two liquids.</summary>
    LiquidLiquid,
    /// <summary>Two phases from three, or (two components) the line on which three phases meet.</summary>
    ThreePhase,
    /// <summary>First solid on cooling.</summary>
    Freezing,
}

/// <summary>A point of a boundary.</summary>
/// <param name="TemperatureK">K.</param>
/// <param name="PressurePa">Pa.</param>
public readonly record struct BoundaryPoint(double TemperatureK, double PressurePa);

/// <summary>A connected piece of a boundary.</summary>
/// <param name="Kind">What it separates.</param>
/// <param name="Points">Points in order along the line.</param>
/// <param name="Between">The phases on either side, in words.</param>
public sealed record BoundaryLine(BoundaryKind Kind, IReadOnlyList<BoundaryPoint> Points, string Between);

/// <summary>A critical point of the mixture.</summary>
/// <param name="TemperatureK">K.</param>
/// <param name="PressurePa">Pa.</param>
/// <param name="MolarDensity">mol/m3.</param>
/// <param name="Stable">False when a third phase hides it.</param>
public sealed record CriticalPoint(double TemperatureK, double PressurePa, double MolarDensity, bool Stable);

/// <summary>The phase boundaries of a mixture in temperature and pressure.</summary>
public sealed record EnvelopeResult
{
    /// <summary>All lines.</summary>
    public required IReadOnlyList<BoundaryLine> Lines { get; init; }
    /// <summary>Critical points found.</summary>
    public required IReadOnlyList<CriticalPoint> CriticalPoints { get; init; }
    /// <summary>Highest pressure at which vapour and liquid meet (cricondenbar); null without a vapour-liquid line.</summary>
    public BoundaryPoint? HighestPressure { get; init; }
    /// <summary>Highest temperature at which liquid exists (cricondentherm); null without a vapour-liquid line.</summary>
    public BoundaryPoint? HighestTemperature { get; init; }
    /// <summary>What a person must be told: gaps, ends of the equations' range.</summary>
    public required IReadOnlyList<string> Notes { get; init; }
}
