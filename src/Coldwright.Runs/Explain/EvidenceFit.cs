using Coldwright.Numerics;
using Coldwright.Numerics.LinearAlgebra;

namespace Coldwright.Runs.Explain;

/// <summary>One set of suspects fitted to a comparison.</summary>
/// <param name="Members">Indices of suspects; empty: nothing is wrong.</param>
/// <param name="Strengths">Their strengths.</param>
/// <param name="Stretch">How much more (share) each moves the pull-down than its runs say.</param>
/// <param name="Sigma">Standard uncertainty of each strength.</param>
/// <param name="ChiSquare">Weighted squares that remain.</param>
/// <param name="LogEvidence">ln of prior times likelihood, the strengths integrated out.</param>
internal sealed record FittedSet(int[] Members, double[] Strengths, double[] Stretch, double[] Sigma, double ChiSquare, double LogEvidence);

/// <summary>
/// Weighs every set of none, one or two suspects against a comparison: doubts and sensor errors are integrated out as normal, strengths are found by Gauss-Newton
/// steps on their curves, their integral is Laplace's. How far a cause moves the pull-down hangs on the cooling to spare, in which two models of one machine differ: each cause may
/// stretch its effect there (docs/theory/explain.md). All sums are inner products of a few whitened vectors, so that a set costs microseconds.
/// </summary>
internal sealed class EvidenceFit
{
    // odds of one fault against none before anything was measured; our assumption
    private const double FaultOdds = 0.2;
    // a fault is something clear: the density of its strength is nothing at nothing, highest at this share of the clear one (Rayleigh's distribution); our assumption
    private const double ModeShare = 0.8, LeastShare = 0.01, LeastStretch = -0.9;
    private const int Rounds = 60;
    // chi-square of a strong fault below which it is not weighed: a fifth of a standard deviation; our assumption
    private const double LeastSeen = 0.04;
    // of the stretch, one standard deviation; our assumption
    internal const double StretchSigma = 0.4;

    private readonly Comparison _c;
    private readonly int _n;
    private readonly double[] _factor;
    private readonly double[] _rest;
    private readonly double[][] _first, _second;
    // the parts of them that may stretch
    private readonly double[][] _firstLoose, _secondLoose;

    public EvidenceFit(Comparison c)
    {
        (_c, _n) = (c, c.Features.Count);
        var s = new double[_n * _n];
        for (int i = 0; i < _n; i++)
            for (int j = 0; j < _n; j++) s[i * _n + j] = Math.Sqrt(c.Variance[i] * c.Variance[j]) * Along.Correlation(c.Features[i], c.Features[j]);
        foreach (var (_, shift) in c.Shared)
            for (int i = 0; i < _n; i++)
                for (int j = 0; j < _n; j++) s[i * _n + j] += shift[i] * shift[j];
        if (!Dense.TryCholesky(s, _n)) throw new SolveException(new SolveReport(SolveStatus.NotConverged, 0, double.NaN, "the uncertainties of the figures do not form a covariance"));
        _factor = s;
        var rest = new double[_n];
        for (int i = 0; i < _n; i++) rest[i] = c.Measured[i] - c.Expected[i];
        _rest = Whiten(rest);
        _first = [.. c.Suspects.Select(x => Whiten(x.First))];
        _second = [.. c.Suspects.Select(x => Whiten(x.Second))];
        double[] Loose(Suspect x, double[] change) => x.Model is null ? new double[_n] : Whiten([.. change.Select((v, i) => c.Features[i].IsOfPullDown ? v : 0)]);
        _firstLoose = [.. c.Suspects.Select(x => Loose(x, x.First))];
        _secondLoose = [.. c.Suspects.Select(x => Loose(x, x.Second))];
    }

    /// <summary>A suspect whose strength may go below nothing; -1: none.</summary>
    public int Free { get; init; } = -1;

    /// <summary>Divides figures by their uncertainty: the lower factor solved for them.</summary>
    public double[] Whiten(double[] v)
    {
        var b = new double[_n];
        for (int i = 0; i < _n; i++)
        {
            double s = v[i];
            for (int k = 0; k < i; k++) s -= _factor[i * _n + k] * b[k];
            b[i] = s / _factor[i * _n + i];
        }
        return b;
    }

    /// <summary>True when even a strong fault (twice a clear one of a sensor) moves the figures, all together, by enough that the record could speak for it.</summary>
    public bool IsSeen(int suspect)
    {
        double[] strong = ExplanationBuilder.Change(_c.Suspects[suspect], _c.Suspects[suspect].TwoSided ? 2 * _c.Suspects[suspect].Usual : _c.Suspects[suspect].Strengths.Second);
        return Whiten(strong).Sum(v => v * v) > LeastSeen;
    }

    /// <summary>All sets of what the record could show, the likeliest first.</summary>
    public IReadOnlyList<FittedSet> All()
    {
        int[] seen = [.. Enumerable.Range(0, _c.Suspects.Count).Where(IsSeen)];
        var sets = new List<FittedSet> { Fit([]) };
        foreach (int i in seen)
        {
            sets.Add(Fit([i]));
            foreach (int j in seen)
                if (j > i && _c.Suspects[i].Id != _c.Suspects[j].Id) sets.Add(Fit([i, j]));
        }
        return [.. sets.OrderByDescending(x => x.LogEvidence)];
    }

    /// <summary>
    /// What the record says of the shared doubts once a set is taken for true: the mean of each in its standard deviations, and a step of one standard deviation in the direction
    /// that moves a figure most.
    /// </summary>
    /// <param name="set">The set.</param>
    /// <param name="figure">Index of the figure; below 0: none.</param>
    public (double[] Mean, double[] Step) Doubts(FittedSet set, int figure)
    {
        var r = new double[_n];
        Cost(set.Members, [.. set.Strengths, .. set.Stretch], r);
        double[][] w = [.. _c.Shared.Select(s => Whiten(s.Shift))];
        double[] mean = [.. w.Select(x => Dot(x, r))], slope = [.. _c.Shared.Select(s => figure < 0 ? 0 : s.Shift[figure])], along = new double[w.Length];
        // covariance of normal doubts after the fact: one less what the figures already say
        for (int i = 0; i < w.Length; i++)
        {
            along[i] = slope[i];
            for (int j = 0; j < w.Length; j++) along[i] -= Dot(w[i], w[j]) * slope[j];
        }
        double size = Math.Sqrt(Math.Max(1e-12, Dot(slope, along)));
        return (mean, [.. along.Select(x => x / size)]);
    }

    /// <summary>Negative logarithm of the density of strengths and then stretches, up to a constant.</summary>
    public double CostOf(int[] members, double[] unknowns) => Cost(members, unknowns, new double[_n]);

    /// <summary>Slopes of the whitened figures by a suspect's strength.</summary>
    public double[] SlopeAt(int suspect, double strength)
    {
        var (a, b) = _c.Suspects[suspect].Slopes(strength);
        return [.. _first[suspect].Select((v, i) => a * v + b * _second[suspect][i])];
    }

    /// <summary>Fits a set.</summary>
    public FittedSet Fit(int[] members)
    {
        // the curves bend, so more than one valley is possible: a weak and a strong start for each, or one on either side
        FittedSet? best = null;
        for (int start = 0; start < 1 << members.Length; start++)
        {
            int bits = start;
            var f = members.Select((x, i) => _c.Suspects[x] is var s && s.TwoSided ? ((bits >> i & 1) == 1 ? -0.6 : 0.6) * s.Usual : (bits >> i & 1) == 1 ? 0.85 * s.Strengths.Second : Math.Max(s.Least, 0.3 * s.Strengths.First)).ToArray();
            var found = Fit(members, f);
            if (best is null || found.LogEvidence > best.LogEvidence) best = found;
        }
        return best!;
    }

    private FittedSet Fit(int[] members, double[] strengths)
    {
        // strengths, then stretches
        int m = members.Length, k = 2 * m;
        double[] f = [.. strengths, .. new double[m]];
        var r = new double[_n];
        var j = new double[k][];
        var h = new double[k * k];
        var g = new double[k];
        double cost = Cost(members, f, r), damping = 1e-3;
        for (int round = 0; round < Rounds && m > 0; round++)
        {
            Normal(members, f, r, j, h, g);
            double[] a = [.. h], step = [.. g];
            for (int i = 0; i < k; i++) a[i * k + i] *= 1 + damping;
            if (!Dense.TrySolve(a, step, k)) break;
            double[] next = [.. f.Select((v, i) => i < m ? Within(members[i], v, v + step[i]) : Math.Max(LeastStretch, v + step[i]))];
            var tried = new double[_n];
            double then = Cost(members, next, tried);
            if (then < cost)
            {
                double gain = cost - then, moved = 0;
                for (int i = 0; i < m; i++) moved = Math.Max(moved, Math.Abs(next[i] - f[i]) / _c.Suspects[members[i]].Usual);
                (f, r, cost, damping) = (next, tried, then, damping / 4);
                if (gain < 1e-6 && moved < 1e-4) break;
            }
            else if ((damping = Math.Max(damping, 1e-3) * 5) > 1e6) break;
        }
        Normal(members, f, r, j, h, g);
        double chi = r.Sum(x => x * x), log = -cost + members.Sum(x => Math.Log(FaultOdds * _c.Suspects[x].OddsShare));
        var sigma = new double[m];
        if (m > 0)
        {
            double[] factor = [.. h];
            if (!Dense.TryCholesky(factor, k)) return new FittedSet(members, f[..m], f[m..], sigma, chi, double.NegativeInfinity);
            for (int i = 0; i < m; i++)
            {
                var e = new double[k];
                e[i] = 1;
                Dense.SolveCholesky(factor, e, k);
                sigma[i] = Math.Sqrt(e[i]);
                // the priors' norms, Laplace's integral, and the part of it that lies where the strength may be
                log -= Math.Log(factor[i * k + i]) + Math.Log(factor[(m + i) * k + m + i]) + Math.Log(StretchSigma);
                var s = _c.Suspects[members[i]];
                if (members[i] == Free) log -= Math.Log(s.Usual);
                else log -= 2 * Math.Log(ModeShare * s.Usual) - 0.5 * Math.Log(2 * Math.PI) + (s.TwoSided ? Math.Log(2) : 0) - Math.Log(NormalBelow(Math.Abs(f[i]) / sigma[i]));
            }
        }
        return new FittedSet(members, f[..m], f[m..], sigma, chi, log);
    }

    // a strength stays on its side of nothing, but for the free one
    private double Within(int suspect, double from, double to)
    {
        var s = _c.Suspects[suspect];
        double least = Math.Max(LeastShare * s.Usual, s.Least);
        if (suspect == Free) return s.TwoSided ? to : Math.Clamp(to, s.Least > 0 ? s.Least : -0.7 * s.Strengths.First, 3 * s.Strengths.Second);
        if (s.TwoSided) return from > 0 ? Math.Max(least, to) : Math.Min(-least, to);
        return Math.Clamp(to, least, 3 * s.Strengths.Second);
    }

    // half the weighted squares, priors of the strengths and stretches included
    private double Cost(int[] members, double[] f, double[] r)
    {
        _rest.CopyTo(r, 0);
        double prior = 0;
        for (int i = 0; i < members.Length; i++)
        {
            int suspect = members[i];
            var (a, b) = _c.Suspects[suspect].Weights(f[i]);
            double stretch = f[members.Length + i];
            Add(r, suspect, -a, -b, stretch);
            double usual = Scale(suspect);
            prior += 0.5 * (f[i] * f[i] / (usual * usual) + stretch * stretch / (StretchSigma * StretchSigma)) - (suspect == Free ? 0 : Math.Log(Math.Abs(f[i])));
        }
        return 0.5 * r.Sum(v => v * v) + prior;
    }

    private void Add(double[] to, int suspect, double a, double b, double stretch)
    {
        double[] x = _first[suspect], y = _second[suspect], looseX = _firstLoose[suspect], looseY = _secondLoose[suspect];
        for (int k = 0; k < to.Length; k++) to[k] += a * (x[k] + stretch * looseX[k]) + b * (y[k] + stretch * looseY[k]);
    }

    private double Scale(int suspect) => (suspect == Free ? 1 : ModeShare) * _c.Suspects[suspect].Usual;

    private void Normal(int[] members, double[] f, double[] r, double[][] j, double[] h, double[] g)
    {
        int m = members.Length, k = 2 * m;
        for (int i = 0; i < m; i++)
        {
            int suspect = members[i];
            var (a, b) = _c.Suspects[suspect].Slopes(f[i]);
            Add(j[i] = new double[_n], suspect, a, b, f[m + i]);
            (a, b) = _c.Suspects[suspect].Weights(f[i]);
            double[] x = _firstLoose[suspect], y = _secondLoose[suspect];
            j[m + i] = [.. x.Select((v, n) => a * v + b * y[n])];
        }
        for (int i = 0; i < k; i++)
        {
            bool strength = i < m, clear = strength && members[i] != Free;
            double usual = strength ? Scale(members[i]) : StretchSigma, w = 1 / (usual * usual);
            g[i] = Dot(j[i], r) - f[i] * w + (clear ? 1 / f[i] : 0);
            for (int n = 0; n < k; n++) h[i * k + n] = Dot(j[i], j[n]) + (i == n ? w + (clear ? 1 / (f[i] * f[i]) : 0) : 0);
        }
    }

    private static double Dot(double[] a, double[] b)
    {
        double s = 0;
        for (int i = 0; i < a.Length; i++) s += a[i] * b[i];
        return s;
    }

    /// <summary>Normal distribution function: Abramowitz and Stegun (1964), 26.2.17, absolute error below 7.5e-8.</summary>
    private static double NormalBelow(double x)
    {
        double t = 1 / (1 + 0.2316419 * Math.Abs(x));
        double tail = Math.Exp(-x * x / 2) / Math.Sqrt(2 * Math.PI) * t * (0.319381530 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
        return Math.Max(1e-12, x >= 0 ? 1 - tail : tail);
    }
}
