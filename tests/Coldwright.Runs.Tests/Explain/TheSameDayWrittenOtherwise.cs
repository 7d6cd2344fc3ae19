using System.Globalization;
using Coldwright.Blind;
using Coldwright.Runs.Explain;
using Xunit;

namespace Coldwright.Runs.Tests.Explain;

/// <summary>One day of another hand's machine, written as other people write: notes that are missing or wrong, rows that are missing or the other way round. What is named, and how much of it, stays the same.</summary>
[Collection(BlindCollection.Name)]
public sealed class TheSameDayWrittenOtherwise(BlindRuns blind)
{
    private const double Size = 0.33;
    private static readonly Lazy<(string Run, string Log)> _day = new(() => LogWriter.Write(CaseMaker.Of(1, BlindCases.With(("exchanger", Size))), SensorSet.Usual, 1));

    private static string Rows(string log, Func<string[], int, string[]?> row) =>
        string.Join('\n', log.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select((line, i) => i == 0 ? line : row(line.Split(','), i) is { } cells ? string.Join(',', cells) : null).OfType<string>()) + "\n";

    private static string Without(string run, string line) => string.Join('\n', run.Split('\n').Where(l => !l.Contains(line, StringComparison.Ordinal)));

    private static readonly Dictionary<string, Func<(string Run, string Log), (string, string)>> _ways = new()
    {
        ["nothing noted"] = d => (d.Run[..d.Run.IndexOf("events:", StringComparison.Ordinal)], d.Log),
        ["stop not noted"] = d => (Without(d.Run, "what: stop"), d.Log),
        ["start noted five minutes late"] = d => (d.Run.Replace("08:05:00\", what: start", "08:10:00\", what: start", StringComparison.Ordinal), d.Log),
        ["logger switched on twenty minutes late"] = d => (d.Run, Rows(d.Log, (c, i) => i > 125 ? c : null)),
        ["newest row first"] = d => (d.Run, string.Join('\n', d.Log.Split('\n', StringSplitOptions.RemoveEmptyEntries) is var r ? [r[0], .. r[1..].Reverse()] : Array.Empty<string>()) + "\n"),
        ["once in five minutes"] = d => (d.Run, Rows(d.Log, (c, i) => i % 25 == 1 ? c : null)),
        ["an hour missing"] = d => (d.Run, Rows(d.Log, (c, i) => i is > 500 and < 800 ? null : c)),
        ["no pressures"] = d => (Without(d.Run, "pressure-gauge"), d.Log),
        ["no electricity"] = d => (Without(d.Run, "power-meter"), d.Log),
        ["pressures in pounds"] = d => (d.Run.Replace("unit: barg", "unit: psig", StringComparison.Ordinal), Rows(d.Log, (c, _) => [c[0], c[1], Pounds(c[2]), Pounds(c[3]), .. c[4..]])),
        ["room noted three kelvin warmer"] = d => (d.Run.Replace("temperature: 20 °C", "temperature: 23 °C", StringComparison.Ordinal), d.Log),
    };

    private static string Pounds(string bar) => (double.Parse(bar, CultureInfo.InvariantCulture) * 14.5038).ToString("0.0", CultureInfo.InvariantCulture);

    public static TheoryData<string> Ways => [.. _ways.Keys];

    [Theory]
    [MemberData(nameof(Ways))]
    public void TheSameIsNamed(string way)
    {
        var e = blind.Explain(_ways[way](_day.Value), SensorSet.Usual);
        Assert.Equal(["exchanger"], e.Causes.Where(c => c.Named).Select(c => c.Id));
        Assert.InRange(e.Misfit, 0, 2);
        // the films are drawn at 1.12 and 0.9 of the generator's own, its own being other correlations than ours
        Assert.True(e.Causes[0].Low < Size * 1.12 && e.Causes[0].High > Size * 0.9, FormattableString.Invariant($"{e.Causes[0].Low:0.00} to {e.Causes[0].High:0.00}"));
    }

    [Fact]
    public void AnEventThatTheLogContradictsIsOverruledInWords()
    {
        var e = blind.Explain(_ways["start noted five minutes late"](_day.Value), SensorSet.Usual);
        Assert.Contains(e.Said, s => s.Contains("was noted 5 min after the log shows it", StringComparison.Ordinal));
    }

    /// <summary>Both pressures exchanged: no fault does that, and the answer says that the record does not fit, instead of naming something with certainty.</summary>
    [Fact]
    public void WhatDoesNotFitTheModelIsCalledSo()
    {
        var d = _day.Value;
        var odd = (d.Run, Rows(d.Log, (c, _) => [c[0], c[1], c[3], c[2], .. c[4..]]));
        var e = blind.Explain(odd, SensorSet.Usual);
        Assert.True(e.Misfit > 3, e.Misfit.ToString(CultureInfo.InvariantCulture));
        Assert.Contains("does not fit the model", e.Paragraph.ToString(), StringComparison.Ordinal);
    }
}
