using System.Text;
using Coldwright.Runs.Live;

namespace Coldwright.Runs.Tests.Live;

/// <summary>Messages become rows; after each one the file holds it.</summary>
public sealed class TopicLogTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("coldwright-topics-").FullName;
    private DateTime _time = new(2026, 3, 14, 9, 0, 0);

    private string Path => System.IO.Path.Combine(_folder, "log.csv");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private TopicLog Log(string[] columns, params string[] filters) => new(Path, columns, filters, () => _time);

    private string[] Lines()
    {
        using var reader = new StreamReader(new FileStream(Path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite));
        return reader.ReadToEnd().Split('\n')[..^1];
    }

    private static void Say(TopicLog log, string topic, string text) => log.Take(topic, Encoding.UTF8.GetBytes(text), false);

    [Fact]
    public void WhatComesWithinASecondIsOneRow()
    {
        using var log = Log(["c/a", "c/b"]);
        Assert.Equal(["time;c/a;c/b"], Lines());
        Say(log, "c/a", "20.1");
        Assert.Equal("2026-03-14 09:00:00.000;20.1;", Lines()[^1]);
        _time = _time.AddMilliseconds(300);
        Say(log, "c/b", "5 barg");
        Assert.Equal(["time;c/a;c/b", "2026-03-14 09:00:00.000;20.1;5 barg"], Lines());
        _time = _time.AddMilliseconds(300);
        Say(log, "c/b", "6");
        Assert.Equal("2026-03-14 09:00:00.600;;6", Lines()[^1]);
        _time = _time.AddSeconds(1);
        Say(log, "c/a", "OL");
        Assert.Equal(["2026-03-14 09:00:00.600;;6", "2026-03-14 09:00:01.600;OL;"], Lines()[2..]);
        Assert.Equal((4, 3, 0), (log.Written, log.Rows, log.LeftOut));
    }

    [Fact]
    public void ANewTopicMakesAColumnForAllRows()
    {
        using var log = Log([], "c/#");
        Say(log, "c/state", "online");
        Say(log, "d/a", "1");
        Assert.Equal(["time"], Lines());
        Say(log, "c/a", "1");
        _time = _time.AddSeconds(5);
        Say(log, "c/a", "2");
        Say(log, "c/ä b", "3.5");
        Say(log, "c/bad;\"name", "3.5");
        _time = _time.AddSeconds(5);
        Say(log, "c/a", "12;\"34\n");
        Assert.Equal(["time;c/a;c/ä b", "2026-03-14 09:00:00.000;1;", "2026-03-14 09:00:05.000;2;3.5", "2026-03-14 09:00:10.000;12  34;"], Lines());
        Assert.Equal((4, 3), (log.Written, log.LeftOut));
        Assert.Equal([Path], Directory.GetFiles(_folder));
    }

    /// <summary>Names with strokes and tildes as in the example of RFC 6901, section 5.</summary>
    [Fact]
    public void ValuesInJsonHaveTheirPointer()
    {
        using var log = Log(["t#/a~1b", "t#/m~0n", "t#/gone"]);
        Say(log, "t", """{"a/b": 1, "m~n": "8 barg", "other": 3, "gone": null}""");
        Assert.Equal("2026-03-14 09:00:00.000;1;8 barg;", Lines()[^1]);
        _time = _time.AddSeconds(5);
        Say(log, "t", """{"a/b": 2, """);
        Say(log, "t", "7");
        Assert.Equal((1, 2), (log.Written, log.LeftOut));
        Assert.Empty(log.Silent);
        using var all = new TopicLog(System.IO.Path.Combine(_folder, "all.csv"), [], ["#"], () => _time);
        Say(all, "t", """{"when": "2026-03-14T09:00:00", "T": {"in": -120.5, "out": "-130 °C"}, "list": [1, true]}""");
        Assert.Equal(["t#/T/in", "t#/T/out", "t#/list/0"], all.Columns);
    }

    [Fact]
    public void AMessageKeptByTheBrokerIsNotLogged()
    {
        using var log = Log(["c/a"]);
        log.Take("c/a", "20"u8, isKept: true);
        Assert.Equal(["time;c/a"], Lines());
        Assert.Equal((0, 1), (log.Written, log.Kept));
        Assert.Equal(["c/a"], log.Silent);
    }

    [Fact]
    public void BytesOfAnyKindAreSurvived()
    {
        var random = new Random(20260314);
        using var log = Log(["c/a", "c/b#/x"], "c/#");
        for (var i = 0; i < 300; i++)
        {
            var bytes = new byte[random.Next(40)];
            random.NextBytes(bytes);
            if (i % 3 == 0 && bytes.Length > 0) bytes[0] = (byte)"{[1\"-"[random.Next(5)];
            log.Take(i % 2 == 0 ? "c/a" : "c/b", bytes, false);
            _time = _time.AddMilliseconds(random.Next(2000));
        }
        var lines = Lines();
        Assert.All(lines, l => Assert.Equal(log.Columns.Count, l.Count(c => c == ';')));
        Assert.Equal(log.Rows, lines.Length - 1);
    }

    /// <summary>Each topic at its own pace: what was written is a log that import reads, cell by cell.</summary>
    [Fact]
    public void WhatIsWrittenCanBeImported()
    {
        var start = _time;
        using (var log = Log([], "c/#"))
        {
            for (var i = 0; i < 60; i++)
            {
                _time = start.AddSeconds(5 * i);
                Say(log, "c/T", FormattableString.Invariant($"{20 - 0.3 * i:0.0}"));
                if (i % 3 > 0) continue;
                _time = _time.AddSeconds(2);
                Say(log, "c/other", """{"p": 5.1}""");
            }
        }
        var record = Make.Record(Make.OneChannel.Replace("column: T", "column: c/T", StringComparison.Ordinal) + "\n  p: {column: c/other#/p, at: aftercooler, sensor: pressure-gauge, unit: barg, class: 1, span: 40 bar}", string.Join('\n', Lines()) + "\n");
        Assert.Equal((60, 20), (record.Channels[0].GoodCount, record.Channels[1].GoodCount));
        Assert.Equal(20 - 0.3 * 59, record.Channels[0].Values[^1] - 273.15, 6);
    }

    [Fact]
    public void TopicsOfAnEarlierRunAreItsColumns()
    {
        Assert.Equal(["T"], RunTopics.Of(Make.OneChannel, out var none));
        Assert.Empty(none);
        Assert.Empty(RunTopics.Of(Make.OneChannel.Replace("column: T", "column: \"c/+\"", StringComparison.Ordinal), out var complaints));
        Assert.Contains("no topic", Assert.Single(complaints), StringComparison.Ordinal);
        Assert.Empty(RunTopics.Of(Make.OneChannel.Replace("column: T", "column: \"c#x\"", StringComparison.Ordinal), out complaints));
        Assert.Contains("cooler/coil#/inlet/T", Assert.Single(complaints), StringComparison.Ordinal);
    }
}
