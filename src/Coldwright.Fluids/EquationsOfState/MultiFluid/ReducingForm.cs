using Coldwright.Numerics.Scalars;

namespace Coldwright.Fluids.EquationsOfState.MultiFluid;

/// <summary>
/// The quadratic form of Kunz and Wagner (J. Chem. Eng. Data 57 (2012) 3032, eqs. 16 and 17) that gives the
/// reducing temperature or the reducing molar volume of a mixture:
/// Y(x) = sum x_i^2 Y_i + sum_{i&lt;j} 2 x_i x_j beta gamma Y_ij (x_i + x_j)/(beta^2 x_i + x_j).
/// It is of second degree in x, which the derivatives below use.
/// </summary>
internal sealed class ReducingForm
{
    private readonly int _n;
    private readonly double[] _pure, _beta2, _factor;

    /// <param name="pure">Y_i of the pure fluids.</param>
    /// <param name="beta">beta_ij, row-major, i &lt; j used.</param>
    /// <param name="factor">2 beta gamma Y_ij, row-major, i &lt; j used.</param>
    public ReducingForm(double[] pure, double[] beta, double[] factor)
    {
        _n = pure.Length;
        _pure = pure;
        _factor = factor;
        _beta2 = beta.Select(b => b * b).ToArray();
    }

    public T Value<T>(ReadOnlySpan<T> x) where T : struct, IScalar<T>
    {
        var y = T.From(0);
        for (int i = 0; i < _n; i++)
        {
            y += _pure[i] * (x[i] * x[i]);
            for (int j = i + 1; j < _n; j++)
            {
                if (x[i].Value == 0 && x[j].Value == 0) continue;
                y += _factor[i * _n + j] * (x[i] * x[j] * (x[i] + x[j]) / (_beta2[i * _n + j] * x[i] + x[j]));
            }
        }
        return y;
    }

    public double Value(ReadOnlySpan<double> x)
    {
        double y = 0;
        for (int i = 0; i < _n; i++)
        {
            double xi = x[i];
            if (xi == 0) continue;
            y += _pure[i] * xi * xi;
            for (int j = i + 1; j < _n; j++)
            {
                double xj = x[j];
                if (xj == 0) continue;
                y += _factor[i * _n + j] * xi * xj * (xi + xj) / (_beta2[i * _n + j] * xi + xj);
            }
        }
        return y;
    }

    /// <summary>dY/dx_k with all x independent.</summary>
    public void Gradient(ReadOnlySpan<double> x, Span<double> g)
    {
        for (int i = 0; i < _n; i++) g[i] = 2 * _pure[i] * x[i];
        for (int i = 0; i < _n; i++)
            for (int j = i + 1; j < _n; j++)
            {
                double b = _beta2[i * _n + j], f = _factor[i * _n + j];
                double xi = Math.Max(x[i], 1e-100), xj = Math.Max(x[j], 1e-100), n = xi + xj, d = 1 / (b * xi + xj), nd = n * d;
                g[i] += f * (xj * nd + xi * xj * d * (1 - nd * b));
                g[j] += f * (xi * nd + xi * xj * d * (1 - nd));
            }
    }

    /// <summary>d2Y/(dx_k dx_l), row-major, symmetric.</summary>
    public void Hessian(ReadOnlySpan<double> x, Span<double> h)
    {
        h.Clear();
        for (int i = 0; i < _n; i++) h[i * _n + i] = 2 * _pure[i];
        for (int i = 0; i < _n; i++)
            for (int j = i + 1; j < _n; j++)
            {
                double b = _beta2[i * _n + j], f = _factor[i * _n + j];
                double xi = Math.Max(x[i], 1e-100), xj = Math.Max(x[j], 1e-100), n = xi + xj, d = 1 / (b * xi + xj), nd = n * d;
                double pi = d * (1 - nd * b), pj = d * (1 - nd);
                h[i * _n + i] += f * (2 * xj * pi + xi * xj * d * d * 2 * b * (nd * b - 1));
                h[j * _n + j] += f * (2 * xi * pj + xi * xj * d * d * 2 * (nd - 1));
                double cross = f * (nd + xj * pj + xi * pi + xi * xj * d * d * (2 * nd * b - 1 - b));
                h[i * _n + j] += cross;
                h[j * _n + i] += cross;
            }
    }
}
