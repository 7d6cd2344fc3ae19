using Coldwright.Fluids.States;

namespace Coldwright.Fluids.PhaseEquilibrium;

/// <summary>Turns solver buffers into immutable states.</summary>
internal static class StateBuilder
{
    public static FluidState Build(EquilibriumSolver solver)
    {
        var phases = solver.Phases;
        var states = new PhaseState[phases.Length];
        for (int j = 0; j < phases.Length; j++) states[j] = Phase(solver, phases[j], PhaseNaming.KindOf(phases, j), phases[j].Fraction);
        return new FluidState
        {
            TemperatureK = solver.Temperature,
            PressurePa = solver.Pressure,
            Composition = solver.Z.ToArray(),
            Phases = states,
            MolarMass = Mass(solver, solver.Z),
        };
    }

    public static PhaseState Phase(EquilibriumSolver solver, PhaseBuffer phase, PhaseKind kind, double fraction)
    {
        var e = solver.Evaluation;
        e.SetIsotherm(solver.Temperature, phase.X);
        var (h, s) = PhaseProperties.Caloric(solver.Model, e, phase.Density);
        var (cv, cp, w) = PhaseProperties.Second(solver.Model, e, phase.Density);
        return new PhaseState
        {
            Kind = kind,
            Fraction = fraction,
            Composition = phase.X.ToArray(),
            MolarDensity = phase.Density,
            MolarEnthalpy = h,
            MolarEntropy = s,
            MolarHeatCapacity = cp,
            MolarIsochoricHeatCapacity = cv,
            SpeedOfSound = w,
            MolarMass = Mass(solver, phase.X),
            LnFugacityCoefficients = phase.LnPhi.ToArray(),
        };
    }

    private static double Mass(EquilibriumSolver solver, ReadOnlySpan<double> x)
    {
        double mass = 0;
        for (int i = 0; i < x.Length; i++) mass += x[i] * solver.Model.Substances[i].MolarMass;
        return mass;
    }
}
