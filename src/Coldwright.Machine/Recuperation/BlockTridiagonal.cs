namespace Coldwright.Machine.Recuperation;

/// <summary>
/// Linear systems of 3 x 3 blocks in three diagonals, by block elimination with pivoting inside the blocks. Storage is reused;
/// row-major blocks one after another.
/// </summary>
internal sealed class BlockTridiagonal(int blocks)
{
    private const int N = 3, Size = N * N;

    /// <summary>Coupling of block row i to block i - 1.</summary>
    public readonly double[] Lower = new double[blocks * Size];
    /// <summary>Coupling to itself.</summary>
    public readonly double[] Middle = new double[blocks * Size];
    /// <summary>Coupling to block i + 1.</summary>
    public readonly double[] Upper = new double[blocks * Size];
    /// <summary>Right-hand side; the solution after <see cref="TrySolve"/>.</summary>
    public readonly double[] Right = new double[blocks * N];

    /// <summary>Clears all blocks.</summary>
    public void Clear()
    {
        Array.Clear(Lower);
        Array.Clear(Middle);
        Array.Clear(Upper);
    }

    /// <summary>Solves; the blocks are spoilt. False when a pivot vanishes.</summary>
    public bool TrySolve()
    {
        for (int i = 0; i < blocks; i++)
        {
            var m = Middle.AsSpan(i * Size, Size);
            var r = Right.AsSpan(i * N, N);
            if (i > 0)
            {
                var l = Lower.AsSpan(i * Size, Size);
                var u = Upper.AsSpan((i - 1) * Size, Size);
                var before = Right.AsSpan((i - 1) * N, N);
                for (int a = 0; a < N; a++)
                    for (int k = 0; k < N; k++)
                    {
                        double f = l[a * N + k];
                        if (f == 0) continue;
                        for (int b = 0; b < N; b++) m[a * N + b] -= f * u[k * N + b];
                        r[a] -= f * before[k];
                    }
            }
            // upper and right-hand side become those over the middle block
            if (!Reduce(m, Upper.AsSpan(i * Size, Size), r)) return false;
        }
        for (int i = blocks - 2; i >= 0; i--)
        {
            var u = Upper.AsSpan(i * Size, Size);
            for (int a = 0; a < N; a++)
            {
                double s = 0;
                for (int b = 0; b < N; b++) s += u[a * N + b] * Right[(i + 1) * N + b];
                Right[i * N + a] -= s;
            }
        }
        return true;
    }

    // Gauss-Jordan with row pivoting, rows scaled by their largest entry
    private static bool Reduce(Span<double> m, Span<double> u, Span<double> r)
    {
        for (int k = 0; k < N; k++)
        {
            int p = k;
            double best = 0;
            for (int i = k; i < N; i++)
            {
                double scale = 0;
                for (int j = 0; j < N; j++) scale = Math.Max(scale, Math.Abs(m[i * N + j]));
                double rank = scale > 0 ? Math.Abs(m[i * N + k]) / scale : 0;
                if (rank > best) (best, p) = (rank, i);
            }
            if (!(best > 0)) return false;
            if (p != k)
            {
                for (int j = 0; j < N; j++)
                {
                    (m[k * N + j], m[p * N + j]) = (m[p * N + j], m[k * N + j]);
                    (u[k * N + j], u[p * N + j]) = (u[p * N + j], u[k * N + j]);
                }
                (r[k], r[p]) = (r[p], r[k]);
            }
            double inverse = 1 / m[k * N + k];
            for (int j = 0; j < N; j++)
            {
                m[k * N + j] *= inverse;
                u[k * N + j] *= inverse;
            }
            r[k] *= inverse;
            for (int i = 0; i < N; i++)
            {
                if (i == k) continue;
                double f = m[i * N + k];
                if (f == 0) continue;
                for (int j = 0; j < N; j++)
                {
                    m[i * N + j] -= f * m[k * N + j];
                    u[i * N + j] -= f * u[k * N + j];
                }
                r[i] -= f * r[k];
            }
        }
        return true;
    }
}
