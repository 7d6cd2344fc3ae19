using Coldwright.Numerics.Integration;
using Xunit;

namespace Coldwright.Numerics.Tests.Integration;

public sealed class IntegratorBehaviourTests
{
    private static readonly InitialValueProblem _decay = new(1, (_, y, _, f) =>
    {
        f[0] = -y[0];
        return true;
    });

    [Fact]
    public void A_solution_that_ends_is_reported_with_place_reason_and_advice()
    {
        // y' = y^2 from 1 is 1/(1 - t).
        var result = TestRun.Integrate(new(1, (_, y, _, f) =>
        {
            f[0] = y[0] * y[0];
            return true;
        }), 0, [1], 2);
        Assert.Equal(SolveStatus.NotConverged, result.Report.Status);
        Assert.Equal(1, result.Time, 1e-3);
        Assert.True(double.IsFinite(result.State[0]));
        Assert.Contains("the step fell to", result.Report.Advice);
        Assert.Throws<SolveException>(result.OrThrow);
    }

    [Fact]
    public void A_wall_of_the_right_hand_side_is_approached_and_named()
    {
        var result = TestRun.Integrate(new(1, (_, y, _, f) =>
        {
            f[0] = -1;
            return y[0] >= 0.25;
        }), 0, [1], 2);
        Assert.False(result.Solved);
        Assert.Equal(0.75, result.Time, 1e-3);
        Assert.InRange(result.State[0], 0.25, 0.26);
        Assert.Contains("refused the state", result.Report.Advice);
    }

    [Fact]
    public void A_slope_that_is_no_number_is_named_by_its_component()
    {
        var result = TestRun.Integrate(new(2, (t, y, _, f) =>
        {
            (f[0], f[1]) = (1, Math.Sqrt(0.5 - t));
            return true;
        }), 0, [1, 1], 2);
        Assert.False(result.Solved);
        Assert.Equal(0.5, result.Time, 1e-3);
        Assert.Contains("component 1 was not a finite number", result.Report.Advice);
        Assert.DoesNotContain(result.State, double.IsNaN);
        var first = TestRun.Integrate(_decay, 0, [double.MaxValue], 1);
        Assert.True(first.Solved || first.Report.Advice.Length > 0);
    }

    [Fact]
    public void Too_few_steps_are_said_to_be_too_few()
    {
        var result = TestRun.Integrate(ClassicProblem.VanDerPol.Problem, 0, [2, 0], 2, new() { MaximumSteps = 20 });
        Assert.Equal(SolveStatus.NotConverged, result.Report.Status);
        Assert.Contains("20 steps were not enough", result.Report.Advice);
    }

    [Fact]
    public void Cancelling_keeps_what_the_observer_has_seen()
    {
        using var source = new CancellationTokenSource();
        int seen = 0;
        Assert.Throws<OperationCanceledException>(() => StiffIntegrator.Integrate(ClassicProblem.VanDerPol.Problem, 0, [2, 0], 2, observer: _ => { if (++seen == 10) source.Cancel(); }, cancel: source.Token));
        Assert.Equal(10, seen);
    }

    /// <summary>A kink that the integrator is not told of costs steps, not accuracy.</summary>
    [Fact]
    public void An_unannounced_kink_is_passed()
    {
        var result = TestRun.Integrate(new(1, (t, y, _, f) =>
        {
            f[0] = -1e3 * (y[0] - Math.Abs(t - 1));
            return true;
        }), 0, [1], 2, new() { RelativeTolerance = 1e-6, AbsoluteTolerances = new double[] { 1e-6 } }).OrThrow();
        Assert.Equal(1 - 1e-3, result.State[0], 1e-5);
        Assert.InRange(result.Statistics.Steps, 1, 200);
    }

    [Theory]
    [InlineData(0, false)]
    [InlineData(1, false)]
    [InlineData(1, true)]
    public void Steps_allocate_nothing(int parameters, bool collocated)
    {
        var problem = new InitialValueProblem(20, (_, y, p, f) =>
        {
            double k = p.Length > 0 ? p[0] : 1;
            for (int i = 0; i < 20; i++) f[i] = k * ((i > 0 ? y[i - 1] : 1) - 2 * y[i] + (i < 19 ? y[i + 1] : 0)) - 0.1 * y[i] * y[i];
            return true;
        })
        { Parameters = Enumerable.Repeat(1.0, parameters).ToArray() };
        var options = new IntegrationOptions { Sensitivities = parameters > 0 ? new() { Collocated = collocated } : null, MaximumStep = 0.01 };
        var start = new double[20];
        long Allocated(double end)
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            TestRun.Integrate(problem, 0, start, end, options).OrThrow();
            return GC.GetAllocatedBytesForCurrentThread() - before;
        }
        Allocated(1);
        Assert.Equal(Allocated(1), Allocated(4));
    }

    [Fact]
    public void Bad_input_is_named_with_value_and_limit()
    {
        static void Refuses(string part, Action act) => Assert.Contains(part, Assert.ThrowsAny<ArgumentException>(act).Message);
        Refuses("2 initial values for 1 components", () => TestRun.Integrate(_decay, 0, [1, 2], 1));
        Refuses("it is to go from 1 to 1", () => TestRun.Integrate(_decay, 1, [1], 1));
        Refuses("initial value of component 0 is NaN", () => TestRun.Integrate(_decay, 0, [double.NaN], 1));
        Refuses("relative tolerance 0 lies outside", () => TestRun.Integrate(_decay, 0, [1], 1, new() { RelativeTolerance = 0 }));
        Refuses("absolute tolerance of component 0 is 0", () => TestRun.Integrate(_decay, 0, [1], 1, new() { AbsoluteTolerances = new double[] { 0 } }));
        Refuses("has no parameters", () => TestRun.Integrate(_decay, 0, [1], 1, new() { Sensitivities = new() }));
        Refuses("mass of component 0 is -1", () => new InitialValueProblem(1, _decay.Slope) { MassDiagonal = new double[] { -1 } });
        Refuses("1 or more components", () => new InitialValueProblem(0, _decay.Slope));
        Refuses("entry (2, 0) lies outside", () => JacobianPattern.FromEntries(2, [(2, 0)]));
    }

    /// <summary>Small change in, small change out: random linear stiff systems, the order of the components turned round.</summary>
    [Fact]
    public void The_order_of_the_components_does_not_matter()
    {
        var random = new Random(3);
        for (int trial = 0; trial < 10; trial++)
        {
            int n = random.Next(2, 12);
            double[] rate = [.. Enumerable.Range(0, n).Select(_ => Math.Pow(10, 6 * random.NextDouble() - 1))], mix = [.. rate.Select(_ => random.NextDouble())];
            InitialValueProblem Problem(bool turned) => new(n, (t, y, _, f) =>
            {
                double sum = 0;
                for (int i = 0; i < n; i++) sum += mix[i] * y[turned ? n - 1 - i : i];
                for (int i = 0; i < n; i++) f[turned ? n - 1 - i : i] = rate[i] * (Math.Cos(t) + 0.3 * sum / n - y[turned ? n - 1 - i : i]);
                return true;
            });
            var options = new IntegrationOptions { RelativeTolerance = 1e-6, AbsoluteTolerances = new double[] { 1e-6 } };
            var a = TestRun.Integrate(Problem(false), 0, new double[n], 5, options).OrThrow().State;
            var b = TestRun.Integrate(Problem(true), 0, new double[n], 5, options).OrThrow().State;
            for (int i = 0; i < n; i++) Assert.Equal(a[i], b[n - 1 - i], 1e-7);
        }
    }
}
