using Coldwright.Quantities;
using Coldwright.Simulation.Cooldown;

namespace Coldwright.Runs.Explain;

/// <summary>Where a run's cold went. Immutable.</summary>
public sealed record Explanation
{
    /// <summary>Phases of the run, times from the start of the record.</summary>
    public required IReadOnlyList<RunPhase> Phases { get; init; }
    /// <summary>Causes, the one named first with rank 1; <c>none</c> among them.</summary>
    public required IReadOnlyList<ExplainedCause> Causes { get; init; }
    /// <summary>Sets of causes that this record cannot tell apart.</summary>
    public required IReadOnlyList<IReadOnlyList<string>> Indistinguishable { get; init; }
    /// <summary>Short tests, the one that would settle most first.</summary>
    public required IReadOnlyList<ShortTest> Tests { get; init; }
    /// <summary>Cooling that an endless recuperator would leave at the end, and what takes it, W.</summary>
    public required IReadOnlyList<StopTerm> Watts { get; init; }
    /// <summary>Heat of the whole pull-down by the model as fitted: what the gas carried off, and what it came from, J.</summary>
    public required IReadOnlyList<(string Id, string Name, double Joules)> PullDownHeat { get; init; }
    /// <summary>From what a sound machine would have collected to what was, kg; empty without a batch.</summary>
    public required IReadOnlyList<(string Name, double Kg)> Grams { get; init; }
    /// <summary>Figures compared.</summary>
    public required IReadOnlyList<ComparedFigure> Figures { get; init; }
    /// <summary>Weighted squares that remain over the number of figures; near 1 when the doubts are well judged.</summary>
    public required double Misfit { get; init; }
    /// <summary>Correlations of the strengths of the two first suspects, pair by pair, beyond 0.5.</summary>
    public required IReadOnlyList<(string A, string B, double Correlation)> Correlations { get; init; }
    /// <summary>What was measured against time, from the start of the compressor.</summary>
    public required Trace Measured { get; init; }
    /// <summary>The machine as described, in the same moments.</summary>
    public required Course Described { get; init; }
    /// <summary>The machine with what is thought to be wrong with it, and what the record says of its doubts.</summary>
    public required Course Fitted { get; init; }
    /// <summary>Load at the end of the pull-down: measured and as described, K.</summary>
    public required (double MeasuredK, double DescribedK) End { get; init; }
    /// <summary>What acts on the loop as the model takes it over: strength, and its change for one standard deviation in the direction that moves the end of the pull-down most.</summary>
    internal IReadOnlyList<(CauseModel Cause, double Strength, double Step)> Taken { get; init; } = [];
    /// <summary>In plain words.</summary>
    public required Spoken Paragraph { get; init; }
    /// <summary>What a person must be told.</summary>
    public required IReadOnlyList<string> Said { get; init; }
}

/// <summary>A cause with what the record says of it.</summary>
/// <param name="Id">Cause id.</param>
/// <param name="Name">In words.</param>
/// <param name="Detail">Which of several (a channel); empty for one alone.</param>
/// <param name="Value">Figure: a ratio to the machine file where the unit is empty.</param>
/// <param name="Unit">Unit of the figure.</param>
/// <param name="Low">Lower end of the interval of 90 %.</param>
/// <param name="High">Upper end.</param>
/// <param name="Rank">From 1.</param>
/// <param name="Named">True for those of the likeliest set.</param>
/// <param name="Probability">That it is among what is wrong, 0..1.</param>
/// <param name="ShareOfShortfall">Of what is missing, 0..1.</param>
public sealed record ExplainedCause(string Id, string Name, string Detail, double Value, string Unit, double Low, double High, int Rank, bool Named, double Probability, double ShareOfShortfall);

/// <summary>A short test.</summary>
/// <param name="Id">Stable word.</param>
/// <param name="What">What to do.</param>
/// <param name="Settles">Share of the remaining doubt between causes that it would take away, 0..1.</param>
public sealed record ShortTest(string Id, string What, double Settles);

/// <summary>A figure of log and model.</summary>
/// <param name="Feature">Which.</param>
/// <param name="Measured">Measured; natural logarithm where <see cref="Feature.IsLog"/>.</param>
/// <param name="Described">Of the machine as described.</param>
/// <param name="Fitted">With what is thought to be wrong.</param>
/// <param name="Uncertainty">One standard deviation of the difference, sensors and model.</param>
public sealed record ComparedFigure(Feature Feature, double Measured, double Described, double Fitted, double Uncertainty);
