namespace Coldwright.Numerics.LinearAlgebra;

/// <summary>How many eigenvalues of a small symmetric matrix lie below a number, by Sylvester's law of inertia: a tenth of the work of finding them.</summary>
public static class Inertia
{
    // a pivot of nothing is one a hair off: the eigenvalue asked about then lies within rounding of the number
    private const double Hair = 1e-14;

    /// <summary>Counts them.</summary>
    /// <param name="a">Symmetric, n x n, row-major; the lower triangle is read.</param>
    /// <param name="shift">The number.</param>
    /// <param name="work">n x n, overwritten.</param>
    /// <param name="n">Rows.</param>
    public static int Below(ReadOnlySpan<double> a, double shift, Span<double> work, int n)
    {
        int count = 0;
        double largest = Math.Abs(shift);
        for (int i = 0; i < n; i++)
            for (int j = 0; j <= i; j++)
            {
                work[i * n + j] = i == j ? a[i * n + j] - shift : a[i * n + j];
                largest = Math.Max(largest, Math.Abs(a[i * n + j]));
            }
        for (int k = 0; k < n; k++)
        {
            double pivot = work[k * n + k];
            if (pivot < 0) count++;
            if (Math.Abs(pivot) < Hair * largest) pivot = pivot < 0 ? -Hair * largest : Hair * largest;
            for (int i = k + 1; i < n; i++)
            {
                double f = work[i * n + k] / pivot;
                if (f == 0) continue;
                for (int j = k + 1; j <= i; j++) work[i * n + j] -= f * work[j * n + k];
            }
        }
        return count;
    }
}
