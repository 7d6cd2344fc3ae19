using Coldwright.Numerics;

namespace Coldwright.Machine.Recuperation;

/// <summary>Result of a distributed counterflow exchanger. Immutable.</summary>
public sealed record RecuperatorResult
{
    /// <summary>Heat that the warm stream gives up to the wall, W.</summary>
    public required double DutyW { get; init; }
    /// <summary>Largest duty for these inlets and flows: where the streams would touch, W.</summary>
    public double LargestDutyW => Largest.Value;
    /// <summary>Duty over largest duty.</summary>
    public double Effectiveness => DutyW / LargestDutyW;
    /// <summary>Sum of the local overall conductances, W/K.</summary>
    public required double ConductanceWPerK { get; init; }
    /// <summary>Conductance over (largest duty over difference of the inlet temperatures): for constant properties UA/C_min.</summary>
    public double TransferUnits => LargestDutyW != 0 ? ConductanceWPerK * (Hot.InletK - Cold.InletK) / LargestDutyW : double.PositiveInfinity;
    /// <summary>The warm stream.</summary>
    public required RecuperatorStream Hot { get; init; }
    /// <summary>The cold stream.</summary>
    public required RecuperatorStream Cold { get; init; }
    /// <summary>Smallest temperature difference: middles of all cells and both ends.</summary>
    public required RecuperatorPinch Pinch { get; init; }
    /// <summary>Heat from the room, W.</summary>
    public required double LeakW { get; init; }
    /// <summary>Largest heat carried by the metal along the exchanger, W.</summary>
    public required double LargestAxialConductionW { get; init; }
    /// <summary>Warm stream's loss plus leak less cold stream's gain, relative to the duty.</summary>
    public required double EnergyError { get; init; }
    /// <summary>What the grid still lacks to the duty by Richardson's estimate (to be added), W; null when not asked for.</summary>
    public double? GridErrorW { get; init; }
    /// <summary>One standard deviation from the correlations; null when not asked for.</summary>
    public RecuperatorBand? Band { get; init; }
    /// <summary>Warm end first.</summary>
    public required IReadOnlyList<RecuperatorStation> Profile { get; init; }
    /// <summary>What a person must be told.</summary>
    public required IReadOnlyList<string> Warnings { get; init; }
    /// <summary>What the solver did.</summary>
    public required SolveReport Report { get; init; }

    /// <summary>Where a later solve of a similar case may start; the solver always fills it in.</summary>
    internal RecuperatorState? State { get; init; }

    // hundreds of solves on the way to an answer are never asked for it
    internal Lazy<double> Largest { get; init; } = new(double.NaN);
}
