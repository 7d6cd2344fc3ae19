using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;
using Coldwright.Machine.Description;
using Coldwright.Quantities;
using Coldwright.Simulation.Rating;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>Everything at a closed loop's operating temperature: states, powers, product, balances, exergy, limits.</summary>
internal sealed record ClosedPoint
{
    public required LoopPass Pass { get; init; }
    public required ClosedStates States { get; init; }
    public required Rating.LoopState Loop { get; init; }
    public required PowerSplit Power { get; init; }
    public LiquidResult? Liquid { get; init; }
    public required ExergyAccount Exergy { get; init; }
    public required BalanceErrors Balance { get; init; }
    public required IReadOnlyList<LimitCheck> Limits { get; init; }
    public required IReadOnlyList<Spoken> Warnings { get; init; }
}
