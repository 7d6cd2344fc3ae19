using System.Numerics;
using Coldwright.Numerics.Integration;
using Xunit;

namespace Coldwright.Numerics.Tests.Integration;

/// <summary>The coefficients against the theory: J. C. Butcher's order conditions by rooted trees, and the simplifying conditions B, C, D (Hairer and Wanner II, section IV.5).</summary>
public sealed class RadauCollocationTests
{
    private sealed record Tree(Tree[] Branches)
    {
        public int Order { get; } = 1 + Branches.Sum(b => b.Order);
        public double Density { get; } = (1 + Branches.Sum(b => b.Order)) * Branches.Aggregate(1.0, (p, b) => p * b.Density);
    }

    // All trees of one order, each once: branches in the order in which the trees are made.
    private static List<Tree> Trees(int order)
    {
        var all = new List<Tree>();
        for (int o = 1; o < order; o++) all.AddRange(Trees(o));
        var result = new List<Tree>();
        void Grow(List<Tree> branches, int left, int from)
        {
            if (left == 0) result.Add(new([.. branches]));
            for (int i = from; i < all.Count; i++)
            {
                if (all[i].Order > left) continue;
                branches.Add(all[i]);
                Grow(branches, left - all[i].Order, i);
                branches.RemoveAt(branches.Count - 1);
            }
        }
        Grow([], order - 1, 0);
        return result;
    }

    private static double Weight(Tree tree) => RadauCollocation.A[6..].Zip(Inner(tree), (b, w) => b * w).Sum();

    private static double[] Inner(Tree tree)
    {
        double[] result = [1, 1, 1];
        foreach (var branch in tree.Branches)
        {
            var inner = Inner(branch);
            for (int i = 0; i < 3; i++) result[i] *= Enumerable.Range(0, 3).Sum(j => RadauCollocation.A[3 * i + j] * inner[j]);
        }
        return result;
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(2, 1)]
    [InlineData(3, 2)]
    [InlineData(4, 4)]
    [InlineData(5, 9)]
    public void Every_order_condition_holds_up_to_five(int order, int count)
    {
        var trees = Trees(order);
        Assert.Equal(count, trees.Count);
        Assert.All(trees, t => Assert.Equal(1 / t.Density, Weight(t), 1e-14));
    }

    [Fact]
    public void And_not_at_six() => Assert.Contains(Trees(6), t => Math.Abs(Weight(t) - 1 / t.Density) > 1e-4);

    [Fact]
    public void Simplifying_conditions_hold_and_the_last_stage_is_the_result()
    {
        double[] c = RadauCollocation.Node[1..], a = RadauCollocation.A, b = a[6..];
        Assert.Equal(1, c[2]);
        for (int k = 1; k <= 5; k++) Assert.Equal(1.0 / k, Enumerable.Range(0, 3).Sum(j => b[j] * Math.Pow(c[j], k - 1)), 1e-14);
        for (int k = 1; k <= 3; k++)
            for (int i = 0; i < 3; i++) Assert.Equal(Math.Pow(c[i], k) / k, Enumerable.Range(0, 3).Sum(j => a[3 * i + j] * Math.Pow(c[j], k - 1)), 1e-14);
        for (int k = 1; k <= 2; k++)
            for (int j = 0; j < 3; j++) Assert.Equal(b[j] / k * (1 - Math.Pow(c[j], k)), Enumerable.Range(0, 3).Sum(i => b[i] * Math.Pow(c[i], k - 1) * a[3 * i + j]), 1e-14);
    }

    [Fact]
    public void The_stability_function_is_the_Pade_approximation_and_vanishes_at_infinity()
    {
        // Hairer and Wanner II, table IV.3.1: row 2, column 3.
        static Complex Pade(Complex z) => (1 + 2 * z / 5 + z * z / 20) / (1 - 3 * z / 5 + 3 * z * z / 20 - z * z * z / 60);
        foreach (Complex z in new Complex[] { -1, new(-3, 2), new(0, 7), new(0.5, -0.5) }) Assert.True((Stability(z) - Pade(z)).Magnitude < 1e-13);
        Assert.True(Stability(-1e9).Magnitude < 1e-8);
        for (double w = 0.01; w < 1e6; w *= 1.3) Assert.True(Stability(new(0, w)).Magnitude <= 1 + 1e-13, $"|R(i {w})|");
    }

    [Fact]
    public void The_transformation_makes_the_inverse_of_A_block_diagonal()
    {
        double[] d = Multiply(Multiply(RadauCollocation.TInverse, RadauCollocation.Inverse), RadauCollocation.T);
        double g = RadauCollocation.RealEigenvalue, re = RadauCollocation.ComplexEigenvalue.Real, im = RadauCollocation.ComplexEigenvalue.Imaginary;
        double[] expected = [g, 0, 0, 0, re, im, 0, -im, re];
        for (int i = 0; i < 9; i++) Assert.Equal(expected[i], d[i], 1e-13);
    }

    [Fact]
    public void Dense_weights_end_in_the_method_and_the_slope_at_the_start_differentiates_cubics()
    {
        for (int m = 0; m < 4; m++) Assert.Equal(m == 0 ? 0 : RadauCollocation.A[5 + m], RadauCollocation.DenseWeight(m, 1), 1e-14);
        for (int k = 1; k <= 3; k++) Assert.Equal(k == 1 ? 1 : 0, Enumerable.Range(0, 3).Sum(i => RadauCollocation.StartSlope[i] * Math.Pow(RadauCollocation.Node[i + 1], k)), 1e-13);
    }

    private static Complex Stability(Complex z)
    {
        // det(I - z A + z 1 b') / det(I - z A)
        Complex Determinant(bool plus)
        {
            var m = new Complex[9];
            for (int i = 0; i < 3; i++) for (int j = 0; j < 3; j++) m[3 * i + j] = (i == j ? 1 : 0) - z * RadauCollocation.A[3 * i + j] + (plus ? z * RadauCollocation.A[6 + j] : 0);
            return m[0] * (m[4] * m[8] - m[5] * m[7]) - m[1] * (m[3] * m[8] - m[5] * m[6]) + m[2] * (m[3] * m[7] - m[4] * m[6]);
        }
        return Determinant(true) / Determinant(false);
    }

    private static double[] Multiply(double[] a, double[] b)
    {
        var c = new double[9];
        for (int i = 0; i < 3; i++) for (int j = 0; j < 3; j++) for (int k = 0; k < 3; k++) c[3 * i + j] += a[3 * i + k] * b[3 * k + j];
        return c;
    }
}
