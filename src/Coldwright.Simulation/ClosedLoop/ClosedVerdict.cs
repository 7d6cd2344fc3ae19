using Coldwright.Simulation.Rating;

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
        string at = FormattableString.Invariant($"{target.LoadK:0.0} K");
        string coldest = noLoadK is { } t ? FormattableString.Invariant($"it stops at {t:0.0} K") : "it does not cool at all below the precooled gas";
        var pinch = target.Recuperator.Pinch;
        string phases = Phases(target);
        double net = target.NetCoolingW, gross = target.GrossCoolingW, leak = target.ColdEndLeakW;
        if (net > 0 && (product is null || point.Liquid!.CollectedLPerH > 0))
        {
            var largest = point.Exergy.LossesW[0];
            string what = product is null ? FormattableString.Invariant($"It cools: {net:0.0} W are left at {at}") : FormattableString.Invariant($"It works: {net:0.0} W are left at {at} to liquefy {product.Fluid.Name}");
            return new Limitation(LimitationKind.Works,
                what + FormattableString.Invariant($". The streams come closest at {pinch.HotK:0.0} K ({pinch.DifferenceK:0.0} K apart, {phases}); the largest loss is the {largest.Name}, {largest.Watts / point.Exergy.InputW:0 %} of the input."), pinch.HotK, phases);
        }
        string need = product is null ? FormattableString.Invariant($"No cooling is left at {at}")
            : product.CondensingK is null ? FormattableString.Invariant($"No {product.Fluid.Name}: at {h.Layout.Feed!.PressurePa / 1e5:0.0} bar absolute, above its critical pressure of {product.Fluid.CriticalPressurePa / 1e5:0.0} bar, nothing condenses")
            : FormattableString.Invariant($"No {product.Fluid.Name}: at {h.Layout.Feed!.PressurePa / 1e5:0.0} bar absolute it condenses at {product.CondensingK:0.0} K");
        string pressures = FormattableString.Invariant($"{target.AftercooledPa / 1e5:0.0} over {target.State.SuctionPa / 1e5:0.0} bar absolute and {target.Flow:0.000} mol/s");
        var (least, leastK, warmest) = Differences(target);
        double endless = target.Flow * least;
        if (endless > leak)
            return new Limitation(LimitationKind.Pinch, FormattableString.Invariant(
                $"{need}, and {coldest}. The recuperator stops it: at {pressures} its streams come to {pinch.DifferenceK:0.0} K at {pinch.HotK:0.0} K ({phases}) and leave {gross:0.0} W at the coil against a leak of {leak:0.0} W; an endless exchanger would leave {endless:0.0} W. A longer or better exchanger is the cure."), pinch.HotK, phases);
        if (endless > SmallShare * target.Flow * warmest)
        {
            var path = target.LeakPaths.MaxBy(x => x.Value);
            return new Limitation(LimitationKind.Leak, FormattableString.Invariant(
                $"{need}, and {coldest}. The heat leak stops it: {leak:0.0} W come in, most of it ({path.Value:0.0} W) through the {path.Key}, more than the {endless:0.0} W that even an endless exchanger could leave at {pressures}. Better insulation is the cure."));
        }
        return new Limitation(LimitationKind.Capacity, FormattableString.Invariant(
            $"{need}, and {coldest}. Mixture and pressures stop it: at {pressures} the isothermal enthalpy difference falls to {least:0} J/mol near {leastK:0.0} K, so that even an endless exchanger leaves {endless:0.0} W. Another mixture, charge or throttle is the cure."));
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
