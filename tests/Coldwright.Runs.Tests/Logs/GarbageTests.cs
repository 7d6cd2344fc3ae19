using System.Text;
using Coldwright.Runs.Record;

namespace Coldwright.Runs.Tests.Logs;

/// <summary>No bytes crash the reader: garbage, and good logs with garbage in them. Seeded, so that a failure comes back.</summary>
public sealed class GarbageTests
{
    private static readonly byte[] _likely = Encoding.Latin1.GetBytes("0123456789.,;:-+eE \t\n\r\"#/|°CNaOL");

    [Fact]
    public void AnyBytesEndInARecordOrInProblems()
    {
        var random = new Random(20260314);
        for (var round = 0; round < 1500; round++)
        {
            var bytes = new byte[random.Next(0, 3000)];
            if (round % 3 == 0) random.NextBytes(bytes);
            else for (var i = 0; i < bytes.Length; i++) bytes[i] = _likely[random.Next(_likely.Length)];
            MustHold(bytes, round);
        }
    }

    [Fact]
    public void GoodLogsWithGarbageInThemAreReadOn()
    {
        var random = new Random(4711);
        var good = Encoding.UTF8.GetBytes(Make.Log(Enumerable.Range(0, 200).Select(i => (Make.Iso(15 * i), -100 - 0.1 * i))));
        for (var round = 0; round < 1500; round++)
        {
            var bytes = good.ToList();
            for (var k = random.Next(1, 12); k > 0; k--)
            {
                var at = random.Next(bytes.Count);
                switch (random.Next(4))
                {
                    case 0: bytes[at] = (byte)random.Next(256); break;
                    case 1: bytes.RemoveRange(at, Math.Min(random.Next(1, 400), bytes.Count - at)); break;
                    case 2: bytes.InsertRange(at, bytes.Skip(random.Next(bytes.Count)).Take(random.Next(1, 400)).ToArray()); break;
                    default: bytes.InsertRange(at, Enumerable.Repeat(_likely[random.Next(_likely.Length)], random.Next(1, 60))); break;
                }
                if (bytes.Count == 0) bytes.Add(0);
            }
            MustHold([.. bytes], round);
        }
    }

    [Fact]
    public void BrokenDescriptionsEndInProblems()
    {
        var random = new Random(99);
        var log = Encoding.UTF8.GetBytes(Make.Log(Enumerable.Range(0, 30).Select(i => (Make.Iso(15 * i), -100.0))));
        for (var round = 0; round < 600; round++)
        {
            var text = new StringBuilder(Make.OneChannel);
            for (var k = random.Next(1, 5); k > 0; k--)
            {
                var at = random.Next(text.Length);
                if (random.Next(2) == 0) text[at] = (char)random.Next(32, 127);
                else text.Remove(at, Math.Min(random.Next(1, 20), text.Length - at));
            }
            var folder = RunImporter.ReadTexts(text.ToString(), log, TestContext.Current.CancellationToken);
            Assert.True(folder.Record is not null ^ folder.Problems.Count > 0, text.ToString());
        }
    }

    private static void MustHold(byte[] bytes, int round)
    {
        var folder = RunImporter.ReadTexts(Make.OneChannel, bytes, TestContext.Current.CancellationToken);
        Assert.True(folder.Record is not null ^ folder.Problems.Count > 0, $"round {round}");
        if (folder.Record?.Channel("t") is not { } channel) return;
        var before = double.NegativeInfinity;
        for (var i = 0; i < channel.Count; i++)
        {
            Assert.True(double.IsFinite(channel.Values[i]), $"round {round}: value {i}");
            Assert.True(channel.TimesS[i] >= before, $"round {round}: time {i}");
            Assert.Equal(channel.Flags[i] == SampleFlag.Good, float.IsFinite(channel.StandardUncertainties[i]));
            before = channel.TimesS[i];
        }
    }
}
