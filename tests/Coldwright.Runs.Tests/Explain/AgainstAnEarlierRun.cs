using Coldwright.Blind;
using Coldwright.Runs.Explain;

namespace Coldwright.Runs.Tests.Explain;

/// <summary>A run held against an earlier one of the same machine in good order. Both logs are another hand's; what its machine is like beyond its file is common to both.</summary>
[Collection(BlindCollection.Name)]
public sealed class AgainstAnEarlierRun(BlindRuns blind)
{
    private static (string, string) Log(int day, params (string, double)[] faults) =>
        LogWriter.Write(CaseMaker.Of(1, BlindCases.With(faults), TestContext.Current.CancellationToken), SensorSet.Usual, 1, day: day);

    /// <summary>A precooler with a third of its cooling shows in the usual sensors only beside a good day: alone it stays among the doubts (docs/theory/identifiability.md).</summary>
    [Fact]
    public void WhatTheFileLeavesOpenFallsOut()
    {
        var e = blind.Explain(Log(0, ("precooler-weak", 0.33)), SensorSet.Usual, Log(1));
        Assert.Equal("precooler-weak", e.Causes[0].Id);
        Assert.InRange(e.Causes[0].Probability, 0.8, 1);
        Assert.DoesNotContain(e.Figures, f => f.Feature.IsEarlier);
        Assert.Contains(e.Said, s => s.Contains("earlier run", StringComparison.Ordinal));
    }

    /// <summary>Two good days: nothing has changed, and the ratios are one within their intervals.</summary>
    [Fact]
    public void TwoGoodDaysDifferInNothing()
    {
        var e = blind.Explain(Log(0), SensorSet.Usual, Log(1));
        Assert.Equal("none", e.Causes[0].Id);
        Assert.All(e.Causes.Where(c => c.Id is "leak" or "exchanger" or "compressor-flow" or "extra-metal"), c => Assert.True(c.Low < 1 && c.High > 1, FormattableString.Invariant($"{c.Id} {c.Low:0.00} to {c.High:0.00}")));
    }
}
