using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Numerics;
using Coldwright.Runs.Record;
using Coldwright.Simulation.Cooldown;

namespace Coldwright.Runs.Explain;

/// <summary>Explains a run: docs/theory/explain.md.</summary>
public static class Explainer
{
    // runs of two days that differ by no more than this share the model's
    private const double LongestRunS = 2 * 86400, LongestWarmUpS = 86400, SameStopS = 60, SameRoomK = 0.5;

    /// <summary>Explains a record.</summary>
    /// <param name="record">The record; its machine must have been read.</param>
    /// <param name="layout">The machine's layout.</param>
    /// <param name="shared">Runs of the same machine and length made before; null: they are made.</param>
    /// <param name="cubic">True: the model's runs with the cubic fluid model, which is quicker.</param>
    /// <param name="observer">Told what is being done; may be null.</param>
    /// <param name="follow">False: the causes alone; the machine with what was found is not followed anew, and <see cref="Explanation.Fitted"/> is the machine as described.</param>
    /// <param name="earlier">A run of the same machine in good order to hold it against; null: none.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="SolveException">There is nothing to explain, or the machine as described has no answer; the advice says which.</exception>
    public static Explanation Explain(RunRecord record, LoopLayout layout, ModelRuns? shared = null, bool cubic = false, Action<string>? observer = null, bool follow = true, RunRecord? earlier = null, CancellationToken cancel = default)
    {
        if (record.Machine is not { } machine) throw new SolveException(new SolveReport(SolveStatus.Outside, 0, 0, "the run's cooler could not be read; an explanation compares the log with machine.yaml"));
        var o = Observed(record, machine, layout, shared, observer, cancel);
        var (stop, warm) = LengthOf(o);
        var good = earlier is null ? null : Observed(earlier, machine, layout, shared, observer, cancel);
        var (goodStop, goodWarm) = good is null ? (stop, 0) : LengthOf(good);
        bool alike = good is null || Math.Abs(goodStop - stop) < SameStopS && Math.Abs(good.Trace.RoomK - o.Trace.RoomK) < SameRoomK;
        ModelRuns Make(double roomK, double stopS, double warmUpS) => ModelRuns.Make(machine with { Room = machine.Room with { TemperatureK = roomK } }, layout, stopS, warmUpS, cubic, observer, cancel);
        var runs = shared ?? Make(o.Trace.RoomK, stop, alike ? Math.Max(warm, goodWarm) : warm);
        var comparison = ComparisonMaker.Make(o, runs);
        if (good is not null) comparison = EarlierRun.Join(comparison, ComparisonMaker.Make(good, alike ? runs : Make(good.Trace.RoomK, goodStop, goodWarm)));
        observer?.Invoke("weighing the causes");
        var judged = Judge.Of(comparison, runs, o.Trace, follow, cancel);
        return ExplanationBuilder.Build(record, earlier is null ? o : o with { Said = [.. o.Said, $"held against the earlier run '{earlier.Name}', taken for one in good order: ratios are to that day"] }, runs, comparison, judged, follow);
    }

    // Where nothing but the load shows the start, the model says how long the way to the first reading takes: a slope does not, since a loop fills before its cold end falls.
    private static Observation Observed(RunRecord record, MachineDescription machine, LoopLayout layout, ModelRuns? shared, Action<string>? observer, CancellationToken cancel)
    {
        var o = Observer.Read(record, layout);
        if (!o.IsStartByLoad) return o;
        observer?.Invoke("the way down, for the start that nobody noted");
        var course = shared?.Base ?? new CooldownStudy(machine with { Room = machine.Room with { TemperatureK = o.Trace.RoomK } }, layout, true, cancel).Follow(new CourseOptions { ShutOffS = LengthOf(o).StopS, Reach = ModelRuns.TableReach });
        var way = new TraceLine([.. course.TimeS], [.. course.LoadK]);
        return Observer.Read(record, layout, k => k >= course.LoadK[0] ? 0 : way.Passes(k, 0, falling: true));
    }

    /// <summary>Time from start to stop and time followed after it, s, that an observation needs of the model.</summary>
    internal static (double StopS, double WarmUpS) LengthOf(Observation o)
    {
        double stop = Math.Min(o.Trace.StopS ?? o.Trace.EndS, LongestRunS);
        // a sound machine may warm up more slowly than the one seen
        double warm = o.Trace.StopS is { } s && o.Trace.LastS - s > 60 ? Math.Min(2.5 * (o.Trace.LastS - s) + 600, LongestWarmUpS) : 0;
        return (stop, warm);
    }
}
