using Coldwright.Simulation.Cooldown;

namespace Coldwright.Runs.Explain;

/// <summary>Weighs all sets and says which is named.</summary>
internal static class Judge
{
    /// <summary>Sets of causes whose chi-squares lie closer than this cannot be told apart.</summary>
    internal const double Tie = 2;
    /// <summary>So many causes at most are said to be alike.</summary>
    internal const int MostAlike = 3;

    /// <summary>The judgement.</summary>
    public static Judgement Of(Comparison c, ModelRuns runs, Trace trace, bool follow, CancellationToken cancel)
    {
        var sets = new EvidenceFit(c).All();
        cancel.ThrowIfCancellationRequested();
        double scale = Math.Max(sets[0].ChiSquare / c.Features.Count, 1);
        var best = Chosen(c, sets, scale);
        var (fitted, taken) = follow ? FittedMachine.Follow(c, runs, trace, best) : (runs.Plain, FittedMachine.Taken(c, runs, best));
        return new Judgement(best, sets, scale, fitted, taken);
    }

    // What is more likely in than out is named (the median probability model of Barbieri and Berger, Ann. Statist. 32 (2004) 870). Without any: a cause that is likelier than that
    // nothing is wrong, or the likeliest set where it and those that fit as well are together likelier, and fit better; else nothing.
    private static FittedSet Chosen(Comparison c, IReadOnlyList<FittedSet> sets, double scale)
    {
        var p = Judgement.Of(sets, scale);
        string[][] ids = [.. sets.Select(s => s.Members.Select(m => c.Suspects[m].Id).Order(StringComparer.Ordinal).ToArray())];
        (string Id, double P)[] inclusion = [.. ids.SelectMany((x, i) => x.Select(id => (id, P: p[i]))).GroupBy(x => x.id).Select(g => (g.Key, P: g.Sum(x => x.P))).OrderByDescending(g => g.P)];
        string[] likely = [.. inclusion.Where(g => g.P > 0.5).Take(2).Select(g => g.Id).Order(StringComparer.Ordinal)];
        int sound = Array.FindIndex(ids, x => x.Length == 0);
        if (likely.Length == 0 && inclusion.Length > 0 && inclusion[0].P > 1.5 * p[sound] && sets[sound].ChiSquare - sets[Array.FindIndex(ids, x => x is [var one] && one == inclusion[0].Id)].ChiSquare > Tie * scale) likely = [inclusion[0].Id];
        if (likely.Length == 0)
        {
            var groups = Enumerable.Range(0, sets.Count).GroupBy(i => string.Join('+', ids[i])).Select(g => (First: g.First(), P: g.Sum(i => p[i]))).OrderByDescending(g => g.P).ToArray();
            var none = groups.First(g => ids[g.First].Length == 0);
            likely = ids[groups[0].First];
            if (likely.Length == 0 && groups.FirstOrDefault(g => ids[g.First].Length > 0) is { P: > 0 } best && sets[none.First].ChiSquare - sets[best.First].ChiSquare > Tie * scale)
            {
                double alike = groups.Where(g => g.First != best.First && ids[g.First].Length == ids[best.First].Length && ids[g.First].Intersect(ids[best.First]).Count() == ids[best.First].Length - 1
                    && Math.Abs(sets[g.First].ChiSquare - sets[best.First].ChiSquare) < Tie * scale).Take(MostAlike - 1).Sum(g => g.P);
                if (best.P + alike > 1.5 * none.P) likely = ids[best.First];
            }
        }
        return sets[Array.FindIndex(ids, x => x.SequenceEqual(likely))];
    }

    /// <summary>Members of a set that act on the loop.</summary>
    public static IReadOnlyList<(CauseModel Cause, double Strength)> OfLoop(Comparison c, FittedSet set) =>
        [.. set.Members.Select((m, i) => (c.Suspects[m], set.Strengths[i])).Where(x => x.Item1.Model is not null && x.Item1.Id == x.Item1.Model.Id).Select(x => (x.Item1.Model!, x.Item2))];
}
