using System.Globalization;
using System.Text;
using Coldwright.Runs.Record;

namespace Coldwright.Runs.Tests;

/// <summary>Runs made up for a test.</summary>
internal static class Make
{
    /// <summary>A description with one channel <c>t</c> (type K in °C) read from column T.</summary>
    public const string OneChannel = """
        name: test
        start: 2026-03-14
        room: {temperature: 20 °C, pressure: 1000 mbara}
        log: {}
        channels:
          t: {column: T, at: coil, sensor: thermocouple-K, unit: °C, class: 1}
        """;

    /// <summary>The record; fails with its problems when there are any.</summary>
    public static RunRecord Record(string yaml, string log, Encoding? encoding = null)
    {
        var folder = RunImporter.ReadTexts(yaml, (encoding ?? new UTF8Encoding(false)).GetBytes(log), TestContext.Current.CancellationToken);
        Assert.True(folder.Record is not null, string.Join('\n', folder.Problems));
        return folder.Record;
    }

    /// <summary>The problems of a run that must have some.</summary>
    public static string Problems(string yaml, string? log = null)
    {
        var folder = RunImporter.ReadTexts(yaml, log is null ? null : Encoding.UTF8.GetBytes(log), TestContext.Current.CancellationToken);
        Assert.Null(folder.Record);
        return string.Join('\n', folder.Problems);
    }

    /// <summary>A log of rows <c>time,value</c> under the heading <c>time,T</c>.</summary>
    public static string Log(IEnumerable<(string Time, double Value)> rows) => "time,T\n" + string.Concat(rows.Select(r => string.Create(CultureInfo.InvariantCulture, $"{r.Time},{r.Value:0.00}\n")));

    /// <summary>Seeded scatter, normal, one standard deviation.</summary>
    public static Func<double> Noise(int seed, double sigma)
    {
        var random = new Random(seed);
        return () => sigma * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
    }

    /// <summary>2026-03-14 09:00:00 plus seconds, as ISO 8601 writes it.</summary>
    public static string Iso(double s) => new DateTime(2026, 3, 14, 9, 0, 0).AddSeconds(s).ToString("yyyy-MM-ddTHH:mm:ss", CultureInfo.InvariantCulture);
}
