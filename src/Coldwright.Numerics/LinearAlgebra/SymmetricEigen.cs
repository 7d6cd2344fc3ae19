namespace Coldwright.Numerics.LinearAlgebra;

/// <summary>Eigenvalues of small symmetric matrices by Jacobi rotations (Golub and Van Loan, Matrix Computations, 4th ed., 8.5).</summary>
public static class SymmetricEigen
{
    /// <summary>The least eigenvalue and its unit eigenvector; <paramref name="a"/> (n x n, row-major) is spoilt.</summary>
    public static double Least(Span<double> a, int n, out double[] vector)
    {
        var v = new double[n * n];
        for (int i = 0; i < n; i++) v[i * n + i] = 1;
        for (int sweep = 0; sweep < 60; sweep++)
        {
            double off = 0, scale = 0;
            for (int i = 0; i < n; i++)
                for (int j = 0; j < n; j++)
                    if (i != j) off += a[i * n + j] * a[i * n + j]; else scale += a[i * n + i] * a[i * n + i];
            if (off <= 1e-30 * scale) break;
            for (int p = 0; p < n - 1; p++)
                for (int q = p + 1; q < n; q++)
                {
                    double apq = a[p * n + q];
                    if (apq == 0) continue;
                    double theta = (a[q * n + q] - a[p * n + p]) / (2 * apq);
                    double t = Math.CopySign(1, theta) / (Math.Abs(theta) + Math.Sqrt(theta * theta + 1));
                    double c = 1 / Math.Sqrt(t * t + 1), s = t * c;
                    for (int k = 0; k < n; k++)
                    {
                        double akp = a[k * n + p], akq = a[k * n + q];
                        a[k * n + p] = c * akp - s * akq;
                        a[k * n + q] = s * akp + c * akq;
                    }
                    for (int k = 0; k < n; k++)
                    {
                        double apk = a[p * n + k], aqk = a[q * n + k];
                        a[p * n + k] = c * apk - s * aqk;
                        a[q * n + k] = s * apk + c * aqk;
                        double vkp = v[k * n + p], vkq = v[k * n + q];
                        v[k * n + p] = c * vkp - s * vkq;
                        v[k * n + q] = s * vkp + c * vkq;
                    }
                }
        }
        int least = 0;
        for (int i = 1; i < n; i++) if (a[i * n + i] < a[least * n + least]) least = i;
        vector = new double[n];
        for (int i = 0; i < n; i++) vector[i] = v[i * n + least];
        return a[least * n + least];
    }
}
