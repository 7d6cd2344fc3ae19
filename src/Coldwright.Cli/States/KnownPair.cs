using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;

namespace Coldwright.Cli.States;

/// <summary>The two known values of a state, SI; exactly two are set, in a pair that can be solved.</summary>
internal sealed record KnownPair
{
    /// <summary>K.</summary>
    public double? TemperatureK { get; init; }
    /// <summary>Pa absolute.</summary>
    public double? PressurePa { get; init; }
    /// <summary>J/mol.</summary>
    public double? MolarEnthalpy { get; init; }
    /// <summary>J/(mol K).</summary>
    public double? MolarEntropy { get; init; }
    /// <summary>mol/mol.</summary>
    public double? VapourFraction { get; init; }

    /// <summary>How many are given.</summary>
    public int Count => new[] { TemperatureK, PressurePa, MolarEnthalpy, MolarEntropy, VapourFraction }.Count(v => v is not null);

    /// <summary>True when a state can be found from the two: pressure with anything, or temperature with the vapour fraction.</summary>
    public bool IsSolvable => Count == 2 && (PressurePa is not null || (TemperatureK is not null && VapourFraction is not null));

    /// <summary>The pairs that can be solved, in words.</summary>
    public const string Pairs = "pressure with temperature, enthalpy, entropy or vapour fraction; or temperature with vapour fraction";

    /// <summary>The state.</summary>
    /// <exception cref="Numerics.SolveException">No answer.</exception>
    public FluidState Solve(Flash flash, ReadOnlySpan<double> z) => (TemperatureK, PressurePa, MolarEnthalpy, MolarEntropy, VapourFraction) switch
    {
        ({ } t, { } p, _, _, _) => flash.TemperaturePressure(t, p, z),
        (_, { } p, { } h, _, _) => flash.PressureEnthalpy(p, h, z),
        (_, { } p, _, { } s, _) => flash.PressureEntropy(p, s, z),
        (_, { } p, _, _, { } q) => flash.PressureVapourFraction(p, q, z),
        ({ } t, _, _, _, { } q) => flash.TemperatureVapourFraction(t, q, z),
        _ => throw new InvalidOperationException($"a state is found from {Pairs}; {Count} values are given"),
    };
}
