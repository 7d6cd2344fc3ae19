using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;

namespace Coldwright.Machine.Throttling;

/// <summary>Nodes at a pressure and an enthalpy, each search started from the one before.</summary>
internal sealed class PathNodeSolver(Flash flash, TransportModel transport, ThrottleInlet inlet, TwoPhaseViscosity rule)
{
    private readonly double[] _z = [.. inlet.Composition];

    /// <summary>kg/mol.</summary>
    public double MolarMass { get; } = flash.Model.Substances.Zip(inlet.Composition, (s, x) => s.MolarMass * x).Sum();

    /// <summary>The node at a pressure (Pa) and kinetic energy (J/kg) by a certified flash, the search started at a temperature (K).</summary>
    public PathNode At(double pressurePa, double kinetic, double guessK) => PathNode.Of(flash.PressureEnthalpy(pressurePa, Target(kinetic), _z, guessK), transport, rule);

    /// <summary>
    /// The node where phases are expected that certified flashes found around it: those of the node before, when they are the same, moved there
    /// without a certificate; otherwise a certified flash.
    /// </summary>
    public PathNode At(double pressurePa, double kinetic, double guessK, string expected) =>
        flash.PhaseNames() == expected && flash.TryFollowPressureEnthalpy(pressurePa, Target(kinetic), _z, guessK) && flash.PhaseNames() == expected
            ? PathNode.Of(flash.State(), transport, rule)
            : At(pressurePa, kinetic, guessK);

    private double Target(double kinetic) => inlet.MolarEnthalpy - kinetic * MolarMass;
}
