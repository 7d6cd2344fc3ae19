using Coldwright.Design.Charging;
using Coldwright.Machine.Description;
using Coldwright.Quantities;

namespace Coldwright.Report.Charging;

/// <summary>What a report about filling a loop is made from.</summary>
public sealed record ChargeReport
{
    /// <summary>The cooler.</summary>
    public required MachineDescription Machine { get; init; }
    /// <summary>The plan.</summary>
    public required ChargeResult Result { get; init; }
    /// <summary>Notes of the folder.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];
    /// <summary>Units a person reads first.</summary>
    public UnitSystem Units { get; init; } = UnitSystem.Si;

    internal IReadOnlyList<Spoken> Warnings => [.. Result.Warnings.Concat(Spoken.All(Notes)).Distinct()];

    internal Readout Readout(bool typographic) => new(Units, Machine.Room.PressurePa, typographic);
}
