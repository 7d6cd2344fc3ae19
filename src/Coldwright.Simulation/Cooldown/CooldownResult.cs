using Coldwright.Quantities;

namespace Coldwright.Simulation.Cooldown;

/// <summary>A cooldown, or a warm-up, followed in time. Immutable.</summary>
public sealed record CooldownResult
{
    /// <summary>Fluid model.</summary>
    public required string Model { get; init; }
    /// <summary>True: cancelled on the way; this is what was done until then, and the plateau is the temperature at its end.</summary>
    public bool Stopped { get; init; }
    /// <summary>False where <see cref="PlateauK"/> is only the temperature at the end: it was not asked for, or not reached before the work was cancelled.</summary>
    public bool HasPlateau { get; init; } = true;
    /// <summary>True for a warm-up with the compressor standing still.</summary>
    public required bool IsWarmUp { get; init; }
    /// <summary>Load temperature at which nothing changes any more, K.</summary>
    public required double PlateauK { get; init; }
    /// <summary>Load temperature at the end of the time followed, K.</summary>
    public required double EndK { get; init; }
    /// <summary>How fast the load still moved there, K/h.</summary>
    public required double EndRateKPerH { get; init; }
    /// <summary>Temperature at which the product condenses, K; null without product or above its critical pressure.</summary>
    public double? CondensingK { get; init; }
    /// <summary>False for a cooldown whose plateau lies above the temperature where its product condenses.</summary>
    public bool ReachesItsPurpose => IsWarmUp || !HasPlateau || CondensingK is not { } c || PlateauK < c;
    /// <summary>When the load passed temperatures, in the order of time; those never passed have no time.</summary>
    public required IReadOnlyList<TimedTemperature> TimeToK { get; init; }
    /// <summary>What takes the cooling that an endless exchanger would leave, at the end of the time followed; largest first. Empty for a warm-up.</summary>
    public required IReadOnlyList<StopTerm> StoppedBy { get; init; }
    /// <summary>The same in words.</summary>
    public required Spoken Sentence { get; init; }
    /// <summary>Everything against time.</summary>
    public required CooldownSeries Series { get; init; }
    /// <summary>What was noticed on the way.</summary>
    public required IReadOnlyList<CooldownEvent> Events { get; init; }
    /// <summary>What has to be cooled.</summary>
    public required IReadOnlyList<StoredMass> Masses { get; init; }
    /// <summary>What halving each stored mass and the leak, and a better exchanger, would change; empty when not asked for.</summary>
    public required IReadOnlyList<CooldownChange> Changes { get; init; }
    /// <summary>Slopes by the machine's parameters; empty when not asked for.</summary>
    public required IReadOnlyList<CooldownSensitivity> Sensitivities { get; init; }
    /// <summary>Derivatives of the quantities at <see cref="CooldownOptions.SlopeTimesS"/>; null when no slopes were asked for.</summary>
    public CooldownSlopes? Slopes { get; init; }
    /// <summary>Largest difference of stored heat, heat carried off and heat let in over the run, over the larger of the last two.</summary>
    public required double EnergyError { get; init; }
    /// <summary>Largest share by which the amount of a substance in the loop differed from the charge; of a run without tables the largest balance of the loop that did not close.</summary>
    public required double LargestDrift { get; init; }
    /// <summary>Largest heat that the model's own properties see flow otherwise than the run has it, summed over metal, load and insulation, over the cooling, at moments between those the run was brought to them at; null on tables.</summary>
    public double? DirectResidual { get; init; }
    /// <summary>Mole fractions that circulate at the end.</summary>
    public required Fluids.Substances.Composition Circulating { get; init; }
    /// <summary>Steps of the integrator.</summary>
    public required int Steps { get; init; }
    /// <summary>What a person must be told.</summary>
    public required IReadOnlyList<Spoken> Warnings { get; init; }
}

/// <summary>A temperature of the load and when it was passed.</summary>
/// <param name="TemperatureK">K.</param>
/// <param name="TimeS">s; null when it was not passed.</param>
/// <param name="What">What the temperature is; empty for a round one.</param>
public sealed record TimedTemperature(double TemperatureK, double? TimeS, string What);

/// <summary>One of the terms that use up the cooling.</summary>
/// <param name="Id"><c>exchanger</c>, <c>leak</c>, <c>stored-heat</c>, <c>load</c>, <c>mixture</c>.</param>
/// <param name="Name">In words.</param>
/// <param name="Watts">W.</param>
/// <param name="Share">Of the sum, 0..1.</param>
public sealed record StopTerm(string Id, string Name, double Watts, double Share);

/// <summary>Something that happened on the way.</summary>
/// <param name="TimeS">s.</param>
/// <param name="Text">In words.</param>
public sealed record CooldownEvent(double TimeS, Spoken Text);

/// <summary>A mass that has to be cooled.</summary>
/// <param name="Name">In words.</param>
/// <param name="MassKg">kg.</param>
/// <param name="HeatJ">Given up by the end of the time followed, J.</param>
public sealed record StoredMass(string Name, double MassKg, double HeatJ);

/// <summary>What a change of the machine would do.</summary>
/// <param name="Id">Key of what is changed.</param>
/// <param name="What">The change in words.</param>
/// <param name="PlateauChangeK">Of the plateau, K; below 0: colder.</param>
/// <param name="ReferenceK">Temperature whose time is compared, K.</param>
/// <param name="TimeBeforeS">Time to it now, s; null when it is never reached.</param>
/// <param name="TimeAfterS">Time to it then, s; null when it is never reached.</param>
public sealed record CooldownChange(string Id, string What, double PlateauChangeK, double ReferenceK, double? TimeBeforeS, double? TimeAfterS);

/// <summary>Slopes of a cooldown by one parameter.</summary>
/// <param name="Id">Key.</param>
/// <param name="Name">In words.</param>
/// <param name="EndKPerUnit">Change of the load temperature at the end for a doubling at this slope, K.</param>
/// <param name="TimeSPerUnit">The same of the time to the reference temperature, s; null when it is not reached.</param>
public sealed record CooldownSensitivity(string Id, string Name, double EndKPerUnit, double? TimeSPerUnit);

/// <summary>Curves of a cooldown; all lists are equally long.</summary>
public sealed record CooldownSeries
{
    /// <summary>s, rising.</summary>
    public required IReadOnlyList<double> TimeS { get; init; }
    /// <summary>Load, K.</summary>
    public required IReadOnlyList<double> TemperatureK { get; init; }
    /// <summary>Before the throttle, K; the load's while the compressor stands still.</summary>
    public required IReadOnlyList<double> ThrottleInletK { get; init; }
    /// <summary>Behind the precooler, K; the room's without one and while the compressor stands still.</summary>
    public required IReadOnlyList<double> PrecooledK { get; init; }
    /// <summary>High side, Pa absolute.</summary>
    public required IReadOnlyList<double> HighPressurePa { get; init; }
    /// <summary>Suction, Pa absolute.</summary>
    public required IReadOnlyList<double> LowPressurePa { get; init; }
    /// <summary>Through the throttle, mol/s.</summary>
    public required IReadOnlyList<double> MolarFlow { get; init; }
    /// <summary>Carried off by the streams, W.</summary>
    public required IReadOnlyList<double> CoolingW { get; init; }
    /// <summary>Taken out of metal, load and insulation together, W.</summary>
    public required IReadOnlyList<double> StoredHeatW { get; init; }
    /// <summary>Of it out of the recuperator's metal, W.</summary>
    public required IReadOnlyList<double> RecuperatorW { get; init; }
    /// <summary>Of it out of what is at the load, W.</summary>
    public required IReadOnlyList<double> LoadMassW { get; init; }
    /// <summary>Of it out of the insulation, W.</summary>
    public required IReadOnlyList<double> InsulationW { get; init; }
    /// <summary>From the room into insulation, tubes, wires and recuperator, W.</summary>
    public required IReadOnlyList<double> LeakW { get; init; }
    /// <summary>Put into the load on purpose, W.</summary>
    public required IReadOnlyList<double> LoadW { get; init; }
    /// <summary>Electrical, W.</summary>
    public required IReadOnlyList<double> PowerW { get; init; }
}
