using Coldwright.Machine.Description;
using Coldwright.Safety;
using Coldwright.Simulation.Batch;

namespace Coldwright.Report.Batch;

/// <summary>What a report about a batch is made from.</summary>
public sealed record BatchReport
{
    /// <summary>The cooler.</summary>
    public required MachineDescription Machine { get; init; }
    /// <summary>Its batch.</summary>
    public required BatchResult Result { get; init; }
    /// <summary>Safety findings, gravest first, the standing reminder last.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
    /// <summary>Notes of the folder.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];
    /// <summary>Units a person reads first.</summary>
    public UnitSystem Units { get; init; } = UnitSystem.Si;

    internal BatchRun Run => Result.Run;

    internal IReadOnlyList<string> Warnings => [.. Result.Warnings.Concat(Notes).Distinct()];

    internal Readout Readout(bool typographic) => new(Units, Machine.Room.PressurePa, typographic);
}
