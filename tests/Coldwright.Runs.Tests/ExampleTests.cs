using Coldwright.Runs.Record;
using Coldwright.Runs.Tightness;

namespace Coldwright.Runs.Tests;

/// <summary>The example runs, end to end. What was put into them on purpose is found.</summary>
public sealed class ExampleTests
{
    [Fact]
    public void TheFirstColdRunShowsWhatWasPutIn()
    {
        var folder = RunImporter.Read(Examples.Run("2026-03-14-first-cold"), TestContext.Current.CancellationToken);
        Assert.True(folder.Record is not null, string.Join('\n', folder.Problems));
        var record = folder.Record;
        Assert.Equal(8, record.Channels.Count);
        Assert.Equal(new DateTime(2026, 3, 14, 9, 5, 12), record.Start);
        Assert.Equal([FaultKind.Spike, FaultKind.OutOfRange, FaultKind.Gap, FaultKind.Frozen, FaultKind.Repeat], record.Faults.Select(f => f.Kind));
        Assert.Equal([3600.0, 6000, 7200, 8595, 10005], record.Faults.Select(f => f.FromS), (a, b) => Math.Abs(a - b) < 16);
        Assert.Equal("workshop cooler", record.Machine!.Name);

        // The bare thermocouple of the coil and the one in °C on the vessel agree within what they claim.
        var (vessel, coil) = (record.Channel("vessel")!, record.Channel("coil-out")!);
        var (v, c) = (vessel.LastGood(12000)!.Value, coil.LastGood(12000)!.Value);
        Assert.InRange(v.Value - c.Value, 1, 6);
        Assert.InRange(v.StandardUncertainty, 1, 4);
        // 4 to 20 mA and the barometer of the day
        Assert.Equal(17.5e5 + 1.013e5, record.Channel("high")!.LastGood(12000)!.Value.Value, 0.05e5);
    }

    [Fact]
    public void TheLeakTestFindsTheLeakThatWasPutIn()
    {
        var record = RunImporter.Read(Examples.Run("2026-03-07-leak-test"), TestContext.Current.CancellationToken).Record!;
        var leak = LeakTest.Evaluate(record, out var complaint);
        Assert.True(leak is not null, complaint);
        Assert.True(Math.Abs(leak.LeakMolS - 1.25e-7) < 2 * leak.UncertaintyMolS, $"{leak.LeakMolS} ± {leak.UncertaintyMolS}");
        Assert.Equal(TightnessVerdict.Failed, leak.Verdict);
        Assert.Equal("methane", leak.Charge.Single(c => c.Flow == "molecular").First);
    }

    [Fact]
    public void AFolderWithoutARunIsAnswered()
    {
        Assert.Contains("holds no run.yaml", RunImporter.Read(Path.Combine(Examples.Root, "examples", "workshop"), TestContext.Current.CancellationToken).Problems[0].Message, StringComparison.Ordinal);
        Assert.Contains("there is no folder", RunImporter.Read(Path.Combine(Examples.Root, "nowhere"), TestContext.Current.CancellationToken).Problems[0].Message, StringComparison.Ordinal);
    }
}
