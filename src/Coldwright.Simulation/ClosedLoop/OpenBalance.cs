namespace Coldwright.Simulation.ClosedLoop;

/// <summary>The worst balance of a pass in words: how far open it is, where, and which part is short.</summary>
internal static class OpenBalance
{
    /// <param name="p">The pass.</param>
    /// <param name="h">Its hardware.</param>
    /// <param name="inside">True: the amounts of single substances are not looked at.</param>
    public static string Of(LoopPass p, Hardware h, bool inside = false)
    {
        int worst = LoopBalances.Worst(inside ? p.Residuals.AsSpan(0, LoopState.FirstFraction) : p.Residuals);
        return FormattableString.Invariant(
            $"the balance of {LoopBalances.Name(worst)} is left {Math.Abs(p.Residuals[worst]):0.0e+0} open at {p.AftercooledPa / 1e5:0.##} and {p.State.SuctionPa / 1e5:0.##} bar absolute, {p.Flow:0.####} mol/s; {Short(worst, p, h)}");
    }

    private static string Short(int worst, LoopPass p, Hardware h)
    {
        var l = h.Layout;
        string recuperator = l.Recuperator.Name, coil = l.Coil.Name;
        switch (worst)
        {
            case LoopBalances.Flow:
                string small = p.ThrottleFlow < p.Flow ? l.Throttle.Name : l.Compressor.Name;
                return FormattableString.Invariant($"{l.Compressor.Name} moves {p.Flow:0.####} mol/s there and {l.Throttle.Name} passes {p.ThrottleFlow:0.####} mol/s: {small} is too small for the other");
            case LoopBalances.LowPressure:
                return FormattableString.Invariant($"of {p.State.CoilPa / 1e5:0.##} bar at {coil} the low side of {recuperator} loses {p.Recuperator.Cold.PressureDropPa / 1e5:0.##}: it is too narrow or too long for this flow");
            case LoopBalances.Charge:
                return FormattableString.Invariant($"the loop would hold {p.Moles.Sum():0.##} mol there and the charge is {h.ChargeMol:0.##} mol: the volumes (buffer) or the charge do not fit the pressures");
            case LoopBalances.Suction or LoopBalances.LowOutlet or LoopBalances.Throttle:
                return FormattableString.Invariant($"{recuperator} exchanges {p.Recuperator.DutyW:0} W there and its streams come within {p.Recuperator.Pinch.DifferenceK:0.##} K: its heat jumps between two neighbouring states, as where a liquid comes and goes");
            default:
                int first = LoopState.FirstFraction, i = Math.Min(worst - first, p.Moles.Length - 1);
                return FormattableString.Invariant($"of {h.Machine.Charge.Mixture.Names[i]} {p.Moles[i]:0.###} mol would be in the loop, {p.LiquidMoles[i]:0.###} of it liquid in {recuperator} and {coil}, and {h.ChargeMol * h.Machine.Charge.Mixture.MoleFractions[i]:0.###} mol are charged");
        }
    }
}
