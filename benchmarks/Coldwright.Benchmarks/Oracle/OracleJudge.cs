using Coldwright.Numerics.LinearAlgebra;
using Coldwright.Runs.Explain;

namespace Coldwright.Benchmarks.Oracle;

/// <summary>
/// Weighs every set of none, one or two faults with everything the generator draws: its own effects, its own scatter, its own sizes and odds. Straight in the doubts (each fault bends those it bends
/// most), exact in the sizes on a grid. What it scores is near the most that any explainer can score on the same logs.
/// </summary>
internal sealed class OracleJudge(OracleSight sight)
{
    private const int Sizes = 6;
    private const double NoneOdds = 0.13, OneOdds = 0.47, TwoOdds = 0.40, Weighty = 0.2;

    /// <summary>Two ids that together make the answer right most probably; <c>none</c> alone where that is likelier.</summary>
    public IReadOnlyList<string> Name(double[] measured)
    {
        int[] kept = [.. Enumerable.Range(0, measured.Length).Where(i => double.IsFinite(measured[i]))];
        double[] Cut(double[] x) => [.. kept.Select(i => x[i])];
        double[] off = [.. kept.Select(i => measured[i] - sight.Sound[i])];
        var sets = new List<(string[] Worthy, double Log)>();
        var faults = OracleFault.All;
        int ids = faults.Select(f => f.Id).Distinct().Count();
        Add([], Math.Log(NoneOdds));
        for (int a = 0; a < faults.Count; a++)
        {
            Add([faults[a]], Math.Log(OneOdds * faults[a].Share / ids));
            for (int b = a + 1; b < faults.Count; b++)
                if (faults[a].Id != faults[b].Id) Add([faults[a], faults[b]], Math.Log(TwoOdds * faults[a].Share * faults[b].Share / (ids * (ids - 1) / 2)));
        }
        double most = sets.Max(s => s.Log);
        return Best([.. sets.Select(s => (s.Worthy, Math.Exp(s.Log - most)))]);

        void Add(OracleFault[] set, double prior)
        {
            int n = off.Length;
            double[] s = Covariance(set, kept);
            if (!Dense.TryCholesky(s, n)) return;
            double logDet = 0;
            for (int i = 0; i < n; i++) logDet += Math.Log(s[i * n + i]);
            double[] Whiten(double[] v)
            {
                var b = new double[n];
                for (int i = 0; i < n; i++)
                {
                    double x = v[i];
                    for (int k = 0; k < i; k++) x -= s[i * n + k] * b[k];
                    b[i] = x / s[i * n + i];
                }
                return b;
            }

            var both = set.Length == 2 ? sight.Together(set[0], set[1]) : null;
            double[] r = Whiten(off);
            double[][][] effects = [.. set.Select(f => Grid(f).Select(size => Whiten(Cut(sight.Effect(f, size)))).ToArray())];
            double[] extra = both is null ? [] : Whiten(Cut(both));
            int[] points = [.. set.Select(f => f.From == f.To ? 1 : Sizes)];
            int all = points.Aggregate(1, (x, y) => x * y);
            // by which of the two is worth a name at each point of the grid
            var byWorth = new Dictionary<string, (string[] Ids, List<double> Logs)>();
            for (int p = 0; p < all; p++)
            {
                int i = set.Length > 0 ? p % points[0] : 0, j = set.Length > 1 ? p / points[0] : 0;
                double bend = both is null ? 0 : Ratio(set[0], i) * Ratio(set[1], j), chi = 0;
                for (int k = 0; k < n; k++)
                {
                    double d = r[k] - (set.Length > 0 ? effects[0][i][k] : 0) - (set.Length > 1 ? effects[1][j][k] + bend * extra[k] : 0);
                    chi += d * d;
                }
                string[] worthy = Worthy(set, i, j);
                string key = string.Join('+', worthy);
                if (!byWorth.TryGetValue(key, out var list)) byWorth[key] = list = (worthy, []);
                list.Logs.Add(prior - 0.5 * chi - logDet - Math.Log(all));
            }
            foreach (var (worthy, logs) in byWorth.Values)
            {
                double top = logs.Max();
                sets.Add((worthy, top + Math.Log(logs.Sum(x => Math.Exp(x - top)))));
            }
        }
    }

    private static double[] Grid(OracleFault f) => f.From == f.To ? [f.From] : [.. Enumerable.Range(0, Sizes).Select(i => f.From + (f.To - f.From) * (i + 0.5) / Sizes)];

    private static double Ratio(OracleFault f, int i) => f.On(Grid(f)[i]) / f.On(f.Middle);

    // members worth more than a fifth of what is missing, by three losses: load at the end, time, grams
    private string[] Worthy(OracleFault[] set, int i, int j)
    {
        if (set.Length < 2) return [.. set.Select(f => f.Id)];
        double[] a = Losses(set[0], Grid(set[0])[i]), b = Losses(set[1], Grid(set[1])[j]);
        bool Worth(double[] own, double[] other) => Enumerable.Range(0, 3).Any(k => own[k] > 0 && own[k] / Math.Max(own[k] + Math.Max(0, other[k]), 1e-9) > Weighty);
        return [.. new[] { (set[0].Id, Worth(a, b)), (set[1].Id, Worth(b, a)) }.Where(x => x.Item2).Select(x => x.Id)];
    }

    private double[] Losses(OracleFault f, double size)
    {
        // kelvin, share of the time and kilograms below which nobody would look
        double[] least = [2, 0.05, 0.02], effect = sight.Effect(f, size);
        double At(Func<Feature, bool> which) => sight.Features.ToList().FindIndex(x => which(x)) is >= 0 and var at ? effect[at] : 0;
        double kelvin = At(x => x.Kind == FeatureKind.AtEnd && x.What == Observable.Load);
        double[] all = [f.IsOfSensors ? Math.Abs(kelvin) : kelvin, At(x => x.Kind == FeatureKind.LnTime && x.At is > 0.6 and < 0.7), -At(x => x.Kind == FeatureKind.Batch && x.At == 1)];
        return [.. all.Select((v, k) => v > least[k] ? v : 0)];
    }

    private double[] Covariance(OracleFault[] set, int[] kept)
    {
        int n = kept.Length;
        var s = new double[n * n];
        var rest = sight.Remainder[Math.Min(2, set.Count(f => !f.IsOfSensors))];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++) s[i * n + j] = Math.Sqrt(rest[kept[i]] * rest[kept[j]]) * Along.Correlation(sight.Features[kept[i]], sight.Features[kept[j]]);
            s[i * n + i] += sight.Noise[kept[i]];
        }
        void Take(double[] shift)
        {
            for (int i = 0; i < n; i++)
            {
                double v = shift[kept[i]];
                if (v != 0) for (int j = 0; j < n; j++) s[i * n + j] += v * shift[kept[j]];
            }
        }

        foreach (double[] shift in sight.Lasting) Take(shift);
        foreach (var (name, shift) in sight.Doubts)
        {
            double[] moved = shift;
            foreach (var f in set) if (sight.Bent(f, name) is { } bent) moved = [.. moved.Select((v, i) => v + bent[i])];
            Take(moved);
        }
        return s;
    }

    // the answer that is right most probably: nothing; or one id first and another second, right when the first alone is hidden or both are
    private static IReadOnlyList<string> Best(IReadOnlyList<(string[] Ids, double P)> sets)
    {
        double none = sets.Where(s => s.Ids.Length == 0).Sum(s => s.P);
        string[] ids = [.. sets.SelectMany(s => s.Ids).Distinct()];
        double P(params string[] of) => sets.Where(s => s.Ids.Length == of.Length && of.All(s.Ids.Contains)).Sum(s => s.P);
        var best = ids.SelectMany(a => ids.Where(b => b != a).Select(b => (A: a, B: b, P: P(a) + P(a, b)))).MaxBy(x => x.P);
        if (none > best.P) return ["none", best.A];
        string third = ids.Where(x => x != best.A && x != best.B).MaxBy(x => sets.Where(s => s.Ids.Contains(x)).Sum(s => s.P))!;
        return [best.A, best.B, third];
    }
}
