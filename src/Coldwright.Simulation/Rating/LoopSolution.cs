using Coldwright.Fluids.States;
using Coldwright.Machine.Compression;
using Coldwright.Machine.Recuperation;

namespace Coldwright.Simulation.Rating;

/// <summary>The loop at one load temperature: every stream state and every heat, before anything is made of it.</summary>
internal sealed record LoopSolution
{
    public required double LoadTemperatureK { get; init; }
    public required CompressorResult Compressor { get; init; }
    public required CounterflowResult Exchanger { get; init; }
    public CounterflowResult? Warm { get; init; }
    /// <summary>Molar enthalpies, J/mol, in flow order.</summary>
    public required double AfterAftercooler { get; init; }
    public required double BeforePrecooler { get; init; }
    public required double RecuperatorInlet { get; init; }
    public required double ThrottleInlet { get; init; }
    public required double CoilOutlet { get; init; }
    public required double RecuperatorLowOutlet { get; init; }
    /// <summary>After the heat of the tubes that end at the recuperator's warm end.</summary>
    public required double ReturnGas { get; init; }
    public required double SuctionEnthalpy { get; init; }
    public required double RecuperatorInletK { get; init; }
    public required double WarmEndLeakW { get; init; }
    public required double ColdEndLeakW { get; init; }
    public required IReadOnlyDictionary<string, double> LeakPaths { get; init; }
    public required double GrossCoolingW { get; init; }
    public required double PrecoolingOfMixtureW { get; init; }

    public double NetCoolingW => GrossCoolingW - ColdEndLeakW;
    public double Flow => Compressor.MolarFlow;
}
