using Coldwright.Simulation.Cooldown;

namespace Coldwright.Runs.Explain;

/// <summary>Weighs all sets, and checks the likeliest by a whole run of the model with it: where the curves' sum was wrong the set is weighed again.</summary>
internal static class Judge
{
    private const double MostScale = 4;

    /// <summary>Sets of causes whose chi-squares lie closer than this cannot be told apart.</summary>
    internal const double Tie = 2;
    /// <summary>So many causes at most are said to be alike.</summary>
    internal const int MostAlike = 3;

    /// <summary>The judgement.</summary>
    public static Judgement Of(Comparison c, ModelRuns runs, int mostChecks, bool follow, CancellationToken cancel)
    {
        var fit = new EvidenceFit(c);
        var sets = fit.All().ToList();
        var checkedRuns = new Dictionary<string, double[]>();
        for (int check = 0; check < mostChecks; check++)
        {
            cancel.ThrowIfCancellationRequested();
            var likeliest = sets[0];
            string key = string.Join('+', likeliest.Members);
            if (checkedRuns.ContainsKey(key) || OfLoop(c, likeliest).Count == 0) break;
            if (runs.With(OfLoop(c, likeliest), cubic: true) is not { } course) break;
            double[] correction = Correction(c, likeliest, course);
            checkedRuns[key] = correction;
            sets[0] = new EvidenceFit(c, correction).Fit(likeliest.Members);
            sets = [.. sets.OrderByDescending(s => s.LogEvidence)];
        }
        double n = c.Features.Count, scale = Math.Clamp(sets[0].ChiSquare / n, 1, MostScale);
        var best = Chosen(c, sets, scale);
        var last = checkedRuns.GetValueOrDefault(string.Join('+', best.Members)) ?? new double[c.Features.Count];
        var taken = Taken(c, runs, best, last);
        var fitted = !follow ? null : runs.With([.. taken.Select(t => (t.Cause, t.Strength))], cubic: false);
        return new Judgement(best, sets, scale, fitted ?? runs.Plain, taken, last);
    }

    // What is more likely in than out is named (the median probability model of Barbieri and Berger, Ann. Statist. 32 (2004) 870). Without any: the likeliest set of causes
    // where it and those that fit as well are together likelier than that nothing is wrong, and fit better; else nothing.
    private static FittedSet Chosen(Comparison c, List<FittedSet> sets, double scale)
    {
        var p = Judgement.Of(sets, scale);
        string[][] ids = [.. sets.Select(s => s.Members.Select(m => c.Suspects[m].Id).Order(StringComparer.Ordinal).ToArray())];
        string[] likely = [.. ids.SelectMany((x, i) => x.Select(id => (id, P: p[i]))).GroupBy(x => x.id).Select(g => (g.Key, P: g.Sum(x => x.P))).Where(g => g.P > 0.5).OrderByDescending(g => g.P).Take(2).Select(g => g.Key).Order(StringComparer.Ordinal)];
        if (likely.Length == 0)
        {
            var groups = Enumerable.Range(0, sets.Count).GroupBy(i => string.Join('+', ids[i])).Select(g => (First: g.First(), P: g.Sum(i => p[i]))).OrderByDescending(g => g.P).ToArray();
            var none = groups.First(g => ids[g.First].Length == 0);
            likely = ids[groups[0].First];
            if (likely.Length == 0 && groups.FirstOrDefault(g => ids[g.First].Length > 0) is { P: > 0 } best && sets[none.First].ChiSquare - sets[best.First].ChiSquare > Tie * scale)
            {
                double alike = groups.Where(g => g.First != best.First && ids[g.First].Length == ids[best.First].Length && ids[g.First].Intersect(ids[best.First]).Count() == ids[best.First].Length - 1
                    && Math.Abs(sets[g.First].ChiSquare - sets[best.First].ChiSquare) < Tie * scale).Take(MostAlike - 1).Sum(g => g.P);
                if (best.P + alike > none.P) likely = ids[best.First];
            }
        }
        return sets[Array.FindIndex(ids, x => x.SequenceEqual(likely))];
    }

    private static IReadOnlyList<(CauseModel Cause, double Strength, double Step)> Taken(Comparison c, ModelRuns runs, FittedSet set, double[] correction)
    {
        int end = c.Features.ToList().FindIndex(f => f.Kind == FeatureKind.AtEnd && f.What == Observable.Load);
        var (mean, step) = new EvidenceFit(c, correction).Doubts(set, end);
        var named = OfLoop(c, set);
        var list = new List<(CauseModel, double, double)>();
        foreach (var cause in runs.Causes)
        {
            int at = c.Shared.ToList().FindIndex(s => s.Name == cause.Id);
            double strength = named.Where(x => x.Cause.Id == cause.Id).Sum(x => x.Strength) + (at < 0 ? 0 : cause.Doubt * Math.Clamp(mean[at], -2, 2)), move = at < 0 ? 0 : cause.Doubt * step[at];
            if (strength != 0 || move != 0) list.Add((cause, strength, move));
        }
        return list;
    }

    /// <summary>Members of a set that act on the loop.</summary>
    public static IReadOnlyList<(CauseModel Cause, double Strength)> OfLoop(Comparison c, FittedSet set) =>
        [.. set.Members.Select((m, i) => (c.Suspects[m], set.Strengths[i])).Where(x => x.Item1.Model is not null && x.Item1.Id == x.Item1.Model.Id).Select(x => (x.Item1.Model!, x.Item2))];

    // what the whole run shows beyond the sum of the curves
    private static double[] Correction(Comparison c, FittedSet set, Course course)
    {
        var d = ComparisonMaker.Figures(ModelRuns.TraceOf(course, c.Like), c.Features, c.Ground);
        var batch = c.Batch?.Predict(course, c.Like, new BatchOddity());
        for (int i = 0; i < d.Length; i++) if (c.Features[i].Kind == FeatureKind.Batch) d[i] = batch![(int)c.Features[i].At]!.Value;
        for (int i = 0; i < d.Length; i++) d[i] -= c.Ground[i];
        for (int m = 0; m < set.Members.Length; m++)
        {
            var s = c.Suspects[set.Members[m]];
            if (s.Model is null || s.Model.Id != s.Id) continue;
            var (a, b) = s.Weights(set.Strengths[m]);
            for (int i = 0; i < d.Length; i++) d[i] -= a * s.First[i] + b * s.Second[i];
        }
        return d;
    }
}
