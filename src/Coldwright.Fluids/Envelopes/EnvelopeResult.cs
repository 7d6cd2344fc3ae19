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
    /// <summary>First solid on cooling; colder, the other lines belong to a fluid that would rather freeze.</summary>
    Freezing,
}

/// <summary>A point of a boundary.</summary>
/// <param name="TemperatureK">K.</param>
/// <param name="PressurePa">Pa.</param>
public readonly record struct BoundaryPoint(double TemperatureK, double PressurePa);

/// <summary>A connected piece of a boundary.</summary>
/// <param name="Kind">What it separates.</param>
/// <param name="Points">Points in order along the line.</param>
/// <param name="Between">The phases on either side, in words: <c>liquid | vapour+liquid</c>.</param>
public sealed record BoundaryLine(BoundaryKind Kind, IReadOnlyList<BoundaryPoint> Points, string Between)
{
    /// <summary>True where vapour appears: on one side there is none, on the other there is.</summary>
    public bool IsFirstVapour => Kind != BoundaryKind.Dew && Between.Split(" | ").Count(side => side.Contains("vapour")) == 1;
}

/// <summary>A critical point of the mixture.</summary>
/// <param name="TemperatureK">K.</param>
/// <param name="PressurePa">Pa.</param>
/// <param name="MolarDensity">mol/m3.</param>
/// <param name="Stable">False when other phases hide it.</param>
public sealed record CriticalPoint(double TemperatureK, double PressurePa, double MolarDensity, bool Stable);

/// <summary>The phase boundaries of a mixture in temperature and pressure.</summary>
public sealed record EnvelopeResult
{
    /// <summary>Where it was looked for; all values set.</summary>
    public required EnvelopeWindow Window { get; init; }
    /// <summary>All lines; lines that meet share their end points.</summary>
    public required IReadOnlyList<BoundaryLine> Lines { get; init; }
    /// <summary>Critical points found, the warmest first; hidden ones only when asked for.</summary>
    public required IReadOnlyList<CriticalPoint> CriticalPoints { get; init; }
    /// <summary>Highest pressure at which vapour and liquid meet (cricondenbar); null when the lines leave the window upwards.</summary>
    public BoundaryPoint? HighestPressure { get; init; }
    /// <summary>Highest temperature at which liquid exists (cricondentherm); null when it lies outside the window.</summary>
    public BoundaryPoint? HighestTemperature { get; init; }
    /// <summary>The regions between the lines, the roomiest first: for labels in a picture.</summary>
    public IReadOnlyList<EnvelopeRegion> Regions { get; init; } = [];
    /// <summary>Certified flashes that were made.</summary>
    public int Flashes { get; init; }
    /// <summary>What a person must be told: gaps, ends of the equations' range.</summary>
    public required IReadOnlyList<EnvelopeNote> Notes { get; init; }

    /// <summary>Temperatures (K), ascending, at which lines pass a pressure (Pa).</summary>
    /// <param name="pressurePa">Pa.</param>
    /// <param name="which">The lines asked.</param>
    public IReadOnlyList<double> TemperaturesAt(double pressurePa, Func<BoundaryLine, bool> which) =>
        [.. Lines.Where(which).SelectMany(l => LineCurve.TemperaturesAt(l.Points, pressurePa)).Order()];

    /// <summary>The bubble temperature at a pressure: on heating, the first vapour (K); null when none appears inside the window.</summary>
    /// <param name="pressurePa">Pa.</param>
    public double? BubbleTemperatureK(double pressurePa) =>
        TemperaturesAt(pressurePa, l => l.IsFirstVapour) is { Count: > 0 } found ? found[0] : null;

    /// <summary>The dew temperature at a pressure: on cooling, the first drop (K); null when none appears inside the window.</summary>
    /// <param name="pressurePa">Pa.</param>
    public double? DewTemperatureK(double pressurePa) =>
        TemperaturesAt(pressurePa, l => l.Kind == BoundaryKind.Dew) is { Count: > 0 } found ? found[^1] : null;

    /// <summary>Coldest, warmest, lowest and highest values of the three-phase lines; null without one. Its corners need not be points of a line.</summary>
    public (double ColdestK, double WarmestK, double LowestPa, double HighestPa)? ThreePhaseRange
    {
        get
        {
            var points = Lines.Where(l => l.Kind == BoundaryKind.ThreePhase).SelectMany(l => l.Points).ToArray();
            return points.Length == 0 ? null : (points.Min(p => p.TemperatureK), points.Max(p => p.TemperatureK), points.Min(p => p.PressurePa), points.Max(p => p.PressurePa));
        }
    }
}
