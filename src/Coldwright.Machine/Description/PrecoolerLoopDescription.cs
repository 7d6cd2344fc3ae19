namespace Coldwright.Machine.Description;

/// <summary>Key <c>loop</c> of a precooler: its compressor, refrigerant, exchangers and expansion device. Its fan's power is the part's own.</summary>
public sealed record PrecoolerLoopDescription
{
    /// <summary>Refrigerant: a substance or a blend of the library.</summary>
    public required string Refrigerant { get; init; }
    /// <summary>rotary or reciprocating.</summary>
    public required CompressorType Type { get; init; }
    /// <summary>Nameplate of its compressor; null when the displacement or a rating sheet is given.</summary>
    public NameplateDescription? Nameplate { get; init; }
    /// <summary>Rating sheet of its compressor; null when another description is given.</summary>
    public RatingSheetDescription? RatingSheet { get; init; }
    /// <summary>Swept volume per revolution, m3, 1e-7..1e-2; null when another description is given.</summary>
    public double? DisplacementM3 { get; init; }
    /// <summary>Shaft speed, rev/s; null: from supply frequency, poles and slip.</summary>
    public double? SpeedRevPerS { get; init; }
    /// <summary>Frequency of its supply, Hz, 10..400; null when not given.</summary>
    public double? SupplyFrequencyHz { get; init; }
    /// <summary>Poles of its motor, even, 2..12; null when not given.</summary>
    public int? Poles { get; init; }
    /// <summary>What cools its shell; null when not given.</summary>
    public ShellCoolingWord? ShellCooling { get; init; }
    /// <summary>Measured conductance from shell to room, W/K; null when not measured.</summary>
    public double? ShellConductanceWPerK { get; init; }
    /// <summary>Highest allowed discharge temperature, K; null: the usual one of its kind.</summary>
    public double? MaximumDischargeTemperatureK { get; init; }
    /// <summary>Evaporating temperature at which its thermostat or pressure switch stops it, K, 60..300; null when it has none.</summary>
    public double? CutOutK { get; init; }
    /// <summary>Conductance UA between refrigerant and room air, W/K.</summary>
    public required double CondenserConductanceWPerK { get; init; }
    /// <summary>Flow of room air through the condenser, m3/s; null when not known (the air then counts as staying at the temperature of the room).</summary>
    public double? CondenserAirFlowM3PerS { get; init; }
    /// <summary>Conductance UA between refrigerant and mixture, W/K.</summary>
    public required double EvaporatorConductanceWPerK { get; init; }
    /// <summary>Superheat that a thermostatic valve holds at the evaporator's outlet, K, 0..30; null when a capillary or a fixed valve lets the refrigerant down.</summary>
    public double? SuperheatK { get; init; }
    /// <summary>Subcooling at the condenser's outlet, K, 0..40; null when not known.</summary>
    public double? SubcoolingK { get; init; }
    /// <summary>Capillary that lets the refrigerant down; null when another device does.</summary>
    public CapillaryDescription? Capillary { get; init; }
    /// <summary>Valve of fixed opening that lets the refrigerant down; null when another device does.</summary>
    public ValveDescription? Valve { get; init; }
}
