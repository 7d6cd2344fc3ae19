using Coldwright.Simulation.Cooldown;

namespace Coldwright.Report.Cooldown;

/// <summary>What a report about a cooldown is made from.</summary>
public sealed record CooldownReport : CoolerReport
{
    /// <summary>What was found.</summary>
    public required CooldownResult Result { get; init; }

    /// <summary>Heading.</summary>
    internal string Title => $"{Machine.Name}: {(Result.IsWarmUp ? "warm-up" : "cooldown")}";
}
