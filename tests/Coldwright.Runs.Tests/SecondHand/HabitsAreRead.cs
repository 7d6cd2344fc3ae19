using System.Text;
using Coldwright.Blind;
using Coldwright.Blind.SecondHand;
using Coldwright.Runs.Record;

namespace Coldwright.Runs.Tests.SecondHand;

/// <summary>Twenty-four builders with recording habits of their own wrote down one day; each record is read, with every channel that its builder had.</summary>
public sealed class HabitsAreRead
{
    private static readonly SecondPlan _plan = new(9000, 9900, 10500, 11400, 13200, 293.15, 0);
    private static readonly Lazy<BlindCase> _day = new(() =>
    {
        var truth = new Truth { Faults = [] };
        return new BlindCase(0, truth, SecondDay.Run(truth, _plan), new Dictionary<string, double>());
    });

    [Theory]
    [InlineData(SensorSet.Full)]
    [InlineData(SensorSet.Usual)]
    [InlineData(SensorSet.Bare)]
    public void EveryBuildersRecordIsRead(SensorSet set)
    {
        var hand = new OtherHand(11);
        for (int i = 0; i < 8; i++)
        {
            var (run, log) = hand.Write(_day.Value with { Number = i }, set);
            var habits = hand.HabitsOf(i, set);
            var read = RunImporter.ReadTexts(run, log.Length == 0 ? null : Encoding.UTF8.GetBytes(log), TestContext.Current.CancellationToken);
            Assert.True(read.Record is not null, $"{i}, {habits.Form}, '{habits.Delimiter}': {string.Join('\n', read.Problems)}");
            Assert.Equal(habits.Channels.Order(), read.Record.Channels.Select(c => c.Name).Order());
            // in kelvin whatever unit it was written in; a hand that reads every quarter of an hour misses the coldest moment
            double coldest = _day.Value.Course.Moments.Min(m => m.LoadK);
            Assert.InRange(read.Record.Channels.Single(c => c.Name == "vessel").Lowest, coldest - 10, coldest + 30);
        }
    }
}
