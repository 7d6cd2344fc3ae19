using Coldwright.Numerics.LinearAlgebra;
using Xunit;

namespace Coldwright.Numerics.Tests;

/// <summary>Counts of eigenvalues against matrices whose eigenvalues are known in closed form.</summary>
public class InertiaTests
{
    /// <summary>The second-difference matrix has the eigenvalues 2 - 2 cos(k pi/(n + 1)): G. D. Smith, Numerical Solution of Partial Differential Equations, 3rd ed., 1985, from memory.</summary>
    [Theory]
    [InlineData(1), InlineData(2), InlineData(5), InlineData(9)]
    public void Counts_those_of_the_second_difference(int n)
    {
        double[] a = new double[n * n], work = new double[n * n], known = [.. Enumerable.Range(1, n).Select(k => 2 - 2 * Math.Cos(k * Math.PI / (n + 1)))];
        for (int i = 0; i < n; i++)
        {
            a[i * n + i] = 2;
            if (i > 0) a[i * n + i - 1] = -1;
        }
        for (double shift = -0.513; shift < 4.6; shift += 0.0371)
            Assert.Equal(known.Count(v => v < shift), Inertia.Below(a, shift, work, n));
    }

    /// <summary>Pivots of nothing on the way do not stop it: this one's eigenvalues are -1 and 1.</summary>
    [Fact]
    public void Nought_on_the_diagonal_is_no_obstacle()
    {
        double[] a = [0, 0, 1, 0], work = new double[4];
        Assert.Equal(0, Inertia.Below(a, -1.01, work, 2));
        Assert.Equal(1, Inertia.Below(a, 0, work, 2));
        Assert.Equal(2, Inertia.Below(a, 1.01, work, 2));
    }
}
