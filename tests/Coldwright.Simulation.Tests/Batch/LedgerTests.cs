using Coldwright.Machine.Description;
using Coldwright.Simulation.Batch;
using Xunit;

namespace Coldwright.Simulation.Tests.Batch;

/// <summary>The ledgers close, for every product and plan, and behave as they must when something small is changed.</summary>
public sealed class LedgerTests
{
    [Theory]
    [InlineData("nitrogen", 16e5, 0.7, 8e5)]
    [InlineData("nitrogen", 30e5, 0.9, 30e5)]
    [InlineData("nitrogen", 38e5, 0.5, 10e5)]
    [InlineData("argon", 12e5, 0.5, 6e5)]
    [InlineData("oxygen", 15e5, 0.4, 5e5)]
    [InlineData("methane", 10e5, 0.8, 4e5)]
    public void GramsAndJoulesClose(string gas, double feedPa, double fill, double openPa)
    {
        var run = Bench.Run(Bench.Cooler(gas, feedPa).WithMetal(), Bench.Plan(feedPa, fill, openPa));
        Closes(run);
        Assert.True(run.Grams.CollectedKg > 0.01, $"{run.Grams}, {string.Join("; ", run.Schedule)}, {string.Join("; ", run.Said)}");
        Assert.All((double[])[run.Grams.FlashedKg, run.Grams.LineBoilKg, run.Grams.FlaskBoilKg, run.Grams.VapourLeftKg], kg => Assert.InRange(kg, 0, run.Grams.FedKg));
    }

    [Fact]
    public void AMixtureWithATwentiethOfOxygenCloses() =>
        Closes(Bench.Run(Bench.Cooler(names: ["nitrogen", "oxygen"], z: [0.95, 0.05]).WithMetal(), Bench.Plan()));

    [Fact]
    public void SeveralBatchesInARowCloseAndTheLaterOnesCostNoFlask()
    {
        var cooler = Bench.Cooler().WithMetal();
        var one = Bench.Run(cooler, Bench.Plan());
        var three = Bench.Run(cooler, Bench.Plan(), new BatchOptions { Batches = 3 });
        Closes(three);
        Assert.True(three.Grams.CollectedKg > 3 * one.Grams.CollectedKg, $"{three.Grams} after {one.Grams}");
        Assert.Equal(3, three.Schedule.Count(s => s.Action == "discharge"));
    }

    [Fact]
    public void FromAReceiverItsPressureFallsByWhatWasFed()
    {
        var cooler = Bench.Cooler().WithMetal() with { Receiver = new ReceiverDescription { VolumeM3 = 0.004, PressurePa = 40e5, LowestPressurePa = 20e5 } };
        var run = Bench.Run(cooler, Bench.Plan(fill: 0.9));
        Closes(run);
        Assert.Equal("supply at its lowest pressure", run.Schedule[0].Until);
        var gas = cooler.Product.Fork().Phase;
        Assert.Equal(0.004 * (gas.At(Bench.RoomK, 40e5).Density - gas.At(Bench.RoomK, 20e5).Density), run.Grams.FedKg, 1e-5);
        Assert.Equal(20e5, run.Series[^1].SupplyPa, 100.0);
    }

    [Fact]
    public void ASmallStepInIsASmallStepOut()
    {
        var cooler = Bench.Cooler().WithMetal();
        double Collected(double fill, double open) => Bench.Run(cooler, Bench.Plan(fill: fill, openPa: open)).Grams.CollectedKg;
        double at = Collected(0.7, 8e5);
        Assert.Equal(at, Collected(0.7 + 1e-4, 8e5), 3e-4 * at);
        Assert.Equal(at, Collected(0.7, 8e5 + 100), 3e-4 * at);
    }

    [Fact]
    public void TighterTolerancesChangeNothingThatCanBeWeighed()
    {
        var cooler = Bench.Cooler().WithMetal();
        double loose = Bench.Run(cooler, Bench.Plan(), new BatchOptions { RelativeTolerance = 1e-5 }).Grams.CollectedKg, tight = Bench.Run(cooler, Bench.Plan(), new BatchOptions { RelativeTolerance = 1e-8 }).Grams.CollectedKg;
        Assert.Equal(tight, loose, 1e-4 * tight);
    }

    [Fact]
    public void ALeakingSeatCostsLiquidAndTheLedgerStillCloses()
    {
        var cooler = Bench.Cooler().WithMetal();
        var (tight, leaking) = (Bench.Run(cooler, Bench.Plan()), Bench.Run(cooler with { SeatAreaM2 = 2e-10 }, Bench.Plan()));
        Closes(leaking);
        Assert.True(leaking.Details.SeatLeakKg > 1e-3);
        Assert.True(leaking.Grams.CollectedKg / leaking.Grams.FedKg < tight.Grams.CollectedKg / tight.Grams.FedKg - 0.01);
    }

    [Fact]
    public void WarmMetalCostsLiquid()
    {
        var (bare, metal) = (Bench.Run(Bench.Cooler(), Bench.Plan()), Bench.Run(Bench.Cooler().WithMetal(), Bench.Plan()));
        Assert.Equal(0, bare.Grams.LineBoilKg, 1e-9);
        Assert.True(metal.Grams.LineBoilKg > 1e-3 && metal.Grams.FlaskBoilKg > 1e-3);
        Assert.True(Bench.Run(Bench.Cooler().WithMetal(), Bench.Plan(), new BatchOptions { FlaskCold = true }).Grams.FlaskBoilKg < 0.3 * metal.Grams.FlaskBoilKg);
    }

    [Fact]
    public void StoppedItKeepsWhatWasDone()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        var run = new BatchRunner(Bench.Cooler(), Bench.Plan(), new BatchOptions(), keepSeries: true, source.Token).Run();
        Assert.True(run.Stopped);
        Assert.True(Math.Abs(run.Grams.Error) < 1e-9);
    }

    internal static void Closes(BatchRun run)
    {
        Assert.True(Math.Abs(run.Grams.Error) < 1e-9, $"grams: {run.Grams.Error}");
        Assert.True(Math.Abs(run.Joules.Error) < 1e-6, $"joules: {run.Joules.Error}");
    }
}
