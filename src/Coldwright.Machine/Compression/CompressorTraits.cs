namespace Coldwright.Machine.Compression;

/// <summary>
/// The lumped parameters of the loss model: few, the same for every size of a kind (lengths scale with the cube root of the
/// displacement), and replaced where the builder knows better or a nameplate is fitted.
/// </summary>
public sealed record CompressorTraits
{
    /// <summary>Construction.</summary>
    public required CompressorKind Kind { get; init; }
    /// <summary>Clearance over swept volume, 0..0.3.</summary>
    public required double ClearanceFraction { get; init; }
    /// <summary>Polytropic exponent of the re-expanding gas, 1..2; null follows the mixture's own isentrope.</summary>
    public double? ReExpansionExponent { get; init; }
    /// <summary>Effective leakage area over displacement^(2/3), 0..0.01: a nozzle from discharge to suction.</summary>
    public required double LeakageAreaFactor { get; init; }
    /// <summary>Effective suction port area over displacement^(2/3), 0.001..1; pressure loss rho u^2/2 at the mean velocity.</summary>
    public required double SuctionPortFactor { get; init; }
    /// <summary>Effective discharge port area over displacement^(2/3), 0.001..1.</summary>
    public required double DischargePortFactor { get; init; }
    /// <summary>Share of the difference between shell and suction gas that the gas gains before the cylinder, 0..0.95.</summary>
    public required double SuctionHeating { get; init; }
    /// <summary>Share of the difference between cylinder outlet and shell that the discharge gas exchanges with the shell, 0..0.98.</summary>
    public required double DischargeExchange { get; init; }
    /// <summary>Friction that does not depend on load, as mean pressure on the displacement, Pa, 0..5e5.</summary>
    public required double FrictionPressurePa { get; init; }
    /// <summary>Friction that grows with load, over indicated power, 0..0.5.</summary>
    public required double FrictionShare { get; init; }
    /// <summary>Motor loss at no load over rated shaft power, 0..0.5.</summary>
    public required double MotorConstantLoss { get; init; }
    /// <summary>Motor loss that grows with load squared, over rated shaft power at rated load, 0..0.5.</summary>
    public required double MotorQuadraticLoss { get; init; }
    /// <summary>Slip at rated load, 0..0.15.</summary>
    public required double RatedSlip { get; init; }
    /// <summary>Rated shaft power over displacement and synchronous speed, Pa; used when the rated power is not given.</summary>
    public required double RatedEffectivePressurePa { get; init; }
    /// <summary>Outside area of the shell over displacement^(2/3); used when the area is not given.</summary>
    public required double ShellAreaFactor { get; init; }
    /// <summary>Friction and motor losses times this, 0.1..5: what a fit to a rated power changes.</summary>
    public double LossScale { get; init; } = 1;
    /// <summary>One standard deviation of the volumetric efficiency, relative.</summary>
    public double FlowUncertainty { get; init; } = 0.08;
    /// <summary>One standard deviation of the electrical power, relative.</summary>
    public double PowerUncertainty { get; init; } = 0.12;
    /// <summary>Where the numbers come from.</summary>
    public string Provenance { get; init; } =
        "our assumption: lumped values chosen by us so that volumetric and overall efficiencies fall in the usual bands of hermetic machines";

    /// <summary>The usual machine of a kind: refrigerator and room-air-conditioner sizes, 3 to 40 cm3 per revolution.</summary>
    public static CompressorTraits For(CompressorKind kind) => kind == CompressorKind.Rotary
        ? new CompressorTraits
        {
            Kind = kind,
            ClearanceFraction = 0.008, LeakageAreaFactor = 2.2e-4, SuctionPortFactor = 0.05, DischargePortFactor = 0.020,
            SuctionHeating = 0.10, DischargeExchange = 0.85,
            FrictionPressurePa = 4.5e4, FrictionShare = 0.08,
            MotorConstantLoss = 0.07, MotorQuadraticLoss = 0.11, RatedSlip = 0.04, RatedEffectivePressurePa = 1.0e6,
            ShellAreaFactor = 200,
        }
        : new CompressorTraits
        {
            Kind = kind,
            ClearanceFraction = 0.040, LeakageAreaFactor = 1.1e-4, SuctionPortFactor = 0.030, DischargePortFactor = 0.015,
            SuctionHeating = 0.35, DischargeExchange = 0.30,
            FrictionPressurePa = 3.5e4, FrictionShare = 0.08,
            MotorConstantLoss = 0.07, MotorQuadraticLoss = 0.11, RatedSlip = 0.04, RatedEffectivePressurePa = 1.0e6,
            ShellAreaFactor = 260,
        };

    internal void Check()
    {
        InputCheck.Within(ClearanceFraction, 0, 0.3, "", nameof(ClearanceFraction));
        InputCheck.Optional(ReExpansionExponent, 1, 2, "", nameof(ReExpansionExponent));
        InputCheck.Within(LeakageAreaFactor, 0, 0.01, "", nameof(LeakageAreaFactor));
        InputCheck.Within(SuctionPortFactor, 0.001, 1, "", nameof(SuctionPortFactor));
        InputCheck.Within(DischargePortFactor, 0.001, 1, "", nameof(DischargePortFactor));
        InputCheck.Within(SuctionHeating, 0, 0.95, "", nameof(SuctionHeating));
        InputCheck.Within(DischargeExchange, 0, 0.98, "", nameof(DischargeExchange));
        InputCheck.Within(FrictionPressurePa, 0, 5e5, "Pa", nameof(FrictionPressurePa));
        InputCheck.Within(FrictionShare, 0, 0.5, "", nameof(FrictionShare));
        InputCheck.Within(MotorConstantLoss, 0, 0.5, "", nameof(MotorConstantLoss));
        InputCheck.Within(MotorQuadraticLoss, 0, 0.5, "", nameof(MotorQuadraticLoss));
        InputCheck.Within(RatedSlip, 0, 0.15, "", nameof(RatedSlip));
        InputCheck.Within(RatedEffectivePressurePa, 1e4, 1e7, "Pa", nameof(RatedEffectivePressurePa));
        InputCheck.Within(ShellAreaFactor, 1, 1e4, "", nameof(ShellAreaFactor));
        InputCheck.Within(LossScale, 0.1, 5, "", nameof(LossScale));
    }
}
