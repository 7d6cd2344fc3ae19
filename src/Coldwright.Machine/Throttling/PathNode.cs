using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;
using Coldwright.Fluids.Transport;

namespace Coldwright.Machine.Throttling;

/// <summary>A flashed place of the expansion: all phases at one pressure and enthalpy, mixed evenly.</summary>
/// <param name="PressurePa">Pa.</param>
/// <param name="TemperatureK">K.</param>
/// <param name="Volume">m3/kg.</param>
/// <param name="VolumeSlope">Estimate of the volume's growth with enthalpy at constant pressure, m3/J.</param>
/// <param name="Quality">Mass of vapour over mass.</param>
/// <param name="ViscosityPaS">Of the homogeneous flow, Pa s.</param>
/// <param name="Phases">Phases in words.</param>
/// <param name="Kink">True where a phase appears or vanishes.</param>
internal readonly record struct PathNode(double PressurePa, double TemperatureK, double Volume, double VolumeSlope, double Quality, double ViscosityPaS, string Phases, bool Kink)
{
    /// <summary>The phases themselves, to go on from; null where none were kept.</summary>
    public FlashMark? Mark { get; init; }

    /// <summary>From a state; the transport model fills in the viscosity.</summary>
    public static PathNode Of(FluidState state, TransportModel transport, TwoPhaseViscosity rule)
    {
        double volume = 1 / (state.MolarDensity * state.MolarMass), quality = 0, sum = 0;
        foreach (var phase in state.Phases)
        {
            double[] x = [.. phase.Composition];
            double mass = phase.Fraction * phase.MolarMass / state.MolarMass;
            double mu = transport.Viscosity(state.TemperatureK, phase.MolarDensity, x).Value;
            if (phase.Kind == PhaseKind.Vapour) quality += mass;
            sum += rule switch
            {
                TwoPhaseViscosity.McAdams => mass / mu,
                TwoPhaseViscosity.Cicchitti => mass * mu,
                _ => mass / (phase.MolarDensity * phase.MolarMass) / volume * mu,
            };
        }
        if (state.Phases.Count == 1 && quality > 0) quality = 1;
        double viscosity = rule == TwoPhaseViscosity.McAdams ? 1 / sum : sum;
        return new PathNode(state.PressurePa, state.TemperatureK, volume, Slope(state, volume), quality, viscosity, state.PhaseNames, false);
    }

    // Only a start: the second table replaces it by what two flashes differ by.
    private static double Slope(FluidState state, double volume)
    {
        if (state.Phases.Count == 1 || state.Phases[0].Kind != PhaseKind.Vapour)
            return volume * state.MolarMass / (state.Phases.Sum(p => p.Fraction * p.MolarHeatCapacity) * state.TemperatureK) * (state.Phases[0].Kind == PhaseKind.Vapour ? 1 : 0.5);
        PhaseState vapour = state.Phases[0], liquid = state.Phases[1];
        double volumes = 1 / (vapour.MolarDensity * vapour.MolarMass) - 1 / (liquid.MolarDensity * liquid.MolarMass);
        double enthalpies = vapour.MolarEnthalpy / vapour.MolarMass - liquid.MolarEnthalpy / liquid.MolarMass;
        return enthalpies > 0 ? volumes / enthalpies : 0;
    }
}
