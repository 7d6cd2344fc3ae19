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
    private readonly Aside _words;

    /// <summary>True when all balances close.</summary>
    public bool Solved => Status == SolveStatus.Solved;

    /// <summary>The advice with the amounts in it as they were given, for a face that says them in other units; null where it is plain text.</summary>
    public FormattableString? Words => _words.Words is { } words && FormattableString.Invariant(words) == Advice ? words : null;

    /// <summary>Words where there are some, else the advice: to be put into a longer advice.</summary>
    public object Told => (object?)Words ?? Advice;

    /// <summary>A report whose advice keeps its amounts.</summary>
    /// <param name="status">How it ended.</param>
    /// <param name="iterations">Iterations used.</param>
    /// <param name="residual">Largest remaining residual.</param>
    /// <param name="words">The advice.</param>
    public static SolveReport Telling(SolveStatus status, int iterations, double residual, FormattableString words) => new SolveReport(status, iterations, residual).Telling(words);

    /// <summary>The same with another advice.</summary>
    /// <param name="words">The advice.</param>
    public SolveReport Telling(FormattableString words) => new(this, words);

    private SolveReport(SolveReport report, FormattableString words) : this(report.Status, report.Iterations, report.Residual, FormattableString.Invariant(words)) => _words = new(words);

    // The words say no more than the advice, so they do not make two reports different.
    private readonly struct Aside(FormattableString words) : IEquatable<Aside>
    {
        public FormattableString? Words { get; } = words;

        public bool Equals(Aside other) => true;

        public override bool Equals(object? obj) => obj is Aside;

        public override int GetHashCode() => 0;
    }
}

/// <summary>Thrown by convenience calls that have no other way to say that a solve failed; carries the report.</summary>
public sealed class SolveException(SolveReport report) : Exception(report.Advice)
{
    /// <summary>What the solver did.</summary>
    public SolveReport Report { get; } = report;
}
