using Coldwright.Design.Sizing;
using Coldwright.Quantities;
using Coldwright.Report.Parts;

namespace Coldwright.Report.Sizing;

/// <summary>What a report about the size of a part is made from.</summary>
public sealed record SizeReport : CoolerReport
{
    /// <summary>The sizes found.</summary>
    public required SizeResult Result { get; init; }
    /// <summary>Currency of the prices; empty when none is known.</summary>
    public string Currency { get; init; } = "";
    /// <summary>Notes of the folder.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    internal IReadOnlyList<Spoken> Warnings => [.. Result.Warnings.Concat(Spoken.All(Notes)).Distinct()];

    internal PartUnits PartUnits(bool typographic) => new(Readout(typographic), Machine.Room.PressurePa);

    internal string Cost(SizeOption option, Readout r) => option.Cost is { } cost ? $"{r.Fixed(cost, 2)} {Currency}" : "";
}
