using Coldwright.Machine.Description;
using Coldwright.Simulation.Cooldown;

namespace Coldwright.Report.Cooldown;

/// <summary>What a report about a cooldown is made from.</summary>
public sealed record CooldownReport : CoolerReport
{
    /// <summary>What was found.</summary>
    public required CooldownResult Result { get; init; }

    /// <summary>True when the mixture is cooled ahead of the recuperator by a loop of its own.</summary>
    internal bool HasPrecooler => Machine.PartsOf<PrecoolerPart>().Any();

    /// <summary>Heading.</summary>
    internal string Title => $"{Machine.Name}: {(Result.IsWarmUp ? "warm-up" : "cooldown")}";
}
