using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;
using Coldwright.Fluids.Substances;
using Coldwright.Quantities;
using Coldwright.Simulation.Rating;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>Makes a <see cref="ClosedPoint"/> of a closed pass.</summary>
internal static class ClosedPointBuilder
{
    public static ClosedPoint Build(Hardware h, LoopPass p, Flash flash, ProductSolver? product)
    {
        var states = ClosedStates.Of(p, flash);
        var made = ProductMade.Of(h, p, product);
        double compressed = p.Compressor.MolarFlow * h.Knobs.CompressorFlow, power = p.Compressor.ElectricalPowerW * h.Knobs.CompressorFlow * h.Knobs.CompressorPower;
        // the compressor's own figure: as a remainder it would close any balance
        double shell = p.Compressor.ShellHeatW * h.Knobs.CompressorFlow;
        double fans = h.Layout.Aftercooler.FanPowerW + (h.Layout.Precooler?.FanPowerW ?? 0);
        double precoolDuty = p.PrecoolingW + made.FeedPrecoolW;
        // a loop's own power for the mixture's load, the feed's share at the same coefficient of performance
        double precoolW = p.Precooler is { } pc ? pc.CompressorPowerW * (1 + (p.PrecoolingW > 0 ? made.FeedPrecoolW / p.PrecoolingW : 0))
            : h.Layout.Precooler is { } part ? ModelRatingSolver.PrecoolerPowerW(part, h.RoomK, precoolDuty) : 0;
        var split = new PowerSplit(power, precoolW, made.FeedMol * (product?.FeedWork() ?? 0), fans);

        double n = p.Flow, aftercooler = compressed * (states.Discharge.MolarEnthalpy - p.Aftercooled);
        double bypass = compressed - n, fromBuffer = bypass * (p.BypassEnthalpy - p.Aftercooled);
        // in: power, load, leaks, buffer; out: shell, aftercooler, precooler
        double energy = power + p.GrossCoolingW + p.WarmEndLeakW + p.Recuperator.LeakW + fromBuffer - shell - aftercooler - p.PrecoolingW;
        var exergy = ClosedExergy.Build(h, p, states, split, power, compressed, made, product, precoolDuty);
        double exergyError = (exergy.TotalW - exergy.ProductW - exergy.LossesW.Sum(l => l.Watts)) / split.TotalW;
        return new ClosedPoint
        {
            Pass = p,
            States = states,
            Loop = new Rating.LoopState
            {
                HighPressurePa = p.AftercooledPa,
                LowPressurePa = p.State.SuctionPa,
                MolarFlow = n,
                MassFlow = n * p.MolarMass,
                DischargeTemperatureK = states.Discharge.TemperatureK,
                PrecoolingW = precoolDuty,
                RecuperatorDutyW = p.Recuperator.DutyW,
                Composition = new Composition(h.Machine.Charge.Mixture.Names, p.Tables.Z),
                Points = Points(h, states),
            },
            Power = split,
            Liquid = made.Liquid,
            Exergy = exergy,
            Balance = new BalanceErrors(made.MassError, energy / power, exergyError),
            Limits = Limits(h, p, precoolDuty),
            Warnings = Warnings(h, p, states),
        };
    }

    private static List<LoopPoint> Points(Hardware h, ClosedStates s)
    {
        var layout = h.Layout;
        string back = layout.WarmExchanger?.Name ?? layout.Recuperator.Name;
        var points = new List<LoopPoint>
        {
            Point("compressor suction", back, s.Suction), Point("compressor discharge", layout.Compressor.Name, s.Discharge), Point("after the aftercooler", layout.Aftercooler.Name, s.Aftercooled),
        };
        if (layout.WarmExchanger is { } wx) points.Add(Point("before the precooler", wx.Name, s.BeforePrecooler));
        points.Add(Point("into the recuperator", layout.Precooler?.Name ?? layout.Aftercooler.Name, s.RecuperatorInlet));
        points.Add(Point("throttle inlet", layout.Recuperator.Name, s.ThrottleInlet));
        points.Add(Point("throttle outlet", layout.Throttle.Name, s.ThrottleOutlet));
        points.Add(Point("coil outlet", layout.Coil.Name, s.CoilOutlet));
        points.Add(Point("out of the recuperator", layout.Recuperator.Name, s.LowOutlet));
        return points;
    }

    private static LoopPoint Point(string name, string part, FluidState s) => new(name, part, s.TemperatureK, s.PressurePa, s.MolarEnthalpy, s.MolarEntropy, s.VapourFraction, s.PhaseNames);

    private static List<LimitCheck> Limits(Hardware h, LoopPass p, double precoolDuty)
    {
        var c = h.Layout.Compressor;
        double discharge = p.Compressor.Discharge.TemperatureK;
        var limits = new List<LimitCheck> { new("discharge temperature", c.Name, discharge, c.MaximumDischargeTemperatureK, "K", discharge > c.MaximumDischargeTemperatureK) };
        foreach (var part in h.Layout.LoopPath.Select(s => s.Part).Where(x => x.MaximumPressurePa is not null).Distinct())
        {
            double at = part == c || part == h.Layout.Aftercooler ? p.DischargePa : part == h.Layout.Coil ? p.State.CoilPa : p.AftercooledPa;
            limits.Add(new LimitCheck(part == c ? "discharge pressure" : "pressure", part.Name, at, part.MaximumPressurePa!.Value, "Pa", at > part.MaximumPressurePa));
        }
        if (p.Precooler is null && h.Layout.Precooler is { CapacityW: { } capacity } pc) limits.Add(new LimitCheck("precooler duty", pc.Name, precoolDuty, capacity, "W", precoolDuty > capacity));
        return limits;
    }

    private static List<Spoken> Warnings(Hardware h, LoopPass p, ClosedStates s)
    {
        var said = new List<Spoken>();
        if (s.Suction.Phases.Count > 1 || s.Suction.VapourFraction < 1) said.Add("liquid arrives at the compressor's suction: the returning mixture is not all vapour; a longer recuperator or less heavy gas is needed, liquid wrecks compressors");
        said.AddRange(Spoken.All(p.Compressor.Warnings.Where(w => !w.Contains("suction carries liquid", StringComparison.Ordinal))));
        if (p.Precooler is { } pc) said.AddRange(pc.Warnings);
        if (p.Buffer is { Opening: >= 1 } b) said.Add(Spoken.Of($"buffer: the unloading valve is fully open at {SpokenAmount.Pressure(b.HighPa, "0.##")}; the high side can rise further"));
        if (p.Tables.Buffer?.WetAbovePa is { } wet && p.Buffer!.Value.PressurePa > wet) said.Add(Spoken.Of($"buffer: heavy components condense in it from about {SpokenAmount.Pressure(wet, "0.#")}; it then holds back more of them than of the rest"));
        said.AddRange(Spoken.All(p.Recuperator.Warnings));
        said.AddRange(Spoken.All(h.Said));
        said.AddRange(Spoken.All(h.Compressor.Warnings));
        if (!p.ThrottleChoked) said.Add("the throttle is not choked: its flow hangs on the pressure behind it too");
        return said;
    }
}
