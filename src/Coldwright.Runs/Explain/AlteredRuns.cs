using Coldwright.Simulation.Cooldown;

namespace Coldwright.Runs.Explain;

/// <summary>
/// Short tests that alter the run: a heater of known power at the load, or the precooler switched off. The model is followed with the best set and its nearest rivals, as it was and altered;
/// what counts is the difference that the alteration makes, in which most doubts fall out.
/// </summary>
internal static class AlteredRuns
{
    private const int MostRivals = 2;
    // a heater of this share of what the gas carries off at the end, at least so much, W; what of a difference stays in doubt, K. Our assumptions.
    private const double HeaterShare = 0.3, LeastHeaterW = 5, DoubtK = 1.5, DoubtShare = 0.15, SwitchedOff = 0.02;
    // as good as settled: not worth six runs
    private const double WorthRunning = 0.2;

    public static IEnumerable<ShortTest> Of(ModelRuns runs, Comparison c, Trace like, FittedSet best, IReadOnlyList<(FittedSet Set, double P)> rivals)
    {
        // a wrong sensor or a batch's fault answers to neither
        var near = rivals.Where(r => Judge.OfLoop(c, r.Set).Count > 0).Take(MostRivals).ToArray();
        if (near.Length == 0 || rivals.Sum(r => r.P) < WorthRunning) yield break;
        double heaterW = Math.Max(LeastHeaterW, Math.Round(HeaterShare * runs.Base.CoolingW.Where((_, i) => runs.Base.TimeS[i] <= like.EndS).LastOrDefault()));
        var tests = new List<(string Id, string What, double LoadW, IReadOnlyDictionary<string, double>? More)> { ("heater", FormattableString.Invariant($"heat the load with a known {heaterW:0} W and see how much warmer it stays"), heaterW, null) };
        if (runs.Layout.Precooler?.Loop is not null) tests.Add(("precooler-off", "the same run with the precooler off", 0, new Dictionary<string, double> { ["precooler"] = SwitchedOff }));
        double? End(FittedSet s, double loadW, IReadOnlyDictionary<string, double>? more) =>
            runs.With(Judge.OfLoop(c, s), true, loadW, more) is { } course ? new TraceLine([.. course.TimeS], [.. course.LoadK]).At(like.EndS) : null;
        // set by set, as it was and then altered: the runs of one set share its tables
        double?[] Ends(FittedSet s) => End(s, 0, null) is { } plain ? [.. tests.Select(t => End(s, t.LoadW, t.More) - plain)] : new double?[tests.Count];
        double?[] own = Ends(best);
        double?[][] others = [.. near.Select(r => Ends(r.Set))];
        for (int t = 0; t < tests.Count; t++)
        {
            var (id, what, _, _) = tests[t];
            if (own[t] is not { } mine) continue;
            double settles = 0, weight = 0;
            for (int i = 0; i < near.Length; i++)
            {
                if (others[i][t] is not { } theirs) continue;
                settles += near[i].P * TestRanking.Separated(mine - theirs, DoubtK + DoubtShare * Math.Abs(mine));
                weight += near[i].P;
            }
            // rivals that were not followed are not parted by it
            if (weight > 0) yield return new ShortTest(id, what, settles / Math.Max(weight, rivals.Sum(r => r.P)));
        }
    }
}
