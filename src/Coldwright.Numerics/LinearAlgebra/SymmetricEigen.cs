namespace Coldwright.Numerics.LinearAlgebra;

/// <summary>Eigenvalues and vectors of a small symmetric matrix by cyclic Jacobi rotations (Golub and Van Loan, Matrix Computations, 4th ed., 8.5), in caller-owned spans.</summary>
public static class SymmetricEigen
{
    /// <summary>
    /// Turns the symmetric <paramref name="a"/> (n x n, row-major, lower triangle given) into its eigenvalues on the
    /// diagonal; column k of <paramref name="vectors"/> is the k-th eigenvector.
    /// </summary>
    public static void Solve(Span<double> a, Span<double> vectors, int n)
    {
        vectors[..(n * n)].Clear();
        for (int i = 0; i < n; i++)
        {
            vectors[i * n + i] = 1;
            for (int j = 0; j < i; j++) a[j * n + i] = a[i * n + j];
        }
        for (int sweep = 0; sweep < 30; sweep++)
        {
            double off = 0, on = 0;
            for (int i = 0; i < n; i++)
                for (int j = 0; j < n; j++)
                    if (i == j) on += a[i * n + i] * a[i * n + i]; else off += a[i * n + j] * a[i * n + j];
            if (off <= 1e-26 * on) return;
            for (int p = 0; p < n; p++)
                for (int q = p + 1; q < n; q++) Rotate(a, vectors, n, p, q);
        }
    }

    /// <summary>The least eigenvalue and its unit eigenvector; <paramref name="a"/> (n x n, row-major, lower triangle given) is spoilt.</summary>
    public static double Least(Span<double> a, int n, out double[] vector)
    {
        var vectors = new double[n * n];
        Solve(a, vectors, n);
        int least = 0;
        for (int i = 1; i < n; i++) if (a[i * n + i] < a[least * n + least]) least = i;
        vector = new double[n];
        for (int i = 0; i < n; i++) vector[i] = vectors[i * n + least];
        return a[least * n + least];
    }

    private static void Rotate(Span<double> a, Span<double> vectors, int n, int p, int q)
    {
        double apq = a[p * n + q];
        if (apq == 0) return;
        double theta = (a[q * n + q] - a[p * n + p]) / (2 * apq);
        double t = (theta < 0 ? -1 : 1) / (Math.Abs(theta) + Math.Sqrt(theta * theta + 1));
        double c = 1 / Math.Sqrt(t * t + 1), s = t * c;
        for (int k = 0; k < n; k++)
        {
            double kp = a[k * n + p], kq = a[k * n + q];
            a[k * n + p] = c * kp - s * kq;
            a[k * n + q] = s * kp + c * kq;
        }
        for (int k = 0; k < n; k++)
        {
            double pk = a[p * n + k], qk = a[q * n + k];
            a[p * n + k] = c * pk - s * qk;
            a[q * n + k] = s * pk + c * qk;
        }
        for (int k = 0; k < n; k++)
        {
            double kp = vectors[k * n + p], kq = vectors[k * n + q];
            vectors[k * n + p] = c * kp - s * kq;
            vectors[k * n + q] = s * kp + c * kq;
        }
    }
}
