using Coldwright.Numerics.Integration;
using Xunit;

namespace Coldwright.Numerics.Tests.Integration;

public sealed class SensitivityTests(ITestOutputHelper output)
{
    /// <summary>
    /// R. Serban, A. C. Hindmarsh, "Example Programs for CVODES", LLNL, cvsRoberts_FSA_dns: Robertson's problem at t = 0.4 and 4, printed
    /// to five digits and calculated at a relative tolerance of 1e-4; read in public copies.
    /// </summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Published_sensitivities_of_Robertsons_problem(bool collocated)
    {
        double[][] early = [[-3.5595e-01, 3.9025e-04, 3.5556e-01], [9.5431e-08, -2.1309e-10, -9.5218e-08], [-1.5833e-11, -5.2900e-13, 1.6362e-11]];
        double[][] late = [[-1.8761, 1.7922e-04, 1.8759], [2.9614e-06, -5.8305e-10, -2.9608e-06], [-4.9334e-10, -2.7626e-13, 4.9362e-10]];
        var sampler = new TrajectorySampler(3, [0.4, 4]);
        var result = TestRun.Integrate(Robertson(0.04, 1e4, 3e7), 0, [1, 0, 0], 4, RobertsonOptions(1e-6) with { Sensitivities = new() { Collocated = collocated } }, observer: sampler.Observe).OrThrow();
        double worst = 0;
        for (int k = 0; k < 3; k++)
        {
            for (int i = 0; i < 3; i++)
            {
                worst = Math.Max(worst, Math.Abs(sampler.Sensitivities[0][k][i] / early[k][i] - 1));
                worst = Math.Max(worst, Math.Abs(sampler.Sensitivities[1][k][i] / late[k][i] - 1));
            }
        }
        output.WriteLine($"collocated {collocated}: largest relative difference {worst:E1}; {result.Statistics}");
        Assert.True(worst < 5e-4, $"{worst}");
    }

    /// <summary>Against central differences of runs at a much tighter tolerance, over the whole stiff range.</summary>
    [Theory]
    [InlineData(false, 1e-4)]
    [InlineData(false, 1e-6)]
    [InlineData(true, 1e-4)]
    [InlineData(true, 1e-6)]
    public void They_agree_with_differences_of_whole_runs(bool collocated, double tolerance)
    {
        double[] p = [0.04, 1e4, 3e7];
        var result = TestRun.Integrate(Robertson(p[0], p[1], p[2]), 0, [1, 0, 0], 4000, RobertsonOptions(tolerance) with { Sensitivities = new() { Collocated = collocated } }).OrThrow();
        double worst = 0;
        for (int k = 0; k < 3; k++)
        {
            double[] above = End(k, 1.001), below = End(k, 0.999);
            for (int i = 0; i < 3; i++) worst = Math.Max(worst, Math.Abs(result.Sensitivities[k][i] * 0.002 * p[k] / (above[i] - below[i]) - 1));
        }
        output.WriteLine($"collocated {collocated}, rtol {tolerance:E0}: {worst:E1}; {result.Statistics}");
        Assert.True(worst < (tolerance < 1e-5 ? 3e-4 : 3e-3), $"{worst}");

        double[] End(int k, double factor)
        {
            double[] q = [.. p];
            q[k] *= factor;
            return [.. TestRun.Integrate(Robertson(q[0], q[1], q[2]), 0, [1, 0, 0], 4000, RobertsonOptions(1e-10)).OrThrow().State];
        }
    }

    private static InitialValueProblem Robertson(double a, double b, double c) => new(3, (_, y, p, f) =>
    {
        f[0] = -p[0] * y[0] + p[1] * y[1] * y[2];
        f[2] = p[2] * y[1] * y[1];
        f[1] = -f[0] - f[2];
        return true;
    })
    { Parameters = new[] { a, b, c } };

    private static IntegrationOptions RobertsonOptions(double tolerance) => new() { RelativeTolerance = tolerance, AbsoluteTolerances = new[] { 1e-4 * tolerance, 1e-9 * tolerance, 1e-4 * tolerance } };

    /// <summary>
    /// Ten parameters on a chain of heat capacities, band and full Jacobian: below three times the evaluations of the plain run, and
    /// as accurate as docs/theory/integrator.md says, against a collocated run at 1e-9.
    /// </summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Ten_parameters_cost_less_than_three_plain_runs(bool banded)
    {
        var problem = HeatChain(banded);
        double[] start = [.. Enumerable.Repeat(300.0, problem.Count)];
        var (reference, _) = Run(1e-9, new() { Collocated = true });
        foreach (double tolerance in new[] { 1e-4, 1e-5, 1e-6, 1e-7 })
        {
            var (_, plain) = Run(tolerance, null);
            var (cheap, with) = Run(tolerance, new());
            double ratio = (double)with.AllEvaluations / plain.AllEvaluations, error = Error(cheap);
            output.WriteLine($"banded {banded}, rtol {tolerance:E0}: {plain.Steps} steps, {plain.AllEvaluations} evaluations, with sensitivities {ratio:F2} times; error {error:E1}, estimate {with.LargestSensitivityError:F1}");
            Assert.True(ratio < 3, $"{ratio} times the plain run at {tolerance}");
            Assert.True(error < 2 * Math.Sqrt(tolerance), $"error {error} at {tolerance}");
            Dearer("steered", new() { ErrorControl = true }, 0.4);
            Dearer("collocated", new() { Collocated = true }, 0.2);

            void Dearer(string what, SensitivityOptions sensitivities, double factor)
            {
                var (run, cost) = Run(tolerance, sensitivities);
                output.WriteLine($"   {what}: {cost.Steps} steps, {cost.Rejected} rejected, {(double)cost.AllEvaluations / plain.AllEvaluations:F2} times, error {Error(run):E1}");
                Assert.True(Error(run) < factor * Math.Sqrt(tolerance), $"{what}: error {Error(run)} at {tolerance}");
            }
        }

        (TrajectorySampler, IntegrationStatistics) Run(double tolerance, SensitivityOptions? sensitivities)
        {
            var sampler = new TrajectorySampler(problem.Count, [100, 300, 1000, 3000, 8000, 20_000]);
            var options = new IntegrationOptions { RelativeTolerance = tolerance, AbsoluteTolerances = new[] { 100 * tolerance }, Sensitivities = sensitivities };
            return (sampler, TestRun.Integrate(problem, 0, start, 20_000, options, observer: sampler.Observe).OrThrow().Statistics);
        }

        // At six times, of each parameter's largest sensitivity at any of them.
        double Error(TrajectorySampler run)
        {
            double worst = 0;
            for (int k = 0; k < 10; k++)
            {
                double scale = reference.Sensitivities.Max(s => s[k].Max(Math.Abs));
                for (int t = 0; t < 6; t++)
                    for (int i = 0; i < problem.Count; i++) worst = Math.Max(worst, Math.Abs(run.Sensitivities[t][k][i] - reference.Sensitivities[t][k][i]) / scale);
            }
            return worst;
        }
    }

    // Sixty cells, a light end that is cooled and a heavy rest. Parameters: conductances, their slope with temperature, capacities, leak, cooling.
    private static InitialValueProblem HeatChain(bool banded)
    {
        const int n = 60;
        return new(n, (t, y, p, f) =>
        {
            double left = p[0] * (80 + 220 * Math.Exp(-t / p[1]) - y[0]);
            for (int i = 0; i < n; i++)
            {
                double mean = i == n - 1 ? 0 : 0.005 * (y[i] + y[i + 1]);
                double right = i == n - 1 ? p[2] * (y[i] - p[3]) + p[4] * 1e-9 * (Math.Pow(y[i], 4) - Math.Pow(p[3], 4)) : (i < 20 ? p[5] : p[6]) * (1 + p[7] * mean) * (y[i] - y[i + 1]);
                f[i] = (left - right) / ((i < 20 ? p[8] : p[9]) * (0.3 + 0.002 * y[i]));
                left = right;
            }
            return true;
        })
        {
            Parameters = new double[] { 2, 600, 0.02, 295, 0.5, 3, 0.3, 0.2, 5, 20 },
            Pattern = banded ? JacobianPattern.Banded(n, 1, 1) : JacobianPattern.Full(n),
        };
    }

    /// <summary>Exact: y = (y0 - q/p) exp(-p t) + q/p, with the initial value a parameter as well.</summary>
    [Fact]
    public void Initial_values_can_be_parameters()
    {
        const double p = 3, q = 2, y0 = 5, t = 1.5;
        var problem = new InitialValueProblem(1, (_, y, par, f) =>
        {
            f[0] = -par[0] * y[0] + par[1];
            return true;
        })
        { Parameters = new[] { p, q, y0 } };
        var result = TestRun.Integrate(problem, 0, [y0], t, new() { RelativeTolerance = 1e-8, Sensitivities = new() { Initial = new double[] { 0, 0, 1 }, ErrorControl = true } }).OrThrow();
        double e = Math.Exp(-p * t);
        Assert.Equal(q / (p * p) * e - (y0 - q / p) * t * e - q / (p * p), result.Sensitivities[0][0], 1e-6);
        Assert.Equal((1 - e) / p, result.Sensitivities[1][0], 1e-6);
        Assert.Equal(e, result.Sensitivities[2][0], 1e-6);
        Assert.InRange(result.Statistics.LargestSensitivityError, 0, 1);
    }

    /// <summary>Torricelli's tank with a valve that closes halfway at a level: time and state after it are known in closed form.</summary>
    [Fact]
    public void They_pass_events_whose_time_depends_on_the_parameter()
    {
        double share = 1;
        var problem = new InitialValueProblem(1, (_, y, p, f) =>
        {
            f[0] = -share * p[0] * Math.Sqrt(y[0]);
            return true;
        })
        { Parameters = new double[] { 0.2, 0.25 } };
        var result = TestRun.Integrate(problem, 0, [1], 7, new() { RelativeTolerance = 1e-8, Sensitivities = new() { ErrorControl = true } },
            [IntegrationEvent.WhenZero("level", (_, y, p) => y[0] - p[1]) with { Happened = (_, _) => share = 0.1 }]).OrThrow();
        // t1 = 2 (1 - sqrt(l)) / k = 5; sqrt(h) = sqrt(l) - share k (t - t1) / 2.
        const double k = 0.2, level = 0.25, t1 = 5, root = 0.5 - 0.1 * k * 2 / 2;
        var occurrence = Assert.Single(result.Events);
        Assert.Equal(-t1 / k, occurrence.TimeSensitivities[0], 1e-5);
        Assert.Equal(-1 / (k * Math.Sqrt(level)), occurrence.TimeSensitivities[1], 1e-5);
        Assert.Equal(2 * root * (-0.1 * 2 / 2 + 0.1 * k / 2 * (-t1 / k)), result.Sensitivities[0][0], 1e-6);
        Assert.Equal(2 * root * (0.5 / Math.Sqrt(level) + 0.1 * k / 2 * (-1 / (k * Math.Sqrt(level)))), result.Sensitivities[1][0], 1e-6);
    }

    /// <summary>The bouncing ball: gravity and restitution as parameters, closed form differentiated by central differences.</summary>
    [Fact]
    public void They_pass_events_that_change_the_state()
    {
        var problem = new InitialValueProblem(2, (_, y, p, f) =>
        {
            (f[0], f[1]) = (y[1], -p[0]);
            return true;
        })
        { Parameters = new[] { 9.80665, 0.8 } };
        var result = TestRun.Integrate(problem, 0, [10, 0], 6, new() { RelativeTolerance = 1e-8, AbsoluteTolerances = new double[] { 1e-7 }, Sensitivities = new() },
            [IntegrationEvent.WhenZero("floor", (_, y, _) => y[0]) with { Direction = EventDirection.Falling, Change = (_, y, p) => y[1] *= -p[1] }]).OrThrow();
        static (double Height, double Speed) Exact(double g, double e)
        {
            double time = Math.Sqrt(20 / g), speed = e * g * time;
            while (time + 2 * speed / g < 6) (time, speed) = (time + 2 * speed / g, e * speed);
            return (speed * (6 - time) - 0.5 * g * (6 - time) * (6 - time), speed - g * (6 - time));
        }
        const double d = 1e-5;
        Assert.Equal(3, result.Events.Length);
        Assert.Equal((Exact(9.80665 + d, 0.8).Height - Exact(9.80665 - d, 0.8).Height) / (2 * d), result.Sensitivities[0][0], 1e-5);
        Assert.Equal((Exact(9.80665 + d, 0.8).Speed - Exact(9.80665 - d, 0.8).Speed) / (2 * d), result.Sensitivities[0][1], 1e-5);
        Assert.Equal((Exact(9.80665, 0.8 + d).Height - Exact(9.80665, 0.8 - d).Height) / (2 * d), result.Sensitivities[1][0], 1e-4);
        Assert.Equal((Exact(9.80665, 0.8 + d).Speed - Exact(9.80665, 0.8 - d).Speed) / (2 * d), result.Sensitivities[1][1], 1e-4);
    }
}
