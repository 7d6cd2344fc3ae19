using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;
using Coldwright.Machine.Compression;
using Coldwright.Machine.Description;
using Coldwright.Machine.Insulation;
using Coldwright.Machine.Layout;
using Coldwright.Machine.Recuperation;
using Coldwright.Materials.Solids;
using Coldwright.Numerics;
using Coldwright.Quantities;

namespace Coldwright.Simulation.Rating;

/// <summary>
/// The loop at a given load temperature, pressures given. Enthalpy curves along the two isobars carry the exchangers;
/// an exact solution takes every end state from its own flash and the compressor from its own model, a curve point takes
/// them from the curves and from the compressor at a few suction temperatures.
/// </summary>
internal sealed class LoopSolver
{
    private const double CompressorStepK = 20;
    private const int MaximumIterations = 100;

    private readonly MachineDescription _machine;
    private readonly LoopLayout _layout;
    private readonly CompressorModel _compressor;
    private readonly BoxHeatLeak? _leak;
    private readonly CounterflowRecuperator _exchanger;
    private readonly Dictionary<int, double> _flowTimesT = [];
    private readonly double[] _z;

    public LoopSolver(MachineDescription machine, LoopLayout layout, HelmholtzModel model, RatingOptions options, CancellationToken cancel)
    {
        (_machine, _layout, Model) = (machine, layout, model);
        _z = machine.Charge.Mixture.MoleFractions.ToArray();
        Flash = new Flash(model);
        _compressor = new CompressorModel(layout.Compressor, Flash, _z);
        HighPressurePa = machine.Operation.HighPressurePa;
        SuctionPressurePa = machine.Operation.LowPressurePa;
        LowPressurePa = SuctionPressurePa + layout.Recuperator.LowSidePressureDropPa;
        DischargePressurePa = HighPressurePa + layout.Aftercooler.PressureDropPa;
        AftercooledK = machine.Room.TemperatureK + layout.Aftercooler.ApproachK;
        double coldest = options.ColdestK - layout.Coil.DifferenceK - 2;
        High = new IsobarCurve(Flash, _z, HighPressurePa, coldest, AftercooledK + 2, options.CurveErrorK, cancel);
        Low = new IsobarCurve(Flash, _z, LowPressurePa, coldest, AftercooledK + 2, options.CurveErrorK, cancel);
        _exchanger = new CounterflowRecuperator(High, Low);
        ColdestLoadK = Math.Max(options.ColdestK, Math.Max(High.ColdestK, Low.ColdestK) + layout.Coil.DifferenceK);
        if (layout.ColdBox is not null) _leak = new BoxHeatLeak(machine, SolidLibrary.Default);
    }

    public HelmholtzModel Model { get; }
    public Flash Flash { get; }
    public IsobarCurve High { get; }
    public IsobarCurve Low { get; }
    public CounterflowRecuperator Exchanger => _exchanger;
    public double HighPressurePa { get; }
    public double LowPressurePa { get; }
    public double SuctionPressurePa { get; }
    public double DischargePressurePa { get; }
    public double AftercooledK { get; }
    public double ColdestLoadK { get; }
    public ReadOnlySpan<double> Z => _z;

    /// <summary>Temperature at which the high-pressure stream enters the recuperator when the precooler does its work, K.</summary>
    public double NominalInletK => _layout.Precooler is { } p ? Math.Min(p.OutletTemperatureK, AftercooledK) : AftercooledK;

    /// <summary>Heat leak at a load temperature; zero without a box.</summary>
    public HeatLeak? Leak(double loadK, double warmEndK) => _leak?.At(loadK, warmEndK);

    public FluidState State(double temperatureK, double pressurePa) => Flash.TemperaturePressure(temperatureK, pressurePa, _z);

    public FluidState StateAtEnthalpy(double pressurePa, double molarEnthalpy, double guessK) => Flash.PressureEnthalpy(pressurePa, molarEnthalpy, _z, guessK);

    /// <summary>Solves the loop at a load temperature (K).</summary>
    /// <param name="loadK">Load temperature, K.</param>
    /// <param name="exact">Every end state from its own flash.</param>
    /// <param name="conductance">UA of the recuperator, W/K; null: the machine's; infinity: streams touching.</param>
    public LoopSolution Solve(double loadK, bool exact, double? conductance = null)
    {
        double coldK = loadK - _layout.Coil.DifferenceK;
        var fixedPoints = new Fixed(loadK, coldK, conductance ?? _layout.Recuperator.ConductanceWPerK, exact,
            exact ? State(AftercooledK, HighPressurePa).MolarEnthalpy : High.Enthalpy(AftercooledK),
            exact ? State(coldK, LowPressurePa).MolarEnthalpy : Low.Enthalpy(coldK));
        double flow = FlowAt(AftercooledK - 10), inletK = Math.Max(NominalInletK, coldK);
        double flowTolerance = exact ? 1e-11 : 1e-7, inletTolerance = exact ? 1e-9 : 1e-5;
        var relaxation = new Relaxation();
        for (int i = 0; i < MaximumIterations; i++)
        {
            var pass = Pass(fixedPoints, flow, inletK);
            if (Math.Abs(pass.Flow - flow) <= flowTolerance * flow && Math.Abs(pass.InletK - inletK) <= inletTolerance) return pass.Solution;
            (flow, inletK) = relaxation.Next(flow, pass.Flow, inletK, pass.InletK);
            inletK = Math.Clamp(inletK, coldK, NominalInletK);
        }
        return Bracketed(fixedPoints, flowTolerance, inletTolerance);
    }

    private sealed record Fixed(double LoadK, double ColdK, double Conductance, bool Exact, double Aftercooled, double CoilOutlet);

    // an endless exchanger makes substitution jump: the inlet temperature is then bracketed, the flow settled inside
    private LoopSolution Bracketed(Fixed at, double flowTolerance, double inletTolerance)
    {
        double flow = FlowAt(AftercooledK - 10);
        (LoopSolution Solution, double Flow, double InletK) Settled(double inletK)
        {
            var pass = Pass(at, flow, inletK);
            for (int i = 0; i < 50 && Math.Abs(pass.Flow - flow) > flowTolerance * flow; i++)
            {
                flow = pass.Flow;
                pass = Pass(at, flow, inletK);
            }
            return pass;
        }

        double low = at.ColdK, high = NominalInletK;
        for (int i = 0; i < 80 && high - low > inletTolerance; i++)
        {
            double middle = 0.5 * (low + high);
            if (Settled(middle).InletK > middle) low = middle; else high = middle;
        }
        var last = Settled(0.5 * (low + high));
        if (Math.Abs(last.InletK - 0.5 * (low + high)) <= 100 * inletTolerance && Math.Abs(last.Flow - flow) <= 10 * flowTolerance * flow) return last.Solution;
        throw new SolveException(SolveReport.Telling(SolveStatus.NotConverged, MaximumIterations, Math.Abs(last.InletK - low),
            $"the loop did not settle at a load of {SpokenAmount.Temperature(at.LoadK, "0.#")}: the gas entering the recuperator swings around {SpokenAmount.Temperature(low, "0.##")}; last flow {flow:0.#####} mol/s"));
    }

    // once round the loop with a flow and a recuperator inlet temperature
    private (LoopSolution Solution, double Flow, double InletK) Pass(Fixed at, double flow, double inletK)
    {
        double inlet = at.Exact ? State(inletK, HighPressurePa).MolarEnthalpy : High.Enthalpy(inletK);
        var exchange = _exchanger.Solve(inletK, at.ColdK, at.Conductance / flow);
        double lowOutlet = at.CoilOutlet + exchange.Duty;
        var leak = Leak(at.LoadK, inletK);
        double returned = lowOutlet + (leak?.WarmEndW ?? 0) / flow, suction = returned, beforePrecooler = at.Aftercooled;
        CounterflowResult? warm = null;
        if (_layout.WarmExchanger is { } wx)
        {
            double returnK = Math.Min(Low.Temperature(returned), AftercooledK);
            warm = _exchanger.Solve(AftercooledK, returnK, wx.ConductanceWPerK / flow);
            suction = returned + warm.Duty;
            beforePrecooler = at.Aftercooled - warm.Duty;
        }
        CompressorResult compressor;
        if (at.Exact)
        {
            double suctionK = StateAtEnthalpy(SuctionPressurePa, suction, Low.Temperature(suction)).TemperatureK;
            compressor = _compressor.Run(suctionK, SuctionPressurePa, DischargePressurePa);
        }
        else compressor = new CompressorResult(FlowAt(Low.Temperature(suction)), double.NaN, double.NaN, double.NaN, null!, null!);
        if (!(compressor.MolarFlow > 0)) throw NoFlow();
        double nextInletK = Math.Max(at.ColdK, Math.Min(NominalInletK, High.Temperature(beforePrecooler)));
        var solution = new LoopSolution
        {
            LoadTemperatureK = at.LoadK,
            Compressor = compressor,
            Exchanger = exchange,
            Warm = warm,
            AfterAftercooler = at.Aftercooled,
            BeforePrecooler = beforePrecooler,
            RecuperatorInlet = inlet,
            RecuperatorInletK = inletK,
            ThrottleInlet = inlet - exchange.Duty,
            CoilOutlet = at.CoilOutlet,
            RecuperatorLowOutlet = lowOutlet,
            ReturnGas = returned,
            SuctionEnthalpy = suction,
            WarmEndLeakW = leak?.WarmEndW ?? 0,
            ColdEndLeakW = leak?.ColdEndW ?? 0,
            LeakPaths = leak?.Paths.ToDictionary(p => p.Name, p => p.PowerW) ?? [],
            GrossCoolingW = flow * (at.CoilOutlet - inlet + exchange.Duty),
            PrecoolingOfMixtureW = flow * (beforePrecooler - inlet),
        };
        return (solution, compressor.MolarFlow, nextInletK);
    }

    // flow x suction temperature is nearly constant, so a straight line between 20 K steps errs by 1e-5
    private double FlowAt(double suctionK)
    {
        int k = (int)Math.Floor(suctionK / CompressorStepK);
        double a = Node(k), b = Node(k + 1), share = suctionK / CompressorStepK - k;
        return ((1 - share) * a + share * b) / suctionK;

        double Node(int i)
        {
            if (_flowTimesT.TryGetValue(i, out double value)) return value;
            double t = i * CompressorStepK;
            value = _compressor.Run(t, SuctionPressurePa, DischargePressurePa).MolarFlow * t;
            return _flowTimesT[i] = value;
        }
    }

    private SolveException NoFlow() => new(SolveReport.Telling(SolveStatus.NoSolution, 0, double.NaN,
        $"compressor '{_layout.Compressor.Name}' moves no gas: from {SpokenAmount.Pressure(SuctionPressurePa, "0.##")} to {SpokenAmount.Pressure(DischargePressurePa, "0.##")} its clearance and leakage take the whole stroke; lower the pressure ratio or the clearance"));
}
