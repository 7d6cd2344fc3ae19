using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;
using Coldwright.Fluids.Transport;
using Coldwright.Numerics;

namespace Coldwright.Machine.Throttling;

/// <summary>
/// Flow through a valve of given flow coefficient: frictionless flow from rest to the narrowest section of the jet, whose area and
/// pressure follow from the maker's coefficients so that liquid and choked gas come out as in IEC 60534-2-1; flashing in the jet may
/// lag behind equilibrium. Inlet liquid, two liquids, two phases or gas. Theory: docs/theory/throttle.md. Not thread-safe.
/// </summary>
/// <param name="flash">Flash of the fluid's model.</param>
/// <param name="transport">Transport properties of the same model.</param>
public sealed class ValveModel(Flash flash, TransportModel transport)
{
    private const int NodesPerFold = 9, CellsPerNode = 40;
    private const double FirstEnd = 0.35, LowestEnd = 0.005, SinglePhaseUncertainty = 0.05, FlashingUncertainty = 0.15;
    private static readonly CapillaryResolution Resolution = new(NodesPerFold, CellsPerNode);

    /// <summary>The flow at a given pressure behind the valve.</summary>
    /// <param name="valve">The valve.</param>
    /// <param name="inlet">What arrives.</param>
    /// <param name="backPressurePa">Pressure behind the valve, Pa, above 0 and below that of the inlet.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="ArgumentException">An input outside its range.</exception>
    /// <exception cref="SolveException">No answer; the report says why.</exception>
    public ValveResult Flow(ControlValve valve, ThrottleInlet inlet, double backPressurePa, CancellationToken cancel = default)
    {
        valve.Check();
        inlet.Check(flash.Model.Count);
        ThrottleGuard.Positive(backPressurePa, nameof(backPressurePa), "Pa");
        ThrottleGuard.Within(backPressurePa, 0, inlet.PressurePa * (1 - 1e-6), nameof(backPressurePa), "Pa");
        double[] z = [.. inlet.Composition];
        var state = flash.PressureEnthalpy(inlet.PressurePa, inlet.MolarEnthalpy, z, inlet.TemperatureK);
        double vapourShare = VapourVolumeShare(state), gamma = HeatCapacityRatio(state);
        double throat = (1 - vapourShare) * valve.PressureRecovery + vapourShare * ControlValveEquations.GasThroat(gamma, valve.GasChokingRatio);
        double throatPressure = inlet.PressurePa - (inlet.PressurePa - backPressurePa) / (throat * throat);

        var table = new PathTabulator(flash, transport, inlet, TwoPhaseViscosity.McAdams, cancel);
        double Late(ExpansionGrid along) => valve.LateFlashing * (1 - vapourShare)
            * (1 - ControlValveEquations.CriticalPressureRatio(along.Pressure[Math.Max(along.FlashIndex, 0)], CriticalPressure(inlet.Composition)));
        var (grid, equilibrium) = Expand(table, inlet.PressurePa, throatPressure, Late);
        var nozzle = new NozzleFlow(grid.Delayed(Late(grid) * grid.Pressure[Math.Max(grid.FlashIndex, 0)], vapourShare), 0);
        bool choked = throatPressure < nozzle.GreatestFluxPressurePa;
        double pressure = Math.Max(throatPressure, nozzle.GreatestFluxPressurePa), area = valve.EffectiveAreaM2 * throat;
        double mass = area * nozzle.FluxAt(pressure), level = area * equilibrium.FluxAt(throatPressure), quality = grid.QualityAt(pressure);
        bool flashing = quality > 0 && vapourShare < 1;
        return new ValveResult
        {
            MassFlowKgPerS = mass,
            MolarFlow = mass / table.MolarMass,
            Choked = choked,
            ThroatPressurePa = pressure,
            ThroatAreaM2 = area,
            ThroatQuality = quality,
            StandardMassFlowKgPerS = Standard(valve, state, grid, inlet.PressurePa, backPressurePa, vapourShare, gamma),
            EquilibriumMassFlowKgPerS = level,
            RelativeUncertainty = flashing ? FlashingUncertainty : SinglePhaseUncertainty,
            Warnings = [.. Warnings(table, flashing, mass, level)],
        };
    }

    /// <summary>The flow coefficient (m3/h at 1 bar, at the valve's present opening) that passes a given flow.</summary>
    /// <param name="valve">Its coefficients; its own flow coefficient does not matter.</param>
    /// <param name="inlet">What arrives.</param>
    /// <param name="backPressurePa">Pressure behind the valve, Pa.</param>
    /// <param name="massFlowKgPerS">kg/s, above 0.</param>
    /// <param name="cancel">Cancels the work.</param>
    public double RequiredKv(ControlValve valve, ThrottleInlet inlet, double backPressurePa, double massFlowKgPerS, CancellationToken cancel = default) =>
        valve.Kv * ThrottleGuard.Positive(massFlowKgPerS, nameof(massFlowKgPerS), "kg/s") / Flow(valve, inlet, backPressurePa, cancel).MassFlowKgPerS;

    // Two tables, the second at the kinetic energy found with the first; downwards until the jet chokes or the throat is reached.
    private static (ExpansionGrid Grid, NozzleFlow Nozzle) Expand(PathTabulator table, double inletPa, double throatPa, Func<ExpansionGrid, double> late)
    {
        for (double end = FirstEnd; ; end *= FirstEnd)
        {
            double low = Math.Max(Math.Max(throatPa, inletPa * end), inletPa * LowestEnd);
            var atRest = table.Tabulate(low, Resolution.Intervals(inletPa, low), _ => 0);
            var grid = ExpansionGrid.Build(atRest, _ => 0, null, CellsPerNode);
            var nozzle = new NozzleFlow(grid, 0);
            bool last = low <= throatPa || low <= inletPa * LowestEnd || table.EndedEarly is not null;
            if (!(nozzle.Critical && nozzle.GreatestFluxPressurePa * (1 - 2 * late(grid)) > 1.1 * low) && !last) continue;
            // late flashing chokes lower than equilibrium does
            double floor = Math.Max(low, throatPa);
            var nodes = table.Tabulate(floor, Resolution.Intervals(inletPa, floor), nozzle.KineticAt, atRest);
            grid = ExpansionGrid.Build(nodes, nozzle.KineticAt, atRest, CellsPerNode);
            return (grid, new NozzleFlow(grid, 0));
        }
    }

    private double? Standard(ControlValve valve, FluidState inlet, ExpansionGrid grid, double p1, double p2, double vapourShare, double gamma)
    {
        double density = inlet.MolarDensity * inlet.MolarMass;
        if (vapourShare == 1) return ControlValveEquations.Gas(valve.EffectiveAreaM2, density, p1, p2, gamma, valve.GasChokingRatio);
        if (vapourShare > 0) return null;
        double bubble = grid.FlashIndex < 0 ? 0 : grid.Pressure[grid.FlashIndex];
        return ControlValveEquations.Liquid(valve.EffectiveAreaM2, density, p1, p2, bubble, CriticalPressure(inlet.Composition), valve.PressureRecovery);
    }

    private double CriticalPressure(IReadOnlyList<double> z) => flash.Model.Substances.Zip(z, (s, x) => x * s.CriticalPressurePa).Sum();

    private static double VapourVolumeShare(FluidState state)
    {
        double vapour = state.Phases.Where(x => x.Kind == PhaseKind.Vapour).Sum(x => x.Fraction / x.MolarDensity);
        return state.Phases.All(x => x.Kind == PhaseKind.Vapour) ? 1 : vapour * state.MolarDensity;
    }

    private static double HeatCapacityRatio(FluidState state) =>
        state.Phases[0] is { Kind: PhaseKind.Vapour } vapour ? Math.Clamp(vapour.MolarHeatCapacity / vapour.MolarIsochoricHeatCapacity, 1.05, 1.7) : 1.3;

    private IEnumerable<string> Warnings(PathTabulator table, bool flashing, double mass, double level)
    {
        foreach (string warning in flash.Model.Warnings) yield return warning;
        if (table.EndedEarly is { } ended) yield return $"the fluid's properties end within the jet: {ended}";
        if (flashing) yield return FormattableString.Invariant($"the flow flashes in the valve: {level * 3600:0.####} kg/h with equilibrium in the jet, {mass * 3600:0.####} kg/h with late flashing");
    }
}
