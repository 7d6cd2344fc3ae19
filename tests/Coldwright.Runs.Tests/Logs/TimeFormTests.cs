using System.Globalization;
using Coldwright.Runs.Record;

namespace Coldwright.Runs.Tests.Logs;

/// <summary>Times in the forms that loggers write; ISO 8601-1:2019 for the first ones.</summary>
public sealed class TimeFormTests
{
    private const int Rows = 40;
    private static readonly DateTime _start = new(2026, 3, 14, 9, 0, 0);

    public static TheoryData<string, string> Forms => new()
    {
        { "iso", "yyyy-MM-dd'T'HH:mm:ss" }, { "iso with fractions", "yyyy-MM-dd'T'HH:mm:ss.fff" }, { "iso with a blank", "yyyy-MM-dd HH:mm:ss" },
        { "basic", "yyyyMMdd'T'HHmmss" }, { "point", "dd.MM.yyyy HH:mm:ss" }, { "point, short year", "dd.MM.yy HH:mm:ss" }, { "slash", "dd/MM/yyyy HH:mm:ss" },
        { "slash, year first", "yyyy/MM/dd HH:mm:ss" }, { "month first", "MM/dd/yyyy HH:mm:ss" }, { "half days", "MM/dd/yyyy hh:mm:ss tt" }, { "named month", "dd-MMM-yyyy HH:mm:ss" },
        { "thousandths after a colon", "yyyy-MM-dd HH:mm:ss:fff" },
    };

    [Theory]
    [MemberData(nameof(Forms))]
    public void DatesAndTimesAreFound(string name, string format)
    {
        Assert.NotEmpty(name);
        var record = Read(i => _start.AddSeconds(15 * i).ToString(format, CultureInfo.InvariantCulture));
        Assert.Equal(_start, record.Start);
        MustStep(record, 15);
        Assert.Empty(record.Faults);
    }

    /// <summary>Some loggers and web services write their newest row on top; the times are those of ISO 8601 all the same.</summary>
    [Fact]
    public void NewestRowFirstIsReadFromItsEnd()
    {
        var record = Make.Record(Make.OneChannel, Make.Log(Enumerable.Range(0, Rows).Reverse().Select(i => (Make.Iso(15 * i), 20.0 - i))));
        Assert.Equal(_start, record.Start);
        MustStep(record, 15);
        Assert.True(record.Channels[0].Values[0] > record.Channels[0].Values[^1]);
        Assert.Contains(record.Warnings, w => w.Contains("newest row", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(1.0)]
    [InlineData(1e3)]
    [InlineData(1e6)]
    public void EpochsAreFound(double perSecond)
    {
        var zero = (_start - DateTime.UnixEpoch).TotalSeconds;
        var record = Read(i => ((zero + 15 * i) * perSecond).ToString("0", CultureInfo.InvariantCulture));
        Assert.Equal(_start, record.Start);
        MustStep(record, 15);
    }

    [Theory]
    [InlineData("time [s]", 15.0, 15)]
    [InlineData("time (min)", 0.25, 15)]
    [InlineData("elapsed_ms", 15000.0, 15)]
    [InlineData("time/h", 0.125, 450)]
    public void ElapsedTimesTakeTheirUnitFromTheHeading(string heading, double step, double seconds)
    {
        var record = Make.Record(Make.OneChannel, $"{heading},T\n" + Lines(i => (step * i).ToString("0.####", CultureInfo.InvariantCulture)));
        MustStep(record, seconds);
        Assert.DoesNotContain(record.Warnings, w => w.Contains("unit of", StringComparison.Ordinal));
    }

    [Fact]
    public void AnElapsedTimeWithoutUnitIsSaid()
    {
        var record = Make.Record(Make.OneChannel, "time,T\n" + Lines(i => $"{15 * i}"));
        MustStep(record, 15);
        Assert.Contains(record.Warnings, w => w.Contains("seconds are taken", StringComparison.Ordinal));
    }

    [Fact]
    public void HoursMayRunPastADay()
    {
        var record = Read(i => $"{23 + i / 4}:{15 * (i % 4):00}:00");
        MustStep(record, 900);
        Assert.Empty(record.Faults);
    }

    [Fact]
    public void AClockRunsAcrossMidnight()
    {
        var record = Read(i => new DateTime(2026, 3, 14, 23, 55, 0).AddSeconds(15 * i).ToString("HH:mm:ss", CultureInfo.InvariantCulture));
        MustStep(record, 15);
        Assert.Equal(new DateTime(2026, 3, 14, 23, 55, 0), record.Start);
        var fault = Assert.Single(record.Faults);
        Assert.Equal(FaultKind.Midnight, fault.Kind);
        Assert.Equal(285, fault.FromS, 1e-6);
    }

    [Fact]
    public void DateAndTimeMayStandInTwoColumns()
    {
        var log = "Date;Clock;T\n" + string.Concat(Enumerable.Range(0, Rows).Select(i => _start.AddSeconds(15 * i)).Select(t => $"{t:dd.MM.yyyy};{t:HH:mm:ss};{T(t.Second)}\n"));
        var record = Make.Record(Make.OneChannel, log);
        Assert.Equal(_start, record.Start);
        MustStep(record, 15);
    }

    [Fact]
    public void BlanksMayStandBetweenEverything()
    {
        var log = "Date       Time     T\n" + string.Concat(Enumerable.Range(0, Rows).Select(i => _start.AddSeconds(15 * i)).Select(t => $"{t:yyyy-MM-dd HH:mm:ss}   {T(t.Second)}\n"));
        var record = Make.Record(Make.OneChannel, log);
        Assert.Equal(_start, record.Start);
        MustStep(record, 15);
    }

    [Fact]
    public void AnOffsetThatChangesInSummerTimeIsNoJump()
    {
        var zone = new DateTimeOffset(2026, 3, 29, 1, 55, 0, TimeSpan.FromHours(1));
        var record = Read(i =>
        {
            var t = zone.AddSeconds(15 * i);
            if (t.UtcDateTime >= new DateTime(2026, 3, 29, 1, 0, 0)) t = t.ToOffset(TimeSpan.FromHours(2));
            return t.ToString("yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture);
        });
        MustStep(record, 15);
        Assert.Empty(record.Faults);
        Assert.Equal(new DateTime(2026, 3, 29, 1, 55, 0), record.Start);
    }

    [Fact]
    public void DaysOfASpreadsheetAreReadWhenSaid()
    {
        // Day 36526 is 1 January 2000 in the count that begins on 30 December 1899.
        var log = "time,T\n" + Lines(i => (36526 + 0.375 + 15.0 * i / 86400).ToString("0.0000000", CultureInfo.InvariantCulture));
        var record = Make.Record(Make.OneChannel.Replace("log: {}", "log: {time-form: spreadsheet}", StringComparison.Ordinal), log);
        Assert.Equal(new DateTime(2000, 1, 1, 9, 0, 0), record.Start!.Value, TimeSpan.FromSeconds(0.01));
        MustStep(record, 15, 0.02);
    }

    [Fact]
    public void WithoutATimeColumnTheIntervalCounts()
    {
        var record = Make.Record(Make.OneChannel.Replace("log: {}", "log: {interval: 2 s}", StringComparison.Ordinal), "T,U\n" + string.Concat(Enumerable.Range(0, Rows).Select(i => $"{T(i)},{i % 3}\n")));
        MustStep(record, 2);
    }

    [Fact]
    public void AmbiguousDatesAreSaidAndCanBeSettled()
    {
        string Log(string format) => "time,T\n" + Lines(i => new DateTime(2026, 4, 3, 9, 0, 0).AddSeconds(15 * i).ToString(format, CultureInfo.InvariantCulture));
        var guessed = Make.Record(Make.OneChannel, Log("dd/MM/yyyy HH:mm:ss"));
        Assert.Equal(4, guessed.Start!.Value.Month);
        Assert.Contains(guessed.Warnings, w => w.Contains("swapped", StringComparison.Ordinal));
        var said = Make.Record(Make.OneChannel.Replace("log: {}", "log: {date-order: month-first}", StringComparison.Ordinal), Log("MM/dd/yyyy HH:mm:ss"));
        Assert.Equal(4, said.Start!.Value.Month);
        Assert.DoesNotContain(said.Warnings, w => w.Contains("swapped", StringComparison.Ordinal));
    }

    private static RunRecord Read(Func<int, string> time) => Make.Record(Make.OneChannel, "time,T\n" + Lines(time));

    private static string Lines(Func<int, string> time) => string.Concat(Enumerable.Range(0, Rows).Select(i => $"{time(i)},{T(i)}\n"));

    private static string T(int i) => string.Create(CultureInfo.InvariantCulture, $"{-100 - 0.5 * i + 0.07 * (i * 7 % 5):0.00}");

    private static void MustStep(RunRecord record, double seconds, double tolerance = 1e-6)
    {
        var channel = record.Channel("t")!;
        Assert.Equal(Rows, channel.Count);
        for (var i = 0; i < Rows; i++) Assert.Equal(seconds * i, channel.TimesS[i], tolerance);
    }
}
