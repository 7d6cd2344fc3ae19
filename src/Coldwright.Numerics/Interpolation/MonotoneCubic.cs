namespace Coldwright.Numerics.Interpolation;

/// <summary>
/// Monotone piecewise cubic through increasing data (Fritsch and Carlson, SIAM J. Numer. Anal. 17 (1980) 238), with kinks:
/// at a marked node the slopes of both sides are taken from their own side only.
/// </summary>
public sealed class MonotoneCubic
{
    private readonly double[] _x, _y, _left, _right;

    /// <param name="x">Strictly increasing abscissae, two or more.</param>
    /// <param name="y">Values, not decreasing or not increasing.</param>
    /// <param name="kink">True at nodes where the slope jumps.</param>
    public MonotoneCubic(double[] x, double[] y, bool[] kink)
    {
        int n = x.Length;
        if (n < 2 || y.Length != n || kink.Length != n) throw new ArgumentException($"two or more nodes of equal number expected, got {n}, {y.Length} and {kink.Length}");
        for (int i = 1; i < n; i++) if (!(x[i] > x[i - 1])) throw new ArgumentException($"abscissae must increase: node {i} is {x[i]} after {x[i - 1]}");
        (_x, _y) = (x, y);
        (_left, _right) = (new double[n], new double[n]);
        for (int i = 0; i < n; i++)
        {
            bool first = i == 0, last = i == n - 1;
            if (first || last || kink[i])
            {
                _left[i] = first ? 0 : OneSided(i, -1, kink);
                _right[i] = last ? 0 : OneSided(i, +1, kink);
                continue;
            }
            double h0 = x[i] - x[i - 1], h1 = x[i + 1] - x[i], d0 = (y[i] - y[i - 1]) / h0, d1 = (y[i + 1] - y[i]) / h1;
            double w0 = 2 * h1 + h0, w1 = h1 + 2 * h0;
            _left[i] = _right[i] = d0 * d1 <= 0 ? 0 : (w0 + w1) / (w0 / d0 + w1 / d1);
        }
    }

    // three-point end formula, limited so that the piece stays monotone
    private double OneSided(int i, int side, bool[] kink)
    {
        int j = i + side, k = j + side;
        double h0 = Math.Abs(_x[j] - _x[i]), d0 = (_y[j] - _y[i]) / (_x[j] - _x[i]);
        if (k < 0 || k >= _x.Length || kink[j]) return d0;
        double h1 = Math.Abs(_x[k] - _x[j]), d1 = (_y[k] - _y[j]) / (_x[k] - _x[j]);
        double s = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
        if (s * d0 <= 0) return 0;
        return Math.Abs(s) > 3 * Math.Abs(d0) ? 3 * d0 : s;
    }

    /// <summary>Number of nodes.</summary>
    public int Count => _x.Length;

    /// <summary>The value; outside the nodes the end value is held.</summary>
    public double At(double x)
    {
        int n = _x.Length;
        if (x <= _x[0]) return _y[0];
        if (x >= _x[n - 1]) return _y[n - 1];
        int low = 0, high = n - 1;
        while (high - low > 1)
        {
            int middle = (low + high) >> 1;
            if (_x[middle] <= x) low = middle; else high = middle;
        }
        double h = _x[high] - _x[low], t = (x - _x[low]) / h, u = 1 - t;
        return u * u * ((1 + 2 * t) * _y[low] + t * h * _right[low]) + t * t * ((3 - 2 * t) * _y[high] - u * h * _left[high]);
    }
}
