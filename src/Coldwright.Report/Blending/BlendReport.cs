using Coldwright.Design.Blending;
using Coldwright.Machine.Description;
using Coldwright.Safety;

namespace Coldwright.Report.Blending;

/// <summary>What a report about the best mixture is made from.</summary>
public sealed record BlendReport
{
    /// <summary>The cooler.</summary>
    public required MachineDescription Machine { get; init; }
    /// <summary>The mixtures found.</summary>
    public required BlendResult Result { get; init; }
    /// <summary>Safety findings about the machine with the best mixture, gravest first, the standing reminder last.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
    /// <summary>Currency of the prices; empty when none is known.</summary>
    public string Currency { get; init; } = "";
    /// <summary>Notes of the folder.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];
    /// <summary>Units a person reads first.</summary>
    public UnitSystem Units { get; init; } = UnitSystem.Si;

    internal IReadOnlyList<string> Warnings => [.. Result.Warnings.Concat(Notes).Distinct()];

    internal Readout Readout(bool typographic) => new(Units, Machine.Room.PressurePa, typographic);
}
