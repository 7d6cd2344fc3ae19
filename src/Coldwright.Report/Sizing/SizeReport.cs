using Coldwright.Design.Sizing;
using Coldwright.Machine.Description;
using Coldwright.Report.Parts;
using Coldwright.Safety;

namespace Coldwright.Report.Sizing;

/// <summary>What a report about the size of a part is made from.</summary>
public sealed record SizeReport
{
    /// <summary>The cooler.</summary>
    public required MachineDescription Machine { get; init; }
    /// <summary>The sizes found.</summary>
    public required SizeResult Result { get; init; }
    /// <summary>Safety findings about the part, gravest first, the standing reminder last.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
    /// <summary>Currency of the prices; empty when none is known.</summary>
    public string Currency { get; init; } = "";
    /// <summary>Notes of the folder.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];
    /// <summary>Units a person reads first.</summary>
    public UnitSystem Units { get; init; } = UnitSystem.Si;

    internal IReadOnlyList<string> Warnings => [.. Result.Warnings.Concat(Notes).Distinct()];

    internal Readout Readout(bool typographic) => new(Units, Machine.Room.PressurePa, typographic);

    internal PartUnits PartUnits(bool typographic) => new(Readout(typographic), Machine.Room.PressurePa);

    internal string Cost(SizeOption option, Readout r) => option.Cost is { } cost ? $"{r.Fixed(cost, 2)} {Currency}" : "";
}
