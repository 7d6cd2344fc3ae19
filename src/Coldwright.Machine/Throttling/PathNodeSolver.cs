using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;
using Coldwright.Fluids.Transport;

namespace Coldwright.Machine.Throttling;

/// <summary>Nodes at a pressure and an enthalpy, each search started from the one before.</summary>
internal sealed class PathNodeSolver(Flash flash, TransportModel transport, ThrottleInlet inlet, TwoPhaseViscosity rule)
{
    // phases of the last answer are taken along to a pressure at most this much off, as a factor
    private const double MostApart = 1.3;

    private readonly double[] _z = [.. inlet.Composition];

    /// <summary>kg/mol.</summary>
    public double MolarMass { get; } = flash.Model.Substances.Zip(inlet.Composition, (s, x) => s.MolarMass * x).Sum();

    /// <summary>The node at a pressure (Pa) and kinetic energy (J/kg) by a certified flash, the search started at a temperature (K).</summary>
    public PathNode At(double pressurePa, double kinetic, double guessK) => Kept(flash.PressureEnthalpy(pressurePa, Target(kinetic), _z, guessK));

    /// <summary>
    /// The node where phases are expected that were certified around it: those of the node before, when they are the same, or else the marked ones, moved
    /// there without a certificate. Null when they do not settle there or one is lost.
    /// </summary>
    public PathNode? TryAt(double pressurePa, double kinetic, double guessK, string expected, FlashMark? mark)
    {
        bool near = flash.PhaseCount > 0 && flash.PressurePa < MostApart * pressurePa && pressurePa < MostApart * flash.PressurePa;
        if (near && Followed(pressurePa, kinetic, guessK, expected) is { } node) return node;
        if (mark is null) return null;
        flash.Return(mark);
        return (mark.IsOf(_z) || flash.TryFollow(mark.TemperatureK, mark.PressurePa, _z)) ? Followed(pressurePa, kinetic, guessK, expected) : null;
    }

    private PathNode? Followed(double pressurePa, double kinetic, double guessK, string expected) =>
        flash.PhaseNames() == expected && flash.TryFollowPressureEnthalpy(pressurePa, Target(kinetic), _z, guessK) && flash.PhaseNames() == expected ? Kept(flash.State()) : null;

    private PathNode Kept(FluidState state) => PathNode.Of(state, transport, rule) with { Mark = flash.Mark() };

    private double Target(double kinetic) => inlet.MolarEnthalpy - kinetic * MolarMass;
}
