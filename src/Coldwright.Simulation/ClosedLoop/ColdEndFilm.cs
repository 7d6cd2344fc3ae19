using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.ColdVessel;
using Coldwright.Machine.Recuperation;
using Coldwright.Numerics;
using Coldwright.Numerics.Roots;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>
/// The coil's outside conductance in the closed loop: that at which the coil against a load of one temperature takes up as much as the
/// coil in its vessel does, half full, with product condensing on it and liquid around it.
/// </summary>
internal static class ColdEndFilm
{
    private const double HalfFull = 0.5, MarginK = 4, Least = 1, Most = 1e5, CoilSettled = 1e-9, Found = 1e-7;

    /// <summary>The hardware with that conductance; null when the vessel's model has no answer at this pass (nothing condenses there).</summary>
    public static Hardware? Fitted(Hardware h, LoopPass p, CancellationToken cancel)
    {
        if (h.Vessel is not { } cold || h.Coil is not { } coil || h.Layout.Feed is not { } feed || p.Coil is null) return null;
        var inlet = new StreamInlet(p.Tables.Low, p.Flow, p.State.ThrottleEnthalpy, p.State.CoilPa);
        // a rough pass may end a little beyond its table, which the vessel's model does not take
        var (lowest, highest) = p.Tables.Low.Range(p.State.CoilPa);
        if (!(p.State.ThrottleEnthalpy >= lowest && p.State.ThrottleEnthalpy <= highest)) return null;
        try
        {
            var gas = ReferenceModel.Create([feed.Gas]);
            double feedK = Math.Max(h.Layout.FeedPrecooled ? p.RecuperatorInletK : h.RoomK, p.LoadK + 1);
            var product = VesselProduct.Create(new Flash(gas), new TransportModel(gas), [1.0], feed.PressurePa, inlet.TemperatureK - MarginK, feedK, cancel);
            var r = ColdVesselModel.Solve(new ColdVesselInput
            {
                Coil = cold.Coil, Vessel = cold.Vessel, Product = product, Mixture = inlet, LevelM = HalfFull * cold.Vessel.HeightM, FeedK = feedK, LiquidK = product.IsDense ? p.LoadK : null,
                Options = new ColdVesselOptions { Band = false },
            }, cancel);
            double Off(double ln) => (coil with { OutsideConductancePerLength = Math.Exp(ln), Settled = CoilSettled }).Solve(inlet, p.LoadK).HeatW - r.HeatW;
            double low = Off(Math.Log(Least)), high = Off(Math.Log(Most));
            if (low > 0 || high < 0) return null;
            double found = Math.Exp(Brent.Solve(Off, Math.Log(Least), low, Math.Log(Most), high, Found));
            return h with { Coil = coil with { OutsideConductancePerLength = found } };
        }
        catch (SolveException)
        {
            return null;
        }
    }
}
