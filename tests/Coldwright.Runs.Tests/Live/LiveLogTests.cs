using Coldwright.Runs.Live;

namespace Coldwright.Runs.Tests.Live;

public class LiveLogTests
{
    [Fact]
    public async Task LinesAreStampedAndAMissingHeadingIsMade()
    {
        using var log = new StringWriter { NewLine = "\n" };
        int s = 0;
        var live = new LiveLog(new StringReader("1.0,2.0\n\n3.0,4.0\n"), log, () => new DateTime(2026, 3, 14, 9, 0, s++));
        await live.CopyAsync(null, TestContext.Current.CancellationToken);
        Assert.Equal("time,c1,c2\n2026-03-14 09:00:00.000,1.0,2.0\n2026-03-14 09:00:01.000,3.0,4.0\n", log.ToString());
        Assert.Equal((2, 1), (live.Written, live.LeftOut));
    }

    /// <summary>What was written is a log that import reads.</summary>
    [Fact]
    public async Task WhatIsWrittenCanBeImported()
    {
        using var log = new StringWriter { NewLine = "\n" };
        var t = new DateTime(2026, 3, 14, 9, 0, 0);
        var live = new LiveLog(new StringReader("T\n" + string.Concat(Enumerable.Range(0, 50).Select(i => FormattableString.Invariant($"{20 - 0.3 * i:0.0}\n")))), log, () => t = t.AddSeconds(5));
        await live.CopyAsync(null, TestContext.Current.CancellationToken);
        var record = Make.Record(Make.OneChannel, log.ToString());
        Assert.Equal(50, record.Channels[0].GoodCount);
    }

    [Fact]
    public async Task CancellingKeepsWhatWasWritten()
    {
        using var log = new StringWriter { NewLine = "\n" };
        using var stop = new CancellationTokenSource();
        var live = new LiveLog(new StringReader(string.Concat(Enumerable.Repeat("1,2\n", 1000))), log, () => new DateTime(2026, 3, 14));
        int seen = 0;
        await live.CopyAsync(() => { if (++seen == 10) stop.Cancel(); }, stop.Token);
        Assert.Equal(10, live.Written);
    }

    /// <summary>What is written first is read back without a complaint, before anybody has noted an event.</summary>
    [Fact]
    public void ANewDescriptionIsOneThatCanBeRead()
    {
        const string log = "time;T;c1\n2026-03-14 09:00:00;1.5;2.5\n2026-03-14 09:00:05;1.6;2.6\n";
        Assert.Equal(2, Make.Record(NewRunText.Of("first", new DateTime(2026, 3, 14, 9, 0, 0), null), log).Channels[0].GoodCount);
        Assert.Equal(2, Make.Record(NewRunText.Of("second", new DateTime(2026, 3, 14, 9, 0, 0), Make.OneChannel), log).Channels[0].GoodCount);
        // a run like a run that was like a run, with names that mean something to YAML
        string text = Make.OneChannel;
        foreach (string name in (string[])["a: b", "#1", "say \"no\" \\ yes"])
        {
            text = NewRunText.Of(name, new DateTime(2026, 3, 14, 9, 0, 0), text);
            Assert.Equal(name, Make.Record(text, log).Name);
        }
        Assert.Single(text.Split('\n'), l => l == "# events:");
    }

    [Fact]
    public void TheChannelsOfAnEarlierRunAreTaken()
    {
        string text = NewRunText.Of("second", new DateTime(2026, 5, 3, 8, 0, 0), Make.OneChannel + "\nevents:\n  - {time: \"09:00\", what: start}\n");
        Assert.Contains("name: second", text, StringComparison.Ordinal);
        Assert.Contains("thermocouple-K", text, StringComparison.Ordinal);
        Assert.DoesNotContain("what: start}", text.Replace("#   - {time: \"09:20\", what: start, at: compressor}", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.DoesNotContain("name: test", text, StringComparison.Ordinal);
    }
}
