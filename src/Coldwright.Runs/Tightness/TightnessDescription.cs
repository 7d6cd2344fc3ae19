using Coldwright.Fluids.Substances;

namespace Coldwright.Runs.Tightness;

/// <summary>A leak or proof test as described in <c>run.yaml</c>. SI throughout.</summary>
public sealed record TightnessDescription
{
    /// <summary>What was filled in; null when it was water.</summary>
    public required Composition? Gas { get; init; }
    /// <summary>Volume shut in, m3; null when not given.</summary>
    public required double? VolumeM3 { get; init; }
    /// <summary>Its standard uncertainty as a share.</summary>
    public required double VolumeUncertainty { get; init; }
    /// <summary>Channel of the pressure; empty to take the only one.</summary>
    public required string PressureChannel { get; init; }
    /// <summary>Channel of the temperature; empty to take the only one.</summary>
    public required string TemperatureChannel { get; init; }
    /// <summary>How far the gas may have drifted from that thermometer, one standard deviation, K.</summary>
    public required double TemperatureDriftK { get; init; }
    /// <summary>Begin, s from the start; null for the whole record.</summary>
    public double? FromS { get; init; }
    /// <summary>End, s from the start; null for the whole record.</summary>
    public double? ToS { get; init; }
    /// <summary>Charge that may be lost in a year, kg; null when not given.</summary>
    public required double? AllowedKgPerYear { get; init; }
    /// <summary>Change of a mole fraction of the charge that matters.</summary>
    public required double ChargeShift { get; init; }
    /// <summary>Pressure to be held, Pa; null when not given.</summary>
    public required double? ProofPressurePa { get; init; }
    /// <summary>How long, s; null when not given.</summary>
    public required double? HoldS { get; init; }
    /// <summary>Fall of pressure that may be, Pa; null when not given.</summary>
    public required double? AllowedDropPa { get; init; }
}
