using System.Collections.Concurrent;
using Coldwright.Machine.Files;
using Coldwright.Simulation.Cooldown;
using Xunit;

namespace Coldwright.Simulation.Tests.Cooldown;

/// <summary>Cooldowns of the examples by the cubic model, each followed once for all tests.</summary>
internal static class FollowedCoolers
{
    private static readonly ConcurrentDictionary<string, Lazy<CooldownResult>> Followed = new();

    public static CooldownOptions Plain { get; } = new() { Cubic = true, Halving = false };

    public static CooldownResult Of(string example) => Followed.GetOrAdd(example, e => new(() => Follow(Coolers.Folder(e), Plain))).Value;

    public static CooldownResult Follow(MachineFolder folder, CooldownOptions options) => CooldownSolver.Run(folder.Machine!, folder.Layout!, options, null, TestContext.Current.CancellationToken);
}
