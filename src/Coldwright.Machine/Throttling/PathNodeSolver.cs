using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;

namespace Coldwright.Machine.Throttling;

/// <summary>Nodes at a pressure and an enthalpy: one certified flash each, which starts from the one before.</summary>
internal sealed class PathNodeSolver(Flash flash, TransportModel transport, ThrottleInlet inlet, TwoPhaseViscosity rule)
{
    private readonly double[] _z = [.. inlet.Composition];

    /// <summary>kg/mol.</summary>
    public double MolarMass { get; } = flash.Model.Substances.Zip(inlet.Composition, (s, x) => s.MolarMass * x).Sum();

    /// <summary>The node at a pressure (Pa) and kinetic energy (J/kg), the search started at a temperature (K).</summary>
    public PathNode At(double pressurePa, double kinetic, double guessK)
    {
        double target = inlet.MolarEnthalpy - kinetic * MolarMass;
        return PathNode.Of(flash.PressureEnthalpy(pressurePa, target, _z, guessK), transport, rule);
    }
}
