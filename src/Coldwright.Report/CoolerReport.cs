using Coldwright.Machine.Description;
using Coldwright.Safety;

namespace Coldwright.Report;

/// <summary>What every report about a whole cooler is made from.</summary>
public abstract record CoolerReport
{
    /// <summary>The cooler.</summary>
    public required MachineDescription Machine { get; init; }
    /// <summary>Safety findings, gravest first, the standing reminder last.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
    /// <summary>Units a person reads first.</summary>
    public UnitSystem Units { get; init; } = UnitSystem.Si;

    internal Readout Readout(bool typographic) => new(Units, Machine.Room.PressurePa, typographic);
}
