namespace Coldwright.Machine.Description;

/// <summary>
/// kind <c>compressor</c>: the loop's compressor. With a nameplate or a rating sheet, displacement, speed and both
/// efficiencies may be missing; reading a missing efficiency throws <see cref="Numerics.SolveException"/> that names the key.
/// </summary>
public sealed record CompressorPart : Part
{
    private readonly double? _motorEfficiency;
    private readonly IReadOnlyList<(double Ratio, double Efficiency)>? _isentropicEfficiency;

    /// <summary>rotary or reciprocating.</summary>
    public required CompressorType Type { get; init; }
    /// <summary>Swept volume per revolution, m3; null when the flow, a nameplate or a rating sheet is given instead.</summary>
    public double? DisplacementM3 { get; init; }
    /// <summary>Shaft speed, rev/s.</summary>
    public double? SpeedRevPerS { get; init; }
    /// <summary>Swept volume flow, m3/s. Throws <see cref="Numerics.SolveException"/> that names the key when displacement or speed is not given.</summary>
    public double SweptM3PerS => (DisplacementM3 ?? throw NotGiven.For(this, "displacement")) * (SpeedRevPerS ?? throw NotGiven.For(this, "speed"));
    /// <summary>Molar flow, mol/s, when it was measured instead of the displacement.</summary>
    public double? FlowMolPerS { get; init; }
    /// <summary>Clearance volume over swept volume, 0..0.5; 0 when left out.</summary>
    public double ClearanceFraction { get; init; }
    /// <summary>Share of the ideal volume flow lost to leakage and throttling at the valves, per unit of pressure ratio above 1.</summary>
    public double LeakagePerRatio { get; init; }
    /// <summary>Heating of the gas between the suction port and the cylinder, K.</summary>
    public double SuctionHeatingK { get; init; }
    /// <summary>Isentropic power over shaft power, at pressure ratios (ascending); linear between, held outside.</summary>
    public IReadOnlyList<(double Ratio, double Efficiency)> IsentropicEfficiency
    {
        get => _isentropicEfficiency ?? throw NotGiven.For(this, "isentropic-efficiency");
        init => _isentropicEfficiency = value;
    }
    /// <summary>Shaft power over electrical power.</summary>
    public double MotorEfficiency { get => _motorEfficiency ?? throw NotGiven.For(this, "motor-efficiency"); init => _motorEfficiency = value; }
    /// <summary>True when both efficiencies are given.</summary>
    public bool HasEfficiencies => _isentropicEfficiency is not null && _motorEfficiency is not null;
    /// <summary>Share of the shaft and motor losses that leaves through the shell to the room instead of heating the gas, 0..1.</summary>
    public double ShellHeatFraction { get; init; }
    /// <summary>Highest allowed discharge temperature, K.</summary>
    public required double MaximumDischargeTemperatureK { get; init; }
    /// <summary>Nameplate; null when none is described.</summary>
    public NameplateDescription? Nameplate { get; init; }
    /// <summary>Rating sheet; null when none is described.</summary>
    public RatingSheetDescription? RatingSheet { get; init; }
    /// <summary>Frequency of its supply, Hz, 10..400; null when not given.</summary>
    public double? SupplyFrequencyHz { get; init; }
    /// <summary>Poles of its motor, even, 2..12; null when not given.</summary>
    public int? Poles { get; init; }
    /// <summary>What cools its shell; null when not given.</summary>
    public ShellCoolingWord? ShellCooling { get; init; }
    /// <summary>Measured conductance from shell to room, W/K, 0..1000; null when not measured.</summary>
    public double? ShellConductanceWPerK { get; init; }
    /// <summary>Oil separator and return; null when none is described.</summary>
    public OilDescription? Oil { get; init; }
    /// <summary>Gas space in its shell, m3; null when not known.</summary>
    public double? GasVolumeM3 { get; init; }
}
