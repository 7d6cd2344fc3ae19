namespace Coldwright.Numerics;

/// <summary>How a solve ended.</summary>
public enum SolveStatus
{
    /// <summary>All balances close.</summary>
    Solved,
    /// <summary>The iterations ran out or stalled.</summary>
    NotConverged,
    /// <summary>No answer exists within the limits.</summary>
    NoSolution,
    /// <summary>The state lies outside the range in which the equations mean anything.</summary>
    Outside,
}

/// <summary>What a solver did: never a bare failure.</summary>
/// <param name="Status">How it ended.</param>
/// <param name="Iterations">Iterations used.</param>
/// <param name="Residual">Largest remaining residual, in the solver's documented measure.</param>
/// <param name="Advice">In words: where it stood, what was tried, what to do. Empty when solved.</param>
public sealed record SolveReport(SolveStatus Status, int Iterations, double Residual, string Advice = "")
{
    /// <summary>True when all balances close.</summary>
    public bool Solved => Status == SolveStatus.Solved;
}

/// <summary>Thrown by convenience calls that have no other way to say that a solve failed; carries the report.</summary>
public sealed class SolveException(SolveReport report) : Exception(report.Advice)
{
    /// <summary>What the solver did.</summary>
    public SolveReport Report { get; } = report;
}
