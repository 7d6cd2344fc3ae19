using Coldwright.Design.Blending;

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

    internal IReadOnlyList<string> Warnings => [.. Result.Warnings.Concat(Notes).Distinct()];
}
