namespace Coldwright.Numerics.Integration;

/// <summary>What a run cost.</summary>
/// <param name="Steps">Accepted steps.</param>
/// <param name="Rejected">Steps repeated because the error estimate was too large.</param>
/// <param name="IterationFailures">Steps repeated because the stage equations did not converge or could not be evaluated.</param>
/// <param name="Evaluations">Calls of the right-hand side for the state, those for Jacobians left out.</param>
/// <param name="JacobianEvaluations">Calls of the right-hand side for difference Jacobians.</param>
/// <param name="SensitivityEvaluations">Calls of the right-hand side for sensitivities.</param>
/// <param name="Jacobians">Jacobians made.</param>
/// <param name="Decompositions">Pairs of one real and one complex decomposition.</param>
/// <param name="Restarts">Restarts at events.</param>
/// <param name="LargestSensitivityError">Largest error estimate of a sensitivity over a step, against its tolerance; 0 without sensitivities.</param>
public sealed record IntegrationStatistics(int Steps, int Rejected, int IterationFailures, long Evaluations, long JacobianEvaluations,
    long SensitivityEvaluations, int Jacobians, int Decompositions, int Restarts, double LargestSensitivityError)
{
    /// <summary>All calls of the right-hand side.</summary>
    public long AllEvaluations => Evaluations + JacobianEvaluations + SensitivityEvaluations;
}

/// <summary>The same numbers while the run goes on.</summary>
internal sealed class RunningStatistics
{
    public int Steps, Rejected, IterationFailures, Jacobians, Decompositions, Restarts;
    public long Evaluations, JacobianEvaluations, SensitivityEvaluations;
    public double LargestSensitivityError;

    public IntegrationStatistics Close() => new(Steps, Rejected, IterationFailures, Evaluations, JacobianEvaluations, SensitivityEvaluations,
        Jacobians, Decompositions, Restarts, LargestSensitivityError);
}
