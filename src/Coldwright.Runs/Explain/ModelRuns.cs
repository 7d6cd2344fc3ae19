using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Numerics;
using Coldwright.Simulation.Cooldown;

namespace Coldwright.Runs.Explain;

/// <summary>
/// Whole runs of a machine's model, made once for a length of run: as described, with each cause at two strengths, and with the second fluid model.
/// Explanations of runs of the same length share them. Two threads at most.
/// </summary>
public sealed class ModelRuns
{
    private readonly MachineDescription _machine;
    private readonly double _stopS, _warmUpS;
    private readonly CancellationToken _cancel;
    private readonly Dictionary<string, (Course? First, Course? Second)> _curves = [];

    private readonly bool _cubic;

    private ModelRuns(MachineDescription machine, LoopLayout layout, double stopS, double warmUpS, bool cubic, IReadOnlyList<CauseModel> causes, CancellationToken cancel) =>
        (_machine, Layout, _stopS, _warmUpS, _cubic, Causes, _cancel) = (machine, layout, stopS, warmUpS, cubic, causes, cancel);

    /// <summary>The layout.</summary>
    public LoopLayout Layout { get; }
    /// <summary>The machine.</summary>
    public MachineDescription Machine => _machine;
    /// <summary>What acts on the loop.</summary>
    public IReadOnlyList<CauseModel> Causes { get; }
    /// <summary>The machine as described.</summary>
    public Course Plain { get; private set; } = null!;
    /// <summary>The same with the other of the two fluid models; null where it has no answer.</summary>
    public Course? OtherFluid { get; private set; }
    /// <summary>Causes that the model has no run for, with the reason.</summary>
    public IReadOnlyList<string> Failed { get; private set; } = [];

    /// <summary>Makes all runs.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="layout">Its layout.</param>
    /// <param name="stopS">From start to stop, s.</param>
    /// <param name="warmUpS">Followed after the stop, s.</param>
    /// <param name="cubic">True: all runs with the cubic fluid model, which is quicker; false: with the reference model.</param>
    /// <param name="observer">Told what is being done; may be null.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="SolveException">The machine as described cannot be followed.</exception>
    public static ModelRuns Make(MachineDescription machine, LoopLayout layout, double stopS, double warmUpS, bool cubic = false, Action<string>? observer = null, CancellationToken cancel = default)
    {
        var runs = new ModelRuns(machine, layout, stopS, warmUpS, cubic, CauseCatalog.For(machine, layout), cancel);
        observer?.Invoke("the machine as described");
        var study = new CooldownStudy(machine, layout, cubic, cancel);
        runs.Plain = study.Follow(runs.Options(new Dictionary<string, double>()));
        var failed = new List<string>();
        var factors = runs.Causes.Where(c => c.Changed is null).ToArray();
        var machines = runs.Causes.Where(c => c.Changed is not null).ToArray();
        int done = 0;
        void Curve(CauseModel c, CooldownStudy? on)
        {
            cancel.ThrowIfCancellationRequested();
            var pair = (runs.Try(c, c.Strengths.First, on, failed), runs.Try(c, c.Strengths.Second, on, failed));
            lock (runs._curves) runs._curves[c.Id] = pair;
            observer?.Invoke($"what each cause would do: {Interlocked.Increment(ref done)} of {runs.Causes.Count}");
        }

        var other = Task.Run(() =>
        {
            foreach (var c in machines) Curve(c, null);
            try
            {
                runs.OtherFluid = new CooldownStudy(machine, layout, !cubic, cancel).Follow(runs.Options(new Dictionary<string, double>()));
            }
            catch (SolveException e)
            {
                lock (failed) failed.Add($"second fluid model: {e.Report.Advice}");
            }
        }, cancel);
        try
        {
            foreach (var c in factors) Curve(c, study);
        }
        finally
        {
            ((IAsyncResult)other).AsyncWaitHandle.WaitOne();
        }
        other.GetAwaiter().GetResult();
        runs.Failed = failed;
        return runs;
    }

    /// <summary>Runs of a cause at its two strengths; null where there is none.</summary>
    public (Course? First, Course? Second) Curve(string id) => _curves.GetValueOrDefault(id);

    /// <summary>A run with several causes at once; null where the model has no answer.</summary>
    /// <param name="causes">Causes and their strengths.</param>
    public Course? With(IReadOnlyList<(CauseModel Cause, double Strength)> causes)
    {
        var machine = _machine;
        var factors = new Dictionary<string, double>();
        foreach (var (cause, strength) in causes)
        {
            if (cause.Changed is { } change) machine = change(machine, strength);
            foreach (var (id, value) in cause.Factors(strength)) factors[id] = factors.GetValueOrDefault(id, 1) * value;
        }
        try
        {
            return Study(machine).Follow(Options(factors));
        }
        catch (SolveException)
        {
            return null;
        }
    }

    // a changed part is found by the layout anew
    private CooldownStudy Study(MachineDescription machine) => new(machine, LoopLayout.TryFind(machine, out var layout, out _) ? layout : Layout, _cubic, _cancel);

    private Course? Try(CauseModel c, double strength, CooldownStudy? on, List<string> failed)
    {
        try
        {
            var study = on ?? Study(c.Changed!(_machine, strength));
            return study.Follow(Options(c.Factors(strength)));
        }
        catch (SolveException e)
        {
            lock (failed) failed.Add($"{c.Id}: {e.Report.Advice}");
            return null;
        }
    }

    private CourseOptions Options(IReadOnlyDictionary<string, double> factors) => new() { ShutOffS = _stopS, WarmUpS = _warmUpS, Factors = factors };

    /// <summary>A course as a trace cut at the moments of another.</summary>
    /// <param name="c">The course.</param>
    /// <param name="like">Whose moments are taken.</param>
    public static Trace TraceOf(Course c, Trace like)
    {
        double[] t = [.. c.TimeS];
        TraceLine Line(IReadOnlyList<double> values) => new(t, [.. values]);
        return new Trace
        {
            Lines = new Dictionary<Observable, TraceLine>
            {
                [Observable.Load] = Line(c.LoadK), [Observable.ThrottleInlet] = Line(c.ThrottleInletK), [Observable.CoilOutlet] = Line(c.CoilOutletK), [Observable.Precooled] = Line(c.PrecooledK),
                [Observable.Return] = Line(c.ReturnK), [Observable.Discharge] = Line(c.DischargeK), [Observable.HighPressure] = Line(c.HighPressurePa), [Observable.LowPressure] = Line(c.LowPressurePa),
                [Observable.MassFlow] = Line(c.MassFlow), [Observable.CompressorPower] = Line(c.CompressorW), [Observable.Power] = Line(c.PowerW),
            },
            EndS = like.EndS, StopS = like.StopS, LastS = t[^1], RestPa = c.StandstillPa, RoomK = c.LoadK[0],
        };
    }
}
