using Coldwright.Design.Blending;
using Coldwright.Quantities;

namespace Coldwright.Report.Blending;

/// <summary>What a report about the best mixture is made from.</summary>
public sealed record BlendReport : CoolerReport
{
    /// <summary>The mixtures found.</summary>
    public required BlendResult Result { get; init; }
    /// <summary>Currency of the prices; empty when none is known.</summary>
    public string Currency { get; init; } = "";
    /// <summary>Notes of the folder.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    internal IReadOnlyList<Spoken> Warnings => [.. Result.Warnings.Concat(Spoken.All(Notes)).Distinct()];
}
