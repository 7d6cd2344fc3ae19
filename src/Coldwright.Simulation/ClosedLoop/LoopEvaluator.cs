using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.Charge;
using Coldwright.Machine.ColdVessel;
using Coldwright.Machine.Compression;
using Coldwright.Machine.Description;
using Coldwright.Machine.Insulation;
using Coldwright.Machine.Precooling;
using Coldwright.Machine.Recuperation;
using Coldwright.Machine.Streams;
using Coldwright.Machine.Throttling;
using Coldwright.Numerics;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>Evaluates one pass round the loop of a piece of hardware. Not thread-safe: one object per thread.</summary>
internal sealed class LoopEvaluator
{
    // what the compressor's model takes
    private const double ColdestSuctionK = 60, HottestSuctionK = 500;
    // of the parts' own balances, on the way
    private const double RoughTolerance = 1e-6;

    /// <summary>On the way to an answer.</summary>
    public static readonly CapillaryResolution RoughCapillary = new(6, 6);

    private readonly HelmholtzModel _model;
    private readonly Flash _flash;
    private readonly TransportModel _transport;
    private readonly CapillaryModel _capillary, _roughCapillary;
    private readonly ValveModel _valve;
    private readonly DistributedRecuperator _recuperator, _roughRecuperator;
    private readonly CancellationToken _cancel;
    private readonly LeakEstimate _leak = new();
    private readonly Task<PrecoolerEstimate>? _making;
    private PrecoolerEstimate? _precooler;

    public LoopEvaluator(Hardware hardware, HelmholtzModel model, LoopAccuracy accuracy, CancellationToken cancel, PrecoolerEstimate? precooler = null, PrecoolerEstimate? like = null)
    {
        (Hardware, _model, Accuracy, _cancel) = (hardware, model, accuracy, cancel);
        (_flash, _transport) = (new Flash(model), new TransportModel(model));
        (_capillary, _roughCapillary, _valve) = (new CapillaryModel(_flash, _transport), new CapillaryModel(new Flash(model), _transport) { Resolution = RoughCapillary }, new ValveModel(_flash, _transport));
        var k = hardware.Knobs;
        var options = new RecuperatorOptions
        {
            Cells = accuracy.RecuperatorCells, GridError = false, Band = false, Tolerance = accuracy.RecuperatorTolerance,
            Hot = new SideOptions(null, k.HighFilm, k.HighFriction), Cold = new SideOptions(null, k.LowFilm, k.LowFriction),
        };
        _recuperator = new DistributedRecuperator(hardware.Recuperator, null, hardware.RecuperatorLeak, options);
        _roughRecuperator = new DistributedRecuperator(hardware.Recuperator, null, hardware.RecuperatorLeak, options with { Tolerance = RoughTolerance, Cells = accuracy.RoughCells });
        if (hardware.Precooler is { } pc)
        {
            _precooler = precooler?.In(hardware.RoomK) ?? like?.For(Scaled(pc, k), hardware.RoomK, cancel);
            // its tables are made while a first guess is found
            if (_precooler is null) _making = Task.Run(() => new PrecoolerEstimate(PrecoolerLoop.Create(Scaled(pc, k), hardware.Layout.Precooler!.Loop!.Refrigerant, cancel), hardware.RoomK), cancel);
        }
        Tables = new LoopTablesMaker(model, hardware, accuracy.Tables, cancel, accuracy.RoughTables);
    }

    public Hardware Hardware { get; }
    public LoopAccuracy Accuracy { get; }
    public HelmholtzModel Model => _model;
    public LoopTablesMaker Tables { get; }
    /// <summary>The precooler's model with its tables, to be used again where it is the same.</summary>
    public PrecoolerEstimate? Precooler => _precooler ??= _making?.GetAwaiter().GetResult();
    public int Passes { get; private set; }
    public CancellationToken Cancel => _cancel;

    private static PrecoolerMachine Scaled(PrecoolerMachine m, LoopKnobs k) => m with
    {
        Evaporator = m.Evaporator with { ConductanceWPerK = m.Evaporator.ConductanceWPerK * k.PrecoolerConductance },
        Compressor = m.Compressor with { DisplacementM3 = m.Compressor.DisplacementM3 * k.PrecoolerFlow },
    };

    /// <summary>The pass at a state.</summary>
    /// <param name="s">State.</param>
    /// <param name="loadK">K.</param>
    /// <param name="t">Tables of the state's composition.</param>
    /// <param name="warm">A similar exchanger to start from.</param>
    /// <param name="target">What is held.</param>
    /// <param name="estimate">Stands in for the throttle's model; null: the model itself.</param>
    /// <param name="rough">Parts need not close their own balances to rounding: on the way to an answer.</param>
    /// <exception cref="SolveException">A part has no answer there.</exception>
    public LoopPass Run(LoopState s, double loadK, LoopTables t, RecuperatorResult? warm, LoopTarget target, ThrottleEstimate? estimate = null, LoopCare care = LoopCare.Exact)
    {
        _cancel.ThrowIfCancellationRequested();
        Passes++;
        bool rough = care == LoopCare.Rough;
        var (h, k) = (Hardware, Hardware.Knobs);
        double suction = s.SuctionPa, coilPa = s.CoilPa, drop = h.Layout.Aftercooler.PressureDropPa;
        BufferState? buffer = t.Buffer?.At(s.X[LoopState.High], suction);
        double ac = buffer?.HighPa ?? Math.Exp(s.X[LoopState.High]) - drop, discharge = ac + drop;
        if (!(ac > 1.02 * coilPa) || !(discharge > 1.02 * suction)) throw new SolveException(new SolveReport(SolveStatus.Outside, 0, double.NaN, FormattableString.Invariant(
            $"the high side at {ac / 1e5:0.###} bar absolute would not be above the low side at {Math.Max(coilPa, suction) / 1e5:0.###}")));
        double suctionK = t.Low.Temperature(s.SuctionEnthalpy, suction, out _);
        if (!rough) suctionK = _flash.PressureEnthalpy(suction, s.SuctionEnthalpy, t.Z, suctionK).TemperatureK;
        if (suctionK is not (> ColdestSuctionK and < HottestSuctionK)) throw new SolveException(new SolveReport(SolveStatus.Outside, 0, suctionK, FormattableString.Invariant(
            $"the gas would come back to the compressor at {suctionK:0.#} K, outside {ColdestSuctionK:0} to {HottestSuctionK:0} K")));
        var compressor = t.Compressor(new CompressorDuty { SuctionTemperatureK = suctionK, SuctionPressurePa = suction, DischargePressurePa = discharge, RoomTemperatureK = h.RoomK });
        double compressed = compressor.MolarFlow * k.CompressorFlow;
        double bypass = buffer?.BypassFlow ?? 0, n = compressed - bypass;
        if (!(n > 1e-3 * compressed)) throw new SolveException(new SolveReport(SolveStatus.NoSolution, 0, n, FormattableString.Invariant(
            $"the buffer lets past all that the compressor moves ({compressed:0.#####} mol/s) at {ac / 1e5:0.##} bar absolute: nothing is left to circulate")));

        double aftercooled = rough ? t.High.Enthalpy(h.AftercooledK, ac) : _flash.TemperaturePressure(h.AftercooledK, ac, t.Z).MolarEnthalpy, before = aftercooled, returned = s.LowOutletEnthalpy;
        double warmHeat = 0;
        if (h.Layout.WarmExchanger is { } wx)
        {
            warmHeat = WarmExchange.Heat(t.High, aftercooled, ac, t.Low, returned, suction, wx.ConductanceWPerK / n);
            before = aftercooled - warmHeat;
        }
        var (inlet, precooler, precooling) = Precool(t, before, ac, n, care);
        double inletK = t.High.Temperature(inlet, ac, out _);

        var (coil, coilOut, coilOutPa) = Coil(s, t, n, loadK, rough);
        Within(t.High, inlet, ac, "high", "recuperator");
        Within(t.Low, coilOut, coilOutPa, "low", "recuperator");
        var r = (rough ? _roughRecuperator : _recuperator).Solve(new StreamInlet(t.High, n, inlet, ac), new StreamInlet(t.Low, n, coilOut, coilOutPa), warm, _cancel);
        var at = new ThrottleInlet(r.Hot.OutletPressurePa, r.Hot.OutletEnthalpy, r.Hot.OutletK, t.Z);
        if (!(at.PressurePa > 1.01 * coilPa)) throw new SolveException(new SolveReport(SolveStatus.Outside, 0, double.NaN, FormattableString.Invariant(
            $"the high side loses so much pressure in the recuperator that only {at.PressurePa / 1e5:0.###} bar absolute arrive at the throttle")));
        if (estimate is { Known: false }) estimate.Ask(at, coilPa, rough);
        var (throttle, choked, doubt) = estimate is null ? ThrottleFlow(at, coilPa, false) : (estimate.Flow(at, coilPa), estimate.Choked, estimate.Uncertainty);

        var leak = care == LoopCare.Exact ? Leak(loadK, inletK) : _leak.At(loadK, inletK, Leak);
        double afterTubes = r.Cold.OutletEnthalpy + leak.WarmW / n, afterWarm = afterTubes + warmHeat;
        double bypassEnthalpy = buffer is null ? 0 : _flash.TemperaturePressure(h.RoomK, suction, t.Z).MolarEnthalpy;
        double mixed = (n * afterWarm + bypass * bypassEnthalpy) / compressed;

        var pass = new LoopPass
        {
            State = s, Tables = t, LoadK = loadK, DischargePa = discharge, Compressor = compressor, Buffer = buffer, Flow = n, ThrottleFlow = throttle, ThrottleChoked = choked, ThrottleUncertainty = doubt,
            Aftercooled = aftercooled, BeforePrecooler = before, RecuperatorInlet = inlet, RecuperatorInletK = inletK, AftercooledPa = ac, Precooler = precooler, PrecoolingW = precooling, Recuperator = r,
            Coil = coil, CoilOutlet = coilOut, CoilOutletPa = coilOutPa, ReturnGas = afterTubes, AfterWarmExchanger = afterWarm, BypassEnthalpy = bypassEnthalpy,
            WarmEndLeakW = leak.WarmW, ColdEndLeakW = leak.ColdW, LeakDeviationW = leak.DeviationW, LeakPaths = leak.Paths,
            GrossCoolingW = n * (coilOut - s.ThrottleEnthalpy), Moles = [], LiquidMoles = [], Contents = [],
        };
        pass = new Inventory(_model, _flash).Fill(pass, h);
        return pass with { Residuals = Residuals(pass, s, mixed, target) };
    }

    // a trial may lead a stream out of its table
    private static void Within(StreamTable table, double enthalpy, double pressurePa, string side, string part)
    {
        var (low, high) = table.Range(pressurePa);
        if (!(enthalpy >= low && enthalpy <= high)) throw new SolveException(new SolveReport(SolveStatus.Outside, 0, enthalpy, FormattableString.Invariant(
            $"the {side} side would enter the {part} with {enthalpy:0.#} J/mol, outside the {low:0.#} to {high:0.#} J/mol that its table covers at {pressurePa / 1e5:0.###} bar absolute")));
    }

    /// <summary>Of a composition at a temperature (K) and a pressure (Pa), J/mol.</summary>
    public double Enthalpy(double temperatureK, double pressurePa, double[] z) => _flash.TemperaturePressure(temperatureK, pressurePa, z).MolarEnthalpy;

    private double[] Residuals(LoopPass p, LoopState s, double mixedSuction, LoopTarget target)
    {
        var f = new double[s.Count];
        double lowEnd = p.Recuperator.Cold.OutletPressurePa;
        f[LoopBalances.Flow] = Math.Log(p.ThrottleFlow * Hardware.Knobs.ThrottleFlow / p.Flow);
        f[LoopBalances.LowPressure] = Math.Log(lowEnd / s.SuctionPa);
        f[LoopBalances.Suction] = (mixedSuction - s.SuctionEnthalpy) / LoopState.EnthalpyScale;
        f[LoopBalances.Throttle] = (p.Recuperator.Hot.OutletEnthalpy - s.ThrottleEnthalpy) / LoopState.EnthalpyScale;
        f[LoopBalances.LowOutlet] = (p.ReturnGas - s.LowOutletEnthalpy) / LoopState.EnthalpyScale;
        double total = p.Moles.Sum();
        f[LoopBalances.Charge] = Math.Log(total / Hardware.ChargeMol);
        var charged = Hardware.Machine.Charge.Mixture.MoleFractions;
        for (int i = 1; i < p.Moles.Length; i++) f[LoopBalances.FirstFraction + i - 1] = Math.Log(p.Moles[i] / p.Moles[0] * charged[0] / charged[i]);
        target.Hold(f, p.AftercooledPa, s.SuctionPa);
        return f;
    }

    private (double Enthalpy, PrecoolerResult? Result, double HeatW) Precool(LoopTables t, double before, double pressurePa, double n, LoopCare care)
    {
        if (Hardware.Layout.Precooler is not { } part) return (before, null, 0);
        if (Precooler is null)
        {
            double beforeK = t.High.Temperature(before, pressurePa, out _), outlet = part.OutletTemperatureK < beforeK ? t.High.Enthalpy(part.OutletTemperatureK, pressurePa) : before;
            return (outlet, null, n * (before - outlet));
        }
        var r = Precooler.At(t, before, pressurePa, n, care, _cancel);
        return (before - r.CoolingW / n, r, r.CoolingW);
    }

    private (IsothermalCoilResult?, double Enthalpy, double PressurePa) Coil(LoopState s, LoopTables t, double n, double loadK, bool rough)
    {
        double coilPa = s.CoilPa;
        if (Hardware.Coil is { } coil)
        {
            var r = (coil with { FilmScale = coil.FilmScale * Hardware.Knobs.CoilFilm, Settled = rough ? RoughTolerance : 0 }).Solve(new StreamInlet(t.Low, n, s.ThrottleEnthalpy, coilPa), loadK);
            return (r, r.OutletEnthalpy, r.OutletPressurePa);
        }
        return (null, t.Low.Enthalpy(loadK - Hardware.Layout.Coil.DifferenceK, coilPa), coilPa);
    }

    /// <summary>The throttle's own model: mol/s, choked, one standard deviation (relative). Rough: on the way to an answer, some parts in a thousand off.</summary>
    public (double MolarFlow, bool Choked, double Uncertainty) ThrottleFlow(ThrottleInlet inlet, double backPa, bool rough)
    {
        if (Hardware.Capillary is { } tube)
        {
            var flow = (rough ? _roughCapillary : _capillary).Flow(tube, inlet, backPa, _cancel);
            return (flow.MolarFlow, flow.Choked, flow.RelativeUncertainty);
        }
        var valve = _valve.Flow(Hardware.Valve!, inlet, backPa, _cancel);
        return (valve.MolarFlow, valve.Choked, valve.RelativeUncertainty);
    }

    /// <summary>What the throttle of a pass is asked.</summary>
    public static (ThrottleInlet Inlet, double BackPa) ThrottleQuestion(LoopPass p) =>
        (new ThrottleInlet(p.Recuperator.Hot.OutletPressurePa, p.Recuperator.Hot.OutletEnthalpy, p.Recuperator.Hot.OutletK, p.Tables.Z), p.State.CoilPa);

    /// <summary>About where the high side stands, Pa, before the tables are there: for their frame.</summary>
    public double RoughHighPa(LoopState s) => Hardware.Buffer is { } b
        ? b.SetPressurePa * Math.Exp(Math.Min(0, s.X[LoopState.High])) + (s.X[LoopState.High] > 0.9 ? b.FullyOpenAbovePa : 0)
        : Math.Exp(s.X[LoopState.High]) - Hardware.Layout.Aftercooler.PressureDropPa;

    private BoxLeak Leak(double loadK, double warmEndK)
    {
        if (Hardware.Enclosure(warmEndK) is not { } box) return new BoxLeak(0, 0, 0, new Dictionary<string, double>());
        var leak = EnclosureSolver.Solve(box, loadK);
        double warm = 0, cold = 0, k = Hardware.Knobs.Leak;
        var paths = new Dictionary<string, double>();
        for (int i = 0; i < leak.Paths.Count; i++)
        {
            double power = k * leak.Paths[i].PowerW;
            // the wall first, then every penetration in order
            if (i > 0 && Parts.BoxEnclosure.EndsWarm(box.Penetrations[i - 1])) warm += power;
            else cold += power;
            paths[leak.Paths[i].Name] = power;
        }
        return new BoxLeak(cold, warm, k * leak.DeviationW, paths);
    }
}
