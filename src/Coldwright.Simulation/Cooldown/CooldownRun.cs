using Coldwright.Machine.Description;
using Coldwright.Numerics;
using Coldwright.Numerics.Integration;
using Coldwright.Simulation.ClosedLoop;

namespace Coldwright.Simulation.Cooldown;

/// <summary>One run in time: pieces between which the composition that circulates is brought up to date. Not thread-safe.</summary>
internal sealed class CooldownRun
{
    /// <summary>Time after which nothing moves any more, s.</summary>
    public const double ForeverS = 10 * 86400;

    private const double FirstPieceS = 20, PieceShare = 0.6, PieceK = 45, LnFrame = 0.09, MostLnFraction = 0.5, SettledDrift = 5e-4, CountedS = 60, MovingK = 0.5, SettlingS = 6 * 3600, LookedAtK = 4, StillK = 5e-3, StillDrift = 6e-4, StartReach = 1.3, MovingReach = 1.12, StillReach = 1.04, SlowKPerS = 2.0 / 3600, ComeThroughK = 25, SlowShare = 0.15, AimedShare = 0.8, LongShare = 0.2, SwingShare = 0.5, FirstStepShare = 0.3, SameZ = 1e-9, JacobianCost = 25, JacobianCostWithSlopes = 6, SlopeLooseness = 30;
    private readonly Plant _plant;
    private readonly LoopMapMaker _maker;
    private readonly CooldownOptions _options;
    private readonly CancellationToken _cancel;
    private readonly double[] _factors;
    private readonly double[] _charged;
    private readonly Action<RunSample>? _record;
    private PlantEquations _f = null!;
    private double[] _state = [];
    private readonly CompositionMending _mending = new();
    private bool _until;
    private double _pieceS = FirstPieceS;
    private double[]? _lastZ;
    private double _stopAtS, _lookedK;
    private (double LengthS, double MovedK)? _piece;
    // of the next piece, s; 0: the integrator's own choice
    private double _firstStep;

    /// <param name="plant">The machine.</param>
    /// <param name="maker">Maps.</param>
    /// <param name="options">How.</param>
    /// <param name="factors">Factors of <see cref="PlantParameters"/>.</param>
    /// <param name="record">Told every moment that is kept; null: none is.</param>
    /// <param name="cancel">Cancels the work.</param>
    public CooldownRun(Plant plant, LoopMapMaker maker, CooldownOptions options, double[] factors, Action<RunSample>? record, CancellationToken cancel)
    {
        (_plant, _maker, _options, _factors, _record, _cancel) = (plant, maker, options, factors, record, cancel);
        (_charged, ChargeMol) = Charge(plant.Hardware, maker.Model, factors[PlantParameters.LightGas]);
    }

    // mole fractions and mol with a factor on the amount of the lightest gas, that of the lowest critical temperature
    private static (double[] Z, double Mol) Charge(Hardware h, Fluids.EquationsOfState.HelmholtzModel model, double lightGas)
    {
        double[] z = [.. h.Machine.Charge.Mixture.MoleFractions];
        z[Enumerable.Range(0, z.Length).MinBy(i => model.Substances[i].CriticalTemperatureK)] *= lightGas;
        double sum = z.Sum();
        Normalise(z);
        return (z, h.ChargeMol * sum);
    }

    /// <summary>Mole fractions of the charge.</summary>
    public double[] Charged => _charged;
    /// <summary>In the loop, before the factor on all of it, mol.</summary>
    public double ChargeMol { get; }
    /// <summary>In the loop, mol.</summary>
    public double TotalMol => ChargeMol * _factors[PlantParameters.Charge];
    /// <summary>Told of every step of a run with slopes; null: nobody is.</summary>
    public SlopeRecorder? SlopesAt { get; init; }
    public double TimeS { get; private set; }
    public ReadOnlySpan<double> State => _state;
    public double LoadK => _plant.Load.Temperature(_state[_plant.Layout.Load]);
    public PlantEquations Equations => _f;
    public double[] Z => _f.Loop.Tables.Z;
    public double Drift { get; private set; }
    /// <summary>Largest drift at the end of a piece.</summary>
    public double WorstDrift { get; private set; }
    public int Steps { get; private set; }
    public int Jacobians { get; private set; }
    public long Evaluations { get; private set; }
    public int Pieces { get; private set; }
    /// <summary>Largest difference of heat stored, carried off and let in, over the heat carried off.</summary>
    public double EnergyError { get; private set; }
    public SolveReport? Stopped { get; private set; }
    /// <summary>True: cancelled on the way.</summary>
    public bool Interrupted { get; private set; }
    private double _startHeat;
    private readonly List<Crossing> _crossings = [];
    private double[]? _slopes;

    /// <summary>True: one composition and its tables all along.</summary>
    public bool Frozen { get; init; }
    /// <summary>Load temperatures whose times are wanted, K.</summary>
    public IReadOnlyList<double> TimedK { get; set; } = [];
    /// <summary>Highest pressure of the high side at the compressor so far, Pa.</summary>
    public double HighestPa { get; private set; }
    /// <summary>Those passed so far.</summary>
    public IReadOnlyList<Crossing> Crossings => _crossings;
    /// <summary>Slopes of the state by the factors, one run of unknowns after another; null when not carried along.</summary>
    public double[]? Slopes => _slopes;
    /// <summary>Evaluations that the slopes took.</summary>
    public long SlopeEvaluations { get; private set; }

    /// <summary>Everything at one temperature (the room's), or settled to a load temperature.</summary>
    public void Start(double? loadK)
    {
        var (l, h) = (_plant.Layout, _plant.Hardware);
        var guess = _maker.Guess;
        double start = loadK ?? h.RoomK, drop = h.Layout.Aftercooler.PressureDropPa, flow = 0.02;
        double high = h.Buffer is { } b ? b.SetPressurePa * Math.Exp(Math.Min(0, guess.X[ClosedLoop.LoopState.High])) : Math.Exp(guess.X[ClosedLoop.LoopState.High]) - drop;
        var at = new PlantPoint
        {
            LoadK = start, HighPa = high, DischargePa = high + drop, ThrottlePa = 0.98 * high, SuctionPa = guess.SuctionPa, CoilPa = guess.CoilPa, SuctionK = h.RoomK, ThrottleK = Math.Min(start + 4, h.RoomK), DischargeK = h.RoomK + 60, Flow = flow, ReturnEnthalpy = guess.LowOutletEnthalpy,
        };
        flow = _maker.GuessedFlow(at.ThrottlePa, at.CoilPa) ?? flow;
        at.Flow = flow;
        var map = _maker.Make(_charged, at, null, start, SameZ, StartReach);
        _f = new PlantEquations(_plant, _maker.Maps) { Loop = map, ChargeMol = ChargeMol };
        _state = new double[l.Count];
        for (int i = 0; i < l.Cells; i++) _state[i] = _plant.Metal.Heat(h.RoomK + (start - h.RoomK) * (i + 0.5) / l.Cells);
        _state[l.Load] = _plant.Load.Heat(start);
        if (_plant.Insulation is { } foam)
        {
            double[] t = foam.Settled(start);
            for (int i = 0; i < t.Length; i++) _state[l.FirstInsulation + i] = foam.Heat[i].Heat(t[i]);
        }
        (_state[l.High], _state[l.LnSuction], _state[l.LnCoil], _state[l.LnFlow], _state[l.Return]) =
            (guess.X[ClosedLoop.LoopState.High], guess.X[ClosedLoop.LoopState.LnSuction], guess.X[ClosedLoop.LoopState.LnCoil], Math.Log(flow), guess.X[ClosedLoop.LoopState.LowOutlet]);
        _state[l.Precooler] = (loadK is null ? h.RoomK : Math.Max(240, start)) / PlantLayout.PrecoolerScale;
        _startHeat = TotalHeat();
    }

    /// <summary>Goes on to a time (s), or to where a load temperature is reached. Cancelled, it stands where it was, <see cref="Interrupted"/>.</summary>
    public void To(double endS, double? loadK, Action<double>? progress)
    {
        _until = false;
        try
        {
            while (TimeS < endS && !_until && Stopped is null && OnePiece(endS, loadK, progress))
            {
            }
        }
        catch (OperationCanceledException)
        {
            Interrupted = true;
        }
    }

    // false: nothing moves any more
    private bool OnePiece(double endS, double? loadK, Action<double>? progress)
    {
        _cancel.ThrowIfCancellationRequested();
        // brought up to date only when the run goes on: a moment looked at between two calls is then one in balance
        if (_piece is { } last && _f.Running && !Frozen) Update(last.LengthS, last.MovedK);
        double from = TimeS, fromK = LoadK;
        Piece(Math.Min(endS, from + (_f.Running && !Frozen ? _pieceS : double.PositiveInfinity)), loadK);
        progress?.Invoke(TimeS);
        _piece = (TimeS - from, Math.Abs(LoadK - fromK));
        if (!_f.Running || Frozen || Stopped is not null) return true;
        // asked for the end of everything: there when neither heat nor composition moves
        return !(endS >= ForeverS && TimeS > SettlingS && TimeS > 1.25 * from && Math.Abs(LoadK - fromK) < StillK && Off(_state, out _, out _) < StillDrift);
    }

    /// <summary>Stops the compressor.</summary>
    public void ShutOff() => _f.Running = false;

    private double TotalHeat()
    {
        var (a, b, c) = _plant.HeatJ(_state, _factors);
        return a + b + c;
    }

    private void Piece(double endS, double? untilK)
    {
        var l = _plant.Layout;
        Pieces++;
        var jacobian = new PlantJacobian(_f);
        if (_f.Running)
        {
            // the start's guess is far off: there the relaxation is the safer way
            if (Pieces > 1) LoopBalance.Settle(jacobian, _state, _factors);
            else jacobian.Refresh(_state, _factors);
        }
        var problem = new InitialValueProblem(l.Count, _f.Slope) { Parameters = _factors[..PlantParameters.SlopeCount], Jacobian = jacobian.Fill };
        var tolerances = new double[l.Count];
        Array.Fill(tolerances, 100 * _options.Tolerance);
        for (int i = l.High; i < l.Cooled; i++) tolerances[i] = _options.Tolerance;
        var events = new List<IntegrationEvent>();
        double now = LoadK;
        if (untilK is { } until)
        {
            double heat = _plant.Load.Heat(until);
            events.Add(IntegrationEvent.WhenZero("until", (_, y, _) => y[l.Load] - heat) with { Effect = EventEffect.Stop });
        }
        if (_f.Running && !Frozen)
        {
            double next = _plant.Load.Heat(now - PieceK);
            events.Add(IntegrationEvent.WhenZero("colder", (_, y, _) => y[l.Load] - next) with { Effect = EventEffect.Stop, Direction = EventDirection.Falling });
            var frame = _f.Loop.Tables.Frame;
            double low = Math.Log(frame.LowFromPa / 1.04), high = Math.Log(frame.LowToPa * 1.04);
            events.Add(IntegrationEvent.WhenZero("low side below its tables", (_, y, _) => y[l.LnSuction] - low) with { Effect = EventEffect.Stop, Direction = EventDirection.Falling });
            events.Add(IntegrationEvent.WhenZero("low side above its tables", (_, y, _) => y[l.LnCoil] - high) with { Effect = EventEffect.Stop, Direction = EventDirection.Rising });
            (_stopAtS, _lookedK) = (double.PositiveInfinity, now);
            events.Add(IntegrationEvent.WhenZero("drift", (t, _, _) => Math.Max(-1, t - _stopAtS)) with { Effect = EventEffect.Stop, Direction = EventDirection.Rising });
            // above 0 the buffer holds the pressure
            double cap = _plant.Hardware.Buffer is null ? double.PositiveInfinity : 0, measure = Math.Min(_state[l.High], cap);
            events.Add(IntegrationEvent.WhenZero("high side", (_, y, _) => LnFrame - Math.Abs(Math.Min(y[l.High], cap) - measure)) with { Effect = EventEffect.Stop, Direction = EventDirection.Falling });
        }
        var options = new IntegrationOptions
        {
            RelativeTolerance = _options.Tolerance, AbsoluteTolerances = tolerances, WithoutErrorControl = [l.Cooled, l.Leaked, l.Electrical], RelativeNoise = 1e-10, MaximumSteps = 4000, JacobianCost = _options.Sensitivity ? JacobianCostWithSlopes : JacobianCost, InitialStep = Math.Min(_firstStep, 0.5 * (endS - TimeS)),
            Sensitivities = _options.Sensitivity ? new SensitivityOptions { Initial = _slopes ?? [], PlainStart = Pieces > 1, Looseness = SlopeLooseness } : null,
        };
        var work = new double[l.Count];
        double longest = 0;
        double[] seen = new double[l.Count];
        double seenS = TimeS;
        IntegrationResult r;
        try
        {
            r = StiffIntegrator.Integrate(problem, TimeS, _state, endS, options, events, step =>
            {
                longest = Math.Max(longest, step.End - step.Start);
                Seen(step, work);
                step.Evaluate(step.End, seen);
                seenS = step.End;
            }, _cancel);
        }
        catch (OperationCanceledException) when (seenS > TimeS)
        {
            (TimeS, _state) = (seenS, seen);
            throw;
        }
        _firstStep = FirstStepShare * longest;
        Steps += r.Statistics.Steps;
        Jacobians += r.Statistics.Jacobians;
        Evaluations += r.Statistics.AllEvaluations;
        (TimeS, _state) = (r.Time, [.. r.State]);
        if (_options.Sensitivity) _slopes = [.. r.Sensitivities.SelectMany(s => s)];
        SlopeEvaluations += r.Statistics.SensitivityEvaluations;
        if (r.StoppedBy == "until") _until = true;
        if (!r.Solved) Stopped = r.Report;
        var ledger = PlantLayout.LedgerJ;
        double imbalance = TotalHeat() - _startHeat + ledger * (_state[l.Cooled] - _state[l.Leaked]) - _plant.LoadW * TimeS;
        EnergyError = Math.Max(EnergyError, Math.Abs(imbalance) / Math.Max(1, ledger * Math.Max(Math.Abs(_state[l.Cooled]), Math.Abs(_state[l.Leaked]))));
    }

    private void Seen(AcceptedStep step, double[] work)
    {
        if (TimedK.Count > 0) Cross(step, work);
        SlopesAt?.Keep(step, _f, _factors);
        if (_record is not null) Sample(step, work);
        if (!_f.Running || Frozen || !double.IsInfinity(_stopAtS)) return;
        step.Evaluate(step.End, work);
        double now = _plant.Load.Temperature(work[_plant.Layout.Load]);
        if (Math.Abs(now - _lookedK) < LookedAtK) return;
        _lookedK = now;
        // the next step is cut where it begins
        if (Off(work, out _, out _) > 1.5 * _options.Drift) _stopAtS = step.End + 1e-3;
    }

    // the load's heat is smooth within a step: bisection
    private void Cross(AcceptedStep step, double[] work)
    {
        int load = _plant.Layout.Load;
        double At(double t)
        {
            step.Evaluate(t, work);
            return _plant.Load.Temperature(work[load]);
        }

        double from = At(step.Start), to = At(step.End);
        foreach (double k in TimedK)
        {
            if ((from > k) == (to > k) || _crossings.Exists(c => c.TemperatureK == k)) continue;
            double a = step.Start, b = step.End;
            for (int i = 0; i < 50; i++)
            {
                double middle = 0.5 * (a + b);
                if ((At(middle) > k) == (from > k)) a = middle; else b = middle;
            }
            double[] byFactor = new double[step.ParameterCount];
            double span = 0.02 * (step.End - step.Start), rate = (At(Math.Min(step.End, b + span)) - At(Math.Max(step.Start, b - span))) / (Math.Min(step.End, b + span) - Math.Max(step.Start, b - span));
            for (int p = 0; p < byFactor.Length; p++)
            {
                step.EvaluateSensitivity(b, p, work);
                byFactor[p] = -work[load] / _plant.Load.Capacity(k) / rate;
            }
            _crossings.Add(new Crossing(k, b, byFactor));
        }
    }

    private void Sample(AcceptedStep step, double[] work)
    {
        double length = step.End - step.Start;
        int parts = Math.Clamp((int)Math.Ceiling(length / Math.Max(10, 0.05 * step.Start)), 1, 4);
        for (int i = 1; i <= parts; i++)
        {
            double time = i == parts ? step.End : step.Start + length * i / parts;
            step.Evaluate(time, work);
            _record!(new RunSample(time, work, this));
            HighestPa = Math.Max(HighestPa, _f.At.DischargePa);
        }
    }

    /// <summary>The machine at a state.</summary>
    public PlantPoint Point(ReadOnlySpan<double> state)
    {
        Span<double> dy = stackalloc double[_plant.Layout.Count];
        _f.Evaluate(state, _factors, dy, slopes: false);
        return _f.At;
    }

    // ln of every substance's share of what the loop holds over its share of the charge; the largest of them
    private double Off(ReadOnlySpan<double> state, out double[] off, out PlantPoint at)
    {
        at = Point(state);
        double[] moles = SpeciesContent.Of(_plant, _f, _maker.Model, at);
        double total = moles.Sum();
        off = new double[moles.Length];
        for (int i = 0; i < off.Length; i++) off[i] = Math.Log(moles[i] / total / _charged[i]);
        return off.Max(Math.Abs);
    }

    // composition, tables and offsets at the end of a piece of so many seconds in which the load moved by so much
    private void Update(double lengthS, double movedK)
    {
        var l = _plant.Layout;
        double worst = Off(_state, out double[] off, out var at);
        bool swings = _mending.Take(off, lengthS > LongShare * TimeS);
        double[] z = [.. Z];
        for (int i = 0; i < z.Length; i++) z[i] *= Math.Exp(-Math.Clamp(_mending.Share * off[i], -MostLnFraction, MostLnFraction));
        Normalise(z);
        Drift = worst;
        // pressures that still come to balance say nothing about the composition's pace
        if (TimeS > CountedS) WorstDrift = Math.Max(WorstDrift, worst);
        // near the plateau a degree hangs on less of the composition than on the way down
        bool slow = movedK < SlowKPerS * lengthS && LoadK < _plant.Hardware.RoomK - ComeThroughK;
        _pieceS = Math.Clamp(lengthS * Math.Clamp((slow ? SlowShare : AimedShare) * _options.Drift / Math.Max(worst, 1e-9), 0.3, swings ? SwingShare : 2.5), FirstPieceS, 120 + PieceShare * TimeS);
        var frame = _f.Loop.Tables.Frame;
        bool holds = frame.Holds(at.ThrottlePa, at.HighPa, at.SuctionPa, at.CoilPa) && frame.ColdestK <= _maker.Frame(at, at.LoadK, StillReach).ColdestK + 8, moving = movedK > MovingK;
        double[]? last = _lastZ;
        _lastZ = [.. z];
        if (holds && worst < SettledDrift)
        {
            // nothing moves but heat: the rest in long pieces, the maps in line with where it now stands
            if (!moving) _f.Loop = _maker.Aligned(_f.Loop.Tables, _f.Loop.Passages, at, _f.Loop);
            return;
        }
        // as it will be in the middle of the next piece
        if (last is not null && moving && !swings)
        {
            double share = Math.Min(1, 0.5 * _pieceS / lengthS);
            for (int i = 0; i < z.Length; i++) z[i] *= Math.Exp(Math.Clamp(share * Math.Log(z[i] / last[i]), -_options.Drift, _options.Drift));
            Normalise(z);
        }
        var before = _f.Loop;
        _f.Loop = _maker.Make(z, at, before, at.LoadK - PieceK, moving && !slow ? 0.5 * _options.Drift : SameZ, moving ? MovingReach : StillReach);
        _state[l.Return] = LoopMapMaker.Carried(before.Tables.Low, _f.Loop.Tables.Low, at.ReturnEnthalpy, at.SuctionPa) / PlantLayout.EnthalpyScale;
    }

    private static void Normalise(double[] z)
    {
        double sum = z.Sum();
        for (int i = 0; i < z.Length; i++) z[i] /= sum;
    }
}

/// <summary>A moment of a run, valid during the call.</summary>
internal readonly ref struct RunSample(double timeS, ReadOnlySpan<double> state, CooldownRun run)
{
    public double TimeS { get; } = timeS;
    public ReadOnlySpan<double> State { get; } = state;
    public CooldownRun Run { get; } = run;
}

/// <summary>A load temperature passed.</summary>
/// <param name="TemperatureK">K.</param>
/// <param name="TimeS">When, s.</param>
/// <param name="ByFactor">Slope of the time by each of <see cref="PlantParameters"/>, s; empty when not carried along.</param>
internal sealed record Crossing(double TemperatureK, double TimeS, double[] ByFactor);
