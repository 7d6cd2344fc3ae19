using Coldwright.Machine.Layout;
using Coldwright.Numerics;
using Coldwright.Runs.Record;
using Coldwright.Simulation.Cooldown;

namespace Coldwright.Runs.Explain;

/// <summary>Explains a run: docs/theory/explain.md.</summary>
public static class Explainer
{
    private const int MostChecks = 3;
    private const double LongestRunS = 2 * 86400, LongestWarmUpS = 86400;

    /// <summary>Explains a record.</summary>
    /// <param name="record">The record; its machine must have been read.</param>
    /// <param name="layout">The machine's layout.</param>
    /// <param name="shared">Runs of the same machine and length made before; null: they are made.</param>
    /// <param name="cubic">True: the model's runs with the cubic fluid model, which is quicker.</param>
    /// <param name="observer">Told what is being done; may be null.</param>
    /// <param name="follow">False: the causes alone; the machine with what was found is not followed anew, and <see cref="Explanation.Fitted"/> is the machine as described.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="SolveException">There is nothing to explain, or the machine as described has no answer; the advice says which.</exception>
    public static Explanation Explain(RunRecord record, LoopLayout layout, ModelRuns? shared = null, bool cubic = false, Action<string>? observer = null, bool follow = true, CancellationToken cancel = default)
    {
        if (record.Machine is not { } machine) throw new SolveException(new SolveReport(SolveStatus.Outside, 0, 0, "the run's cooler could not be read; an explanation compares the log with machine.yaml"));
        var o = Observer.Read(record, layout);
        var (stop, warm) = LengthOf(o);
        var runs = shared ?? ModelRuns.Make(machine with { Room = machine.Room with { TemperatureK = o.Trace.RoomK } }, layout, stop, warm, cubic, observer, cancel);
        var comparison = ComparisonMaker.Make(o, runs);
        observer?.Invoke("weighing the causes");
        var judged = Judge.Of(comparison, runs, MostChecks, follow, cancel);
        return ExplanationBuilder.Build(record, o, runs, comparison, judged, follow);
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
