using Coldwright.Numerics.LinearAlgebra;
using Xunit;

namespace Coldwright.Numerics.Tests;

/// <summary>The second-difference matrix (2 on the diagonal, -1 beside it): eigenvalues 2 - 2 cos(k pi / (n + 1)), vectors sin(i k pi / (n + 1)); Strang, SIAM Review 41 (1999) 135.</summary>
public class SymmetricEigenTests
{
    private static double[] SecondDifferences(int n)
    {
        var a = new double[n * n];
        for (int i = 0; i < n; i++)
        {
            a[i * n + i] = 2;
            // only the lower triangle is given
            if (i > 0) a[i * n + i - 1] = -1;
        }
        return a;
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(5)]
    [InlineData(12)]
    public void ValuesAndVectorsOfTheSecondDifferences(int n)
    {
        double[] a = SecondDifferences(n), vectors = new double[n * n];
        SymmetricEigen.Solve(a, vectors, n);
        double[] found = [.. Enumerable.Range(0, n).Select(k => a[k * n + k]).Order()];
        for (int k = 1; k <= n; k++) Assert.Equal(2 - 2 * Math.Cos(k * Math.PI / (n + 1)), found[k - 1], 13);

        double least = SymmetricEigen.Least(SecondDifferences(n), n, out double[] vector);
        Assert.Equal(2 - 2 * Math.Cos(Math.PI / (n + 1)), least, 13);
        double size = Math.Sqrt(Enumerable.Range(1, n).Sum(i => Math.Pow(Math.Sin(i * Math.PI / (n + 1)), 2))), sign = Math.Sign(vector[0]);
        for (int i = 1; i <= n; i++) Assert.Equal(Math.Sin(i * Math.PI / (n + 1)) / size, sign * vector[i - 1], 12);
    }
}
