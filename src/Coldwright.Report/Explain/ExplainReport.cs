using Coldwright.Runs.Explain;

namespace Coldwright.Report.Explain;

/// <summary>What a report about an explained run is made from.</summary>
public sealed record ExplainReport : CoolerReport
{
    /// <summary>The run's name.</summary>
    public required string Run { get; init; }
    /// <summary>The explanation.</summary>
    public required Explanation Result { get; init; }

    /// <summary>Heading.</summary>
    internal string Title => $"{Machine.Name}: where the cold of '{Run}' went";

    /// <summary>Causes worth a line: the named ones, <c>none</c>, and those that may still be.</summary>
    internal IReadOnlyList<ExplainedCause> Shown => [.. Result.Causes.Where(c => c.Named || c.Probability > 0.02).Take(7).Union(Result.Causes.Where(c => c.Id == "none")).OrderBy(c => c.Rank)];
}
