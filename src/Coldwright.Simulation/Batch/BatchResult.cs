using Coldwright.Fluids.Substances;
using Coldwright.Quantities;
using Coldwright.Simulation.Rating;

namespace Coldwright.Simulation.Batch;

/// <summary>One step of the schedule as it was done.</summary>
/// <param name="StartS">s from the start.</param>
/// <param name="Action">feed, rest, wait, discharge or stand.</param>
/// <param name="Until">What ended it, in words.</param>
/// <param name="EndS">s from the start.</param>
public sealed record ScheduleStep(double StartS, string Action, string Until, double EndS);

/// <summary>One moment of a batch. SI.</summary>
/// <param name="TimeS">s.</param>
/// <param name="PressurePa">Vessel, Pa.</param>
/// <param name="TemperatureK">Vessel, K.</param>
/// <param name="Level">Liquid over the vessel's volume, 0..1.</param>
/// <param name="VesselKg">In the vessel, kg.</param>
/// <param name="SupplyPa">Before the fill valve's supply: receiver, Pa.</param>
/// <param name="ShellK">Feed compressor's shell, K; that of the room without one.</param>
/// <param name="LineK">Drain line, K.</param>
/// <param name="FlaskKg">Liquid in the flask, kg.</param>
/// <param name="CoolingW">What the cold end takes, W.</param>
public sealed record BatchMoment(double TimeS, double PressurePa, double TemperatureK, double Level, double VesselKg, double SupplyPa, double ShellK, double LineK, double FlaskKg, double CoolingW);

/// <summary>A batch with its ledgers. Immutable.</summary>
public sealed record BatchRun
{
    /// <summary>The schedule asked for.</summary>
    public required BatchPlan Plan { get; init; }
    /// <summary>Grams.</summary>
    public required GramLedger Grams { get; init; }
    /// <summary>Parts of them.</summary>
    public required GramDetails Details { get; init; }
    /// <summary>Joules.</summary>
    public required JouleLedger Joules { get; init; }
    /// <summary>What was done when.</summary>
    public required IReadOnlyList<ScheduleStep> Schedule { get; init; }
    /// <summary>The course.</summary>
    public required IReadOnlyList<BatchMoment> Series { get; init; }
    /// <summary>From the start to the end, s.</summary>
    public required double DurationS { get; init; }
    /// <summary>Litres per hour of liquid in the flask, at its normal boiling point.</summary>
    public required double CollectedLPerH { get; init; }
    /// <summary>kWh per litre; null when nothing was collected.</summary>
    public double? EnergyKWhPerL { get; init; }
    /// <summary>Electricity: loop, precooler and fans, J.</summary>
    public required double LoopJ { get; init; }
    /// <summary>Electricity of the feed compression, J.</summary>
    public required double FeedJ { get; init; }
    /// <summary>Hottest shell of the feed compressor, K.</summary>
    public required double HottestShellK { get; init; }
    /// <summary>Hottest discharge of the feed compressor, K; null without one.</summary>
    public double? HottestDischargeK { get; init; }
    /// <summary>Boil-off of the flask as it stands at the end, kg/s.</summary>
    public required double FlaskLossKgPerS { get; init; }
    /// <summary>True when it was stopped before its end; what was done until then stands.</summary>
    public bool Stopped { get; init; }
    /// <summary>What went otherwise than planned.</summary>
    public IReadOnlyList<Spoken> Said { get; init; } = [];
}

/// <summary>What waiting is worth: the same batch opened earlier or later.</summary>
/// <param name="WaitS">Wait after feeding, s.</param>
/// <param name="OpeningPressurePa">Pressure it was opened at, Pa.</param>
/// <param name="CollectedKg">kg.</param>
/// <param name="CollectedLPerH">L/h.</param>
/// <param name="EnergyKWhPerL">kWh/L; null when nothing was collected.</param>
/// <param name="GainKgPerMinute">More in the flask for each further minute of waiting at this point, kg/min.</param>
public sealed record WaitValue(double WaitS, double OpeningPressurePa, double CollectedKg, double CollectedLPerH, double? EnergyKWhPerL, double GainKgPerMinute);

/// <summary>What the impurities do.</summary>
public sealed record ImpurityResult
{
    /// <summary>The feed.</summary>
    public required Composition Feed { get; init; }
    /// <summary>Dew less bubble point at the feed pressure, K; null above the critical pressure.</summary>
    public double? GlideK { get; init; }
    /// <summary>The vapour that stays when half has condensed at the feed pressure, mole fractions; null as above.</summary>
    public IReadOnlyList<double>? VapourThatStays { get; init; }
    /// <summary>The liquid collected, mole fractions, the let-down to the room's pressure counted.</summary>
    public required IReadOnlyList<double> Collected { get; init; }
    /// <summary>Oxygen of the collected liquid and when nine tenths of it have boiled away, mol/mol; null where there is none.</summary>
    public (double Fresh, double TenthLeft)? Oxygen { get; init; }
    /// <summary>Traces: name, fed (kg), frozen (kg) at the coldest vessel temperature, temperature at which it begins to freeze from the feed (K, null where it stays dissolved).</summary>
    public required IReadOnlyList<(string Name, double FedKg, double FrozenKg, double? FreezesAtK)> Traces { get; init; }
}

/// <summary>How the feed compressor's heat limits it.</summary>
/// <param name="SteadyShellK">Shell if it ran on, at the feed pressure and the supply's first pressure, K.</param>
/// <param name="AllowedShellK">Limit, K.</param>
/// <param name="DutyShare">Share of the time it may run, 0..1; 1 when it never gets too hot.</param>
/// <param name="RunS">One run from rest temperature to the limit, s; null when unlimited.</param>
/// <param name="RestS">One rest, s; null when unlimited.</param>
/// <param name="FlowKgPerS">Delivered then, kg/s.</param>
/// <param name="DischargeK">Discharge with the shell at its limit or steady, K.</param>
/// <param name="AllowedDischargeK">Limit, K.</param>
/// <param name="VolumetricEfficiency">Delivered over swept, 0..1.</param>
public sealed record FeedDuty(double SteadyShellK, double AllowedShellK, double DutyShare, double? RunS, double? RestS, double FlowKgPerS, double DischargeK, double AllowedDischargeK, double VolumetricEfficiency);

/// <summary>A concern that a person must see; the safety room gives it its grade and words.</summary>
/// <param name="Id">Stable word.</param>
/// <param name="Part">Part concerned.</param>
/// <param name="Value">Figure found, SI; null for none.</param>
/// <param name="Limit">What it is held against, SI; null for none.</param>
/// <param name="Unit">SI unit.</param>
/// <param name="Text">In words.</param>
public sealed record BatchConcern(string Id, string Part, double? Value, double? Limit, string Unit, string Text);

/// <summary>Everything about a cooler's batch.</summary>
public sealed record BatchResult
{
    /// <summary>The batch.</summary>
    public required BatchRun Run { get; init; }
    /// <summary>The best for the other goal; null when the plan was given or it was stopped.</summary>
    public BatchRun? OtherGoal { get; init; }
    /// <summary>What it was chosen for; null when the plan was given.</summary>
    public BatchGoal? Goal { get; init; }
    /// <summary>Schedules tried.</summary>
    public required int Tried { get; init; }
    /// <summary>What each further minute of subcooling buys.</summary>
    public required IReadOnlyList<WaitValue> Waiting { get; init; }
    /// <summary>Impurities.</summary>
    public required ImpurityResult Impurities { get; init; }
    /// <summary>The feed compressor; null without one described.</summary>
    public FeedDuty? Feed { get; init; }
    /// <summary>How the level changes the cold end's capacity; null where the coil's size is not known.</summary>
    public CoilByLevel? Coil { get; init; }
    /// <summary>The rating that gave the cold end's capacity.</summary>
    public required ModelRating Rating { get; init; }
    /// <summary>Product's name.</summary>
    public required string Substance { get; init; }
    /// <summary>Vessel's inside volume, coil taken off, m3.</summary>
    public required double VesselVolumeM3 { get; init; }
    /// <summary>Product's density at its normal boiling point, kg/m3.</summary>
    public required double LiquidDensity { get; init; }
    /// <summary>Concerns.</summary>
    public required IReadOnlyList<BatchConcern> Concerns { get; init; }
    /// <summary>What a person must be told.</summary>
    public required IReadOnlyList<Spoken> Warnings { get; init; }
    /// <summary>True when Ctrl-C ended it; what was done stands.</summary>
    public bool Stopped { get; init; }
}
