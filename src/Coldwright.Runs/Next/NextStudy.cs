using Coldwright.Machine.Layout;
using Coldwright.Numerics;
using Coldwright.Runs.Explain;
using Coldwright.Runs.Record;
using Coldwright.Simulation.Cooldown;

namespace Coldwright.Runs.Next;

/// <summary>
/// What to change next: the run is explained, the model takes over what was found, and each change is followed through the same day. The uncertainty is that of the fit: every change is followed
/// at the best strengths and one and a quarter standard deviations to both sides, in the direction that moves the end of the pull-down most.
/// </summary>
public static class NextStudy
{
    // three points of a normal distribution stand for its middle nine tenths: 1.645 sigma ends, read off a straight line through +-1.25 sigma
    private const double Step = 1.25, Ends = 1.645;

    /// <summary>Explains the run and ranks the changes.</summary>
    /// <param name="record">The record; its machine must have been read.</param>
    /// <param name="layout">The machine's layout.</param>
    /// <param name="cubic">True: with the cubic fluid model, which is quicker.</param>
    /// <param name="observer">Told what is being done; may be null.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="SolveException">There is nothing to explain, or the machine has no answer.</exception>
    public static NextResult Of(RunRecord record, LoopLayout layout, bool cubic, Action<string>? observer, CancellationToken cancel)
    {
        if (record.Machine is not { } machine) throw new SolveException(new SolveReport(SolveStatus.Outside, 0, 0, "the run's cooler could not be read"));
        var o = Observer.Read(record, layout);
        var (stop, warm) = Explainer.LengthOf(o);
        var runs = ModelRuns.Make(machine, layout, stop, warm, cubic, observer, cancel);
        return Of(Explainer.Explain(record, layout, runs, cubic, observer, cancel: cancel), runs, ChangeCatalog.For(layout), stop, cubic, observer, cancel);
    }

    /// <summary>Ranks changes of a machine as an explanation found it.</summary>
    internal static NextResult Of(Explanation e, ModelRuns runs, IReadOnlyList<CauseModel> changes, double stop, bool cubic, Action<string>? observer, CancellationToken cancel)
    {
        var layout = runs.Layout;
        var batch = BatchModel.Of(runs.Machine, layout);
        var found = e.Taken;
        NextChange Follow(CauseModel? change, string id, string what, IReadOnlyList<(CauseModel Cause, double Strength, double Step)> causes)
        {
            observer?.Invoke(what);
            var at = new List<(double Litres, Course Course)>();
            foreach (double side in causes.Count == 0 ? [0.0] : new[] { 0, -Step, Step })
            {
                cancel.ThrowIfCancellationRequested();
                List<(CauseModel, double)> all = [.. causes.Select(c => (c.Cause, c.Strength + side * c.Step))];
                if (change is not null) all.Add((change, 1));
                if (runs.With(all, cubic) is { } course) at.Add((batch?.LitresPerHour(course) ?? 0, course));
            }
            if (at.Count == 0) throw new SolveException(new SolveReport(SolveStatus.NoSolution, 0, 0, $"the model has no answer for {what}"));
            double best = at[0].Litres, low = at.Min(a => a.Litres), high = at.Max(a => a.Litres);
            double power = at[0].Course.PowerW.Where((_, i) => at[0].Course.TimeS[i] < stop).LastOrDefault();
            return new NextChange(id, what, best, Math.Max(0, best - (best - low) * Ends / Step), best + (high - best) * Ends / Step, at[0].Course.StopK, best > 1e-3 ? power / 1000 / best : null);
        }

        var now = Follow(null, "now", "the machine as it was found", found);
        var list = new List<NextChange>();
        var said = new List<string>(e.Said);
        foreach (var named in e.Causes.Where(c => c.Named))
            if (found.Any(f => f.Cause.Id == named.Id)) list.Add(Follow(null, $"mend-{named.Id}", $"mend this: {named.Name}", [.. found.Where(f => f.Cause.Id != named.Id)]));
        foreach (var change in changes)
        {
            try
            {
                list.Add(Follow(change, change.Id, change.Name, found));
            }
            catch (SolveException x)
            {
                said.Add(x.Report.Advice);
            }
        }
        said.AddRange(runs.Failed.Select(f => $"no run of the model for {f}").Except(said));
        bool liquid = batch is not null && (now.LitresPerHour > 0 || list.Any(c => c.LitresPerHour > 0));
        return new NextResult(now, [.. liquid ? list.OrderByDescending(c => c.LitresPerHour).ThenBy(c => c.EndK) : list.OrderBy(c => c.EndK)], liquid ? layout.Feed!.Gas : null, [.. e.Causes.Where(c => c.Named).Select(c => c.Id)], said);
    }
}
