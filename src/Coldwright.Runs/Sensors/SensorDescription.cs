namespace Coldwright.Runs.Sensors;

/// <summary>How the numbers of a column are to be read.</summary>
public enum RawScale
{
    /// <summary>A quantity in a unit of the unit table.</summary>
    Unit,
    /// <summary>Millivolt of a bare thermocouple.</summary>
    Millivolt,
    /// <summary>Ohm of a platinum resistor.</summary>
    Ohm,
    /// <summary>A signal (4 to 20 mA, volts) that stands for a quantity on a straight line.</summary>
    Signal,
}

/// <summary>A signal's straight line.</summary>
/// <param name="LowReading">Number in the log at the low end.</param>
/// <param name="LowSi">What it stands for, SI; gauge pressures are counted from the room.</param>
/// <param name="HighReading">Number in the log at the high end.</param>
/// <param name="HighSi">What that stands for.</param>
/// <param name="IsGauge">True when both ends are gauge pressures, so that the barometer counts.</param>
public sealed record SignalLine(double LowReading, double LowSi, double HighReading, double HighSi, bool IsGauge);

/// <summary>A sensor as described in <c>run.yaml</c>. SI throughout.</summary>
public sealed record SensorDescription
{
    /// <summary>Kind.</summary>
    public required SensorKind Kind { get; init; }
    /// <summary>Unit of the numbers, as written.</summary>
    public required string UnitWord { get; init; }
    /// <summary>How the numbers are to be read.</summary>
    public required RawScale Scale { get; init; }
    /// <summary>Unit of the table; null for millivolt, ohm and signals.</summary>
    public Quantities.Unit? Unit { get; init; }
    /// <summary>Line of a signal; null for others.</summary>
    public SignalLine? Signal { get; init; }
    /// <summary>Class of tolerance as written (1, 2, 3; AA, A, B, C; 1.6); empty when not given.</summary>
    public string Grade { get; init; } = "";
    /// <summary>Span of a gauge, Pa; null when not given.</summary>
    public double? SpanPa { get; init; }
    /// <summary>Fixed temperature of the cold junction, K; null when the logger compensates or a channel measures it.</summary>
    public double? ColdJunctionK { get; init; }
    /// <summary>Channel that measures the cold junction; null when there is none.</summary>
    public string? ColdJunctionChannel { get; init; }
    /// <summary>Standard uncertainty of the cold junction's temperature, K; null for the default.</summary>
    public double? ColdJunctionUncertaintyK { get; init; }
    /// <summary>What the sensor shows too much, found by its owner (ice, boiling nitrogen, a better gauge); taken off; SI.</summary>
    public double Offset { get; init; }
    /// <summary>Standard uncertainty that replaces the class, SI; null when not given.</summary>
    public double? Uncertainty { get; init; }
    /// <summary>Standard uncertainty as a share of the reading; null when not given.</summary>
    public double? RelativeUncertainty { get; init; }
    /// <summary>Smallest step of the logger in its own unit; null to find it in the log.</summary>
    public double? ResolutionRaw { get; init; }
}
