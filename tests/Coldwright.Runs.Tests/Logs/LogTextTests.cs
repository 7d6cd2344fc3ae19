using System.Globalization;
using System.Text;
using Coldwright.Runs.Record;

namespace Coldwright.Runs.Tests.Logs;

/// <summary>What loggers really write: delimiters, decimal signs, headings, encodings, odd rows, odd cells.</summary>
public sealed class LogTextTests
{
    private static readonly string[] _two = ["t", "u"];

    [Theory]
    [InlineData(",", ".")]
    [InlineData(";", ".")]
    [InlineData(";", ",")]
    [InlineData("\t", ".")]
    [InlineData("\t", ",")]
    [InlineData("|", ",")]
    [InlineData(" ; ", ",")]
    [InlineData("  ", ".")]
    public void DelimiterAndDecimalSignAreFound(string delimiter, string sign)
    {
        var log = Table(delimiter, sign);
        var record = Make.Record(TwoChannels, log);
        Same(record);
    }

    /// <summary>Two columns with decimal commas: the commas cut as many cells as the semicolon and one more, but what they cut off is no unit.</summary>
    [Fact]
    public void TwoColumnsWithDecimalCommasAreCutAtTheSemicolon()
    {
        var log = "Elapsed (min);T\n" + string.Concat(Enumerable.Range(0, 60).Select(i => string.Create(CultureInfo.InvariantCulture, $"{i / 6.0:0.000};{20 - 0.1 * i:0.0}\n").Replace('.', ',')));
        var channel = Make.Record(Make.OneChannel, log).Channel("t")!;
        Assert.Equal(60, channel.GoodCount);
        Assert.Equal(590, channel.TimesS[^1], 1.0);
    }

    [Fact]
    public void QuotedCellsMayHoldTheDelimiter()
    {
        var log = "\"time\",\"T\",\"U\"\r\n" + string.Concat(Rows().Select(r => $"\"{r.Time}\",\"{Text(r.T, ",")}\",\"{Text(r.U, ",")}\"\r\n"));
        Same(Make.Record(TwoChannels, log));
    }

    [Theory]
    [InlineData("utf-8")]
    [InlineData("utf-16")]
    [InlineData("utf-16BE")]
    [InlineData("iso-8859-1")]
    public void AnyEncodingWillDo(string name)
    {
        var encoding = Encoding.GetEncoding(name);
        var log = Table(";", ",").Replace("time;T;U", "time;T [°C];U [°C]", StringComparison.Ordinal);
        Same(Make.Record(TwoChannels, log, encoding));
        if (encoding.GetPreamble().Length > 0) Same(Make.Record(TwoChannels, "\uFEFF" + log, encoding));
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void AnyLineEndWillDo(string end) => Same(Make.Record(TwoChannels, Table(",", ".").Replace("\n", end, StringComparison.Ordinal)));

    [Theory]
    [InlineData("Logger 12\nserial,4711\n\n")]
    [InlineData("# a remark\n# another, with, commas\n")]
    [InlineData("name,value,unit\nserial,4711,none\nrate,15,s\n\n")]
    public void APreambleIsPassedOver(string preamble) => Same(Make.Record(TwoChannels, preamble + Table(",", ".")));

    [Fact]
    public void UnitsMayStandInASecondRow() => Same(Make.Record(TwoChannels, Table(",", ".").Replace("time,T,U\n", "time,T,U\n,°C,°C\n", StringComparison.Ordinal)));

    [Fact]
    public void WithoutHeadingsColumnsHaveNumbers()
    {
        var log = Table(",", ".").Replace("time,T,U\n", "", StringComparison.Ordinal);
        Same(Make.Record(TwoChannels.Replace("column: T", "column: 2", StringComparison.Ordinal).Replace("column: U", "column: 3", StringComparison.Ordinal), log));
        Assert.Contains("3 columns without headings", Make.Problems(TwoChannels, log), StringComparison.Ordinal);
    }

    [Fact]
    public void AMisspeltColumnIsAnsweredWithTheNearest() =>
        Assert.Contains("the nearest is 'Topf'", Make.Problems(TwoChannels.Replace("column: T", "column: Topff", StringComparison.Ordinal), Table(",", ".").Replace("T,U", "Topf,U", StringComparison.Ordinal)), StringComparison.Ordinal);

    [Fact]
    public void ARestartedLoggersHeadingIsNoData()
    {
        var lines = Table(",", ".").Split('\n').ToList();
        lines.Insert(20, "time,T,U");
        lines.Insert(20, "# restarted");
        var record = Make.Record(TwoChannels, string.Join('\n', lines));
        Same(record);
        var fault = Assert.Single(record.Faults);
        Assert.Equal((FaultKind.OddRow, 2, 21), (fault.Kind, fault.Count, fault.Line));
    }

    [Fact]
    public void ACutLastRowIsLeftOut()
    {
        var log = Table(",", ".");
        var record = Make.Record(TwoChannels, log + "2026-03-14T09:2");
        Same(record);
        Assert.Equal(FaultKind.OddRow, Assert.Single(record.Faults).Kind);
    }

    [Theory]
    [InlineData("", SampleFlag.Missing)]
    [InlineData("NaN", SampleFlag.Missing)]
    [InlineData("---", SampleFlag.Missing)]
    [InlineData("OL", SampleFlag.OutOfRange)]
    [InlineData("Open", SampleFlag.OutOfRange)]
    [InlineData("9999.9", SampleFlag.OutOfRange)]
    [InlineData("-300.0", SampleFlag.OutOfRange)]
    [InlineData("1e308", SampleFlag.OutOfRange)]
    [InlineData("what", SampleFlag.Unreadable)]
    [InlineData("12.3.4", SampleFlag.Unreadable)]
    [InlineData("12 V", SampleFlag.Unreadable)]
    public void OddCellsAreFlaggedAndANeighbourStandsIn(string cell, SampleFlag flag)
    {
        var lines = Table(",", ".").Split('\n');
        lines[11] = $"{lines[11].Split(',')[0]},{cell},{lines[11].Split(',')[2]}";
        var channel = Make.Record(TwoChannels, string.Join('\n', lines)).Channel("t")!;
        Assert.Equal(flag, channel.Flags[10]);
        Assert.Equal(channel.Values[9], channel.Values[10]);
        Assert.True(float.IsPositiveInfinity(channel.StandardUncertainties[10]));
        Assert.Equal(channel.Count - 1, channel.GoodCount);
    }

    [Theory]
    [InlineData("-120.5 °C")]
    [InlineData("-120.5C")]
    [InlineData("\u2212120.5")]
    [InlineData("-1.205e2")]
    [InlineData("-1.205E+02")]
    public void NumbersMayBeWrittenInManyWays(string cell)
    {
        var lines = Table(",", ".").Split('\n');
        lines[11] = $"{lines[11].Split(',')[0]},{cell},{lines[11].Split(',')[2]}";
        var channel = Make.Record(TwoChannels, string.Join('\n', lines)).Channel("t")!;
        Assert.Equal(273.15 - 120.5, channel.Values[10], 1e-9);
    }

    [Fact]
    public void ThousandsMayBeGrouped()
    {
        var log = "time;p\n" + string.Concat(Enumerable.Range(0, 40).Select(i => $"{Make.Iso(i)};1.{200 + i},5\n"));
        var yaml = "name: t\nroom: {pressure: 1000 mbara}\nlog: {decimal: comma}\nchannels:\n  p: {column: p, at: coil, sensor: pressure-gauge, unit: kPaa, class: 1, span: 20 bar}\n";
        Assert.Equal(1200.5e3, Make.Record(yaml, log).Channel("p")!.Values[0], 1e-6);
    }

    [Fact]
    public void TheResolutionIsThatOfTheLog()
    {
        Assert.Equal(0.01, Make.Record(TwoChannels, Table(",", ".")).Channel("t")!.ResolutionRaw, 1e-12);
        Assert.Equal(0.5, Make.Record(TwoChannels.Replace("class: 1}", "class: 1, resolution: 0.5}", StringComparison.Ordinal), Table(",", ".")).Channel("t")!.ResolutionRaw, 1e-12);
    }

    private const string TwoChannels = """
        name: test
        room: {pressure: 1000 mbara}
        log: {}
        channels:
          t: {column: T, at: coil, sensor: thermocouple-K, unit: °C, class: 1}
          u: {column: U, at: coil, end: outlet, sensor: thermocouple-K, unit: °C, class: 1}
        """;

    private static IEnumerable<(string Time, double T, double U)> Rows() => Enumerable.Range(0, 60).Select(i => (Make.Iso(15 * i), -100.25 - 0.37 * i, 20.5 + 0.13 * i));

    private static string Table(string delimiter, string sign) =>
        string.Join(delimiter, "time", "T", "U") + "\n" + string.Concat(Rows().Select(r => string.Join(delimiter, r.Time, Text(r.T, sign), Text(r.U, sign)) + "\n"));

    private static string Text(double value, string sign) => value.ToString("0.00", CultureInfo.InvariantCulture).Replace(".", sign, StringComparison.Ordinal);

    private static void Same(RunRecord record)
    {
        foreach (var name in _two)
        {
            var channel = record.Channel(name)!;
            var expected = Rows().Select(r => (name == "t" ? r.T : r.U) + 273.15).ToArray();
            Assert.Equal(expected.Length, channel.Count);
            Assert.Equal(expected.Length, channel.GoodCount);
            for (var i = 0; i < expected.Length; i++)
            {
                Assert.Equal(expected[i], channel.Values[i], 1e-9);
                Assert.Equal(15 * i, channel.TimesS[i], 1e-6);
            }
        }
    }
}
