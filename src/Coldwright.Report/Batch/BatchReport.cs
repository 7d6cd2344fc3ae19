using Coldwright.Quantities;
using Coldwright.Simulation.Batch;

namespace Coldwright.Report.Batch;

/// <summary>What a report about a batch is made from.</summary>
public sealed record BatchReport : CoolerReport
{
    /// <summary>Its batch.</summary>
    public required BatchResult Result { get; init; }
    /// <summary>Notes of the folder.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    internal BatchRun Run => Result.Run;

    internal IReadOnlyList<Spoken> Warnings => [.. Result.Warnings.Concat(Spoken.All(Notes)).Distinct()];
}
