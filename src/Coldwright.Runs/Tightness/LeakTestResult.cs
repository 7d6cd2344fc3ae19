using Coldwright.Quantities;

namespace Coldwright.Runs.Tightness;

/// <summary>What a leak test says. A leak is positive when gas goes out.</summary>
public sealed record LeakTestResult
{
    /// <summary>What was filled in, in words.</summary>
    public required string Gas { get; init; }
    /// <summary>Time from the first to the last reading used, s.</summary>
    public required double DurationS { get; init; }
    /// <summary>Blocks of readings used.</summary>
    public required int Points { get; init; }
    /// <summary>Mean pressure, Pa.</summary>
    public required double MeanPressurePa { get; init; }
    /// <summary>Pressure on the fitted line at the end less at the begin, as read, Pa.</summary>
    public required double ChangeAsReadPa { get; init; }
    /// <summary>The same with the change of temperature taken out, Pa.</summary>
    public required double ChangeCorrectedPa { get; init; }
    /// <summary>Temperature at the end less at the begin, K.</summary>
    public required double TemperatureChangeK { get; init; }
    /// <summary>Gas shut in at the mean, mol.</summary>
    public required double AmountMol { get; init; }
    /// <summary>Leak, mol/s.</summary>
    public required double LeakMolS { get; init; }
    /// <summary>Its standard uncertainty, mol/s.</summary>
    public required double UncertaintyMolS { get; init; }
    /// <summary>Shares of the uncertainty by cause, mol/s.</summary>
    public required IReadOnlyList<(string Name, double MolS)> Parts { get; init; }
    /// <summary>Leak, Pa m3/s at 20 °C.</summary>
    public required double LeakPaM3S { get; init; }
    /// <summary>Its standard uncertainty, Pa m3/s.</summary>
    public required double UncertaintyPaM3S { get; init; }
    /// <summary>Leak of the test gas in a year if it went on, kg.</summary>
    public required double LeakKgPerYear { get; init; }
    /// <summary>Its standard uncertainty, kg.</summary>
    public required double UncertaintyKgPerYear { get; init; }
    /// <summary>The leak is not larger than this with 95 % probability, mol/s; at least 0.</summary>
    public required double UpperLimitMolS { get; init; }
    /// <summary>True when the leak stands out of its uncertainty (twice its standard uncertainty).</summary>
    public bool IsSeen => LeakMolS > 2 * UncertaintyMolS;
    /// <summary>Answer against what is allowed.</summary>
    public required TightnessVerdict Verdict { get; init; }
    /// <summary>Allowed loss of charge in a year, kg; null when not given.</summary>
    public required double? AllowedKgPerYear { get; init; }
    /// <summary>How long the test would have to last to tell, s; null when it tells or no length would.</summary>
    public required double? NeededS { get; init; }
    /// <summary>What the leak means for the machine's charge, one entry for each kind of flow; empty without a machine.</summary>
    public required IReadOnlyList<ChargeLoss> Charge { get; init; }
    /// <summary>Times of the blocks (s), amount (mol), for a picture.</summary>
    public required IReadOnlyList<(double TimeS, double PressurePa, double AmountMol)> Series { get; init; }
    /// <summary>What a person must be told.</summary>
    public required IReadOnlyList<Spoken> Warnings { get; init; }
}

/// <summary>What a leak means for the charge, if gas flows through it in one way.</summary>
/// <param name="Flow">Kind of flow: <c>molecular</c>, <c>viscous</c> or <c>orifice</c>.</param>
/// <param name="MolS">Loss of charge at standstill, mol/s; the best estimate.</param>
/// <param name="UpperMolS">Not larger than this with 95 % probability, mol/s.</param>
/// <param name="KgPerYear">Loss in a year at the present rate, kg.</param>
/// <param name="UpperKgPerYear">Upper limit of it, kg.</param>
/// <param name="TenthLostS">When a tenth of the charge is gone, s; null when nothing leaks.</param>
/// <param name="TenthLostUpperS">The same at the upper limit of the leak: not before this; null when nothing can leak.</param>
/// <param name="ShiftS">When a mole fraction has moved by as much as matters, s; null when it never does.</param>
/// <param name="ShiftUpperS">The same at the upper limit of the leak: not before this; null when it never does.</param>
/// <param name="First">Substance that goes first; empty when all go alike.</param>
/// <param name="FirstRelative">How much faster it goes than the charge as a whole, per mole present.</param>
public sealed record ChargeLoss(string Flow, double MolS, double UpperMolS, double KgPerYear, double UpperKgPerYear, double? TenthLostS, double? TenthLostUpperS, double? ShiftS, double? ShiftUpperS, string First, double FirstRelative);
