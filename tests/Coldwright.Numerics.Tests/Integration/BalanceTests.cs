using Coldwright.Numerics.Integration;
using Xunit;

namespace Coldwright.Numerics.Tests.Integration;

/// <summary>
/// A chain of heat capacities with conductivity that depends on temperature, radiation from outside at one end and a heat sink at the
/// other; the integrals of both heat flows are carried along. First law: stored = radiated in - taken out.
/// </summary>
public sealed class BalanceTests(ITestOutputHelper output)
{
    private const int Cells = 30;

    private static InitialValueProblem Chain(JacobianPattern pattern) => new(Cells + 2, (t, y, _, f) =>
    {
        double into = 5e-9 * (Math.Pow(300, 4) - Math.Pow(y[0], 4)), sink = y[Cells - 1] > 0 ? 40 * (1 - Math.Exp(-t / 50)) * y[Cells - 1] / (y[Cells - 1] + 100) : 0;
        double left = into;
        for (int i = 0; i < Cells; i++)
        {
            double right = i == Cells - 1 ? sink : 3 * Math.Sqrt(0.5 * (y[i] + y[i + 1])) * (y[i] - y[i + 1]);
            f[i] = left - right;
            left = right;
        }
        f[Cells] = into;
        f[Cells + 1] = sink;
        return true;
    })
    { MassDiagonal = Enumerable.Range(0, Cells + 2).Select(i => i < Cells ? Capacity(i) : 1.0).ToArray(), Pattern = pattern };

    // J/K, over three decades.
    private static double Capacity(int i) => 2 * Math.Pow(10, 3.0 * i / Cells);

    [Theory]
    [InlineData(1e-4)]
    [InlineData(1e-6)]
    public void With_the_balances_in_the_Jacobian_energy_closes_to_rounding(double tolerance)
        => Assert.True(Closure(JacobianPattern.Full(Cells + 2), tolerance, "full") < 1e-12);

    /// <summary>Rows of the integrals left out of the pattern: three evaluations a Jacobian instead of 32, and the iteration converges them.</summary>
    [Theory]
    [InlineData(1e-4)]
    [InlineData(1e-6)]
    public void Without_them_it_closes_as_far_as_the_iteration_converges(double tolerance)
    {
        var band = JacobianPattern.FromEntries(Cells + 2, from i in Enumerable.Range(0, Cells) from j in Enumerable.Range(i - 1, 3) where j >= 0 && j < Cells select (i, j));
        Assert.Equal(3, band.GroupCount);
        Assert.True(Closure(band, tolerance, "band") < 1e-6);
    }

    private double Closure(JacobianPattern pattern, double tolerance, string what)
    {
        double[] start = [.. Enumerable.Repeat(290.0, Cells), 0, 0];
        var result = TestRun.Integrate(Chain(pattern), 0, start, 4 * 3600, new()
        {
            RelativeTolerance = tolerance,
            AbsoluteTolerances = Enumerable.Range(0, Cells + 2).Select(i => i < Cells ? 1e-3 : 1.0).ToArray(),
            WithoutErrorControl = [Cells, Cells + 1],
        }).OrThrow();
        double stored = Enumerable.Range(0, Cells).Sum(i => Capacity(i) * (result.State[i] - start[i]));
        double error = Math.Abs(stored - result.State[Cells] + result.State[Cells + 1]) / result.State[Cells + 1];
        output.WriteLine($"{what}, rtol {tolerance:E0}: closure {error:E1} of {result.State[Cells + 1]:F0} J; {result.Statistics}");
        Assert.InRange(result.State[Cells - 1], 1, 289);
        return error;
    }
}
