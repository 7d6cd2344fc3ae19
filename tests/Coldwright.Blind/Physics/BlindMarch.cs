using S = Coldwright.Blind.Physics.Sizes;

namespace Coldwright.Blind.Physics;

/// <summary>
/// Marches a blind machine through its day: rest, pull-down, one batch if it is cold enough, stop, warm-up. Explicit steps of six seconds; walls, foam, load and
/// evaporator store heat, streams are quasi-steady. Shares nothing with the program's solvers.
/// </summary>
public static class BlindMarch
{
    /// <summary>Moments of the day, s after the start.</summary>
    public const double FeedOnS = 18000, FeedOffS = 23400, OpenS = 25200, EarlyOpenS = 23460, StopS = 26400, EndS = 30000, StepS = 6, KeepS = 12;
    private const double WiresWPerK = 0.0052;

    private static readonly string[] _names = ["nitrogen", "methane", "ethane", "propane", "isobutane"];
    private static readonly double[] _z = [0.27, 0.38, 0.20, 0.09, 0.06];
    private static readonly Lazy<PropaneLoop> _propane = new(() => new PropaneLoop());
    private static readonly Lazy<ArgonBatch> _argon = new(() => new ArgonBatch());

    /// <summary>The run of a machine.</summary>
    public static BlindCourse Run(Truth truth, CancellationToken cancel = default)
    {
        var loop = new BlindLoop(truth, _names, _z);
        double[] wall = [.. Enumerable.Repeat(S.RoomK, S.Cells)], hot = [.. wall], cold = [.. wall], foam = [.. Enumerable.Repeat(S.RoomK, S.Foam)];
        double load = S.RoomK, evaporator = S.RoomK, coilK = S.RoomK, throttleK = S.RoomK, suctionK = S.RoomK, returnK = S.RoomK, precooledK = S.RoomK, block = 1;
        double loadKg = S.LoadKg * truth.LoadMass, content = 0, extraKg = truth.Of("extra-metal", 0), filmFault = truth.Of("exchanger", 1), plug = truth.Of("freeze-plug", 0), plugFrom = double.NaN;
        double fed = 0, collected = 0, vesselPa = ArgonBatch.FeedPa, impurity = truth.Of("feed-impure", 0), impure = 0;
        bool feeding = false;
        var argon = _argon.Value;
        double openS = truth.Of("discharge-too-warm", 0) > 0 ? EarlyOpenS : OpenS;
        var kept = new List<BlindMoment>();
        double cell = S.RecuperatorKg * truth.ExchangerMass / S.Cells, hotArea = Math.PI * S.HighBoreM * S.LengthM / S.Cells, coldArea = Math.PI * S.HighOutsideM * S.LengthM / S.Cells;
        int steps = (int)(EndS / StepS);
        for (int s = 0; s < steps; s++)
        {
            cancel.ThrowIfCancellationRequested();
            double t = s * StepS;
            bool runs = t < StopS;
            double coilW = 0, net;
            double[] wallW = new double[S.Cells];
            for (int i = 1; i < S.Cells; i++)
            {
                double q = 72.9e-6 * 340 * S.Cells / S.LengthM * (wall[i - 1] - wall[i]);
                (wallW[i - 1], wallW[i]) = (wallW[i - 1] - q, wallW[i] + q);
            }
            if (runs)
            {
                loop.Step(StepS, hot, cold, throttleK, coilK, suctionK, block);
                var g = loop.Table;
                double n = loop.Flow, high = loop.High, low = loop.Low, coilPa = loop.CoilPa;
                double aftercooled = S.RoomK + S.AftercoolerK, ch = n * g.Capacity(aftercooled, high), cl = n * g.Capacity(returnK, low), least = Math.Min(ch, cl), r = least / Math.Max(ch, cl), ntu = S.WarmExchangerWPerK * truth.WarmExchanger / least;
                double e = Math.Abs(1 - r) < 1e-6 ? ntu / (1 + ntu) : (1 - Math.Exp(-ntu * (1 - r))) / (1 - r * Math.Exp(-ntu * (1 - r))), warmW = e * least * (aftercooled - returnK);
                double beforeK = g.Temperature(g.Enthalpy(aftercooled, high) - warmW / n, high);
                precooledK = evaporator + (beforeK - evaporator) * Math.Exp(-S.EvaporatorWPerK / (n * g.Capacity(0.5 * (beforeK + evaporator), high)));
                double precoolW = n * (g.Enthalpy(beforeK, high) - g.Enthalpy(precooledK, high));
                evaporator += StepS * (precoolW - _propane.Value.CoolingW(evaporator) * truth.Precooler * truth.Of("precooler-weak", 1)) / S.EvaporatorJPerK;
                evaporator = Math.Max(evaporator, 216);
                double k = precooledK;
                for (int i = 0; i < S.Cells; i++)
                {
                    double ha = Films.Of(g, k, high, n, S.HighBoreM, S.HighAreaM2) * hotArea * truth.HighFilm * filmFault, next = wall[i] + (k - wall[i]) * Math.Exp(-ha / (n * g.Capacity(0.5 * (k + wall[i]), high)));
                    wallW[i] += n * (g.Enthalpy(k, high) - g.Enthalpy(next, high));
                    hot[i] = 0.5 * (k + next);
                    k = next;
                }
                throttleK = k;
                double h = g.Enthalpy(k, high), inK = g.Temperature(h, coilPa);
                // coil: film inside and out in series, mean of the two ends
                double inside = Films.Of(g, inK, coilPa, n, S.CoilBoreM, Math.PI / 4 * S.CoilBoreM * S.CoilBoreM) * truth.CoilFilm * truth.Of("coil", 1) * Math.PI * S.CoilBoreM * S.CoilLengthM, outside = 1500 * Math.PI * S.CoilOutsideM * S.CoilLengthM, ua = 1 / (1 / inside + 1 / outside);
                double outK = load + (inK - load) * Math.Exp(-ua / (n * g.Capacity(0.5 * (inK + load), coilPa)));
                coilW = n * (g.Enthalpy(outK, coilPa) - h);
                coilK = outK;
                k = outK;
                for (int i = S.Cells - 1; i >= 0; i--)
                {
                    double ha = Films.Of(g, k, low, n, S.LowBoreM - S.HighOutsideM, S.LowAreaM2) * coldArea * truth.LowFilm * filmFault, next = wall[i] + (k - wall[i]) * Math.Exp(-ha / (n * g.Capacity(0.5 * (k + wall[i]), low)));
                    wallW[i] -= n * (g.Enthalpy(next, low) - g.Enthalpy(k, low));
                    cold[i] = 0.5 * (k + next);
                    k = next;
                }
                returnK = k;
                suctionK = g.Temperature(g.Enthalpy(k, low) + warmW / n, low);
                if (plug > 0 && double.IsNaN(plugFrom) && throttleK < 190) plugFrom = t;
                block = truth.Of("capillary-blocked", 1) * (double.IsNaN(plugFrom) ? 1 : 1 - plug * (1 - Math.Exp(-(t - plugFrom) / 4000)));
                if (s % 60 == 59) loop.Recompose(hot, cold, coilK);
            }
            // box: foam in shells from the inside, wires and rods beside it
            double wet = truth.Of("wet-insulation", 0), leakFactor = truth.Leak * truth.Of("leak", 1) * (1 + 5.5 * wet), before = load, into = 0;
            double[] flow = new double[S.Foam + 1];
            for (int i = 0; i <= S.Foam; i++)
            {
                double a = Shell((double)i / S.Foam), next = i == S.Foam ? S.RoomK : foam[i], mean = 0.5 * (before + next), dx = S.WallM / S.Foam * (i == 0 || i == S.Foam ? 0.5 : 1);
                flow[i] = leakFactor * FoamConductivity(mean) * a / dx * (next - before);
                before = next;
            }
            for (int i = 0; i < S.Foam; i++)
            {
                double volume = Shell((i + 0.5) / S.Foam) * S.WallM / S.Foam, capacity = S.FoamJPerM3K * truth.FoamHeat * (0.35 + 0.65 * foam[i] / 293) + wet * 917 * 7.2 * Math.Max(foam[i], 90);
                foam[i] += StepS * (flow[i + 1] - flow[i]) / (volume * capacity);
            }
            into = flow[0] + leakFactor * WiresWPerK * (S.RoomK - load);
            net = coilW - into;
            double loadJ = (loadKg + extraKg) * S.Copper(load) + content * 1100 + 12;
            for (int i = 0; i < S.Cells; i++) wall[i] += StepS * wallW[i] / (cell * S.Copper(wall[i]));
            // the batch
            if (t == FeedOnS) feeding = load < argon.Saturation(ArgonBatch.FeedPa) - 1;
            if (feeding && t >= FeedOnS && t < FeedOffS && content < ArgonBatch.BrimKg)
            {
                double ps = ArgonBatch.FeedPa * Math.Max(0.5, 1 - impure), sat = argon.Saturation(ps), heat = argon.HeatPerKg(sat), gained = Math.Max(0, (net * StepS + loadJ * (sat - load)) / heat);
                gained = Math.Min(gained, 4e-4 * StepS);
                load += (heat * gained - net * StepS) / loadJ;
                (content, fed) = (content + gained, fed + gained * (1 + impurity));
                impure = Math.Min(0.45, impurity * fed / 0.03);
                vesselPa = ArgonBatch.FeedPa;
            }
            else
            {
                load -= StepS * net / loadJ;
                if (feeding && t >= FeedOffS && content > 0) vesselPa = Math.Min(ArgonBatch.FeedPa * 1.05, argon.Pressure(load) / Math.Max(0.5, 1 - 0.9 * impure));
            }
            if (feeding && t >= FeedOnS && t < openS)
            {
                double seep = Math.Min(content, truth.Of("valve-leak", 0) * StepS);
                content -= seep;
            }
            if (feeding && Math.Abs(t - openS) < 0.5 * StepS)
            {
                collected = argon.Collected(Math.Max(0, content - 0.02), load, ArgonBatch.LineJ * truth.LineHeat * truth.Of("line-loss", 1), ArgonBatch.FlaskJ * truth.FlaskHeat * truth.Of("flask-warm", 1));
                (content, vesselPa) = (0, 1.1e5);
            }
            if (!runs)
            {
                throttleK = coilK = load;
                (precooledK, returnK) = (S.RoomK, S.RoomK);
                kept.AddIf(s, new BlindMoment(t, load, load, load, S.RoomK, S.RoomK, loop.DischargeK, Resting(loop, wall, load), Resting(loop, wall, load), 0, 0, 0, vesselPa, fed));
            }
            else kept.AddIf(s, new BlindMoment(t, load, throttleK, coilK, precooledK, returnK, loop.DischargeK, loop.High, loop.Low, loop.Flow * loop.Table.MolarMass, loop.CompressorW, loop.CompressorW + S.FansW + _propane.Value.PowerW(evaporator), vesselPa, fed));
        }
        return new BlindCourse { Moments = kept, RestPa = loop.RestPa, FedKg = fed, CollectedKg = collected, FlaskLossKgPerS = ArgonBatch.FlaskLossKgPerS * Math.Pow(truth.Of("flask-warm", 1), 1.5) };
    }

    /// <summary>Heat that leaks into the box of a machine with everything settled and dry insulation, W.</summary>
    /// <param name="truth">The machine.</param>
    /// <param name="loadK">Load, K.</param>
    public static double SettledLeakW(Truth truth, double loadK)
    {
        // through shells whose conductivity rises straight with temperature: the heat at the mean of both ends, over the root of the two areas
        double mean = 0.5 * (loadK + S.RoomK), foam = FoamConductivity(mean) * Math.Sqrt(S.InsideM2 * S.OutsideM2) / S.WallM;
        return truth.Leak * truth.Of("leak", 1) * (foam + WiresWPerK) * (S.RoomK - loadK);
    }

    private static double FoamConductivity(double meanK) => 0.0225 * (0.45 + 0.55 * meanK / 293);

    private static double Shell(double share)
    {
        double root = Math.Sqrt(S.InsideM2) + share * (Math.Sqrt(S.OutsideM2) - Math.Sqrt(S.InsideM2));
        return root * root;
    }

    // one pressure everywhere, every place at its own temperature
    private static double Resting(BlindLoop loop, double[] wall, double load)
    {
        double a = 0.3e5, b = 26e5, dv = (S.HighAreaM2 + S.LowAreaM2) * S.LengthM / S.Cells;
        for (int i = 0; i < 24; i++)
        {
            double p = 0.5 * (a + b), sum = (S.BufferM3 + S.WarmHighM3 + S.WarmLowM3) / loop.Table.Volume(S.RoomK, p) + (S.CoilM3 + S.ColdLinesM3) / loop.Table.Volume(load, p);
            foreach (double k in wall) sum += dv / loop.Table.Volume(k, p);
            if (sum < loop.Moles) a = p; else b = p;
        }
        return a;
    }

    private static void AddIf(this List<BlindMoment> kept, int step, BlindMoment moment)
    {
        if (step % (int)(KeepS / StepS) == 0) kept.Add(moment);
    }
}
