using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Machine.Throttling;
using Coldwright.Quantities;
using Coldwright.Simulation.Parts.Compression;
using Coldwright.Simulation.Rating;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>Rates a cooler by closing its loop with one fluid model.</summary>
internal static class ClosedRating
{
    private const int CurveStations = 120;

    /// <summary>The loop closed with a fluid model.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="layout">Its layout.</param>
    /// <param name="model">Fluid model.</param>
    /// <param name="held">Which pressures are held.</param>
    /// <param name="options">How.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <param name="compressor">The compressor as described, worked out before; null: here.</param>
    /// <param name="seed">The same machine closed with another model, to start from.</param>
    /// <param name="begin">True: its start from rest is worked out meanwhile on another thread, where a rating is to follow.</param>
    public static ClosedSolver Close(MachineDescription machine, LoopLayout layout, HelmholtzModel model, HeldPressure held, RatingOptions options, CancellationToken cancel, DescribedCompressor? compressor = null, ClosedSolver? seed = null, bool begin = false)
    {
        var hardware = HardwareReader.Read(machine, layout, model, cancel, compressor);
        var target = Target(machine, layout, held);
        var solver = new ClosedSolver(hardware, model, target, options, cancel);
        // a charge that is the answer is not known yet
        if (begin && !target.ChargeIsFree) solver.StartUp = Task.Run(() => StartUp.Of(hardware, model, target, hardware.ChargeMol, MolarMass(machine, model), new LoopAccuracy(), cancel), cancel);
        try
        {
            solver.Solve(seed);
        }
        finally
        {
            if (solver.StartUp is { } beside) ((IAsyncResult)beside).AsyncWaitHandle.WaitOne();
        }
        return solver;
    }

    private static double MolarMass(MachineDescription machine, HelmholtzModel model)
    {
        var z = machine.Charge.Mixture.MoleFractions;
        double mass = 0;
        for (int i = 0; i < z.Count; i++) mass += z[i] * model.Substances[i].MolarMass;
        return mass;
    }

    /// <summary>The rating of a closed loop.</summary>
    public static ModelRating Of(ClosedSolver solver, ShopDescription shop, HelmholtzModel model, RatingOptions options, CancellationToken cancel) => Of(solver, shop, model, solver.Closer.Target, options, cancel);

    public static LoopTarget Target(MachineDescription machine, LoopLayout layout, HeldPressure held) =>
        new(held, machine.Operation.SolveFor, machine.Operation.HighPressurePa, machine.Operation.LowPressurePa, layout.Aftercooler.PressureDropPa);

    private static ModelRating Of(ClosedSolver s, ShopDescription shop, HelmholtzModel model, LoopTarget target, RatingOptions options, CancellationToken cancel)
    {
        var (h, flash) = (s.Hardware, new Flash(model));
        var point = ClosedPointBuilder.Build(h, s.Operating.Pass, flash, s.Product);
        var p = point.Pass;
        var curve = s.Curve.Select(c => CurvePoint(c.Pass)).Append(CurvePoint(p)).Concat(s.NoLoad is { } n ? [CurvePoint(n.Pass)] : []).GroupBy(c => Math.Round(c.TemperatureK, 1)).Select(g => g.Last()).OrderBy(c => c.TemperatureK).ToArray();
        return new ModelRating
        {
            Model = model.Name,
            NoLoadTemperatureK = s.NoLoad?.Pass.LoadK,
            ThrottleOutletK = point.States.ThrottleOutlet.TemperatureK,
            CoolingCurve = curve,
            OperatingTemperatureK = p.LoadK,
            Recuperator = Stations(p),
            IsothermalEnthalpyDifference = Differences(p),
            Loop = point.Loop,
            Power = point.Power,
            HeatLeakW = p.Recuperator.LeakW != 0 ? p.LeakPaths.Append(new("along the recuperator", p.Recuperator.LeakW)).ToDictionary(x => x.Key, x => x.Value) : p.LeakPaths,
            Liquid = point.Liquid,
            EnergyKWhPerL = point.Liquid is { CollectedLPerH: > 0 } l ? point.Power.TotalW / 1000 / l.CollectedLPerH : null,
            CostPerL = LitreCost.Of(shop, point.Liquid, point.Power.TotalW, h.Machine.Charge.Mixture, h.ChargeMol, model),
            CarnotFraction = s.Product is not null ? point.Exergy.ProductW / point.Power.TotalW : Math.Max(0, curve.Max(c => c.NetCoolingW * (h.RoomK / c.TemperatureK - 1))) / point.Power.TotalW,
            Exergy = point.Exergy,
            Balance = point.Balance,
            Limits = point.Limits,
            LimitedBy = ClosedVerdict.Find(h, point, s.Target, s.NoLoad?.Pass.LoadK, s.Product),
            Closed = Closed(s, h, p, model, target, cancel) with { Sensitivity = options.Sensitivity ? new Sensitivities(s, model, target, new LoopAccuracy(), cancel).Find() : null },
            Warnings = [.. Spoken.All([.. model.Warnings, .. h.Layout.ColdBox is null ? ["no cold-box is described: the heat leak is taken as zero and the cooling is too good"] : Array.Empty<string>()]).Concat(s.Warnings).Concat(point.Warnings).Distinct()],
        };
    }

    private static CoolingPoint CurvePoint(LoopPass p)
    {
        var r = p.Recuperator;
        return new CoolingPoint(p.LoadK, p.GrossCoolingW, p.ColdEndLeakW, r.Hot.InletK - r.Cold.OutletK, r.Pinch.DifferenceK, r.Pinch.HotK);
    }

    private static RecuperatorStation[] Stations(LoopPass p)
    {
        double done = 0, duty = p.Recuperator.DutyW, dx = p.Recuperator.Profile.Count > 1 ? p.Recuperator.Profile[1].PositionM - p.Recuperator.Profile[0].PositionM : 0;
        var stations = new List<RecuperatorStation>();
        foreach (var s in p.Recuperator.Profile)
        {
            double half = 0.5 * s.HeatPerLength * dx;
            stations.Add(new RecuperatorStation(Math.Clamp((done + half) / duty, 0, 1), s.HotK, s.ColdK, s.HotPhases, s.ColdPhases));
            done += 2 * half;
        }
        return [.. stations];
    }

    private static (double, double)[] Differences(LoopPass p)
    {
        double cold = Math.Max(p.Tables.High.ColdestK, p.Tables.Low.ColdestK), warm = Math.Min(p.Tables.High.WarmestK, p.Tables.Low.WarmestK), end = p.Recuperator.Cold.InletK;
        return [.. Enumerable.Range(0, CurveStations + 1).Select(i => cold + (warm - cold) * i / CurveStations).Append(end).Append(p.RecuperatorInletK).Where(t => t >= cold && t <= warm).Distinct().Order()
            .Select(t => (t, p.Tables.Low.Enthalpy(t, p.CoilOutletPa) - p.Tables.High.Enthalpy(t, p.AftercooledPa)))];
    }

    private static ClosedLoopResult Closed(ClosedSolver s, Hardware h, LoopPass p, HelmholtzModel model, LoopTarget target, CancellationToken cancel)
    {
        double total = p.Moles.Sum(), mass = 0, chargeError = 0;
        var charged = h.Machine.Charge.Mixture.MoleFractions;
        double reference = target.ChargeIsFree ? total : h.ChargeMol;
        for (int i = 0; i < p.Moles.Length; i++)
        {
            mass += p.Moles[i] * model.Substances[i].MolarMass;
            chargeError = Math.Max(chargeError, Math.Abs(p.Moles[i] / (reference * charged[i]) - 1));
        }
        double length = double.NaN;
        if (target.ThrottleIsFree && h.Capillary is { } tube)
            length = new CapillaryModel(new Flash(model), new Fluids.Transport.TransportModel(model))
                .Length(tube, new ThrottleInlet(p.Recuperator.Hot.OutletPressurePa, p.Recuperator.Hot.OutletEnthalpy, p.Recuperator.Hot.OutletK, p.Tables.Z), p.State.CoilPa, p.Flow * p.MolarMass, cancel).LengthM;
        double perMole = mass / total;
        return new ClosedLoopResult
        {
            Held = target.Held,
            Charged = h.Machine.Charge.Mixture,
            ChargeKg = mass,
            ChargeIsAnswer = target.ChargeIsFree,
            ThrottleLengthM = double.IsNaN(length) ? null : length,
            ThrottleOpening = target.ThrottleIsFree && h.Valve is not null ? p.Flow / p.ThrottleFlow : null,
            ChargeError = chargeError,
            LoopError = p.Residuals.Where((_, i) => i < LoopBalances.FirstFraction && i != LoopBalances.Charge).Max(Math.Abs),
            ThrottleError = target.ThrottleIsFree ? 0 : Math.Exp(p.ThrottleOff) - 1,
            Contents = [.. p.Contents.Select(c => new LoopContent(c.Place, c.Kg, c.Moles > 0 ? c.LiquidMoles / c.Moles : 0, c.LiquidKg))],
            LiquidShare = p.LiquidMoles.Sum() / total,
            ThrottleChoked = p.ThrottleChoked,
            PrecoolerEvaporatingK = p.Precooler?.EvaporatingK,
            PrecoolerRunShare = p.Precooler?.RunShare,
            RecuperatorInletK = p.RecuperatorInletK,
            Buffer = p.Buffer is { } b ? new BufferAtWork(b.PressurePa, b.Opening, b.BypassFlow / (p.Flow + b.BypassFlow)) : null,
            CoilDifferenceK = p.LoadK - p.Tables.Low.Temperature(p.CoilOutlet, p.CoilOutletPa, out _),
            StartUp = s.StartUp?.GetAwaiter().GetResult() ?? StartUp.Of(h, model, target, reference, perMole, new LoopAccuracy(), cancel),
        };
    }
}
