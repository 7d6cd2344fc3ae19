using System.Globalization;
using Coldwright.Blind;
using Coldwright.Runs.Explain;
using Xunit;

namespace Coldwright.Runs.Tests.Explain;

/// <summary>
/// A sound machine of another hand, recorded poorly: the less a record shows, the more of it is the constant by which our model's sound machine differs from another's, and the less may be named. Nothing is named,
/// or a best guess that does not claim even odds and has <c>none</c> beside it.
/// </summary>
[Collection(BlindCollection.Name)]
public sealed class PoorRecords(BlindRuns blind)
{
    private const int RestRows = 26, StopRow = 2225;
    private static readonly Lazy<BlindCase> _sound = new(() => CaseMaker.Of(1, BlindCases.With()));

    private static (string Run, string Log) Written(SensorSet set) => LogWriter.Write(_sound.Value, set, 1);

    private static string Rows(string log, Func<int, bool> kept) => string.Join('\n', log.Split('\n', StringSplitOptions.RemoveEmptyEntries).Where((_, i) => i == 0 || kept(i))) + "\n";

    private static string Without(string run, string line) => string.Join('\n', run.Split('\n').Where(l => !l.Contains(line, StringComparison.Ordinal)));

    private static string VesselAlone(string run) => string.Join('\n', run.Split('\n').Where(l => !l.Contains("column: ", StringComparison.Ordinal) || l.Contains("column: vessel,", StringComparison.Ordinal)));

    private static string NoEvents(string run) => run[..run.IndexOf("events:", StringComparison.Ordinal)];

    // every note of the day on a watch that is behind the logger's clock
    private static string OnAnotherWatch(string run, double minutes) => string.Join('\n', run.Split('\n').Select(l => l.Contains("what: ", StringComparison.Ordinal)
        ? l[..12] + TimeSpan.Parse(l[12..20], CultureInfo.InvariantCulture).Subtract(TimeSpan.FromMinutes(minutes)).ToString("hh\\:mm\\:ss", CultureInfo.InvariantCulture) + l[20..] : l));

    private static readonly Dictionary<string, (SensorSet Set, Func<string, string, (string, string)> Way)> _ways = new()
    {
        ["vessel alone"] = (SensorSet.Usual, (r, l) => (VesselAlone(r), l)),
        ["vessel alone, nothing noted"] = (SensorSet.Usual, (r, l) => (NoEvents(VesselAlone(r)), l)),
        ["vessel alone, no warm-up"] = (SensorSet.Usual, (r, l) => (VesselAlone(r), Rows(l, i => i < StopRow))),
        ["vessel alone, neither rest nor warm-up"] = (SensorSet.Usual, (r, l) => (VesselAlone(r), Rows(l, i => i is > RestRows and < StopRow))),
        ["neither rest nor warm-up"] = (SensorSet.Usual, (r, l) => (r, Rows(l, i => i is > RestRows and < StopRow))),
        ["begins ten minutes late, start not noted"] = (SensorSet.Usual, (r, l) => (Without(r, "what: start"), Rows(l, i => i > 75))),
        ["begins twenty minutes late, start not noted"] = (SensorSet.Usual, (r, l) => (Without(r, "what: start"), Rows(l, i => i > 125))),
        ["begins an hour late, start not noted"] = (SensorSet.Usual, (r, l) => (Without(r, "what: start"), Rows(l, i => i > 325))),
        ["vessel alone, begins late, start not noted"] = (SensorSet.Usual, (r, l) => (Without(VesselAlone(r), "what: start"), Rows(l, i => i > 125))),
        ["room noted four kelvin warmer"] = (SensorSet.Usual, (r, l) => (r.Replace("temperature: 20 °C", "temperature: 24 °C", StringComparison.Ordinal), l)),
        ["room not noted"] = (SensorSet.Usual, (r, l) => (Without(r, "room:"), l)),
        ["flask not weighed"] = (SensorSet.Usual, (r, l) => (Without(r, "weighed"), l)),
        ["three hours"] = (SensorSet.Usual, (r, l) => (r, Rows(l, i => i < 925))),
        ["an hour of it missing"] = (SensorSet.Usual, (r, l) => (r, Rows(l, i => i is < 300 or > 600))),
        ["by hand"] = (SensorSet.Bare, (r, l) => (r, l)),
    };

    public static TheoryData<string> Ways => [.. _ways.Keys];

    [Theory]
    [MemberData(nameof(Ways))]
    public void ASoundMachineIsNotGivenAFaultWithConfidence(string way)
    {
        var (set, written) = _ways[way];
        var (run, log) = Written(set);
        var e = blind.Explain(written(run, log), set);
        string said = string.Join(", ", e.Causes.Take(4).Select(c => FormattableString.Invariant($"{(c.Named ? "*" : "")}{c.Id} {c.Value:0.00} p{c.Probability:0.00}"))) + FormattableString.Invariant($", misfit {e.Misfit:0.00}");
        Assert.True(e.Causes[0].Id == "none" || e.Causes.Where(c => c.Named).All(c => c.Probability < 0.5) && e.Indistinguishable.Any(g => g.Contains("none")), said);
        Assert.True(e.Misfit < 2, said);
    }

    /// <summary>Start and stop noted as early as one another: the watch was behind, and every note is moved.</summary>
    [Fact]
    public void AWatchThatIsBehindTheLoggerIsSeen()
    {
        var (run, log) = Written(SensorSet.Usual);
        var e = blind.Explain((OnAnotherWatch(run, 5), log), SensorSet.Usual);
        Assert.Contains(e.Said, s => s.Contains("clock differ by", StringComparison.Ordinal));
        Assert.Equal("none", e.Causes[0].Id);
        var stop = Assert.Single(e.Phases, p => p.Kind == "warm-up");
        Assert.InRange(stop.FromS, 300 + 26400 - 120, 300 + 26400 + 120);
    }

    /// <summary>A drain whose opening was noted four minutes late: the fall of the vessel's pressure shows when it was open, and what is read is what stood before.</summary>
    [Fact]
    public void ADrainIsOpenWhenThePressureFalls()
    {
        var (run, log) = Written(SensorSet.Full);
        int at = run.IndexOf("what: valve-open", StringComparison.Ordinal) - 11;
        string late = run[..at] + TimeSpan.Parse(run[at..(at + 8)], CultureInfo.InvariantCulture).Add(TimeSpan.FromMinutes(4)).ToString("hh\\:mm\\:ss", CultureInfo.InvariantCulture) + run[(at + 8)..];
        double Excess(string text) => Assert.Single(blind.Explain((text, log), SensorSet.Full).Figures, f => f.Feature is { Kind: FeatureKind.Batch, At: 3 }).Measured;
        Assert.Equal(Excess(run), Excess(late), 0.05);
    }
}
