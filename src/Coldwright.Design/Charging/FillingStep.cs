namespace Coldwright.Design.Charging;

/// <summary>How the end of a step is told.</summary>
public enum FillingMeasure
{
    /// <summary>By the gauge.</summary>
    Pressure,
    /// <summary>By the scale.</summary>
    Weight,
}

/// <summary>One gas let in. SI, pressures absolute.</summary>
public sealed record FillingStep
{
    /// <summary>Canonical name.</summary>
    public required string Gas { get; init; }
    /// <summary>kg.</summary>
    public required double MassKg { get; init; }
    /// <summary>mol.</summary>
    public required double Moles { get; init; }
    /// <summary>Pressure before, Pa.</summary>
    public required double FromPa { get; init; }
    /// <summary>Pressure when it is in and has come to the room's temperature, Pa.</summary>
    public required double UntilPa { get; init; }
    /// <summary>Share of the loop's content that is liquid then, mol/mol.</summary>
    public required double LiquidShare { get; init; }
    /// <summary>Pressure of its bottle while liquid stands in it, Pa; null for a gas that is none at this temperature.</summary>
    public double? BottlePa { get; init; }
    /// <summary>Which of both tells the amount better.</summary>
    public required FillingMeasure By { get; init; }
    /// <summary>Standard deviation of the amount by the scale, kg.</summary>
    public required double ByScaleKg { get; init; }
    /// <summary>Standard deviation of the amount by the gauge, kg; null where liquid stands and the gauge does not tell.</summary>
    public double? ByGaugeKg { get; init; }
    /// <summary>How far the mass may be off, kg.</summary>
    public required double ToleranceKg { get; init; }
    /// <summary>The same on the gauge, Pa; null as above.</summary>
    public double? TolerancePa { get; init; }
    /// <summary>What so much too much of it does.</summary>
    public StepError? Error { get; init; }

    /// <summary>True when its bottle has no more pressure than the loop: it does not flow in by itself.</summary>
    public bool BottleTooWeak => BottlePa is { } bottle && UntilPa >= bottle * 0.999;
}

/// <summary>What an error of one step does when the others are right.</summary>
/// <param name="Fraction">Change of the gas's own mole fraction.</param>
/// <param name="StandstillPa">Change of the standstill pressure, Pa.</param>
/// <param name="Cooling">Relative change of the smallest isothermal enthalpy difference between both pressures of the file: the most that any exchanger could use.</param>
public sealed record StepError(double Fraction, double StandstillPa, double? Cooling);
