using Coldwright.Blind;
using Coldwright.Runs.Explain;
using Xunit;

namespace Coldwright.Runs.Tests.Explain;

/// <summary>The machine as it was found, followed as a whole, and what an explanation says that it could not do.</summary>
[Collection(BlindCollection.Name)]
public sealed class FollowedAsFound(BlindRuns blind)
{
    /// <summary>The curve "as fitted" ends where the record does: to 2 K, when the effects added up one by one end there too.</summary>
    [Fact]
    public void TheFittedCurveEndsWhereTheRecordDoes()
    {
        var o = Observer.Read(blind.Read(blind.Log(BlindCases.With(("leak", 2.8)), SensorSet.Usual), SensorSet.Usual), blind.Folder.Layout!);
        var c = ComparisonMaker.Make(o, blind.Runs);
        var judged = Judge.Of(c, blind.Runs, o.Trace, true, TestContext.Current.CancellationToken);
        var end = new Feature(FeatureKind.AtEnd, Observable.Load, 1);
        double measured = FeatureReader.Value(o.Trace, end)!.Value, fitted = FeatureReader.Value(ModelRuns.TraceOf(judged.Fitted, o.Trace), end)!.Value;
        Assert.InRange(fitted - measured, -2, 2);
        // and by moving doubts no further than doubts go
        Assert.All(judged.Taken.Where(t => t.Cause.OnlyDoubt), t => Assert.InRange(t.Strength / t.Cause.Doubt, -5, 5));
    }

    [Fact]
    public void ARunWithoutAnAnswerIsSaid()
    {
        int before = blind.Runs.Failed.Count;
        var throttle = blind.Runs.Causes.First(c => c.Id == "capillary-blocked");
        Assert.Null(blind.Runs.With([(throttle, 30)], cubic: true));
        Assert.Equal(before + 1, blind.Runs.Failed.Count);
        Assert.StartsWith("capillary-blocked: ", blind.Runs.Failed[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void AFlaskThatWasNotWeighedIsSaid()
    {
        var (run, log) = blind.Log(BlindCases.With(), SensorSet.Usual);
        string unweighed = string.Join('\n', run.Split('\n').Where(l => !l.Contains("what: weighed", StringComparison.Ordinal)));
        Assert.NotEqual(run, unweighed);
        Assert.Contains(blind.Explain((unweighed, log), SensorSet.Usual).Said, s => s.Contains("flask was not weighed", StringComparison.Ordinal));
        Assert.DoesNotContain(blind.Explain((run, log), SensorSet.Usual).Said, s => s.Contains("flask was not weighed", StringComparison.Ordinal));
    }

    /// <summary>With the flask unweighed nothing shows what the drain line takes: it is no longer weighed as a cause, and that is said.</summary>
    [Fact]
    public void WhatTheRecordCannotShowIsNotWeighed()
    {
        var (run, log) = blind.Log(BlindCases.With(), SensorSet.Usual);
        var e = blind.Explain((string.Join('\n', run.Split('\n').Where(l => !l.Contains("what: weighed", StringComparison.Ordinal))), log), SensorSet.Usual);
        Assert.DoesNotContain(e.Causes, c => c.Id == "line-loss");
        Assert.Contains(e.Said, s => s.Contains("line-loss", StringComparison.Ordinal));
        Assert.Contains(e.Causes, c => c.Id == "leak");
    }
}
