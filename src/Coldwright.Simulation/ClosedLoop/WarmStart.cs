using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.Charge;
using Coldwright.Machine.Throttling;
using Coldwright.Numerics;
using Coldwright.Numerics.Roots;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>
/// A first guess from nothing: the loop all gas at room temperature. Volumetric efficiency against pressure ratio from a few runs
/// of the compressor (<see cref="SweptVolume"/>), the throttle's flow of gas as that of one run scaled by pressure and by the nozzle's law, the charge as gas in both
/// sides: two nested roots, microseconds each.
/// </summary>
internal static class WarmStart
{
    // Darcy's factor in rough, turbulent tubes: for a guess
    private const double ProbePa = 1e6, LowestPa = 2e4, LeastLnRatio = 1e-6, Friction = 0.03, NearLimit = 0.1, MostMeasure = 2, HighestOverSet = 4;

    public static LoopState Guess(Hardware h, HelmholtzModel model, LoopTarget target, CancellationToken cancel) => Find(h, model, target, cancel).State;

    /// <summary>In words, that throttle and bleed pass less than the compressor moves at the highest ratio at which it delivers anything; null when they do not.</summary>
    public static string? TooNarrow(Hardware h, HelmholtzModel model, LoopTarget target, CancellationToken cancel)
    {
        var (state, highPa, lowPa, swept, bypass) = Find(h, model, target, cancel);
        if (!swept.IsLimited || Math.Log(highPa / lowPa) < swept.LnHighest - NearLimit) return null;
        double[] z = state.Z();
        var flash = new Flash(model);
        var inlet = new ThrottleInlet(highPa, state.ThrottleEnthalpy, h.RoomK, z);
        double passed = h.Knobs.ThrottleFlow * Passed(h, flash, inlet, state.CoilPa, CapillaryResolution.Default, cancel);
        double moved = flash.TemperaturePressure(h.RoomK, lowPa, z).MolarDensity * swept.At(swept.LnHighest);
        if (passed + bypass >= moved) return null;
        string throttle = h.Layout.Throttle.Name, compressor = h.Layout.Compressor.Name;
        return FormattableString.Invariant($"with everything warm {throttle} passes {passed:0.#####} mol/s of gas{(bypass > 0 ? FormattableString.Invariant($" and the buffer's bleed {bypass:0.#####}") : "")} at a pressure ratio of {Math.Exp(swept.LnHighest):0.#}, the highest at which {compressor} delivers anything, and it moves {moved:0.#####} mol/s up to there: {throttle} is too narrow for it");
    }

    private static (LoopState State, double HighPa, double LowPa, SweptVolume Swept, double BypassFlow) Find(Hardware h, HelmholtzModel model, LoopTarget target, CancellationToken cancel)
    {
        double[] z = [.. h.Machine.Charge.Mixture.MoleFractions];
        var flash = new Flash(model);
        double t = h.RoomK;
        var probe = flash.TemperaturePressure(t, ProbePa, z);
        var swept = new SweptVolume(h, model, z, cancel);
        var inlet = new ThrottleInlet(ProbePa, probe.MolarEnthalpy, t, z);
        double passed = Passed(h, flash, inlet, ProbePa / 8, LoopEvaluator.RoughCapillary, cancel);
        double Throttle(double high, double low)
        {
            double r = low / high;
            // choked below about half; towards equal pressures the flow goes with the root
            double shape = r < 0.5 ? 1 : Math.Sqrt(Math.Max(0, 1 - (r - 0.5) * (r - 0.5) / 0.25));
            return passed * h.Knobs.ThrottleFlow * high / ProbePa * shape;
        }

        double gas = probe.MolarDensity / ProbePa;
        var buffer = h.Buffer is { } vessel ? new BufferInLoop(vessel, model, z, 0.3 * LowestPa, HighestOverSet * (vessel.SetPressurePa + vessel.FullyOpenAbovePa), cancel) : null;
        // the high side at which what the compressor moves passes through throttle and bleed
        (double HighPa, double Measure, double Content) HighFor(double low)
        {
            if (buffer is null)
            {
                double Off(double ln) => gas * low * swept.At(ln) - Throttle(low * Math.Exp(ln), low);
                double high = Off(LeastLnRatio) <= 0 ? low * 1.05 : low * Math.Exp(Off(swept.LnEnd) >= 0 ? swept.LnHighest : Brent.Solve(Off, LeastLnRatio, swept.LnEnd, 1e-6));
                return (high, Math.Log(high + target.AftercoolerDropPa), 0);
            }
            // everything above the opening pressure already: the buffer stands as the rest
            if (1.05 * low >= h.Buffer!.SetPressurePa) return (1.05 * low, MostMeasure, gas * low * h.Buffer.VolumeM3);
            double OffAt(double measure)
            {
                var at = buffer.At(measure, low);
                return gas * low * swept.At(Math.Log(at.HighPa / low)) - at.BypassFlow - Throttle(at.HighPa, low);
            }
            double least = buffer.Measure(1.05 * low), found = OffAt(least) <= 0 ? least : OffAt(MostMeasure) >= 0 ? MostMeasure : Brent.Solve(OffAt, least, MostMeasure, 1e-6);
            var state = buffer.At(found, low);
            return (state.HighPa, found, state.Content);
        }

        // warm gas with friction in the recuperator's low side: the difference of the squares goes with that of the flow
        var side = h.Recuperator.Cold;
        double resistance = Friction * h.Recuperator.LengthM / side.HydraulicDiameterM / (side.AreaM2 * side.AreaM2) * probe.MolarMass / gas;
        double CoilFor(double low, double high)
        {
            double n = gas * low * swept.At(Math.Log(high / low));
            return Math.Max(1.02 * low, Math.Min(Math.Sqrt(low * low + resistance * n * n), 0.5 * (low + high)));
        }

        double highVolume = 0, lowVolume = 0;
        foreach (var v in h.Volumes)
            if (v.State is VolumeState.Discharge or VolumeState.Aftercooled or VolumeState.Precooled or VolumeState.ColdHigh) highVolume += v.VolumeM3;
            else lowVolume += v.VolumeM3;
        highVolume += h.Recuperator.Hot.AreaM2 * h.Recuperator.LengthM;
        lowVolume += h.Recuperator.Cold.AreaM2 * h.Recuperator.LengthM + (h.Coil?.VolumeM3 ?? 0);
        double Charge(double low)
        {
            var (high, _, content) = HighFor(low);
            return (gas * (highVolume * high + lowVolume * 0.5 * (low + CoilFor(low, high))) + content) / h.ChargeMol - 1;
        }

        double lowPa = target.Held is Machine.Description.HeldPressure.Low or Machine.Description.HeldPressure.Both ? target.LowPa : double.NaN;
        if (double.IsNaN(lowPa))
        {
            double a = Math.Log(LowestPa), b = Math.Log(4e6);
            double HeldOff(double ln) => Math.Log(Math.Max(HighFor(Math.Exp(ln)).HighPa, 1) / target.HighPa);
            double ChargeOff(double ln) => Charge(Math.Exp(ln));
            bool byHigh = target.Held == Machine.Description.HeldPressure.High;
            double offLow = byHigh ? HeldOff(a) : ChargeOff(a), offHigh = byHigh ? HeldOff(b) : ChargeOff(b);
            if (offHigh < 0) throw new SolveException(new SolveReport(SolveStatus.NoSolution, 0, offHigh, byHigh
                ? FormattableString.Invariant($"no suction pressure up to {Math.Exp(b) / 1e5:0.#} bar absolute lets compressor and throttle build up the held {target.HighPa / 1e5:0.#} bar absolute")
                : FormattableString.Invariant($"with everything warm no suction pressure up to {Math.Exp(b) / 1e5:0.#} bar absolute makes room for the charge")));
            lowPa = offLow > 0 ? Math.Exp(a) : Math.Exp(Brent.Solve(byHigh ? HeldOff : ChargeOff, a, offLow, b, offHigh, 1e-6));
        }
        var (highPa, measure, _) = HighFor(lowPa);
        if (target.Held is Machine.Description.HeldPressure.High or Machine.Description.HeldPressure.Both)
            (highPa, measure) = (target.HighPa, buffer is null ? Math.Log(target.HighPa + target.AftercoolerDropPa) : Math.Min(buffer.Measure(target.HighPa), 0.4));
        double suction = flash.TemperaturePressure(t, lowPa, z).MolarEnthalpy, throttled = flash.TemperaturePressure(t, highPa, z).MolarEnthalpy;
        return (LoopState.Of(measure, lowPa, suction, throttled, CoilFor(lowPa, highPa), suction, z), highPa, lowPa, swept, buffer?.At(measure, lowPa).BypassFlow ?? 0);
    }

    // mol/s, by the throttle's own model
    private static double Passed(Hardware h, Flash flash, ThrottleInlet inlet, double backPa, CapillaryResolution resolution, CancellationToken cancel)
    {
        var transport = new TransportModel(flash.Model);
        return h.Capillary is { } tube
            ? new CapillaryModel(flash, transport) { Resolution = resolution }.Flow(tube, inlet, backPa, cancel).MolarFlow
            : new ValveModel(flash, transport).Flow(h.Valve!, inlet, backPa, cancel).MolarFlow;
    }
}
