using Coldwright.Blind;
using Coldwright.Blind.Physics;
using Coldwright.Runs.Next;

namespace Coldwright.Runs.Tests.Explain;

/// <summary>Changes of a machine whose recuperator exchanges a third of what its file says.</summary>
[Collection(BlindCollection.Name)]
public sealed class NextFigures(BlindRuns blind)
{
    [Fact]
    public void MendingWhatWasFoundGainsAndALighterVesselDoesNot()
    {
        var found = blind.Explain(BlindCases.With(("exchanger", 0.35)), SensorSet.Full);
        Assert.Contains("exchanger", found.Causes.Where(c => c.Named).Select(c => c.Id));
        var changes = ChangeCatalog.For(blind.Folder.Layout!).Where(c => c.Id is "vessel-lighter" or "exchanger-longer").ToArray();
        var next = NextStudy.Of(found, blind.Runs, changes, BlindMarch.StopS, true, null, TestContext.Current.CancellationToken);
        Assert.Equal("argon", next.Product);
        NextChange Of(string id) => next.Changes.Single(c => c.Id == id);
        Assert.All(next.Changes, c => Assert.True(c.Low <= c.LitresPerHour && c.LitresPerHour <= c.High && double.IsFinite(c.EndK), c.Id));
        // a recuperator as described goes further down and makes more than one that exchanges a third
        Assert.True(Of("mend-exchanger").EndK < next.Now.EndK - 10);
        Assert.True(Of("mend-exchanger").LitresPerHour > next.Now.LitresPerHour + 0.05);
        // half as much again on a third is still less than the whole
        Assert.InRange(Of("exchanger-longer").EndK, Of("mend-exchanger").EndK, next.Now.EndK);
        // metal at the load costs time, not cooling: where it stands in the end differs by what the time is worth only
        Assert.True(Math.Abs(Of("vessel-lighter").EndK - next.Now.EndK) < 0.5 * (next.Now.EndK - Of("mend-exchanger").EndK));
        Assert.Equal(next.Changes.Max(c => c.LitresPerHour), next.Changes[0].LitresPerHour);
    }
}
