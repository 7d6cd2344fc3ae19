using Coldwright.Numerics.Integration;
using Xunit;

namespace Coldwright.Numerics.Tests.Integration;

public sealed class ExactSolutionTests(ITestOutputHelper output)
{
    /// <summary>
    /// Heat conduction in a slab, both faces held at 0, start sin(pi x) + sin(9 pi x)/3: on the grid every such wave is an
    /// eigenvector of the difference matrix, so the solution in time is exact: its decay is 4 n^2 sin^2(k pi / 2n). Against the
    /// series in space as well (H. S. Carslaw, J. C. Jaeger, Conduction of Heat in Solids, 2nd ed. 1959, section 3.3).
    /// </summary>
    [Theory]
    [InlineData(1e-4)]
    [InlineData(1e-6)]
    [InlineData(1e-8)]
    public void A_slab_cools_as_its_waves_do(double tolerance)
    {
        const int cells = 100;
        var problem = Slab(cells);
        double[] start = Wave(1, 9);
        var result = TestRun.Integrate(problem, 0, start, 0.3, new() { RelativeTolerance = tolerance, AbsoluteTolerances = new double[] { 1e-3 * tolerance } }).OrThrow();
        double Decay(int k) => Math.Exp(-4 * cells * cells * Math.Pow(Math.Sin(k * Math.PI / (2 * cells)), 2) * 0.3);
        double worst = 0, series = 0;
        for (int i = 0; i < problem.Count; i++)
        {
            double x = (i + 1.0) / cells, exact = Math.Sin(Math.PI * x) * Decay(1) + Math.Sin(9 * Math.PI * x) / 3 * Decay(9);
            worst = Math.Max(worst, Math.Abs(result.State[i] - exact));
            series = Math.Max(series, Math.Abs(result.State[i] - Math.Sin(Math.PI * x) * Math.Exp(-Math.PI * Math.PI * 0.3)));
        }
        output.WriteLine($"rtol {tolerance:E0}: error {worst / Decay(1):E1}, against the series in space {series / Decay(1):E1}; {result.Statistics}");
        Assert.True(worst / Decay(1) < 10 * tolerance, $"error {worst / Decay(1)}");
        // The difference in space: pi^4 t / (12 n^2).
        Assert.InRange(series / Decay(1), 0, 10 * tolerance + 1.01 * Math.Pow(Math.PI, 4) * 0.3 / (12 * cells * cells));

        static double[] Wave(int a, int b) => [.. Enumerable.Range(1, cells - 1).Select(i => Math.Sin(a * Math.PI * i / cells) + Math.Sin(b * Math.PI * i / cells) / 3)];
    }

    internal static InitialValueProblem Slab(int cells, JacobianPattern? pattern = null) => new(cells - 1, (_, y, _, f) =>
    {
        double square = (double)cells * cells;
        for (int i = 0; i < y.Length; i++) f[i] = square * ((i > 0 ? y[i - 1] : 0) - 2 * y[i] + (i < y.Length - 1 ? y[i + 1] : 0));
        return true;
    })
    { Pattern = pattern ?? JacobianPattern.Banded(cells - 1, 1, 1) };

    /// <summary>Stiff and oscillating: eigenvalues -1e5 and -0.1 +- 30 i, coupled by a rotation of the axes.</summary>
    [Fact]
    public void A_linear_system_with_stiff_and_oscillating_parts_follows_its_exponentials()
    {
        // u = axes along (3, 4)/5: u1 decays fast, (u2, u3) is a damped spiral.
        var problem = new InitialValueProblem(3, (_, y, _, f) =>
        {
            double u1 = 0.6 * y[0] + 0.8 * y[1], u2 = -0.8 * y[0] + 0.6 * y[1], u3 = y[2];
            double d1 = -1e5 * u1, d2 = -0.1 * u2 + 30 * u3, d3 = -30 * u2 - 0.1 * u3;
            (f[0], f[1], f[2]) = (0.6 * d1 - 0.8 * d2, 0.8 * d1 + 0.6 * d2, d3);
            return true;
        });
        foreach (double tolerance in new[] { 1e-4, 1e-6, 1e-8 })
        {
            var result = TestRun.Integrate(problem, 0, [0.6 - 0.8, 0.8 + 0.6, 0], 2, new() { RelativeTolerance = tolerance, AbsoluteTolerances = new double[] { tolerance } }).OrThrow();
            double u2 = Math.Exp(-0.2) * Math.Cos(60), u3 = -Math.Exp(-0.2) * Math.Sin(60);
            double error = new[] { result.State[0] + 0.8 * u2, result.State[1] - 0.6 * u2, result.State[2] - u3 }.Max(Math.Abs);
            output.WriteLine($"rtol {tolerance:E0}: error {error:E1}, steps {result.Statistics.Steps}, rejected {result.Statistics.Rejected}, f {result.Statistics.Evaluations}");
            Assert.True(error < 20 * tolerance, $"error {error} at {tolerance}");
        }
    }

    /// <summary>A. Prothero, A. Robinson, Math. Comp. 28 (1974) 145, started off the slow solution.</summary>
    [Theory]
    [InlineData(10)]
    [InlineData(1e3)]
    [InlineData(1e6)]
    public void Prothero_and_Robinson_at_any_stiffness(double stiffness)
    {
        var problem = new InitialValueProblem(1, (t, y, _, f) =>
        {
            f[0] = -stiffness * (y[0] - Math.Sin(t)) + Math.Cos(t);
            return true;
        });
        foreach (double tolerance in new[] { 1e-4, 1e-6, 1e-8 })
        {
            double worst = 0;
            var value = new double[1];
            var result = TestRun.Integrate(problem, 0, [2], 10, new() { RelativeTolerance = tolerance, AbsoluteTolerances = new double[] { tolerance } }, observer: step =>
            {
                for (int i = 1; i <= 4; i++)
                {
                    double t = step.Start + i * (step.End - step.Start) / 4;
                    step.Evaluate(t, value);
                    worst = Math.Max(worst, Math.Abs(value[0] - Math.Sin(t) - 2 * Math.Exp(-stiffness * t)));
                }
            }).OrThrow();
            double end = Math.Abs(result.State[0] - Math.Sin(10));
            output.WriteLine($"stiffness {stiffness:E0}, rtol {tolerance:E0}: error at the end {end:E1}, on the way {worst:E1}, steps {result.Statistics.Steps}, f {result.Statistics.Evaluations}");
            Assert.True(end < 5 * tolerance, $"error {end} at {tolerance}");
            Assert.True(worst < 50 * tolerance, $"error on the way {worst} at {tolerance}");
        }
    }

    /// <summary>Stiff and forced: the ends of steps are accurate long before the curve between them is.</summary>
    [Fact]
    public void Without_control_of_the_dense_output_steps_are_fewer_and_ends_still_right()
    {
        var problem = new InitialValueProblem(1, (t, y, _, f) =>
        {
            f[0] = -1e5 * (y[0] - Math.Sin(t)) + Math.Cos(t);
            return true;
        });
        var options = new IntegrationOptions { RelativeTolerance = 1e-6, AbsoluteTolerances = new double[] { 1e-6 } };
        var with = TestRun.Integrate(problem, 0, [0], 10, options).OrThrow();
        var without = TestRun.Integrate(problem, 0, [0], 10, options with { DenseOutputControl = false }).OrThrow();
        Assert.True(2 * without.Statistics.Steps < with.Statistics.Steps, $"{without.Statistics.Steps} and {with.Statistics.Steps} steps");
        Assert.Equal(Math.Sin(10), without.State[0], 5e-6);
    }

    /// <summary>A right-hand side with noise of 1e-8, as an inner iteration leaves it, on the cooling slab.</summary>
    [Fact]
    public void Noise_that_is_declared_does_no_harm()
    {
        const int cells = 40;
        var clean = Slab(cells);
        int call = 0;
        var noisy = new InitialValueProblem(clean.Count, (t, y, p, f) =>
        {
            clean.Slope(t, y, p, f);
            for (int i = 0; i < f.Length; i++) f[i] *= 1 + 1e-8 * Math.Sin(1e3 * ++call);
            return true;
        })
        { Pattern = clean.Pattern };
        double[] start = [.. Enumerable.Range(1, cells - 1).Select(i => Math.Sin(Math.PI * i / cells))];
        var options = new IntegrationOptions { RelativeTolerance = 1e-5, AbsoluteTolerances = new double[] { 1e-6 } };
        var quiet = TestRun.Integrate(clean, 0, start, 0.2, options).OrThrow();
        var loud = TestRun.Integrate(noisy, 0, start, 0.2, options with { RelativeNoise = 1e-8 }).OrThrow();
        double exact = Math.Exp(-4 * cells * cells * Math.Pow(Math.Sin(Math.PI / (2 * cells)), 2) * 0.2);
        output.WriteLine($"quiet {quiet.Statistics}\nloud {loud.Statistics}");
        Assert.Equal(exact, loud.State[cells / 2 - 1], 1e-5 * exact);
        Assert.InRange(loud.Statistics.Evaluations, 1, 2 * quiet.Statistics.Evaluations);
    }

    /// <summary>A row without mass is an algebraic equation: y' = -y z, 0 = z - 1 - y, so that y = 1/(2 exp(t) - 1) from y = 1.</summary>
    [Fact]
    public void A_row_without_mass_is_an_algebraic_equation()
    {
        var problem = new InitialValueProblem(2, (_, y, _, f) =>
        {
            f[0] = -3 * y[0] * y[1];
            f[1] = y[1] - 1 - y[0];
            return true;
        })
        { MassDiagonal = new double[] { 3, 0 } };
        var result = TestRun.Integrate(problem, 0, [1, 2], 2, new() { RelativeTolerance = 1e-8 }).OrThrow();
        double exact = 1 / (2 * Math.Exp(2) - 1);
        Assert.Equal(exact, result.State[0], 1e-9);
        Assert.Equal(1 + exact, result.State[1], 1e-9);
    }
}
