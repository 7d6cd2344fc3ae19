using Coldwright.Fluids.States;
using Coldwright.Fluids.Transport;

namespace Coldwright.Report.States;

/// <summary>A state by one model or by several, to be shown.</summary>
public sealed record StateReport
{
    /// <summary>Substance names, in the order of every composition.</summary>
    public required IReadOnlyList<string> Names { get; init; }
    /// <summary>The states, the default model first; at least one.</summary>
    public required IReadOnlyList<ModelState> States { get; init; }
    /// <summary>Barometric pressure for gauge readings, Pa absolute; 101,325 when no room is known.</summary>
    public double RoomPressurePa { get; init; } = 101325;
    /// <summary>Units a person reads first.</summary>
    public UnitSystem Units { get; init; } = UnitSystem.Si;
}

/// <summary>One model's answer.</summary>
/// <param name="Model">reference or cubic.</param>
/// <param name="State">The state.</param>
/// <param name="Warnings">What a person must be told.</param>
public sealed record ModelState(string Model, FluidState State, IReadOnlyList<string> Warnings)
{
    /// <summary>Surface tension between liquid and vapour, N/m; null when the state is not one liquid and its vapour.</summary>
    public double? SurfaceTensionNPerM { get; init; }
    /// <summary>Where viscosity, conductivity and surface tension come from.</summary>
    public IReadOnlyList<TransportMethod> TransportMethods { get; init; } = [];
}
