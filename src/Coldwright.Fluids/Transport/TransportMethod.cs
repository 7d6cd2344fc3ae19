using System.Globalization;
using Coldwright.Fluids.States;

namespace Coldwright.Fluids.Transport;

/// <summary>Where a transport property comes from.</summary>
/// <param name="Name">In a few words.</param>
/// <param name="Source">The paper.</param>
/// <param name="UncertaintyPercent">Its authors' statement, per cent; null where we have not read one.</param>
/// <param name="UncertaintyNote">What that figure is and does not cover; empty when there is nothing to add.</param>
public sealed record TransportMethod(string Name, string Source, double? UncertaintyPercent, string UncertaintyNote = "")
{
    /// <summary>Name, source and stated uncertainty in one sentence without its full stop.</summary>
    public override string ToString() =>
        $"{Name}: {Source}; {(UncertaintyPercent is { } u ? string.Create(CultureInfo.InvariantCulture, $"{u:0.#} %") : "no uncertainty known to us")}{(UncertaintyNote.Length > 0 ? $" ({UncertaintyNote})" : "")}";
}

/// <summary>One transport property.</summary>
/// <param name="Value">Pa s, W/(m K) or N/m.</param>
/// <param name="Method">Where it comes from.</param>
/// <param name="Warning">What a person must be told (outside the range, extrapolated); null when there is nothing.</param>
public readonly record struct TransportValue(double Value, TransportMethod Method, string? Warning);

/// <summary>Viscosity (Pa s) and thermal conductivity (W/(m K)) of one phase.</summary>
/// <param name="Viscosity">Pa s.</param>
/// <param name="Conductivity">W/(m K).</param>
public readonly record struct TransportProperties(TransportValue Viscosity, TransportValue Conductivity);

/// <summary>A state with its transport properties.</summary>
/// <param name="State">The state; viscosity and conductivity of each phase are filled in.</param>
/// <param name="SurfaceTensionNPerM">N/m, when the state is one liquid and its vapour; else null.</param>
/// <param name="Methods">Where the values come from; each once.</param>
/// <param name="Warnings">What a person must be told; each once.</param>
public sealed record TransportedState(FluidState State, double? SurfaceTensionNPerM, IReadOnlyList<TransportMethod> Methods, IReadOnlyList<string> Warnings);
