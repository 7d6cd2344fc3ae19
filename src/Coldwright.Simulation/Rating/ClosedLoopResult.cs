using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Coldwright.Quantities;

namespace Coldwright.Simulation.Rating;

/// <summary>What a loop closed from its hardware adds to a rating. SI.</summary>
public sealed record ClosedLoopResult
{
    /// <summary>Which pressures were held.</summary>
    public required HeldPressure Held { get; init; }
    /// <summary>What was charged.</summary>
    public required Composition Charged { get; init; }
    /// <summary>In the loop, kg: the charge, or the answer when a pressure is held and the charge follows.</summary>
    public required double ChargeKg { get; init; }
    /// <summary>True when the charge is an answer.</summary>
    public required bool ChargeIsAnswer { get; init; }
    /// <summary>Length of capillary that the held pressure asks for, m; null when the throttle is as described.</summary>
    public double? ThrottleLengthM { get; init; }
    /// <summary>Opening of the valve that it asks for, over the described one; null as above.</summary>
    public double? ThrottleOpening { get; init; }
    /// <summary>Charged amount over amount found in the loop less 1, the largest of all substances.</summary>
    public required double ChargeError { get; init; }
    /// <summary>Pressures, heats and flow round the loop: largest relative balance left. The flow is closed with the throttle's flow as it was last asked for; how far its model has moved since is <see cref="ThrottleError"/>.</summary>
    public required double LoopError { get; init; }
    /// <summary>Throttle model's own flow at the answer over the loop's flow less 1: within the 3e-4 that its march resolves; 0 when the throttle is an answer.</summary>
    public double ThrottleError { get; init; }
    /// <summary>What is where.</summary>
    public required IReadOnlyList<LoopContent> Contents { get; init; }
    /// <summary>Share of the charge that is liquid, mol/mol.</summary>
    public required double LiquidShare { get; init; }
    /// <summary>Throttle choked.</summary>
    public required bool ThrottleChoked { get; init; }
    /// <summary>Refrigerant of the precooler evaporates at, K; null without a described loop.</summary>
    public double? PrecoolerEvaporatingK { get; init; }
    /// <summary>Mixture leaves the precooler, or enters the recuperator, at, K.</summary>
    public required double RecuperatorInletK { get; init; }
    /// <summary>The precooler's compressor runs this share of the time; null without a described loop.</summary>
    public double? PrecoolerRunShare { get; init; }
    /// <summary>Pressure in the buffer, Pa, its valve's opening (0..1) and what it lets past over the compressor's flow; null without one.</summary>
    public BufferAtWork? Buffer { get; init; }
    /// <summary>Coil: load warmer than the mixture leaving it by this, K.</summary>
    public required double CoilDifferenceK { get; init; }
    /// <summary>At rest and at the start.</summary>
    public required StartUpResult StartUp { get; init; }
    /// <summary>Sensitivities of the headline figures; null when not asked for.</summary>
    public SensitivityResult? Sensitivity { get; init; }
}

/// <summary>What a place of the loop holds.</summary>
/// <param name="Place">Where.</param>
/// <param name="Kg">kg.</param>
/// <param name="LiquidShare">Liquid, mol/mol.</param>
/// <param name="LiquidKg">Liquid, kg.</param>
public sealed record LoopContent(string Place, double Kg, double LiquidShare, double LiquidKg);

/// <summary>The buffer in a closed loop.</summary>
/// <param name="PressurePa">Pa absolute.</param>
/// <param name="Opening">0..1.</param>
/// <param name="BypassShare">Of the compressor's flow.</param>
public sealed record BufferAtWork(double PressurePa, double Opening, double BypassShare);

/// <summary>The loop at rest and in its first minutes, when everything is warm and gas.</summary>
public sealed record StartUpResult
{
    /// <summary>Pressure at rest, everything at room temperature, Pa absolute.</summary>
    public required double StandstillPressurePa { get; init; }
    /// <summary>Share of the charge liquid then, mol/mol.</summary>
    public required double StandstillLiquidShare { get; init; }
    /// <summary>Read at rest by the builder, Pa absolute; null when it was not.</summary>
    public double? ReadStandstillPa { get; init; }
    /// <summary>Starts, Doubtful or DoesNotStart in words.</summary>
    public required string Motor { get; init; }
    /// <summary>Highest standstill pressure against which the motor runs up, Pa absolute.</summary>
    public required double HighestStandstillPa { get; init; }
    /// <summary>High side while all is warm, precooler included, Pa absolute; null when that loop does not close.</summary>
    public double? FirstHighPa { get; init; }
    /// <summary>Low side then, Pa absolute.</summary>
    public double? FirstLowPa { get; init; }
    /// <summary>Discharge then, K.</summary>
    public double? FirstDischargeK { get; init; }
    /// <summary>Highest pressure allowed on the high side, Pa absolute; null when no part states one.</summary>
    public double? AllowedHighPa { get; init; }
    /// <summary>Buffer that would hold the first minutes at the allowed pressure, m3; 0 when none is needed; null when not known.</summary>
    public double? BufferNeededM3 { get; init; }
    /// <summary>Charge with which the warm loop stays at the allowed pressure without a buffer, kg: the rest to be let in once it is cold; null when all of it may go in at once or nothing is known.</summary>
    public double? FirstChargeKg { get; init; }
    /// <summary>In words.</summary>
    public required Spoken Sentence { get; init; }
}

/// <summary>Headline figures against inputs.</summary>
public sealed record SensitivityResult
{
    /// <summary>Figures with their bands.</summary>
    public required IReadOnlyList<HeadlineFigure> Figures { get; init; }
    /// <summary>Inputs with every figure's slope.</summary>
    public required IReadOnlyList<InputSensitivity> Inputs { get; init; }
}

/// <summary>A headline figure.</summary>
/// <param name="Id">Field name with unit.</param>
/// <param name="Name">In words.</param>
/// <param name="Unit">SI unit.</param>
/// <param name="Value">Value.</param>
/// <param name="Deviation">One standard deviation from the correlations, materials and compressor; the other fluid model is shown beside it and not in it.</param>
public sealed record HeadlineFigure(string Id, string Name, string Unit, double Value, double Deviation);

/// <summary>An input of the closed loop.</summary>
/// <param name="Id">Its key, part first.</param>
/// <param name="Name">In words.</param>
/// <param name="Unit">SI unit; empty for a factor.</param>
/// <param name="Value">Its value.</param>
/// <param name="Step">A step a builder might take or a standard deviation, in the unit.</param>
/// <param name="IsDoubt">True when the step is a standard deviation of a correlation or material and no choice.</param>
/// <param name="Slopes">Derivatives of the figures by it, in the order of <see cref="SensitivityResult.Figures"/>; not a number where a figure has none.</param>
public sealed record InputSensitivity(string Id, string Name, string Unit, double Value, double Step, bool IsDoubt, IReadOnlyList<double> Slopes);
