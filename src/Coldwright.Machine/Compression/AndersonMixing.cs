namespace Coldwright.Machine.Compression;

/// <summary>
/// Speeds up a substitution x = g(x): the next point is the combination of the last few whose residuals g(x) - x cancel best.
/// D. G. Anderson, J. ACM 12 (1965) 547, with a memory of at most three differences. Its arrays are made once.
/// </summary>
internal sealed class AndersonMixing(int size)
{
    private const int Memory = 3;
    private readonly double[][] _x = Rows(Memory + 1, size), _f = Rows(Memory + 1, size), _q = Rows(Memory, size);
    private readonly double[] _r = new double[Memory * Memory], _weight = new double[Memory];
    private readonly bool[] _used = new bool[Memory];
    private int _count;

    /// <summary>Replaces x (scaled to order 1) by the next point to try, from g(x).</summary>
    public void Next(double[] x, double[] g)
    {
        if (_count == Memory + 1)
        {
            // the oldest makes room
            (double[] oldX, double[] oldF) = (_x[0], _f[0]);
            for (int j = 0; j < Memory; j++) (_x[j], _f[j]) = (_x[j + 1], _f[j + 1]);
            (_x[Memory], _f[Memory]) = (oldX, oldF);
            _count--;
        }
        var f = _f[_count];
        for (int i = 0; i < size; i++) (_x[_count][i], f[i]) = (x[i], g[i] - x[i]);
        int m = _count++;
        Weights(f, m);
        for (int i = 0; i < size; i++)
        {
            x[i] = g[i];
            for (int j = 0; j < m; j++) x[i] -= _weight[j] * (_x[j + 1][i] - _x[j][i] + _f[j + 1][i] - _f[j][i]);
        }
    }

    /// <summary>Forgets: the problem has changed.</summary>
    public void Reset() => _count = 0;

    // least squares of f - sum w_j (F_j+1 - F_j) by orthogonal directions; one that adds nothing new is left out
    private void Weights(double[] f, int m)
    {
        for (int j = m - 1; j >= 0; j--)
        {
            var d = _q[j];
            for (int i = 0; i < size; i++) d[i] = _f[j + 1][i] - _f[j][i];
            double before = Math.Sqrt(Dot(d, d));
            for (int k = m - 1; k > j; k--)
            {
                if (!_used[k]) continue;
                double along = _r[k * Memory + j] = Dot(_q[k], d);
                for (int i = 0; i < size; i++) d[i] -= along * _q[k][i];
            }
            double after = Math.Sqrt(Dot(d, d));
            _used[j] = after > 1e-6 * before && after > 0;
            if (!_used[j]) continue;
            _r[j * Memory + j] = after;
            for (int i = 0; i < size; i++) d[i] /= after;
        }
        for (int j = 0; j < m; j++)
        {
            _weight[j] = 0;
            if (!_used[j]) continue;
            double sum = Dot(_q[j], f);
            for (int k = 0; k < j; k++)
                if (_used[k]) sum -= _r[j * Memory + k] * _weight[k];
            _weight[j] = sum / _r[j * Memory + j];
        }
    }

    private static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++) sum += a[i] * b[i];
        return sum;
    }

    private static double[][] Rows(int rows, int columns) => [.. Enumerable.Range(0, rows).Select(_ => new double[columns])];
}
