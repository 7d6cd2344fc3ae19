using Coldwright.Simulation.Cooldown;
using Xunit;

namespace Coldwright.Simulation.Tests.Cooldown;

/// <summary>A study keeps its tables and maps for the next run: whatever it followed before, a run comes to what it comes to by itself.</summary>
public sealed class SharedStudyTests
{
    private static CourseOptions Options(params (string Id, double Value)[] factors) => new() { ShutOffS = 5 * 3600, Reach = 0.1, Factors = factors.ToDictionary(f => f.Id, f => f.Value) };

    /// <summary>A poor exchanger stops far warmer; maps that its run leaves behind must not serve the cold ends of the runs after it (they once did: 40 K too warm).</summary>
    [Fact]
    public void A_run_after_others_is_that_of_a_fresh_study()
    {
        var folder = Coolers.Folder("workshop");
        CooldownStudy Fresh() => new(folder.Machine!, folder.Layout!, true, TestContext.Current.CancellationToken);
        var shared = Fresh();
        foreach (var options in new[] { Options(), Options(("high-film", 0.37), ("low-film", 0.37)), Options(("load-mass", 3.3)), Options(("throttle-flow", 0.82)) })
        {
            Course with = shared.Follow(options), alone = Fresh().Follow(options);
            TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{string.Join(" ", options.Factors)}: {with.StopK:0.000} and {alone.StopK:0.000} K, {with.CoolingW[^1]:0.00} and {alone.CoolingW[^1]:0.00} W, {with.HighPressurePa[^1]:0} and {alone.HighPressurePa[^1]:0} Pa"));
            Assert.Equal(alone.StopK, with.StopK, 0.2);
            Assert.Equal(1, with.CoolingW[^1] / alone.CoolingW[^1], 0.01);
            Assert.Equal(1, with.HighPressurePa[^1] / alone.HighPressurePa[^1], 2e-3);
            // the widest reach: tables err by its square, and flow answers steeply to where liquid begins to boil before the throttle
            Assert.Equal(1, with.MassFlow[^1] / alone.MassFlow[^1], 0.02);
        }
    }
}
