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

    private const double FirstPieceS = 20, PieceGrowth = 2.5, PieceS = 120, PieceShare = 0.6, PieceK = 45, SlowK = 8, LnFrame = 0.09, MovingK = 0.5, CountedS = 60, SettlingS = 6 * 3600, StillK = 5e-3, StartReach = 1.3, MovingReach = 1.12, StillReach = 1.04, SlowKPerS = 2.0 / 3600, ComeThroughK = 25;
    // how far what circulates may go from the middle of its tables; where a piece begins no further than a share of it; how far ahead of it new ones are placed
    private const double Room = 0.75, Ahead = 0.7, StillRoom = 0.25;
    private const double FadeShare = 0.1, LeastFadeS = 15, MostFadeS = 300, FirstStepShare = 0.3, JacobianCost = 25, JacobianCostWithSlopes = 6, SlopeLooseness = 30;
    private const int MostStandingParts = 40;
    // of a run with flashes: times by which tables are followed further than a load temperature asked for; residuals that are small enough; looks between the ends of a piece, more
    // of them while the loop comes to its balances
    private const double DirectMargin = 0.03, DirectMarginS = 30, DirectSettled = 2e-3;
    private const int LooksBetween = 1, FirstLooksBetween = 5, MostRounds = 3, MostChecks = 9;
    private readonly Plant _plant;
    private readonly LoopMapMaker _maker;
    private readonly CooldownOptions _options;
    private readonly CancellationToken _cancel;
    private readonly double[] _factors;
    private readonly PlantCharge _charge;
    private readonly Action<RunSample>? _record;
    private PlantEquations _f = null!;
    private double[] _state = [];
    private bool _until;
    private double _pieceS = FirstPieceS;
    private (double LengthS, double MovedK, double[] FromXi)? _piece;
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
        _charge = new PlantCharge(plant.Hardware, maker.Model);
    }

    /// <summary>Mole fractions of the charge.</summary>
    public double[] Charged => _charge.Z(_factors);
    /// <summary>In the loop, mol.</summary>
    public double TotalMol => _charge.Mol(_factors);
    /// <summary>Told of every step of a run with slopes; null: nobody is.</summary>
    public SlopeRecorder? SlopesAt { get; init; }
    public double TimeS { get; private set; }
    public ReadOnlySpan<double> State => _state;
    public double LoadK => _plant.Load.Temperature(_state[_plant.Layout.Load]);
    public PlantEquations Equations => _f;
    /// <summary>Mole fractions that circulate.</summary>
    public double[] Z => _f.Loop.IsHeld ? _f.Loop.Tables.Z : LoopMap.Fractions(Xi);
    private ReadOnlySpan<double> Xi => _state.AsSpan(_plant.Layout.FirstRatio, _plant.Layout.Ratios);
    /// <summary>Furthest that the amount of a substance in the loop was from the charge at a moment kept, relative, the first minute apart; with flashes the largest of all the loop's balances.</summary>
    public double WorstDrift { get; private set; }
    /// <summary>Largest balance that new tables and maps saw otherwise than those before them, relative.</summary>
    public double LargestHandover { get; private set; }
    /// <summary>With flashes: largest heat that the model's own properties see flow otherwise than this run has it, summed over the bodies, over the cooling, at moments between those it was corrected at; 0 on tables.</summary>
    public double HeatResidual { get; private set; }
    /// <summary>With flashes: evaluations of the whole machine with them.</summary>
    public int DirectEvaluations { get; private set; }
    /// <summary>With flashes: states found by following phases, with a certificate, and followed ones that a certificate put elsewhere.</summary>
    public (long Followed, long Certified, long Astray) Flashes => _streams is { } s ? (s.Followed, s.Certified, s.Astray) : default;
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
    // compressor stopped, s; 0 while it runs
    private double _stoppedS;
    private readonly List<Crossing> _crossings = [];
    private double[]? _slopes;
    // of a run with flashes: the pieces followed on tables; where one is looked at again
    private List<PathPiece>? _path;
    private PathPiece? _looked;
    private (PathPiece Piece, double TimeS, List<(PathPiece, double, double[])> Moments)? _checked;
    private DirectStreams? _streams;

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
        double[] charged = Charged, xi = LoopMap.Xi(charged);
        double start = loadK ?? h.RoomK, drop = h.Layout.Aftercooler.PressureDropPa, flow = 0.02;
        double high = h.Buffer is { } b ? b.SetPressurePa * Math.Exp(Math.Min(0, guess.X[ClosedLoop.LoopState.High])) : Math.Exp(guess.X[ClosedLoop.LoopState.High]) - drop;
        var at = new PlantPoint
        {
            LoadK = start, HighPa = high, DischargePa = high + drop, ThrottlePa = 0.98 * high, SuctionPa = guess.SuctionPa, CoilPa = guess.CoilPa, SuctionK = h.RoomK, ThrottleK = Math.Min(start + 4, h.RoomK), DischargeK = h.RoomK + 60, Flow = flow, ReturnEnthalpy = guess.LowOutletEnthalpy,
        };
        flow = _maker.GuessedFlow(at.ThrottlePa, at.CoilPa) ?? flow;
        at.Flow = flow;
        var map = _maker.Make(charged, xi, at, PieceK, Room * _options.Reach, StartReach, false, null);
        _f = new PlantEquations(_plant, _maker.Maps, _charge) { Loop = map };
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
        xi.CopyTo(_state, l.FirstRatio);
        _state[l.Precooler] = (loadK is null ? h.RoomK : Math.Max(240, start)) / PlantLayout.PrecoolerScale;
        _startHeat = TotalHeat();
    }

    /// <summary>Goes on to a time (s), or to where a load temperature is reached. Cancelled, it stands where it was, <see cref="Interrupted"/>.</summary>
    public void To(double endS, double? loadK, Action<double>? progress)
    {
        _until = false;
        try
        {
            while (TimeS < endS && !_until && Stopped is null && (_options.Direct && _f.Running ? Direct(endS, loadK, progress) : OnePiece(endS, loadK, progress)))
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
        if (_piece is { } last && _f.Running) Renew(last.LengthS, last.MovedK, last.FromXi);
        double from = TimeS, fromK = LoadK;
        double[] fromXi = Xi.ToArray();
        Piece(Math.Min(endS, from + (_f.Running ? _pieceS : double.PositiveInfinity)), loadK);
        progress?.Invoke(TimeS);
        _piece = (TimeS - from, Math.Abs(LoadK - fromK), fromXi);
        if (!_f.Running || Stopped is not null) return true;
        // asked for the end of everything: there when nothing moves
        return !(endS >= ForeverS && TimeS > SettlingS && TimeS > 1.25 * from && Math.Abs(LoadK - fromK) < StillK);
    }

    /// <summary>Stops the compressor.</summary>
    public void ShutOff() => (_f.Running, _f.Correction, _stoppedS) = (false, null, TimeS);

    // On tables first; then the same pieces again with what flashes make of them, until that changes no more. False: nothing moves any more.
    private bool Direct(double endS, double? loadK, Action<double>? progress)
    {
        var lead = Branch();
        lead._path = [];
        lead._until = false;
        bool moves = true;
        while (lead.TimeS < endS && !lead._until && lead.Stopped is null && moves) moves = lead.OnePiece(endS, loadK, null);
        // the model's own run may take a little longer to get there
        double marginS = Math.Min(endS, lead.TimeS * (1 + DirectMargin) + DirectMarginS);
        while (lead._until && lead.TimeS < marginS && lead.Stopped is null) lead.OnePiece(marginS, null, null);
        foreach (var piece in lead._path) piece.Thin(piece.FromS - TimeS < FirstPieceS ? FirstLooksBetween : LooksBetween);
        _streams ??= new DirectStreams(_maker.Model, _plant.Hardware.AftercooledK, _plant.Hardware.RoomK);
        var path = new DirectPath(_plant, _maker.Maps, _charge, _streams, _factors, lead._path, (_f.Loop, _f.Handover));
        path.Sweep(_cancel);
        for (int round = 0; round < MostRounds; round++)
        {
            var trial = Branch();
            trial.Replay(lead._path, null, looking: true, null);
            if (trial.Stopped is not null) break;
            path.Refine(_cancel);
            if (path.HeatResidual < DirectSettled && path.BalanceResidual < DirectSettled) break;
        }
        var moments = new List<(PathPiece, double, double[])>();
        Replay(lead._path, loadK, looking: false, progress, moments);
        path.Check(moments, _cancel);
        (HeatResidual, WorstDrift) = (Math.Max(HeatResidual, path.HeatResidual), Math.Max(WorstDrift, path.BalanceResidual));
        DirectEvaluations += path.Evaluations;
        (_pieceS, _piece) = (lead._pieceS, lead._piece);
        Stopped ??= lead.Stopped;
        return moves;
    }

    // a run on tables from here on, nothing told of it
    private CooldownRun Branch() => new(_plant, _maker, _options with { Direct = false, Sensitivity = false }, _factors, null, _cancel)
    {
        TimeS = TimeS, _state = [.. _state], _startHeat = _startHeat, _pieceS = _pieceS, _piece = _piece, _firstStep = _firstStep,
        _f = new PlantEquations(_plant, _maker.Maps, _charge) { Loop = _f.Loop, Handover = _f.Handover },
    };

    // the pieces with their corrections; where wanted, with a moment in some of them that was not looked at
    private void Replay(List<PathPiece> path, double? loadK, bool looking, Action<double>? progress, List<(PathPiece, double, double[])>? moments = null)
    {
        int every = Math.Max(1, path.Count / MostChecks);
        foreach (var piece in path)
        {
            if (_until || Stopped is not null) return;
            (_f.Loop, _f.Handover, _f.Correction, _looked) = (piece.Map, piece.Handover, piece.Correction, looking ? piece : null);
            if (looking) _state.CopyTo(piece.Looks[0].State, 0);
            _checked = moments is not null && piece.Looks.Count > 1 && path.IndexOf(piece) % every == 0 ? (piece, 0.5 * (piece.Looks[0].TimeS + piece.Looks[1].TimeS), moments) : null;
            Piece(piece.ToS, loadK);
            progress?.Invoke(TimeS);
        }
        (_looked, _checked) = (null, null);
    }

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
        // later the relaxation goes on with the matrix it has until the first Jacobian
        if (_f.Running && Pieces == 1) jacobian.Refresh(_state, _factors);
        var problem = new InitialValueProblem(l.Count, _f.Slope) { Parameters = _factors[..PlantParameters.Count], Jacobian = jacobian.Fill };
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
        if (_f.Running && _f.Correction is null)
        {
            double next = _plant.Load.Heat(Math.Min(now - 0.5, _f.Loop.LoadToK));
            events.Add(IntegrationEvent.WhenZero("colder", (_, y, _) => y[l.Load] - next) with { Effect = EventEffect.Stop, Direction = EventDirection.Falling });
            var frame = _f.Loop.Tables.Frame;
            double low = Math.Log(frame.LowFromPa / 1.04), high = Math.Log(frame.LowToPa * 1.04);
            events.Add(IntegrationEvent.WhenZero("low side below its tables", (_, y, _) => y[l.LnSuction] - low) with { Effect = EventEffect.Stop, Direction = EventDirection.Falling });
            events.Add(IntegrationEvent.WhenZero("low side above its tables", (_, y, _) => y[l.LnCoil] - high) with { Effect = EventEffect.Stop, Direction = EventDirection.Rising });
            var loop = _f.Loop;
            double reach = Math.Max(_options.Reach, 1.2 * loop.Distance(Xi));
            if (!loop.IsHeld) events.Add(IntegrationEvent.WhenZero("composition", (_, y, _) => reach - loop.Distance(y.Slice(l.FirstRatio, l.Ratios))) with { Effect = EventEffect.Stop, Direction = EventDirection.Falling });
            if (loop.AstrayK(Xi) < 0.9 * BoilingWatch.MostK) events.Add(IntegrationEvent.WhenZero("phases", (_, y, _) => BoilingWatch.MostK - loop.AstrayK(y.Slice(l.FirstRatio, l.Ratios))) with { Effect = EventEffect.Stop, Direction = EventDirection.Falling });
            // above 0 the buffer holds the pressure
            double cap = _plant.Hardware.Buffer is null ? double.PositiveInfinity : 0, measure = Math.Min(_state[l.High], cap);
            events.Add(IntegrationEvent.WhenZero("high side", (_, y, _) => LnFrame - Math.Abs(Math.Min(y[l.High], cap) - measure)) with { Effect = EventEffect.Stop, Direction = EventDirection.Falling });
        }
        var options = new IntegrationOptions
        {
            RelativeTolerance = _options.Tolerance, AbsoluteTolerances = tolerances, WithoutErrorControl = [l.Cooled, l.Leaked, l.Electrical], RelativeNoise = 1e-10, MaximumSteps = 4000, JacobianCost = _options.Sensitivity ? JacobianCostWithSlopes : JacobianCost, InitialStep = Math.Min(_firstStep, 0.5 * (endS - TimeS)),
            Sensitivities = _options.Sensitivity ? new SensitivityOptions { Initial = _slopes ?? [], Looseness = SlopeLooseness } : null,
        };
        var work = new double[l.Count];
        double longest = 0;
        var kept = _path is null ? null : new PathPiece(TimeS, _f.Loop) { Handover = _f.Handover, Looks = { (TimeS, [.. _state]) } };
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
                kept?.Looks.Add((seenS, [.. seen]));
                _looked?.Look(step);
                if (_checked is var (piece, time, moments) && time > step.Start && time <= step.End)
                {
                    double[] state = new double[l.Count];
                    step.Evaluate(time, state);
                    moments.Add((piece, time, state));
                }
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
        _f.NowS = TimeS;
        if (kept is not null && r.Time > kept.FromS)
        {
            kept.Looks[^1] = (r.Time, [.. _state]);
            kept.ToS = r.Time;
            _path!.Add(kept);
        }
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
        // it warms up fastest right after the stop, in steps of some minutes
        int parts = Math.Clamp((int)Math.Ceiling(length / Math.Max(10, 0.05 * (step.Start - _stoppedS))), 1, _f.Running ? 4 : MostStandingParts);
        for (int i = 1; i <= parts; i++)
        {
            double time = i == parts ? step.End : step.Start + length * i / parts;
            step.Evaluate(time, work);
            _f.NowS = time;
            _record!(new RunSample(time, work, this));
            HighestPa = Math.Max(HighestPa, _f.At.DischargePa);
            // with flashes by what they see
            if (time > CountedS && _f.Running && _f.Correction is null) WorstDrift = Math.Max(WorstDrift, Drift());
        }
    }

    /// <summary>The machine at a state.</summary>
    public PlantPoint Point(ReadOnlySpan<double> state)
    {
        Span<double> dy = stackalloc double[_plant.Layout.Count];
        _f.Evaluate(state, _factors, dy, slopes: false);
        return _f.Correction?.Mended(_f.NowS, _f.At) ?? _f.At;
    }

    // of the state last evaluated
    private double Drift()
    {
        double most = 0;
        double[] charged = Charged;
        for (int i = 0; i < charged.Length; i++) most = Math.Max(most, Math.Abs(_f.SpeciesMoles[i] / (charged[i] * TotalMol) - 1));
        return most;
    }

    // tables and maps at the end of a piece of so many seconds in which the load moved by so much
    private void Renew(double lengthS, double movedK, double[] fromXi)
    {
        _f.NowS = TimeS;
        double[] xi = Xi.ToArray(), before = Balances();
        double precooler = _f.PrecoolerWPerK;
        var at = _f.At;
        bool slow = movedK < SlowKPerS * lengthS && LoadK < _plant.Hardware.RoomK - ComeThroughK, moving = movedK > MovingK;
        _pieceS = Math.Clamp(PieceGrowth * lengthS, FirstPieceS, PieceS + PieceShare * TimeS);
        double reach = slow ? StillReach : MovingReach;
        TableFrame frame = _f.Loop.Tables.Frame, least = _maker.Frame(at, 0, reach);
        bool holds = frame.Holds(at.ThrottlePa, at.HighPa, at.SuctionPa, at.CoilPa) && !_f.Loop.IsHeld && at.LoadK > _f.Loop.LoadToK + (slow ? 0.5 : 2) && least.ColdestK >= frame.ColdestK && least.HighColdestK >= frame.HighColdestK
            && frame.HighToPa / frame.HighFromPa < 1.1 * reach * reach * at.HighPa / at.ThrottlePa && _f.Loop.Distance(xi) < (slow ? StillRoom : Room) * _options.Reach && _f.Loop.AstrayK(xi) < 0.5 * BoilingWatch.MostK;
        if (holds)
        {
            var aligned = _maker.Aligned(_f.Loop, xi, at, slow);
            // next to boiling a throttle answers so steeply that what is mended whole may swing for ever
            _f.Loop = slow ? aligned with { Offsets = aligned.Offsets - (aligned.OffsetsOf(xi, at) - _f.Loop.OffsetsOf(xi, at)).Times(0.5) } : aligned;
        }
        else
        {
            // where it is on its way to
            double[] middle = [.. xi];
            double moved = xi.Select((v, i) => Math.Abs(v - fromXi[i])).DefaultIfEmpty(0).Max(), share = moving && !slow && moved > 0 ? Math.Min(_pieceS / lengthS, Ahead * _options.Reach / moved) : 0;
            for (int i = 0; i < xi.Length; i++) middle[i] += share * (xi[i] - fromXi[i]);
            LoopMap About(double[] place) => _maker.Make(LoopMap.Fractions(place), xi, at, slow ? SlowK : PieceK, (slow ? StillRoom : Room) * _options.Reach, reach, slow, _f.Loop);
            var made = About(middle);
            // two changes of phases lie too near each other for tables made ahead: those of where it stands
            _f.Loop = share > 0 && made.AstrayK(xi) > 0.5 * BoilingWatch.MostK ? About(xi) : made;
        }
        LoopHandover Handover(double[] off) => new(TimeS, Math.Clamp(FadeShare * TimeS, LeastFadeS, MostFadeS), off, precooler > 0 ? precooler / _f.Loop.PrecoolerWPerK : 1, Math.Max(LeastFadeS, FadeShare * TimeS));
        _f.Handover = Handover(new double[before.Length]);
        double[] after = Balances();
        _f.Handover = Handover([.. after.Select((v, i) => v - before[i])]);
        if (TimeS > FirstPieceS) LargestHandover = Math.Max(LargestHandover, _f.Handover.Largest);
    }

    // of the loop where it stands
    private double[] Balances()
    {
        var l = _plant.Layout;
        Span<double> dy = stackalloc double[l.Count];
        if (!_f.Evaluate(_state, _factors, dy, slopes: false)) return new double[l.Balances];
        var balances = dy.Slice(l.High, l.Balances);
        _f.Handover?.Take(TimeS, balances);
        return balances.ToArray();
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
