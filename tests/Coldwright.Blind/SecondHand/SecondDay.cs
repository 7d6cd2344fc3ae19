using Coldwright.Blind.Physics;
using S = Coldwright.Blind.SecondHand.CoolerSizes;

namespace Coldwright.Blind.SecondHand;

/// <summary>
/// The second hand's day of the blind cooler: quasi-steady refrigerator over a few lumps (load, two halves of the recuperator, two layers of foam, evaporator), in steps of ten seconds. No
/// solver of the program and nothing of the first hand's march is in it.
/// </summary>
public static class SecondDay
{
    /// <summary>Step, and time from one kept moment to the next, s.</summary>
    public const double StepS = 10;
    private const double EvaporatorJPerK = 1100, EvaporatorWPerK = 30, PlugsBelowK = 185, ComposeS = 600, StartS = 120;

    /// <summary>The day of a machine.</summary>
    public static BlindCourse Run(Truth truth, SecondPlan plan, CancellationToken cancel = default) => Follow(truth, plan, cancel).Course;

    /// <summary>The day and its books up to the stop.</summary>
    public static (BlindCourse Course, SecondBooks Books) Follow(Truth truth, SecondPlan plan, CancellationToken cancel = default)
    {
        double room = plan.Room(0), evaporator = room, suction = room, precooled = room, plugFrom = double.NaN, wet = truth.Of("wet-insulation", 0);
        var charge = new SecondCharge(truth);
        var zones = new LoopZones(truth.Volume, room);
        zones.Warm();
        var loop = new SecondPressures(truth, charge);
        double restPa = loop.Rest(zones, room, withBuffer: true);
        charge.FillBuffer(S.BufferM3 * charge.Table.Content(room, restPa));
        var cold = new ColdEnd(truth);
        cold.Warm(room);
        var box = new FoamBox(truth.Leak * truth.Of("leak", 1), truth.FoamHeat, wet, room);
        var propane = new PropaneLine();
        var batch = new SecondBatch(truth);
        Stream high = new(), low = new();
        var kept = new List<BlindMoment>();
        double openS = truth.Of("discharge-too-warm", 0) > 0 ? plan.FeedOffS + 60 : plan.OpenS, carried = 0, fromRoom = 0, fromFeed = 0, bodies = 0, composed = 0, precoolerW = 0;
        bool drained = false;
        for (int s = 0; s * StepS < plan.EndS; s++)
        {
            cancel.ThrowIfCancellationRequested();
            double t = s * StepS;
            room = plan.Room(t);
            var (loadWas, coldWas, warmWas, innerWas, outerWas) = (cold.LoadK, cold.ColdHalfK, cold.WarmHalfK, box.InnerK, box.OuterK);
            double inside = FoamBox.LoadShare * cold.LoadK + FoamBox.ColdHalfShare * cold.ColdHalfK + FoamBox.WarmHalfShare * cold.WarmHalfK, g = box.InsideWPerK(inside), wires = box.WiresWPerK * (room - cold.LoadK);
            double toLoad = g * FoamBox.LoadShare * (box.InnerK - cold.LoadK), toCold = g * FoamBox.ColdHalfShare * (box.InnerK - cold.ColdHalfK), toWarm = g * FoamBox.WarmHalfShare * (box.InnerK - cold.WarmHalfK);
            double feedW = 0, outside;
            if (t < plan.StopS)
            {
                double plug = truth.Of("freeze-plug", 0);
                if (plug > 0 && double.IsNaN(plugFrom) && cold.ThrottleK < PlugsBelowK) plugFrom = t;
                double opening = truth.Of("capillary-blocked", 1) * (double.IsNaN(plugFrom) ? 1 : 1 - plug * (1 - Math.Exp(-(t - plugFrom) / 3600)));
                // while the suction is drawn empty the unloading valve passes more in ten seconds than the loop holds
                for (int part = 0, parts = t < StartS ? (int)StepS : 1; part < parts; part++) loop.Run(StepS / parts, zones, cold.ThrottleK, suction, room, opening);
                high.Take(charge.Table, loop.HighPa);
                low.Take(charge.Table, loop.LowPa + 0.6 * (loop.CoilPa - loop.LowPa));
                (precooled, suction) = WarmEnd(StepS, loop.Flow, high, low, cold.ReturnK, room, truth, propane, ref evaporator, out precoolerW);
                bool feeding = t >= plan.FeedOnS && t < plan.FeedOffS;
                double condensing = feeding ? batch.CondensingK(cold.LoadK) : 0;
                cold.Step(StepS, loop.Flow, high, low, precooled, (toLoad + wires, toCold, toWarm), batch.JPerK(cold.LoadK), condensing);
                feedW = cold.CondensedW;
                if (cold.CondensedW > 0) batch.Condense(StepS, cold.CondensedW, cold.LoadK, precooled);
                if (feeding) batch.UnderFeed(StepS, cold.LoadK);
                else batch.Rest(StepS, cold.LoadK, room);
                zones.Along(cold.Pieces, 0.5 * (cold.CoilInletK + cold.CoilOutletK), suction);
                if (t - composed >= ComposeS)
                {
                    composed = t;
                    charge.Recompose(zones.Held(charge.Table, loop.HighPa, loop.CoilPa));
                }
            }
            else
            {
                loop.Stand(StepS, room);
                cold.Stand(StepS, (toLoad + wires, toCold, toWarm), batch.JPerK(cold.LoadK));
                zones.Along(cold.Pieces, cold.LoadK, room);
                loop.Rest(zones, room, withBuffer: false);
                batch.Rest(StepS, cold.LoadK, room);
                evaporator += (room - evaporator) * StepS / 5000;
                precooled = evaporator;
                (suction, precoolerW) = (room, 0);
            }
            outside = box.Step(StepS, toLoad + toCold + toWarm, room);
            if (t < plan.StopS && !batch.IsFed)
            {
                carried += StepS * cold.CarriedOffW;
                fromRoom += StepS * (outside + wires);
                fromFeed += StepS * feedW;
                bodies += Given(cold.LoadJPerK, loadWas, cold.LoadK) + Given(k => S.HalfKg * truth.ExchangerMass * S.Copper(k), coldWas, cold.ColdHalfK) + Given(k => S.HalfKg * truth.ExchangerMass * S.Copper(k), warmWas, cold.WarmHalfK)
                    + Given(k => box.InnerJPerK(k), innerWas, box.InnerK) + Given(k => box.OuterJPerK(k), outerWas, box.OuterK);
            }
            if (batch.IsFed && !drained && t >= openS)
            {
                drained = true;
                cold.Boil(batch.LetDown(cold.LoadK, cold.LoadJPerK(cold.LoadK)));
            }
            kept.Add(new BlindMoment(t, cold.LoadK, cold.ThrottleK, cold.CoilOutletK, precooled, cold.ReturnK, loop.DischargeK, loop.HighPa, loop.LowPa, loop.Flow * charge.Table.MolarMass, loop.CompressorW, t < plan.StopS ? loop.CompressorW + precoolerW + S.FansW : 0, batch.VesselPa, batch.FedKg));
        }
        return (new BlindCourse { Moments = kept, RestPa = restPa, FedKg = batch.FedKg, CollectedKg = batch.CollectedKg, FlaskLossKgPerS = batch.FlaskLossKgPerS }, new SecondBooks(carried, fromRoom, fromFeed, bodies));
    }

    private static double Given(Func<double, double> jPerK, double before, double after) => (before - after) * (jPerK(before) + 4 * jPerK(0.5 * (before + after)) + jPerK(after)) / 6;

    // aftercooler, warm exchanger by its effectiveness, evaporator: temperatures before the recuperator and before the compressor
    private static (double PrecooledK, double SuctionK) WarmEnd(double dt, double n, Stream high, Stream low, double returnK, double roomK, Truth truth, PropaneLine propane, ref double evaporatorK, out double powerW)
    {
        double from = roomK + S.AftercoolerK, ch = n * high.Capacity(from, from), cl = n * low.Capacity(returnK, from), least = Math.Min(ch, cl), r = least / Math.Max(ch, cl), ntu = S.WarmExchangerWPerK * truth.WarmExchanger / least;
        double e = r > 0.999 ? ntu / (1 + ntu) : (1 - Math.Exp(-ntu * (1 - r))) / (1 - r * Math.Exp(-ntu * (1 - r))), exchanged = e * least * (from - returnK);
        double before = high.Temperature(high.Enthalpy(from) - exchanged / n), suction = low.Temperature(low.Enthalpy(returnK) + exchanged / n);
        double capacity = high.Capacity(before, evaporatorK), precooled = evaporatorK + (before - evaporatorK) * Math.Exp(-EvaporatorWPerK / (n * capacity)), heat = n * (high.Enthalpy(before) - high.Enthalpy(precooled));
        var (cooling, power) = propane.At(evaporatorK, roomK, truth.Precooler * truth.Of("precooler-weak", 1));
        evaporatorK = Math.Max(205, evaporatorK + dt * (heat - cooling) / EvaporatorJPerK);
        powerW = power;
        return (precooled, suction);
    }
}
