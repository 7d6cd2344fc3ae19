namespace Coldwright.Machine.Compression;

/// <summary>
/// Speeds up a substitution x = g(x): the next point is the combination of the last few whose residuals g(x) - x cancel best.
/// D. G. Anderson, J. ACM 12 (1965) 547, with a memory of at most three differences.
/// </summary>
internal sealed class AndersonMixing(int size)
{
    private const int Memory = 3;
    private readonly List<(double[] X, double[] F)> _past = [];

    /// <summary>Replaces x (scaled to order 1) by the next point to try, from g(x).</summary>
    public void Next(double[] x, double[] g)
    {
        var f = new double[size];
        for (int i = 0; i < size; i++) f[i] = g[i] - x[i];
        _past.Add(([.. x], f));
        if (_past.Count > Memory + 1) _past.RemoveAt(0);
        int m = _past.Count - 1;
        double[] weight = m > 0 ? Weights(f, m) : [];
        for (int i = 0; i < size; i++)
        {
            x[i] = g[i];
            for (int j = 0; j < m; j++) x[i] -= weight[j] * (_past[j + 1].X[i] - _past[j].X[i] + _past[j + 1].F[i] - _past[j].F[i]);
        }
    }

    /// <summary>Forgets: the problem has changed.</summary>
    public void Reset() => _past.Clear();

    // least squares of f - sum w_j (F_j+1 - F_j) by orthogonal directions; one that adds nothing new is left out
    private double[] Weights(double[] f, int m)
    {
        var q = new double[m][];
        var r = new double[m, m];
        var used = new bool[m];
        for (int j = m - 1; j >= 0; j--)
        {
            var d = new double[size];
            for (int i = 0; i < size; i++) d[i] = _past[j + 1].F[i] - _past[j].F[i];
            double before = Math.Sqrt(Dot(d, d));
            for (int k = m - 1; k > j; k--)
            {
                if (!used[k]) continue;
                r[k, j] = Dot(q[k], d);
                for (int i = 0; i < size; i++) d[i] -= r[k, j] * q[k][i];
            }
            double after = Math.Sqrt(Dot(d, d));
            used[j] = after > 1e-6 * before && after > 0;
            if (!used[j]) continue;
            r[j, j] = after;
            for (int i = 0; i < size; i++) d[i] /= after;
            q[j] = d;
        }
        var w = new double[m];
        for (int j = 0; j < m; j++)
        {
            if (!used[j]) continue;
            double sum = Dot(q[j], f);
            for (int k = 0; k < j; k++) sum -= r[j, k] * w[k];
            w[j] = sum / r[j, j];
        }
        return w;
    }

    private static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++) sum += a[i] * b[i];
        return sum;
    }
}
