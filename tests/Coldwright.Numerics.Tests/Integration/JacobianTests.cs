using Coldwright.Numerics.Integration;
using Coldwright.Numerics.Integration.LinearAlgebra;
using Xunit;

namespace Coldwright.Numerics.Tests.Integration;

public sealed class JacobianTests
{
    [Theory]
    [InlineData(1, 0, 0)]
    [InlineData(7, 6, 6)]
    [InlineData(40, 1, 1)]
    [InlineData(41, 3, 2)]
    [InlineData(60, 0, 4)]
    [InlineData(60, 5, 0)]
    [InlineData(83, 82, 82)]
    public void Both_decompositions_solve_what_they_were_given(int count, int lower, int upper)
    {
        var random = new Random(count + lower);
        var jacobian = new JacobianMatrix(count, lower, upper);
        for (int i = 0; i < count; i++)
            for (int j = Math.Max(0, i - lower); j <= Math.Min(count - 1, i + upper); j++) jacobian[i, j] = random.NextDouble() - (i == j ? 2 : 0.5);
        var mass = Enumerable.Range(0, count).Select(_ => random.NextDouble()).ToArray();
        double[] xr = [.. mass.Select(_ => random.NextDouble() - 0.5)], xi = [.. mass.Select(_ => random.NextDouble() - 0.5)];
        double[] jr = new double[count], ji = new double[count];
        jacobian.Multiply(xr, jr);
        jacobian.Multiply(xi, ji);

        var real = new RealDecomposition(jacobian.Layout);
        Assert.True(real.TryDecompose(0.3, mass, jacobian));
        double[] b = [.. Enumerable.Range(0, count).Select(i => 0.3 * mass[i] * xr[i] - jr[i])];
        real.Solve(b);
        var complex = new ComplexDecomposition(jacobian.Layout);
        Assert.True(complex.TryDecompose(0.3, -0.7, mass, jacobian));
        double[] br = [.. Enumerable.Range(0, count).Select(i => mass[i] * (0.3 * xr[i] + 0.7 * xi[i]) - jr[i])];
        double[] bi = [.. Enumerable.Range(0, count).Select(i => mass[i] * (0.3 * xi[i] - 0.7 * xr[i]) - ji[i])];
        complex.Solve(br, bi);
        for (int i = 0; i < count; i++)
        {
            Assert.Equal(xr[i], b[i], 1e-9);
            Assert.Equal(xr[i], br[i], 1e-9);
            Assert.Equal(xi[i], bi[i], 1e-9);
        }
    }

    [Fact]
    public void A_singular_matrix_is_said_to_be_one()
    {
        var jacobian = new JacobianMatrix(3, 2, 2);
        for (int i = 0; i < 3; i++) for (int j = 0; j < 3; j++) jacobian[i, j] = i + j;
        Assert.False(new RealDecomposition(jacobian.Layout).TryDecompose(0, [], jacobian));
    }

    [Fact]
    public void Columns_are_grouped_so_that_no_two_of_a_group_share_a_row()
    {
        Assert.Equal(3, JacobianPattern.Banded(50, 1, 1).GroupCount);
        Assert.Equal(6, JacobianPattern.Banded(50, 2, 3).GroupCount);
        Assert.Equal(20, JacobianPattern.Full(20).GroupCount);
        // An arrow: the diagonal and one full row and column need a group for each column.
        var arrow = JacobianPattern.FromEntries(9, from i in Enumerable.Range(0, 9) from j in Enumerable.Range(0, 9) where i == j || i == 0 || j == 0 select (i, j));
        Assert.Equal(9, arrow.GroupCount);
        // Without the full row two suffice: the full column alone, all others together.
        var column = JacobianPattern.FromEntries(9, from i in Enumerable.Range(0, 9) from j in Enumerable.Range(0, 9) where i == j || j == 0 select (i, j));
        Assert.Equal(2, column.GroupCount);
        var random = new Random(5);
        for (int trial = 0; trial < 50; trial++)
        {
            int n = random.Next(2, 40);
            var pattern = JacobianPattern.FromEntries(n, Enumerable.Range(0, 3 * n).Select(_ => (random.Next(n), random.Next(n))));
            foreach (var group in pattern.Groups)
            {
                var rows = group.SelectMany(j => pattern.Rows(j).ToArray()).ToArray();
                Assert.Equal(rows.Length, rows.Distinct().Count());
            }
        }
    }

    /// <summary>Given, full and banded difference Jacobians lead to the same solution at the same number of steps, the band with far fewer evaluations.</summary>
    [Fact]
    public void It_does_not_matter_where_the_Jacobian_comes_from()
    {
        const int cells = 60;
        double[] start = [.. Enumerable.Range(1, cells - 1).Select(i => Math.Sin(Math.PI * i / cells))];
        var options = new IntegrationOptions { RelativeTolerance = 1e-7 };
        var banded = TestRun.Integrate(ExactSolutionTests.Slab(cells), 0, start, 0.2, options).OrThrow();
        var full = TestRun.Integrate(ExactSolutionTests.Slab(cells, JacobianPattern.Full(cells - 1)), 0, start, 0.2, options).OrThrow();
        var source = ExactSolutionTests.Slab(cells);
        var given = TestRun.Integrate(new(source.Count, source.Slope)
        {
            Pattern = source.Pattern,
            Jacobian = (_, _, _, j) =>
            {
                for (int i = 0; i < j.Count; i++)
                {
                    j[i, i] = -2.0 * cells * cells;
                    if (i > 0) j[i, i - 1] = j[i - 1, i] = cells * cells;
                }
            },
        }, 0, start, 0.2, options).OrThrow();
        Assert.Equal(0, given.Statistics.JacobianEvaluations);
        Assert.Equal(3 * banded.Statistics.Jacobians, banded.Statistics.JacobianEvaluations);
        Assert.Equal((cells - 1) * full.Statistics.Jacobians, full.Statistics.JacobianEvaluations);
        Assert.Equal(given.Statistics.Steps, banded.Statistics.Steps);
        for (int i = 0; i < source.Count; i++)
        {
            Assert.Equal(given.State[i], banded.State[i], 1e-9);
            Assert.Equal(given.State[i], full.State[i], 1e-9);
        }
    }

    [Fact]
    public void An_entry_outside_the_band_is_refused_with_its_place()
        => Assert.Contains("entry (0, 3) lies outside the band", Assert.Throws<ArgumentOutOfRangeException>(() => new JacobianMatrix(9, 1, 1)[0, 3] = 1).Message);
}
