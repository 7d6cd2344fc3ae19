using Coldwright.Machine.Description;
using Coldwright.Simulation.Batch;
using Xunit;

namespace Coldwright.Simulation.Tests.Batch;

/// <summary>Feeding with rests, waiting, what a further minute buys, and the search for the best schedule.</summary>
public sealed class ScheduleTests
{
    private static readonly FeedCompressorDescription _small = new() { Type = CompressorType.Reciprocating, DisplacementM3 = 6e-6, SpeedRevPerS = 24, MassKg = 2, MaximumShellTemperatureK = 300, MaximumDischargeTemperatureK = 480 };

    private static BatchCooler Pumped(FeedCompressorDescription machine) => Bench.Cooler().WithMetal() with
    {
        SuctionPa = 5e5, Compressor = machine, Receiver = new ReceiverDescription { VolumeM3 = 0.3, PressurePa = 6e5, LowestPressurePa = 3e5 },
    };

    [Fact]
    public void AHotFeedCompressorRestsAndNeverPassesItsLimit()
    {
        var run = Bench.Run(Pumped(_small), Bench.Plan(fill: 0.5));
        LedgerTests.Closes(run);
        Assert.Contains(run.Schedule, s => s is { Action: "feed", Until: "shell too hot" });
        Assert.Contains(run.Schedule, s => s is { Action: "rest", Until: "shell cooled" });
        Assert.InRange(run.HottestShellK, 299.9, 300 + 1e-3);
        Assert.True(run.FeedJ > 0);
        var duty = FeedDutyFinder.Of(Pumped(_small), 16e5)!;
        Assert.InRange(duty.DutyShare, 0.01, 0.99);
        Assert.True(duty.SteadyShellK > duty.AllowedShellK);
    }

    [Fact]
    public void WaterTakesTheRestsAway()
    {
        var run = Bench.Run(Pumped(_small with { Cooling = FeedCooling.WaterBath }), Bench.Plan(fill: 0.5));
        Assert.DoesNotContain(run.Schedule, s => s.Action == "rest");
        Assert.True(run.HottestShellK < 300);
    }

    [Fact]
    public void TheVesselOpensAtThePressureAskedFor()
    {
        var run = Bench.Run(Bench.Cooler().WithMetal(), Bench.Plan(openPa: 6e5));
        var discharge = run.Schedule.Single(s => s.Action == "discharge");
        Assert.Equal(6e5, run.Series.Last(m => m.TimeS <= discharge.StartS).PressurePa, 50.0);
    }

    /// <summary>Colder liquid flashes less; each further minute of cooling buys less than the one before, since the cold end weakens and the flash fraction falls ever slower.</summary>
    [Fact]
    public void WaitingBuysLessAndLess()
    {
        var cooler = Bench.Cooler().WithMetal();
        var waiting = WaitingValue.Of(cooler, Bench.Run(cooler, Bench.Plan()), new BatchOptions(), TestContext.Current.CancellationToken);
        Assert.True(waiting.Count >= 7);
        for (int i = 1; i < waiting.Count; i++)
        {
            Assert.True(waiting[i].CollectedKg > waiting[i - 1].CollectedKg - 1e-6);
            Assert.True(waiting[i].OpeningPressurePa < waiting[i - 1].OpeningPressurePa);
        }
        Assert.True(waiting[^2].GainKgPerMinute < waiting[0].GainKgPerMinute);
    }

    [Theory]
    [InlineData(BatchGoal.LitresPerHour)]
    [InlineData(BatchGoal.EnergyPerLitre)]
    public void TheBestScheduleIsBetterThanItsNeighbours(BatchGoal goal)
    {
        var cooler = Bench.Cooler().WithMetal();
        var options = new BatchOptions { RelativeTolerance = 1e-5 };
        var plan = new BatchOptimizer(cooler, options, null, TestContext.Current.CancellationToken).Best(goal)!;
        double Merit(BatchPlan p) => Bench.Run(cooler, p, options) is var r && goal == BatchGoal.LitresPerHour ? r.CollectedLPerH : -(r.EnergyKWhPerL ?? 1e9);
        double best = Merit(plan);
        foreach (var other in (BatchPlan[])[plan with { FillShare = Math.Min(0.92, plan.FillShare * 1.3) }, plan with { FillShare = plan.FillShare * 0.7 }, plan with { OpeningPressurePa = plan.OpeningPressurePa * 0.7 },
            plan with { OpeningPressurePa = Math.Min(plan.FeedPressurePa, plan.OpeningPressurePa * 1.4) }, plan with { FeedPressurePa = plan.FeedPressurePa * 0.8 }])
            Assert.True(Merit(other) <= best + 2e-3 * Math.Abs(best), $"{other}: {Merit(other)} against {best} of {plan}");
    }

    [Fact]
    public void SearchStoppedEarlyGivesTheBestSoFar()
    {
        using var source = new CancellationTokenSource();
        var optimizer = new BatchOptimizer(Bench.Cooler(), new BatchOptions(), text => { if (text.EndsWith(" 6", StringComparison.Ordinal)) source.Cancel(); }, source.Token);
        Assert.NotNull(optimizer.Best(BatchGoal.LitresPerHour));
        Assert.True(optimizer.Stopped);
        Assert.InRange(optimizer.Tried, 6, 8);
    }
}
