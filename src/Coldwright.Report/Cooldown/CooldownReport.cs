using Coldwright.Machine.Description;
using Coldwright.Safety;
using Coldwright.Simulation.Cooldown;

namespace Coldwright.Report.Cooldown;

/// <summary>What a report about a cooldown is made from.</summary>
public sealed record CooldownReport
{
    /// <summary>The cooler.</summary>
    public required MachineDescription Machine { get; init; }
    /// <summary>What was found.</summary>
    public required CooldownResult Result { get; init; }
    /// <summary>Safety findings, gravest first, the standing reminder last.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
    /// <summary>Units a person reads first.</summary>
    public UnitSystem Units { get; init; } = UnitSystem.Si;

    internal Readout Readout(bool typographic) => new(Units, Machine.Room.PressurePa, typographic);

    /// <summary>Heading.</summary>
    internal string Title => $"{Machine.Name}: {(Result.IsWarmUp ? "warm-up" : "cooldown")}";
}
