using Coldwright.Machine.Description;
using Coldwright.Runs.Explain;
using Coldwright.Safety;

namespace Coldwright.Report.Explain;

/// <summary>What a report about an explained run is made from.</summary>
public sealed record ExplainReport
{
    /// <summary>The cooler.</summary>
    public required MachineDescription Machine { get; init; }
    /// <summary>The run's name.</summary>
    public required string Run { get; init; }
    /// <summary>The explanation.</summary>
    public required Explanation Result { get; init; }
    /// <summary>Safety findings, gravest first, the standing reminder last.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
    /// <summary>Units a person reads first.</summary>
    public UnitSystem Units { get; init; } = UnitSystem.Si;

    internal Readout Readout(bool typographic) => new(Units, Machine.Room.PressurePa, typographic);

    /// <summary>Heading.</summary>
    internal string Title => $"{Machine.Name}: where the cold of '{Run}' went";

    /// <summary>Causes worth a line: the named ones, <c>none</c>, and those that may still be.</summary>
    internal IReadOnlyList<ExplainedCause> Shown => [.. Result.Causes.Where(c => c.Named || c.Probability > 0.02).Take(7).Union(Result.Causes.Where(c => c.Id == "none")).OrderBy(c => c.Rank)];
}
