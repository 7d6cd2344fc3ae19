using Coldwright.Numerics.Integration;
using Xunit;

namespace Coldwright.Numerics.Tests.Integration;

/// <summary>Orders of convergence measured by halving a fixed step, against exact solutions.</summary>
public sealed class ConvergenceOrderTests(ITestOutputHelper output)
{
    // P. Kaps, in Dekker, Verwer, Stability of Runge-Kutta Methods for Stiff Nonlinear Differential Equations, 1984 (from memory):
    // solution exp(-2t), exp(-t) for every stiffness.
    private static InitialValueProblem Kaps(double stiffness) => new(2, (_, y, _, f) =>
    {
        f[0] = -(stiffness + 2) * y[0] + stiffness * y[1] * y[1];
        f[1] = y[0] - y[1] - y[1] * y[1];
        return true;
    });

    // A. Prothero, A. Robinson, Math. Comp. 28 (1974) 145: solution sin(t + 1) for every stiffness.
    private static InitialValueProblem ProtheroRobinson(double stiffness) => new(1, (t, y, _, f) =>
    {
        f[0] = -stiffness * (y[0] - Math.Sin(t + 1)) + Math.Cos(t + 1);
        return true;
    });

    private double[] Orders(string what, Func<int, double> error, params int[] steps)
    {
        var errors = steps.Select(error).ToArray();
        var orders = errors.Zip(errors[1..], (a, b) => Math.Log2(a / b)).ToArray();
        output.WriteLine($"{what}: errors {string.Join(" ", errors.Select(e => e.ToString("E2")))}, orders {string.Join(" ", orders.Select(o => o.ToString("F2")))}");
        return orders;
    }

    private static double EndError(InitialValueProblem problem, double[] start, double[] exact, int steps)
    {
        var result = TestRun.Integrate(problem, 0, start, 1, Fixed(steps)).OrThrow();
        Assert.Equal(steps, result.Statistics.Steps);
        return exact.Zip(result.State, (e, y) => Math.Abs(e - y)).Max();
    }

    private static IntegrationOptions Fixed(int steps) => new() { FixedStep = 1.0 / steps, RelativeTolerance = 1e-12, AbsoluteTolerances = new double[] { 1e-12 } };

    [Fact]
    public void Fifth_order_on_a_problem_that_is_not_stiff()
    {
        double[] exact = [Math.Exp(-2), Math.Exp(-1)];
        Assert.All(Orders("Kaps, stiffness 1", n => EndError(Kaps(1), [1, 1], exact, n), 4, 8, 16), o => Assert.InRange(o, 4.7, 5.5));
    }

    /// <summary>Theory (Hairer and Wanner II, section IV.15): stiffly accurate, so errors fall at least with the third order, the stage order, over the stiffness.</summary>
    [Fact]
    public void Very_stiff_problems_keep_an_order_above_the_stage_order_and_a_small_constant()
    {
        double[] exact = [Math.Exp(-2), Math.Exp(-1)], sine = [Math.Sin(2)];
        Assert.All(Orders("Kaps, stiffness 1e6", n => EndError(Kaps(1e6), [1, 1], exact, n), 4, 8, 16), o => Assert.True(o > 4.3, $"order {o}"));
        Assert.All(Orders("Prothero-Robinson, stiffness 1e4", n => EndError(ProtheroRobinson(1e4), [Math.Sin(1)], sine, n), 2, 4, 8), o => Assert.True(o > 2.8, $"order {o}"));
        Assert.All(Orders("Prothero-Robinson, stiffness 100", n => EndError(ProtheroRobinson(100), [Math.Sin(1)], sine, n), 4, 8, 16), o => Assert.True(o > 2.8, $"order {o}"));
        Assert.Equal(100, EndError(ProtheroRobinson(1e4), [Math.Sin(1)], sine, 2) / EndError(ProtheroRobinson(1e6), [Math.Sin(1)], sine, 2), 2.0);
    }

    [Theory]
    [InlineData(1, 4.7)]
    [InlineData(1e6, 3.6)]
    public void Dense_output_keeps_up_between_the_steps(double stiffness, double order)
    {
        double Worst(int steps)
        {
            double worst = 0;
            var point = new double[2];
            TestRun.Integrate(Kaps(stiffness), 0, [1, 1], 1, Fixed(steps), observer: step =>
            {
                for (double s = 0.05; s < 1; s += 0.1)
                {
                    double t = step.Start + s * (step.End - step.Start);
                    step.Evaluate(t, point);
                    worst = Math.Max(worst, Math.Max(Math.Abs(point[0] - Math.Exp(-2 * t)), Math.Abs(point[1] - Math.Exp(-t))));
                }
            }).OrThrow();
            return worst;
        }
        Assert.All(Orders($"dense output, stiffness {stiffness}", Worst, 8, 16, 32, 64), o => Assert.True(o > order, $"order {o}"));
    }

    [Theory]
    [InlineData(true, 4.7)]
    [InlineData(false, 3.8)]
    public void Sensitivities_converge_with_their_stated_order(bool collocated, double order)
    {
        // Exact: y = exp(sin(p t)), dy/dp = t cos(p t) y.
        var problem = new InitialValueProblem(1, (t, y, p, f) =>
        {
            f[0] = p[0] * Math.Cos(p[0] * t) * y[0];
            return true;
        })
        { Parameters = new double[] { 1.7 } };
        double exact = Math.Cos(1.7) * Math.Exp(Math.Sin(1.7));
        double Error(int steps) => Math.Abs(TestRun.Integrate(problem, 0, [1], 1, Fixed(steps) with { Sensitivities = new() { Collocated = collocated } }).OrThrow().Sensitivities[0][0] - exact);
        var orders = Orders($"sensitivity, collocated {collocated}", Error, collocated ? [2, 4] : [8, 16, 32]);
        Assert.True(orders[^1] > order, $"order {orders[^1]}");
    }
}
