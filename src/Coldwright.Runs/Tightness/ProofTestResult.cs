using Coldwright.Quantities;

namespace Coldwright.Runs.Tightness;

/// <summary>What a proof test says.</summary>
public sealed record ProofTestResult
{
    /// <summary>What was filled in, in words.</summary>
    public required string Medium { get; init; }
    /// <summary>Pressure asked for, Pa.</summary>
    public required double ProofPressurePa { get; init; }
    /// <summary>Highest pressure read, Pa.</summary>
    public required double HighestPa { get; init; }
    /// <summary>Standard uncertainty of the gauge there, Pa.</summary>
    public required double GaugePa { get; init; }
    /// <summary>True when the pressure was reached at all.</summary>
    public required bool Reached { get; init; }
    /// <summary>How long it was held, s.</summary>
    public required double HeldS { get; init; }
    /// <summary>How long it had to be held, s.</summary>
    public required double HoldS { get; init; }
    /// <summary>Fall of pressure during the hold as read, Pa.</summary>
    public required double DropAsReadPa { get; init; }
    /// <summary>Fall of pressure with the change of temperature taken out, Pa.</summary>
    public required double DropPa { get; init; }
    /// <summary>Its standard uncertainty, Pa.</summary>
    public required double UncertaintyPa { get; init; }
    /// <summary>Fall that is allowed, Pa.</summary>
    public required double AllowedDropPa { get; init; }
    /// <summary>Change of temperature during the hold, K.</summary>
    public required double TemperatureChangeK { get; init; }
    /// <summary>What a kelvin does to the pressure, Pa/K.</summary>
    public required double PressurePerK { get; init; }
    /// <summary>Answer.</summary>
    public required TightnessVerdict Verdict { get; init; }
    /// <summary>Why, one sentence.</summary>
    public required Spoken Reason { get; init; }
    /// <summary>Times and pressures used.</summary>
    public required IReadOnlyList<(double TimeS, double PressurePa)> Series { get; init; }
    /// <summary>What a person must be told.</summary>
    public required IReadOnlyList<Spoken> Warnings { get; init; }
}
