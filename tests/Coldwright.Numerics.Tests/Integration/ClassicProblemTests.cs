using Xunit;

namespace Coldwright.Numerics.Tests.Integration;

public sealed class ClassicProblemTests(ITestOutputHelper output)
{
    private static readonly Dictionary<string, ClassicProblem> _problems = new[] { ClassicProblem.Robertson, ClassicProblem.VanDerPol, ClassicProblem.Hires, ClassicProblem.Oregonator }.ToDictionary(p => p.Name);

    /// <summary>
    /// End values of the Bari test set (<see cref="ClassicProblem.Origin"/>). The tolerance is on the local error; what accumulates may
    /// be larger: by 10 where the problem damps, by 100 in relaxation oscillations, whose phase is never corrected.
    /// </summary>
    [Theory]
    [InlineData("Robertson", 10)]
    [InlineData("HIRES", 10)]
    [InlineData("van der Pol", 100)]
    [InlineData("OREGO", 100)]
    public void The_published_end_values_are_met_at_every_tolerance(string name, double factor)
    {
        var problem = _problems[name];
        foreach (double tolerance in new[] { 1e-4, 1e-5, 1e-6, 1e-7, 1e-8 })
        {
            var result = problem.Run(tolerance);
            double error = problem.Error(result);
            var s = result.Statistics;
            output.WriteLine($"{name} rtol {tolerance:E0}: error {error:E1}, steps {s.Steps}, rejected {s.Rejected}, failed {s.IterationFailures}, f {s.Evaluations}, J {s.Jacobians}, LU {s.Decompositions}");
            Assert.True(error <= factor * tolerance, $"{name}: error {error:E2} at tolerance {tolerance:E0}");
        }
    }
}
