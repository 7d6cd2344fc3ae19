using Coldwright.Quantities;
using Coldwright.Simulation.Rating;
using static Coldwright.Quantities.SpokenAmount;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>Says what stops a closed loop, or, when it works, what takes most.</summary>
internal static class ClosedVerdict
{
    private const int Stations = 60;
    private const double SmallShare = 0.15;

    /// <param name="h">Hardware.</param>
    /// <param name="point">The operating point.</param>
    /// <param name="target">Pass at the temperature that is wanted; the operating point's own when it works.</param>
    /// <param name="noLoadK">K.</param>
    /// <param name="product">Product; null without.</param>
    public static Limitation Find(Hardware h, ClosedPoint point, LoopPass target, double? noLoadK, ProductSolver? product)
    {
        var at = Temperature(target.LoadK);
        var coldest = noLoadK is { } t ? Spoken.Of($"it stops at {Temperature(t)}") : "it does not cool at all below the precooled gas";
        var pinch = target.Recuperator.Pinch;
        string phases = Phases(target);
        double net = target.NetCoolingW, gross = target.GrossCoolingW, leak = target.ColdEndLeakW;
        if (net > 0 && (product is null || point.Liquid!.CollectedLPerH > 0))
        {
            var largest = point.Exergy.LossesW[0];
            var what = product is null ? Spoken.Of($"It cools: {net:0.0} W are left at {at}") : Spoken.Of($"It works: {net:0.0} W are left at {at} to liquefy {product.Fluid.Name}");
            return new Limitation(LimitationKind.Works,
                what + Spoken.Of($". The streams come closest at {Temperature(pinch.HotK)} ({Difference(pinch.DifferenceK)} apart, {phases}); the largest loss is the {largest.Name}, {largest.Watts / point.Exergy.TotalW:0 %} of the input."), pinch.HotK, phases);
        }
        var need = product is null ? Spoken.Of($"No cooling is left at {at}")
            : product.CondensingK is not { } condensingK ? Spoken.Of($"No {product.Fluid.Name}: at {Pressure(h.Layout.Feed!.PressurePa)}, above its critical pressure of {Pressure(product.Fluid.CriticalPressurePa)}, nothing condenses")
            : Spoken.Of($"No {product.Fluid.Name}: at {Pressure(h.Layout.Feed!.PressurePa)} it condenses at {Temperature(condensingK)}");
        var pressures = Spoken.Of($"{Pressure(target.AftercooledPa)} over {Pressure(target.State.SuctionPa)} and {target.Flow:0.000} mol/s");
        var (least, leastK, warmest) = Differences(target);
        double endless = target.Flow * least;
        if (endless > leak)
            return new Limitation(LimitationKind.Pinch, Spoken.Of(
                $"{need}, and {coldest}. The recuperator stops it: at {pressures} its streams come to {Difference(pinch.DifferenceK)} at {Temperature(pinch.HotK)} ({phases}) and leave {gross:0.0} W at the coil against a leak of {leak:0.0} W; an endless exchanger would leave {endless:0.0} W. A longer or better exchanger is the cure."), pinch.HotK, phases);
        if (endless > SmallShare * target.Flow * warmest)
        {
            var path = target.LeakPaths.MaxBy(x => x.Value);
            return new Limitation(LimitationKind.Leak, Spoken.Of(
                $"{need}, and {coldest}. The heat leak stops it: {leak:0.0} W come in, most of it ({path.Value:0.0} W) through the {path.Key}, more than the {endless:0.0} W that even an endless exchanger could leave at {pressures}. Better insulation is the cure."));
        }
        return new Limitation(LimitationKind.Capacity, Spoken.Of(
            $"{need}, and {coldest}. Mixture and pressures stop it: at {pressures} the isothermal enthalpy difference falls to {least:0} J/mol near {Temperature(leastK)}, so that even an endless exchanger leaves {endless:0.0} W. Another mixture, charge or throttle is the cure."));
    }

    // least isothermal enthalpy difference between the cold end and the recuperator's inlet, and that at the inlet, J/mol
    private static (double Least, double AtK, double Warm) Differences(LoopPass p)
    {
        double cold = p.Tables.Low.Temperature(p.CoilOutlet, p.CoilOutletPa, out _), warm = p.RecuperatorInletK, least = double.PositiveInfinity, at = warm, last = 0;
        for (int i = 0; i <= Stations; i++)
        {
            double k = cold + (warm - cold) * i / Stations;
            last = p.Tables.Low.Enthalpy(k, p.CoilOutletPa) - p.Tables.High.Enthalpy(k, p.AftercooledPa);
            if (last < least) (least, at) = (last, k);
        }
        return (least, at, last);
    }

    private static string Phases(LoopPass p)
    {
        var nearest = p.Recuperator.Profile.MinBy(s => Math.Abs(s.PositionM - p.Recuperator.Pinch.PositionM))!;
        return $"high side {PhaseWords.Of(nearest.HotPhases)}, low side {PhaseWords.Of(nearest.ColdPhases)}";
    }
}
