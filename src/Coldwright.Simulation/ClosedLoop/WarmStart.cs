using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.Compression;
using Coldwright.Machine.Throttling;
using Coldwright.Numerics;
using Coldwright.Numerics.Roots;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>
/// A first guess from nothing: the loop all gas at room temperature. Volumetric efficiency against pressure ratio from a few runs
/// of the compressor, the throttle's flow of gas as that of one run scaled by pressure and by the nozzle's law, the charge as gas in both
/// sides: two nested roots, microseconds each.
/// </summary>
internal static class WarmStart
{
    private static readonly double[] Ratios = [1.3, 2, 3.2, 5, 8, 13, 20];
    private const double ProbePa = 1e6, LowestPa = 2e4;

    public static LoopState Guess(Hardware h, HelmholtzModel model, LoopTarget target, CancellationToken cancel)
    {
        double[] z = [.. h.Machine.Charge.Mixture.MoleFractions];
        var flash = new Flash(model);
        var transport = new TransportModel(model);
        double t = h.RoomK;
        var probe = flash.TemperaturePressure(t, ProbePa, z);
        var compressor = new HermeticCompressor(h.Compressor.Machine, model, z);
        var mapped = h.Compressor.Map is { } map ? new MappedCompressor(map, h.Compressor.Machine, model, z) : null;
        // volume flow at the suction port against ln of the ratio, 0 where nothing is delivered
        var lnRatio = new List<double>();
        var volume = new List<double>();
        foreach (double ratio in Ratios)
        {
            var duty = new CompressorDuty { SuctionTemperatureK = t, SuctionPressurePa = 2e5, DischargePressurePa = 2e5 * ratio, RoomTemperatureK = h.RoomK };
            double flow = 0;
            try
            {
                var p = mapped?.Run(duty, cancel) ?? compressor.Run(duty, cancel);
                flow = h.Knobs.CompressorFlow * p.MolarFlow / p.Suction.MolarDensity;
            }
            catch (SolveException)
            {
                if (volume.Count == 0) throw;
            }
            lnRatio.Add(Math.Log(ratio));
            volume.Add(flow);
            if (flow == 0) break;
        }
        double Swept(double ln)
        {
            if (ln <= lnRatio[0]) return volume[0];
            for (int i = 1; i < lnRatio.Count; i++)
                if (ln <= lnRatio[i]) return volume[i - 1] + (ln - lnRatio[i - 1]) / (lnRatio[i] - lnRatio[i - 1]) * (volume[i] - volume[i - 1]);
            return 0.2 * volume[^1];
        }

        var inlet = new ThrottleInlet(ProbePa, probe.MolarEnthalpy, t, z);
        double passed = h.Capillary is { } tube ? new CapillaryModel(flash, transport).Flow(tube, inlet, ProbePa / 8, cancel).MolarFlow : new ValveModel(flash, transport).Flow(h.Valve!, inlet, ProbePa / 8, cancel).MolarFlow;
        double Throttle(double high, double low)
        {
            double r = low / high;
            // choked below about half; towards equal pressures the flow goes with the root
            double shape = r < 0.5 ? 1 : Math.Sqrt(Math.Max(0, 1 - (r - 0.5) * (r - 0.5) / 0.25));
            return passed * h.Knobs.ThrottleFlow * high / ProbePa * shape;
        }

        double gas = probe.MolarDensity / ProbePa;
        double HighFor(double low)
        {
            double Off(double ln) => gas * low * Swept(ln) - Throttle(low * Math.Exp(ln), low);
            return Off(1e-6) <= 0 ? low * 1.05 : low * Math.Exp(Brent.Solve(Off, 1e-6, Math.Log(60), 1e-6));
        }

        double highVolume = 0, lowVolume = 0;
        foreach (var v in h.Volumes)
            if (v.State is VolumeState.Discharge or VolumeState.Aftercooled or VolumeState.Precooled or VolumeState.ColdHigh) highVolume += v.VolumeM3;
            else lowVolume += v.VolumeM3;
        highVolume += h.Recuperator.Hot.AreaM2 * h.Recuperator.LengthM;
        lowVolume += h.Recuperator.Cold.AreaM2 * h.Recuperator.LengthM + (h.Coil?.VolumeM3 ?? 0);
        double Charge(double low)
        {
            double high = HighFor(low), buffer = 0;
            if (h.Buffer is { } b) buffer = b.VolumeM3 * (low + (high - low) * Math.Clamp((high - b.SetPressurePa) / b.FullyOpenAbovePa, 0, 0.9));
            return gas * (highVolume * high + lowVolume * low + buffer) / h.ChargeMol - 1;
        }

        double lowPa = target.Held is Machine.Description.HeldPressure.Low or Machine.Description.HeldPressure.Both ? target.LowPa : double.NaN;
        if (double.IsNaN(lowPa))
        {
            double a = Math.Log(LowestPa), b = Math.Log(4e6);
            double HeldOff(double ln) => Math.Log(Math.Max(HighFor(Math.Exp(ln)), 1) / target.HighPa);
            double ChargeOff(double ln) => Charge(Math.Exp(ln));
            bool byHigh = target.Held == Machine.Description.HeldPressure.High;
            double offLow = byHigh ? HeldOff(a) : ChargeOff(a), offHigh = byHigh ? HeldOff(b) : ChargeOff(b);
            if (offHigh < 0) throw new SolveException(new SolveReport(SolveStatus.NoSolution, 0, offHigh, byHigh
                ? FormattableString.Invariant($"no suction pressure up to {Math.Exp(b) / 1e5:0.#} bar absolute lets compressor and throttle build up the held {target.HighPa / 1e5:0.#} bar absolute")
                : FormattableString.Invariant($"with everything warm no suction pressure up to {Math.Exp(b) / 1e5:0.#} bar absolute makes room for the charge")));
            lowPa = offLow > 0 ? Math.Exp(a) : Math.Exp(Brent.Solve(byHigh ? HeldOff : ChargeOff, a, offLow, b, offHigh, 1e-6));
        }
        double highPa = target.Held is Machine.Description.HeldPressure.High or Machine.Description.HeldPressure.Both ? target.HighPa : HighFor(lowPa);
        double suction = flash.TemperaturePressure(t, lowPa, z).MolarEnthalpy, throttled = flash.TemperaturePressure(t, highPa, z).MolarEnthalpy;
        double measure = h.Buffer is { } valve ? Math.Min(Math.Log(highPa / valve.SetPressurePa), 0.4) : Math.Log(highPa + target.AftercoolerDropPa);
        return LoopState.Of(measure, lowPa, suction, throttled, lowPa * 1.02, suction, z);
    }
}
