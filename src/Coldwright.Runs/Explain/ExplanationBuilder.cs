using Coldwright.Runs.Record;

namespace Coldwright.Runs.Explain;

/// <summary>Turns a judgement into an explanation.</summary>
internal static class ExplanationBuilder
{
    private const double Credible = 0.9, SpokenCorrelation = 0.5, LeastShare = 0.02;

    public static Explanation Build(RunRecord record, Observation o, ModelRuns runs, Comparison c, Judgement j, bool follow)
    {
        var causes = Causes(c, j);
        var ties = Ties(c, j);
        int end = c.Features.ToList().FindIndex(f => f.Kind == FeatureKind.AtEnd && f.What == Observable.Load);
        var fitted = Predicted(c, j);
        var whitened = new EvidenceFit(c);
        var figures = c.Features.Select((f, i) => new ComparedFigure(f, c.Measured[i], c.Expected[i], fitted[i], Math.Sqrt(c.Variance[i] + c.Shared.Sum(s => s.Shift[i] * s.Shift[i])))).Where(f => !f.Feature.IsEarlier).ToArray();
        double measuredK = end >= 0 ? c.Measured[end] : o.Trace.Lines[Observable.Load].At(o.Trace.EndS), describedK = end >= 0 ? c.Expected[end] : measuredK;
        var tests = TestRanking.Of(o, runs, c, j, follow);
        var e = new Explanation
        {
            Phases = o.Phases,
            Causes = causes,
            Indistinguishable = ties,
            Tests = tests,
            Watts = j.Fitted.AtStop,
            PullDownHeat = HeatLedger.Of(j.Fitted, o.Trace.EndS),
            Grams = Grams(c, j),
            Figures = figures,
            Misfit = j.Best.ChiSquare / c.Features.Count,
            Correlations = Correlations(c, j, whitened),
            Measured = o.Trace,
            Described = runs.Plain,
            Fitted = j.Fitted,
            End = (measuredK, describedK),
            Taken = j.Taken,
            Paragraph = "",
            Said = [.. o.Said, .. Unseen(c, whitened), .. runs.Failed.Select(f => $"no run of the model for {f}"), .. record.Warnings],
        };
        return e with { Paragraph = ExplanationWords.Paragraph(e) };
    }

    private static IEnumerable<string> Unseen(Comparison c, EvidenceFit fit)
    {
        string[] ids = [.. Enumerable.Range(0, c.Suspects.Count).GroupBy(i => c.Suspects[i].Id).Where(g => !g.Any(fit.IsSeen)).Select(g => g.Key)];
        if (ids.Length > 0) yield return $"this record could not show these even if they were strong, so they are not weighed: {string.Join(", ", ids)}";
    }

    /// <summary>Figures that the likeliest set predicts.</summary>
    private static double[] Predicted(Comparison c, Judgement j)
    {
        double[] p = [.. c.Expected];
        for (int m = 0; m < j.Best.Members.Length; m++)
        {
            var change = Change(c, j.Best, m);
            for (int i = 0; i < p.Length; i++) p[i] += change[i];
        }
        return p;
    }

    // from what the machine as described would have put into the flask to what was found there
    private static IReadOnlyList<(string Name, double Kg)> Grams(Comparison c, Judgement j)
    {
        int at = c.Features.ToList().FindIndex(f => f is { Kind: FeatureKind.Batch, At: 1, IsEarlier: false });
        if (at < 0) return [];
        var list = new List<(string, double)> { ("expected in the flask", c.Expected[at]) };
        double left = c.Measured[at] - c.Expected[at];
        for (int m = 0; m < j.Best.Members.Length; m++)
        {
            double change = Change(c, j.Best, m)[at];
            if (Math.Abs(change) < 1e-4) continue;
            list.Add((NameOf(c.Suspects[j.Best.Members[m]]), change));
            left -= change;
        }
        list.Add(("not explained", left));
        list.Add(("found in the flask", c.Measured[at]));
        return list;
    }

    // what a member of a set changes, stretch included
    private static double[] Change(Comparison c, FittedSet set, int member)
    {
        var s = c.Suspects[set.Members[member]];
        double stretch = s.Model is null ? 0 : set.Stretch[member];
        return [.. Change(s, set.Strengths[member]).Select((v, i) => c.Features[i].IsOfPullDown ? v * (1 + stretch) : v)];
    }

    /// <summary>What a suspect at a strength changes.</summary>
    public static double[] Change(Suspect s, double strength)
    {
        var (a, b) = s.Weights(strength);
        return [.. s.First.Select((v, i) => a * v + b * s.Second[i])];
    }

    private static IReadOnlyList<ExplainedCause> Causes(Comparison c, Judgement j)
    {
        var inclusion = new Dictionary<string, double>();
        double none = 0;
        for (int i = 0; i < j.Sets.Count; i++)
        {
            var ids = j.Sets[i].Members.Select(m => c.Suspects[m].Id).Distinct().Order(StringComparer.Ordinal).ToArray();
            foreach (var id in ids) inclusion[id] = inclusion.GetValueOrDefault(id) + j.Probabilities[i];
            if (ids.Length == 0) none = j.Probabilities[i];
        }
        var best = j.Best;
        var shares = Shares(c, best);
        var list = new List<(string Id, string Name, int Suspect, bool Named, double P, double Share)>();
        for (int m = 0; m < best.Members.Length; m++)
        {
            var s = c.Suspects[best.Members[m]];
            list.Add((s.Id, NameOf(s), best.Members[m], true, inclusion[s.Id], shares[m]));
        }
        var rest = inclusion.Where(x => list.All(l => l.Id != x.Key)).Select(x => (x.Key, x.Value, Suspect: Likeliest(c, j, x.Key))).ToArray();
        list = [.. list.OrderByDescending(l => l.Share).ThenByDescending(l => l.P)];
        list.AddRange(rest.Where(r => r.Suspect >= 0).OrderByDescending(r => r.Value).Select(r => (r.Key, NameOf(c.Suspects[r.Suspect]), r.Suspect, false, r.Value, 0.0)));
        int at = best.Members.Length == 0 ? 0 : list.FindIndex(l => !l.Named && l.P < none);
        list.Insert(at < 0 ? list.Count : at, ("none", "nothing is wrong that this record could show", -1, best.Members.Length == 0, none, 0));
        return [.. list.Select((l, i) =>
        {
            var (value, low, high) = l.Suspect < 0 ? (0, 0, 0) : Interval(c, best, l.Suspect, j);
            return new ExplainedCause(l.Id, l.Name, l.Suspect < 0 ? "" : c.Suspects[l.Suspect].Detail, value, UnitOf(c, l.Suspect), low, high, i + 1, l.Named, Math.Min(1, l.P), l.Share);
        })];
    }

    private static string UnitOf(Comparison c, int suspect) => suspect < 0 ? "" : c.Suspects[suspect] is var s && BatchSuspects.NameOf(s.Id) is not null ? BatchSuspects.FigureOf(s.Id).Unit : s.Model is { } m ? m.Unit : "K";

    private static string NameOf(Suspect s) => s.Id switch
    {
        "sensor-offset" => $"the sensor {s.Detail} shows wrong",
        "cold-junction" => "the cold junction is not where the logger thinks it is",
        _ => BatchSuspects.NameOf(s.Id) ?? s.Model!.Name,
    };

    private static int Likeliest(Comparison c, Judgement j, string id)
    {
        foreach (var set in j.Sets)
            foreach (int m in set.Members) if (c.Suspects[m].Id == id) return m;
        return -1;
    }

    // the strength with the doubt of the file taken into it: what the quantity is, not only what is odd about it
    private static (double, double, double) Interval(Comparison c, FittedSet best, int suspect, Judgement j)
    {
        // the doubts themselves are only judged, so the intervals are widened; our assumption
        const double wide = 1.645 * 1.35;
        var s = c.Suspects[suspect];
        int[] members = best.Members.Contains(suspect) ? best.Members : [.. best.Members.Where(m => c.Suspects[m].Id != s.Id), suspect];
        // held against an earlier run: what has changed since, the doubt being common to both days
        bool since = c.Features.Any(f => f.IsEarlier);
        double usual = since ? s.Usual : Math.Sqrt(s.Usual * s.Usual + (s.Model?.Doubt ?? 0) * (s.Model?.Doubt ?? 0));
        // not named: as far as a sound machine may go
        if (!best.Members.Contains(suspect)) usual = s.Model is { Doubt: > 0 } known && s.Id == known.Id ? known.Doubt : 0.4 * s.Usual;
        var own = c with { Shared = [.. c.Shared.Where(x => since || x.Name != s.Id)], Suspects = [.. c.Suspects.Select((x, i) => i == suspect ? x with { TwoSided = s.TwoSided, Usual = usual, Least = best.Members.Contains(suspect) ? s.Least : 0 } : x)] };
        var fit = new EvidenceFit(own) { Free = suspect }.Fit(members);
        int at = Array.IndexOf(members, suspect);
        double f = fit.Strengths[at], u = wide * fit.Sigma[at] * Math.Sqrt(j.Scale);
        Func<double, double> shown = s.Model is { } m && s.Id == m.Id ? m.Shown : BatchSuspects.FigureOf(s.Id).Shown;
        double a = shown(f - u), b = shown(f + u);
        return (shown(f), Math.Min(a, b), Math.Max(a, b));
    }

    // what is missing, in the load's temperature at the end and in the time of the pull-down; apparent where a sensor is wrong
    private static double[] Shares(Comparison c, FittedSet best)
    {
        int end = c.Features.ToList().FindIndex(f => f.Kind == FeatureKind.AtEnd && f.What == Observable.Load), time = c.Features.ToList().FindIndex(f => f.Kind == FeatureKind.LnTime && f.At > 0.7);
        double[] Of(int feature) => [.. best.Members.Select((m, i) => feature < 0 ? 0 : Math.Abs(Change(c, best, i)[feature]))];
        double[] kelvin = Of(end), late = Of(time), kg = Of(c.Features.ToList().FindIndex(f => f is { Kind: FeatureKind.Batch, At: 1, IsEarlier: false }));
        double k = Math.Max(kelvin.Sum(), 1), l = Math.Max(late.Sum(), 0.05), g = Math.Max(kg.Sum(), 0.01);
        return [.. best.Members.Select((m, i) => Math.Max(LeastShare, Math.Max(kg[i] / g, Math.Max(kelvin[i] / k, late[i] / l))))];
    }

    // Each member of the best set with those that may stand in its place, nothing wrong among them: the likeliest, until nine tenths of the weight of all that may stand there are named, or as good a fit; three at most.
    private static IReadOnlyList<IReadOnlyList<string>> Ties(Comparison c, Judgement j)
    {
        var best = j.Best;
        string[][] ids = [.. j.Sets.Select(s => s.Members.Select(m => c.Suspects[m].Id).ToArray())];
        var groups = new List<IReadOnlyList<string>>();
        foreach (string own in best.Members.Length == 0 ? ["none"] : best.Members.Select(m => c.Suspects[m].Id))
        {
            string[] kept = [.. best.Members.Select(m => c.Suspects[m].Id).Where(id => id != own)];
            var alike = ids.Select((x, i) => (Ids: x, Set: j.Sets[i], P: j.Probabilities[i])).Where(x => x.Ids.Length == kept.Length + 1 && kept.All(x.Ids.Contains) || x.Ids.Length == kept.Length && kept.All(x.Ids.Contains))
                .GroupBy(x => x.Ids.FirstOrDefault(id => !kept.Contains(id)) ?? "none").Select(g => (Id: g.Key, P: g.Sum(x => x.P), Chi: g.Min(x => x.Set.ChiSquare))).OrderByDescending(a => a.P).ToArray();
            double held = alike.First(a => a.Id == own).P, all = alike.Sum(a => a.P);
            var group = new List<string> { own };
            foreach (var rival in alike.Where(a => a.Id != own))
            {
                if (group.Count == Judge.MostAlike) break;
                // nothing wrong is a rival by its weight alone: it never fits better
                if (held >= Credible * all && !(own != "none" && rival.Id != "none" && Math.Abs(rival.Chi - best.ChiSquare) < Judge.Tie * j.Scale)) continue;
                group.Add(rival.Id);
                held += rival.P;
            }
            if (group.Count > 1) groups.Add(group);
        }
        return groups;
    }

    private static IReadOnlyList<(string, string, double)> Correlations(Comparison c, Judgement j, EvidenceFit fit)
    {
        var list = new List<(string, string, double)>();
        var top = j.Sets.SelectMany(s => s.Members).Distinct().Take(6).ToArray();
        for (int a = 0; a < top.Length; a++)
            for (int b = a + 1; b < top.Length; b++)
            {
                double[] x = fit.SlopeAt(top[a], 0.5 * c.Suspects[top[a]].Usual), y = fit.SlopeAt(top[b], 0.5 * c.Suspects[top[b]].Usual);
                double xy = x.Zip(y, (u, v) => u * v).Sum(), xx = x.Sum(u => u * u), yy = y.Sum(u => u * u);
                // strengths that do the same to the figures are known with opposite errors
                double r = -xy / Math.Sqrt(Math.Max(xx * yy, 1e-300));
                if (Math.Abs(r) > SpokenCorrelation && c.Suspects[top[a]].Id != c.Suspects[top[b]].Id) list.Add((c.Suspects[top[a]].Id, c.Suspects[top[b]].Id, r));
            }
        return list;
    }
}
