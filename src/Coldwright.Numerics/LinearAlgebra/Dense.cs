namespace Coldwright.Numerics.LinearAlgebra;

/// <summary>Small dense systems, row-major in caller-owned spans; nothing is allocated.</summary>
public static class Dense
{
    /// <summary>
    /// Replaces the lower triangle of the symmetric <paramref name="a"/> (n x n, row-major) by its Cholesky factor.
    /// False when it is not positive definite to <paramref name="floor"/>; <paramref name="a"/> is then spoilt.
    /// </summary>
    public static bool TryCholesky(Span<double> a, int n, double floor = 0)
    {
        for (int j = 0; j < n; j++)
        {
            double d = a[j * n + j];
            for (int k = 0; k < j; k++) d -= a[j * n + k] * a[j * n + k];
            if (!(d > floor)) return false;
            d = Math.Sqrt(d);
            a[j * n + j] = d;
            for (int i = j + 1; i < n; i++)
            {
                double s = a[i * n + j];
                for (int k = 0; k < j; k++) s -= a[i * n + k] * a[j * n + k];
                a[i * n + j] = s / d;
            }
        }
        return true;
    }

    /// <summary>Solves with a factor from <see cref="TryCholesky"/>; <paramref name="b"/> (length n) becomes the solution.</summary>
    public static void SolveCholesky(ReadOnlySpan<double> factor, Span<double> b, int n)
    {
        for (int i = 0; i < n; i++)
        {
            double s = b[i];
            for (int k = 0; k < i; k++) s -= factor[i * n + k] * b[k];
            b[i] = s / factor[i * n + i];
        }
        for (int i = n - 1; i >= 0; i--)
        {
            double s = b[i];
            for (int k = i + 1; k < n; k++) s -= factor[k * n + i] * b[k];
            b[i] = s / factor[i * n + i];
        }
    }

    /// <summary>
    /// Solves a general system by Gaussian elimination with row pivoting; <paramref name="a"/> (n x n) is spoilt,
    /// <paramref name="b"/> becomes the solution. False when a pivot vanishes.
    /// </summary>
    public static bool TrySolve(Span<double> a, Span<double> b, int n)
    {
        for (int k = 0; k < n; k++)
        {
            int p = k;
            for (int i = k + 1; i < n; i++) if (Math.Abs(a[i * n + k]) > Math.Abs(a[p * n + k])) p = i;
            if (!(Math.Abs(a[p * n + k]) > 0)) return false;
            if (p != k)
            {
                for (int j = k; j < n; j++) (a[k * n + j], a[p * n + j]) = (a[p * n + j], a[k * n + j]);
                (b[k], b[p]) = (b[p], b[k]);
            }
            double inverse = 1 / a[k * n + k];
            for (int i = k + 1; i < n; i++)
            {
                double m = a[i * n + k] * inverse;
                if (m == 0) continue;
                for (int j = k + 1; j < n; j++) a[i * n + j] -= m * a[k * n + j];
                b[i] -= m * b[k];
            }
        }
        for (int i = n - 1; i >= 0; i--)
        {
            double s = b[i];
            for (int j = i + 1; j < n; j++) s -= a[i * n + j] * b[j];
            b[i] = s / a[i * n + i];
        }
        return true;
    }
}
