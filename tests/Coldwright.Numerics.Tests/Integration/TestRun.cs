using Coldwright.Numerics.Integration;
using Xunit;

namespace Coldwright.Numerics.Tests.Integration;

/// <summary>The integrator under the test's own cancellation.</summary>
internal static class TestRun
{
    public static IntegrationResult Integrate(InitialValueProblem problem, double start, ReadOnlySpan<double> initial, double end,
        IntegrationOptions? options = null, IReadOnlyList<IntegrationEvent>? events = null, Action<AcceptedStep>? observer = null)
        => StiffIntegrator.Integrate(problem, start, initial, end, options, events, observer, TestContext.Current.CancellationToken);
}
