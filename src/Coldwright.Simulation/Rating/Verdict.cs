using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Quantities;
using static Coldwright.Quantities.SpokenAmount;

namespace Coldwright.Simulation.Rating;

/// <summary>Says what stops the cooler, or, when it works, what takes most: by asking what an endless exchanger or no leak would change.</summary>
internal static class Verdict
{
    public static Limitation Find(MachineDescription machine, LoopLayout layout, LoopSolver loop, ProductSolver? product, double? noLoad, OperatingPoint point, double targetK)
    {
        bool works = targetK == point.Solution.LoadTemperatureK;
        var s = works ? point.Solution : loop.Solve(targetK, exact: false);
        var at = Temperature(targetK);
        var coldest = noLoad is { } t ? Spoken.Of($"it stops at {Temperature(t)}") : "it does not cool at all below the precooled gas";
        string phases = PinchPhases(loop, s);
        double pinchK = s.Exchanger.PinchHighK, leak = s.ColdEndLeakW, net = s.NetCoolingW;
        if (net > 0 && (product is null || point.Liquid!.CollectedLPerH > 0))
        {
            var largest = point.Exergy.LossesW[0];
            var what = product is null
                ? Spoken.Of($"It cools: {net:0.0} W are left at {at}")
                : Spoken.Of($"It works: {net:0.0} W are left at {at} to liquefy {product.Fluid.Name}");
            return new Limitation(LimitationKind.Works,
                what + Spoken.Of($". The streams come closest at {Temperature(pinchK)} ({Difference(s.Exchanger.PinchK)} apart, {phases}); the largest loss is the {largest.Name}, {largest.Watts / point.Exergy.TotalW:0 %} of the input."),
                pinchK, phases);
        }
        var need = product is null ? Spoken.Of($"No cooling is left at {at}")
            : Spoken.Of($"No {product.Fluid.Name}: at {Pressure(layout.Feed!.PressurePa)} it condenses at {at}");
        if (product is { CondensingK: null }) need = Spoken.Of($"No {product.Fluid.Name}: at {Pressure(layout.Feed!.PressurePa)}, above its critical pressure of {Pressure(product.Fluid.CriticalPressurePa)}, nothing condenses and no load temperature leaves cooling");
        // the same loop with an endless exchanger
        var endless = loop.Solve(targetK, exact: false, conductance: double.PositiveInfinity);
        var (_, leastK) = loop.Exchanger.LeastDifference(targetK - layout.Coil.DifferenceK, s.RecuperatorInletK);
        if (endless.GrossCoolingW > leak)
            return new Limitation(LimitationKind.Pinch, Spoken.Of(
                $"{need}, and {coldest}. The recuperator stops it: its streams come to {Difference(s.Exchanger.PinchK)} at {Temperature(pinchK)} ({phases}) and leave {s.GrossCoolingW:0.0} W at the coil against a leak of {leak:0.0} W; an endless exchanger would leave {endless.GrossCoolingW:0.0} W. A longer or better exchanger is the cure."), pinchK, phases);
        if (product is { CondensingK: { } tSat } && HigherPressure(machine, layout, loop, product, tSat) is { } better)
            return new Limitation(LimitationKind.Pressure, Spoken.Of(
                $"{need}, and {coldest}. The feed's pressure stops it: even an endless exchanger leaves only {endless.GrossCoolingW:0.0} W there against a leak of {leak:0.0} W, but at {Pressure(better.PressurePa, "0")} it would condense at {Temperature(better.CondensingK)}, where {better.NetW:0.0} W are left."));
        double warmDifference = loop.Exchanger.IsothermalDifference(s.RecuperatorInletK) * s.Flow;
        if (endless.GrossCoolingW > 0.15 * warmDifference)
            return new Limitation(LimitationKind.Leak, Spoken.Of(
                $"{need}, and {coldest}. The heat leak stops it: {leak:0.0} W come in, {Largest(s)}, more than the {endless.GrossCoolingW:0.0} W that even an endless exchanger could leave there. Better insulation is the cure."));
        return new Limitation(LimitationKind.Capacity, Spoken.Of(
            $"{need}, and {coldest}. The mixture stops it: its isothermal enthalpy difference at these pressures falls to {endless.GrossCoolingW / s.Flow:0} J/mol near {Temperature(leastK)}, so that even an endless exchanger leaves {endless.GrossCoolingW:0.0} W. Another mixture or other pressures are the cure."));
    }

    private static Spoken Largest(LoopSolution s)
    {
        var largest = s.LeakPaths.MaxBy(p => p.Value);
        return Spoken.Of($"most of it ({largest.Value:0.0} W) through the {largest.Key}");
    }

    private static string PinchPhases(LoopSolver loop, LoopSolution s)
    {
        string high = loop.High.PhasesAt(loop.High.Enthalpy(s.Exchanger.PinchHighK)), low = loop.Low.PhasesAt(loop.Low.Enthalpy(s.Exchanger.PinchLowK));
        return $"high side {PhaseWords.Of(high)}, low side {PhaseWords.Of(low)}";
    }

    // the lowest higher feed pressure, within the vessel's rating if one is known, at which something would condense
    private static (double PressurePa, double CondensingK, double NetW)? HigherPressure(MachineDescription machine, LoopLayout layout, LoopSolver loop, ProductSolver product, double condensingK)
    {
        double top = Math.Min(0.95 * product.Fluid.CriticalPressurePa, layout.Vessel?.MaximumPressurePa ?? double.PositiveInfinity);
        for (double p = layout.Feed!.PressurePa * 1.1; p <= top; p *= 1.1)
        {
            if (product.Fluid.Saturation(p) is not { } sat || sat.TemperatureK > loop.NominalInletK - 2 || sat.TemperatureK < condensingK) continue;
            double net = loop.Solve(sat.TemperatureK, exact: false).NetCoolingW;
            if (net > 0) return (p, sat.TemperatureK, net);
        }
        return null;
    }
}
