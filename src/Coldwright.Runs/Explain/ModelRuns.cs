using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Numerics;
using Coldwright.Simulation.Cooldown;

namespace Coldwright.Runs.Explain;

/// <summary>
/// Whole runs of a machine's model, made once for a length of run: as described with both fluid models, and with each cause at two strengths. What a cause changes is asked of
/// the cubic model, which is quicker: the two models differ little in a difference (docs/theory/explain.md). Explanations of runs of the same length share them. Two threads.
/// </summary>
public sealed class ModelRuns
{
    // tables that serve as wide as the course allows: what the wider ones err by is small beside the doubts (docs/theory/explain.md)
    internal const double TableReach = 0.1;
    private const double SeldomS = 40, OtherStopS = 30;

    private readonly MachineDescription _machine;
    private readonly double _stopS, _warmUpS;
    private readonly CancellationToken _cancel;
    private readonly Dictionary<string, (Course? First, Course? Second)> _curves = [];
    private readonly bool _cubic;
    private readonly List<string> _failed = [];
    // of the machine as described, by fluid model; tables made by one run are taken again by the next
    private CooldownStudy? _quick, _exact;
    // of the machine last changed, which a short test follows three times over
    private (string Key, CooldownStudy Study)? _changed;

    private ModelRuns(MachineDescription machine, LoopLayout layout, double stopS, double warmUpS, bool cubic, IReadOnlyList<CauseModel> causes, CancellationToken cancel) =>
        (_machine, Layout, _stopS, _warmUpS, _cubic, Causes, _cancel) = (machine, layout, stopS, warmUpS, cubic, causes, cancel);

    /// <summary>The layout.</summary>
    public LoopLayout Layout { get; }
    /// <summary>The machine.</summary>
    public MachineDescription Machine => _machine;
    /// <summary>What acts on the loop.</summary>
    public IReadOnlyList<CauseModel> Causes { get; }
    /// <summary>The machine as described, with the fluid model asked for.</summary>
    public Course Plain { get; private set; } = null!;
    /// <summary>The machine as described with the cubic model: what the curves are held against.</summary>
    public Course Base { get; private set; } = null!;
    /// <summary>The machine as described with the other of the two fluid models; null where it has no answer.</summary>
    public Course? OtherFluid { get; private set; }
    /// <summary>Causes, and several at once, that the model has no run for, with the reason.</summary>
    public IReadOnlyList<string> Failed => _failed;

    /// <summary>Makes all runs.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="layout">Its layout.</param>
    /// <param name="stopS">From start to stop, s.</param>
    /// <param name="warmUpS">Followed after the stop, s.</param>
    /// <param name="cubic">True: the machine as described with the cubic fluid model; false: with the reference model.</param>
    /// <param name="observer">Told what is being done; may be null.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="SolveException">The machine as described cannot be followed.</exception>
    public static ModelRuns Make(MachineDescription machine, LoopLayout layout, double stopS, double warmUpS, bool cubic = false, Action<string>? observer = null, CancellationToken cancel = default)
    {
        var runs = new ModelRuns(machine, layout, stopS, warmUpS, cubic, CauseCatalog.For(machine, layout), cancel);
        observer?.Invoke("the machine as described");
        runs._quick = new CooldownStudy(machine, layout, true, cancel);
        runs.Base = runs._quick.Follow(runs.Options(_none));
        var factors = runs.Causes.Where(c => c.Changed is null).ToArray();
        var machines = runs.Causes.Where(c => c.Changed is not null).ToArray();
        int done = 0;
        void Curve(CauseModel c)
        {
            cancel.ThrowIfCancellationRequested();
            // a doubt, and what comes on the way, is taken as straight too: one run
            var pair = (c.IsStraight || c.OnlyDoubt || c.FromShare is not null ? null : runs.Try(c, c.Strengths.First), runs.Try(c, c.Strengths.Second));
            lock (runs._curves) runs._curves[c.Id] = pair;
            observer?.Invoke($"what each cause would do: {Interlocked.Increment(ref done)} of {runs.Causes.Count}");
        }

        Course? exact = null;
        var other = Task.Run(() =>
        {
            try
            {
                runs._exact = new CooldownStudy(machine, layout, false, cancel);
                exact = runs._exact.Follow(runs.Options(_none));
            }
            catch (SolveException e) when (cubic)
            {
                runs.Fail($"second fluid model: {e.Report.Advice}");
            }
            foreach (var c in machines) Curve(c);
        }, cancel);
        try
        {
            foreach (var c in factors) Curve(c);
        }
        finally
        {
            ((IAsyncResult)other).AsyncWaitHandle.WaitOne();
        }
        other.GetAwaiter().GetResult();
        (runs.Plain, runs.OtherFluid) = cubic ? (runs.Base, exact) : (exact!, runs.Base);
        return runs;
    }

    /// <summary>Runs of a cause at its two strengths; null where there is none.</summary>
    public (Course? First, Course? Second) Curve(string id) => _curves.GetValueOrDefault(id);

    /// <summary>A run with several causes at once; null where the model has no answer.</summary>
    /// <param name="causes">Causes and their strengths.</param>
    /// <param name="cubic">True: with the cubic model; false: with the one asked for.</param>
    /// <param name="loadW">Heat put into the load on purpose, W.</param>
    /// <param name="more">More factors of the course; null: none.</param>
    public Course? With(IReadOnlyList<(CauseModel Cause, double Strength)> causes, bool cubic, double loadW = 0, IReadOnlyDictionary<string, double>? more = null)
    {
        var machine = _machine;
        var (factors, late) = (new Dictionary<string, double>(), new Dictionary<string, double>());
        double? from = null;
        string key = cubic || _cubic ? "cubic" : "";
        foreach (var (cause, strength) in causes)
        {
            if (cause.Changed is { } change) (machine, key) = (change(machine, strength), FormattableString.Invariant($"{key} {cause.Id} {strength:R}"));
            var on = cause.FromShare is null ? factors : late;
            from ??= cause.FromShare;
            foreach (var (id, value) in cause.Factors(strength)) on[id] = on.GetValueOrDefault(id, 1) * value;
        }
        foreach (var (id, value) in more ?? _none) factors[id] = factors.GetValueOrDefault(id, 1) * value;
        try
        {
            if (!ReferenceEquals(machine, _machine) && _changed?.Key != key) _changed = (key, Study(machine, cubic || _cubic));
            var study = ReferenceEquals(machine, _machine) ? Study(machine, cubic || _cubic) : _changed!.Value.Study;
            return study.Follow(Options(factors, from, late) with { LoadW = loadW });
        }
        catch (Exception e) when (e is SolveException or ArgumentException)
        {
            Fail($"{string.Join(" with ", causes.Select(c => c.Cause.Id).Append(loadW > 0 ? "a heater" : "").Where(x => x.Length > 0).DefaultIfEmpty("the machine as described"))}: {(e as SolveException)?.Report.Advice ?? e.Message}");
            return null;
        }
    }

    private static readonly IReadOnlyDictionary<string, double> _none = new Dictionary<string, double>();

    // a changed part is found by the layout anew
    private CooldownStudy Study(MachineDescription machine, bool cubic)
    {
        if (!ReferenceEquals(machine, _machine)) return new(machine, LoopLayout.TryFind(machine, out var layout, out _) ? layout : Layout, cubic, _cancel);
        return cubic ? _quick ??= new(machine, Layout, true, _cancel) : _exact ??= new(machine, Layout, false, _cancel);
    }

    private Course? Try(CauseModel c, double strength)
    {
        try
        {
            return Study(c.Changed?.Invoke(_machine, strength) ?? _machine, true).Follow(c.FromShare is { } share ? Options(_none, share, c.Factors(strength)) : Options(c.Factors(strength)));
        }
        catch (Exception e) when (e is SolveException or ArgumentException)
        {
            // a part's model may refuse a state that a strong cause leads to: that cause has no run, and it is said
            Fail($"{c.Id}: {(e as SolveException)?.Report.Advice ?? e.Message}");
            return null;
        }
    }

    private void Fail(string what)
    {
        lock (_failed)
            if (!_failed.Contains(what)) _failed.Add(what);
    }

    private CourseOptions Options(IReadOnlyDictionary<string, double> factors, double? fromShare = null, IReadOnlyDictionary<string, double>? late = null) => new()
    {
        ShutOffS = _stopS, WarmUpS = _warmUpS, Reach = TableReach, Factors = factors, LateFactors = late ?? _none, LateBelowK = fromShare is { } share ? Base.LoadK[0] - share * (Base.LoadK[0] - Base.StopK) : null,
    };

    /// <summary>A course as a trace cut at the moments of another.</summary>
    /// <param name="c">The course.</param>
    /// <param name="like">Whose moments are taken.</param>
    public static Trace TraceOf(Course c, Trace like)
    {
        double[] t = [.. c.TimeS];
        // a course that was made for another moment of stop warms up from there
        double? stop = like.StopS is { } seenStop && c.MassFlow.Select((flow, i) => (flow, i)).LastOrDefault(x => x.flow > 0) is { i: > 0 } last && Math.Abs(t[last.i] - seenStop) > OtherStopS ? t[last.i] : like.StopS;
        // read as seldom as the log was: what lies between two readings is then missed by both
        TraceLine Line(IReadOnlyList<double> values, Observable what)
        {
            var whole = new TraceLine(t, [.. values]);
            if (!like.Lines.TryGetValue(what, out var seen) || seen.StepS < SeldomS) return whole;
            double rest = what < Observable.HighPressure ? c.LoadK[0] : what is Observable.HighPressure or Observable.LowPressure ? c.StandstillPa : 0;
            List<double> at = [.. seen.TimeS.Where(x => x <= t[^1])];
            if (at.Count == 0) return whole;
            for (double next = at[^1] + seen.StepS; next <= t[^1]; next += seen.StepS) at.Add(next);
            return new TraceLine([.. at], [.. at.Select(x => x < 0 ? rest : whole.At(x))]);
        }

        return new Trace
        {
            Lines = new Dictionary<Observable, TraceLine>
            {
                [Observable.Load] = Line(c.LoadK, Observable.Load), [Observable.ThrottleInlet] = Line(c.ThrottleInletK, Observable.ThrottleInlet), [Observable.CoilOutlet] = Line(c.CoilOutletK, Observable.CoilOutlet), [Observable.Precooled] = Line(c.PrecooledK, Observable.Precooled),
                [Observable.Return] = Line(c.ReturnK, Observable.Return), [Observable.Discharge] = Line(c.DischargeK, Observable.Discharge), [Observable.HighPressure] = Line(c.HighPressurePa, Observable.HighPressure), [Observable.LowPressure] = Line(c.LowPressurePa, Observable.LowPressure),
                [Observable.MassFlow] = Line(c.MassFlow, Observable.MassFlow), [Observable.CompressorPower] = Line(c.CompressorW, Observable.CompressorPower), [Observable.Power] = Line(c.PowerW, Observable.Power),
            },
            EndS = Math.Min(like.EndS, stop ?? like.EndS), StopS = stop, LastS = t[^1], RestPa = c.StandstillPa, RoomK = c.LoadK[0], BeginsAtRest = true,
        };
    }
}
