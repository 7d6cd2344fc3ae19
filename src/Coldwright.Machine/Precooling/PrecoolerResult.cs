using Coldwright.Machine.Compression;
using Coldwright.Quantities;

namespace Coldwright.Machine.Precooling;

/// <summary>A place in the evaporator, from the mixture's outlet to its inlet.</summary>
/// <param name="HeatW">Exchanged from the mixture's outlet to here, W (mean over running and standing).</param>
/// <param name="RefrigerantK">K.</param>
/// <param name="MixtureK">K.</param>
public sealed record EvaporatorPlace(double HeatW, double RefrigerantK, double MixtureK);

/// <summary>A place in the condenser, from the liquid's outlet to the gas inlet.</summary>
/// <param name="HeatW">Given off from the outlet to here, W, while the compressor runs.</param>
/// <param name="RefrigerantK">K.</param>
/// <param name="AirK">Air that leaves there, K.</param>
public sealed record CondenserPlace(double HeatW, double RefrigerantK, double AirK);

/// <summary>A state on the refrigerant's way round.</summary>
/// <param name="Name">Where.</param>
/// <param name="TemperatureK">K.</param>
/// <param name="PressurePa">Pa absolute.</param>
/// <param name="MolarEnthalpy">J/mol.</param>
public sealed record LoopPlace(string Name, double TemperatureK, double PressurePa, double MolarEnthalpy);

/// <summary>One standard deviation from compressor, conductances and expansion device together.</summary>
/// <param name="CoolingW">W.</param>
/// <param name="MixtureOutletK">K.</param>
/// <param name="EvaporatingK">K.</param>
/// <param name="CompressorPowerW">W.</param>
public sealed record PrecoolerBand(double CoolingW, double MixtureOutletK, double EvaporatingK, double CompressorPowerW);

/// <summary>A precooling loop at work. Heats and powers are means over running and standing; flow and temperatures those while it runs.</summary>
public sealed record PrecoolerResult
{
    /// <summary>Dew point at the evaporating pressure, K.</summary>
    public required double EvaporatingK { get; init; }
    /// <summary>Pa absolute.</summary>
    public required double EvaporatingPa { get; init; }
    /// <summary>Refrigerant behind the expansion device, K; differs from <see cref="EvaporatingK"/> by the glide of a blend.</summary>
    public required double EvaporatorInletK { get; init; }
    /// <summary>Dew point at the condensing pressure, K.</summary>
    public required double CondensingK { get; init; }
    /// <summary>Bubble point at the condensing pressure, K.</summary>
    public required double CondensingBubbleK { get; init; }
    /// <summary>Pa absolute.</summary>
    public required double CondensingPa { get; init; }
    /// <summary>mol/s while it runs.</summary>
    public required double MolarFlow { get; init; }
    /// <summary>kg/s while it runs.</summary>
    public required double MassFlow { get; init; }
    /// <summary>Share of the time that it runs, 0 to 1.</summary>
    public required double RunShare { get; init; }
    /// <summary>Heat taken from the mixture, W.</summary>
    public required double CoolingW { get; init; }
    /// <summary>K.</summary>
    public required double MixtureOutletK { get; init; }
    /// <summary>Phases of the mixture at its outlet in words; empty when not known.</summary>
    public required string MixtureOutletPhases { get; init; }
    /// <summary>Electrical power of the compressor, W.</summary>
    public required double CompressorPowerW { get; init; }
    /// <summary>Electrical power of the condenser's fan, W.</summary>
    public required double FanPowerW { get; init; }
    /// <summary>Cooling over the power of compressor and fan.</summary>
    public required double CoefficientOfPerformance { get; init; }
    /// <summary>From the condenser to the air, W.</summary>
    public required double CondenserHeatW { get; init; }
    /// <summary>From the compressor's shell to the room, W.</summary>
    public required double ShellHeatW { get; init; }
    /// <summary>From the room into the suction line, W.</summary>
    public required double SuctionLineHeatW { get; init; }
    /// <summary>At the evaporator's outlet, K.</summary>
    public required double SuperheatK { get; init; }
    /// <summary>Before the expansion device, K; 0 when vapour arrives there.</summary>
    public required double SubcoolingK { get; init; }
    /// <summary>Share of the heat of evaporation in what arrives at the expansion device, 0 to 1; 0 when liquid arrives.</summary>
    public required double VapourBeforeExpansion { get; init; }
    /// <summary>Discharge port, K.</summary>
    public required double DischargeK { get; init; }
    /// <summary>The compressor at this point, with its limits.</summary>
    public required CompressorPerformance Compressor { get; init; }
    /// <summary>Round the loop.</summary>
    public required IReadOnlyList<LoopPlace> Path { get; init; }
    /// <summary>To draw.</summary>
    public required IReadOnlyList<EvaporatorPlace> EvaporatorProfile { get; init; }
    /// <summary>To draw.</summary>
    public required IReadOnlyList<CondenserPlace> CondenserProfile { get; init; }
    /// <summary>(Cooling + suction line + electrical - shell - condenser)/(cooling + electrical), flows and enthalpies from the compressor's own model.</summary>
    public required double EnergyBalanceError { get; init; }
    /// <summary>Flow of the expansion device over that of the compressor, less 1; 0 for a thermostatic valve.</summary>
    public required double ExpansionFlowError { get; init; }
    /// <summary>Change of the mixture's temperature within which the conductance that the evaporator needs passes the one it has, K.</summary>
    public required double EvaporatorErrorK { get; init; }
    /// <summary>Change of the room's temperature within which the conductance that the condenser needs passes the one it has, K; 0 when the pressure is held above the evaporator's.</summary>
    public required double CondenserErrorK { get; init; }
    /// <summary>Runs of the compressor's model.</summary>
    public required int Iterations { get; init; }
    /// <summary>Null when not asked for.</summary>
    public required PrecoolerBand? Band { get; init; }
    /// <summary>What a person must be told.</summary>
    public required IReadOnlyList<Spoken> Warnings { get; init; }
}

/// <summary>A loop at a given evaporating temperature: one row of its capacity table.</summary>
/// <param name="EvaporatingK">Dew point, K.</param>
/// <param name="CondensingK">Dew point, K.</param>
/// <param name="CoolingW">W.</param>
/// <param name="CompressorPowerW">W.</param>
/// <param name="CoefficientOfPerformance">Cooling over the power of compressor and fan.</param>
/// <param name="MassFlow">kg/s.</param>
/// <param name="DischargeK">K.</param>
/// <param name="CondenserHeatW">Needed from the condenser, W.</param>
public sealed record PrecoolerRating(double EvaporatingK, double CondensingK, double CoolingW, double CompressorPowerW, double CoefficientOfPerformance,
    double MassFlow, double DischargeK, double CondenserHeatW);
