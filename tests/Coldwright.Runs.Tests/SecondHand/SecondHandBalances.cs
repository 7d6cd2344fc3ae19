using Coldwright.Blind;
using Coldwright.Blind.SecondHand;

namespace Coldwright.Runs.Tests.SecondHand;

/// <summary>The second generator of blind cases is held against its own first law, and every fault it knows must show in its log: a short day, feed after two and a half hours.</summary>
public sealed class SecondHandBalances
{
    private static readonly SecondPlan _short = new(9000, 9900, 10500, 11400, 13200, 293.15, 1);
    private static readonly Lazy<BlindCase> _sound = new(() => Day());

    private static BlindCase Day(params (string, double)[] faults)
    {
        var truth = new Truth { Faults = faults };
        return new BlindCase(3, truth, SecondDay.Run(truth, _short), new Dictionary<string, double>());
    }

    [Theory]
    [InlineData("none", 0, 1e-3)]
    [InlineData("exchanger", 0.4, 1e-3)]
    // water that freezes within a step is integrated less finely
    [InlineData("wet-insulation", 0.1, 6e-3)]
    public void HeatCarriedOffIsHeatThatCameInAndHeatGivenUp(string id, double size, double within)
    {
        var (course, books) = SecondDay.Follow(new Truth { Faults = id == "none" ? [] : [(id, size)] }, _short, TestContext.Current.CancellationToken);
        Assert.InRange(books.Missing, -within, within);
        Assert.True(books.CarriedOff > 3e5, $"only {books.CarriedOff} J carried off");
        Assert.All(course.Moments, m => Assert.True(m.LoadK is > 70 and < 300 && m.LowPa > 0 && m.HighPa >= m.LowPa && m.MassFlow >= 0));
    }

    [Fact]
    public void NothingIsCollectedThatWasNotFed()
    {
        var course = _sound.Value.Course;
        Assert.InRange(course.FedKg, 0.05, 0.6);
        Assert.InRange(course.CollectedKg, 0.01, course.FedKg);
    }

    public static TheoryData<string> Ids => [.. CaseMaker.Faults.Select(f => f.Id)];

    [Theory]
    [MemberData(nameof(Ids))]
    public void EveryFaultShowsInTheLog(string id)
    {
        var (_, from, to) = CaseMaker.Faults.Single(f => f.Id == id);
        // least of what is drawn would do for most; the middle is asked of all
        double apart = new OtherHand(1).Distance(_sound.Value, Day((id, 0.5 * (from + to))), SensorSet.Full);
        Assert.True(apart > 25, $"chi-square {apart:0.0} between a sound machine and one with {id}");
    }

    [Fact]
    public void TheSameSeedMakesTheSameLog()
    {
        var (run, log) = new OtherHand(7).Write(_sound.Value, SensorSet.Usual);
        var (again, logAgain) = new OtherHand(7).Write(_sound.Value, SensorSet.Usual);
        Assert.Equal(run, again);
        Assert.Equal(log, logAgain);
    }
}
