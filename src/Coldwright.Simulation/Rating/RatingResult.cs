using Coldwright.Fluids.Substances;
using Coldwright.Quantities;

namespace Coldwright.Simulation.Rating;

/// <summary>The steady rating of a cooler by both models. SI; powers W electrical unless said otherwise.</summary>
public sealed record RatingResult
{
    /// <summary>The rating by the default model.</summary>
    public required ModelRating Main { get; init; }
    /// <summary>The same by the other model, or null when only one was asked for.</summary>
    public ModelRating? SecondOpinion { get; init; }
    /// <summary>Everything a person must be told.</summary>
    public required IReadOnlyList<Spoken> Warnings { get; init; }
}

/// <summary>One model's rating.</summary>
public sealed record ModelRating
{
    /// <summary>reference or cubic.</summary>
    public required string Model { get; init; }
    /// <summary>Load temperature at zero net cooling, heat leak included, K; null when the loop does not cool below the precooled temperature.</summary>
    public double? NoLoadTemperatureK { get; init; }
    /// <summary>Throttle outlet at the operating point, K.</summary>
    public required double ThrottleOutletK { get; init; }
    /// <summary>Net and gross cooling against load temperature, coldest first.</summary>
    public required IReadOnlyList<CoolingPoint> CoolingCurve { get; init; }
    /// <summary>The temperature the numbers below are for: the condensing temperature when product is made, else the best point of the curve, K.</summary>
    public required double OperatingTemperatureK { get; init; }
    /// <summary>Both streams along the recuperator at the operating point, warm end first.</summary>
    public required IReadOnlyList<RecuperatorStation> Recuperator { get; init; }
    /// <summary>Isothermal enthalpy difference h(T, low) - h(T, high) against temperature, coldest first.</summary>
    public required IReadOnlyList<(double TemperatureK, double DifferenceJPerMol)> IsothermalEnthalpyDifference { get; init; }
    /// <summary>The loop's states.</summary>
    public required LoopState Loop { get; init; }
    /// <summary>Electrical power.</summary>
    public required PowerSplit Power { get; init; }
    /// <summary>Heat leak at the operating point by path, W.</summary>
    public required IReadOnlyDictionary<string, double> HeatLeakW { get; init; }
    /// <summary>Product; null for a cooler without a vessel.</summary>
    public LiquidResult? Liquid { get; init; }
    /// <summary>kWh per litre collected; null without product.</summary>
    public double? EnergyKWhPerL { get; init; }
    /// <summary>Cost per litre collected; null without product.</summary>
    public CostPerLitre? CostPerL { get; init; }
    /// <summary>As defined in the surface: ideal work of the product over electrical input, else the best point of the curve.</summary>
    public required double CarnotFraction { get; init; }
    /// <summary>Exergy account, W.</summary>
    public required ExergyAccount Exergy { get; init; }
    /// <summary>Relative errors of the balances.</summary>
    public required BalanceErrors Balance { get; init; }
    /// <summary>Limits of parts and how the operating point stands to them.</summary>
    public required IReadOnlyList<LimitCheck> Limits { get; init; }
    /// <summary>What stops the cooler (or, when it works, what limits it most), in words.</summary>
    public required Limitation LimitedBy { get; init; }
    /// <summary>What the closed loop adds; null for a rating between given pressures.</summary>
    public ClosedLoopResult? Closed { get; init; }
    /// <summary>Warnings of this model (pairs estimated, ranges left).</summary>
    public required IReadOnlyList<Spoken> Warnings { get; init; }
}

/// <summary>One point of the cooling curve.</summary>
/// <param name="TemperatureK">Load temperature, K.</param>
/// <param name="GrossCoolingW">Enthalpy the coil can take up, W.</param>
/// <param name="HeatLeakW">Heat leak at that temperature, W.</param>
/// <param name="WarmEndDifferenceK">Temperature difference at the recuperator's warm end, K.</param>
/// <param name="PinchK">Smallest difference inside, K.</param>
/// <param name="PinchTemperatureK">High-pressure stream temperature at the smallest difference, K.</param>
public sealed record CoolingPoint(double TemperatureK, double GrossCoolingW, double HeatLeakW, double WarmEndDifferenceK, double PinchK, double PinchTemperatureK)
{
    /// <summary>Gross less leak, W: what is left for a load.</summary>
    public double NetCoolingW => GrossCoolingW - HeatLeakW;
}

/// <summary>A station of the recuperator.</summary>
/// <param name="DutyShare">Heat exchanged from the warm end to here over the whole duty, 0..1.</param>
/// <param name="HighStreamK">High-pressure stream, K.</param>
/// <param name="LowStreamK">Low-pressure stream, K.</param>
/// <param name="HighPhases">Phases of the high-pressure stream.</param>
/// <param name="LowPhases">Phases of the low-pressure stream.</param>
public sealed record RecuperatorStation(double DutyShare, double HighStreamK, double LowStreamK, string HighPhases, string LowPhases);

/// <summary>Loop conditions.</summary>
public sealed record LoopState
{
    /// <summary>Pa absolute.</summary>
    public required double HighPressurePa { get; init; }
    /// <summary>Pa absolute.</summary>
    public required double LowPressurePa { get; init; }
    /// <summary>mol/s.</summary>
    public required double MolarFlow { get; init; }
    /// <summary>kg/s.</summary>
    public required double MassFlow { get; init; }
    /// <summary>K.</summary>
    public required double DischargeTemperatureK { get; init; }
    /// <summary>Heat the precooler takes from the stream and the feed, W; 0 without one.</summary>
    public required double PrecoolingW { get; init; }
    /// <summary>Recuperator duty, W.</summary>
    public required double RecuperatorDutyW { get; init; }
    /// <summary>Circulating mixture.</summary>
    public required Composition Composition { get; init; }
    /// <summary>States around the loop in flow order.</summary>
    public required IReadOnlyList<LoopPoint> Points { get; init; }
}

/// <summary>A state on the loop.</summary>
/// <param name="Name">Where, in words (after the aftercooler, throttle inlet, ...).</param>
/// <param name="Part">Part that the stream leaves there.</param>
/// <param name="TemperatureK">K.</param>
/// <param name="PressurePa">Pa absolute.</param>
/// <param name="MolarEnthalpy">J/mol on the caloric zero.</param>
/// <param name="MolarEntropy">J/(mol K).</param>
/// <param name="VapourFraction">mol/mol.</param>
/// <param name="Phases">Phase names joined with +.</param>
public sealed record LoopPoint(string Name, string Part, double TemperatureK, double PressurePa, double MolarEnthalpy, double MolarEntropy, double VapourFraction, string Phases);

/// <summary>Electrical powers, W.</summary>
public sealed record PowerSplit(double MainW, double PrecoolW, double FeedW, double FansW)
{
    /// <summary>Sum, W.</summary>
    public double TotalW => MainW + PrecoolW + FeedW + FansW;
}

/// <summary>Product made.</summary>
public sealed record LiquidResult
{
    /// <summary>nitrogen, argon, oxygen or methane.</summary>
    public required string Substance { get; init; }
    /// <summary>Pressure in the vessel, Pa absolute.</summary>
    public required double CondensingPressurePa { get; init; }
    /// <summary>Saturation temperature at that pressure, K; null above the critical pressure.</summary>
    public double? CondensingTemperatureK { get; init; }
    /// <summary>Temperature of the liquid that leaves the vessel, K.</summary>
    public required double LiquidTemperatureK { get; init; }
    /// <summary>kg/s condensed in the vessel.</summary>
    public required double RateKgPerS { get; init; }
    /// <summary>Litres per hour condensed, at vessel conditions' liquid density.</summary>
    public required double RateLPerH { get; init; }
    /// <summary>Litres per hour collected in the flask at the normal boiling point.</summary>
    public required double CollectedLPerH { get; init; }
    /// <summary>Share lost to vapour in the let-down, kg/kg.</summary>
    public required double FlashFraction { get; init; }
    /// <summary>Heat to be taken from each kg of feed at the vessel, J/kg.</summary>
    public required double HeatPerKgJ { get; init; }
}

/// <summary>Cost of a collected litre in the shop's currency.</summary>
public sealed record CostPerLitre(string Currency, double Electricity, double Gas, double Charge)
{
    /// <summary>Sum.</summary>
    public double Total => Electricity + Gas + Charge;
}

/// <summary>Exergy in, out and lost (environment: room temperature, room pressure), W.</summary>
public sealed record ExergyAccount(double InputW, double FeedW, double ProductW, IReadOnlyList<(string Name, double Watts)> LossesW)
{
    /// <summary>All that is put in, W: what shares of losses are of.</summary>
    public double TotalW => InputW + FeedW;
}

/// <summary>Relative errors of the balances: mass and energy to the main power, exergy to the electrical input.</summary>
public sealed record BalanceErrors(double Mass, double Energy, double Exergy);

/// <summary>A limit and where the operating point stands.</summary>
/// <param name="What">What is limited.</param>
/// <param name="Part">The part.</param>
/// <param name="Value">Value, SI.</param>
/// <param name="Limit">Limit, SI.</param>
/// <param name="Unit">SI unit.</param>
/// <param name="Broken">True when the limit is broken.</param>
public sealed record LimitCheck(string What, string Part, double Value, double Limit, string Unit, bool Broken);

/// <summary>What stops or limits the cooler.</summary>
public enum LimitationKind
{
    /// <summary>It makes product; the sentence names the largest lever.</summary>
    Works,
    /// <summary>The mixture at these pressures has too little isothermal enthalpy difference at some temperature, whatever the exchanger.</summary>
    Capacity,
    /// <summary>The recuperator's conductance: the streams come too close.</summary>
    Pinch,
    /// <summary>The heat leak eats the cooling.</summary>
    Leak,
    /// <summary>The product's pressure asks for a temperature the mixture cannot reach, or it is above the critical pressure.</summary>
    Pressure,
}

/// <summary>The verdict in words.</summary>
/// <param name="Kind">Which cause.</param>
/// <param name="Sentence">One or two sentences with the numbers.</param>
/// <param name="PinchTemperatureK">Where the pinch is, K; null when it is not the point.</param>
/// <param name="PinchPhases">Phases of both streams at the pinch.</param>
public sealed record Limitation(LimitationKind Kind, Spoken Sentence, double? PinchTemperatureK = null, string? PinchPhases = null);
