using System.Globalization;
using System.Text;
using Coldwright.Blind;
using Coldwright.Blind.Physics;
using Coldwright.Numerics;
using Coldwright.Runs.Explain;

namespace Coldwright.Runs.Tests.Explain;

/// <summary>Logs as they should not be, through the whole of <c>explain</c>: an answer, or a refusal in words; never a figure that is none.</summary>
[Collection(BlindCollection.Name)]
public sealed class BadLogs(BlindRuns blind)
{
    private static readonly Lazy<(string Run, string Log)> _good = new(() => LogWriter.Write(CaseMaker.Of(1, new Truth { Faults = [] }), SensorSet.Usual, 1));

    private static void Sane(Explanation e)
    {
        Assert.All(e.Causes, c => Assert.True(double.IsFinite(c.Value) && double.IsFinite(c.Low) && double.IsFinite(c.High) && c.Low <= c.High && c.Probability is >= 0 and <= 1, c.Id));
        Assert.All(e.Figures, f => Assert.True(double.IsFinite(f.Measured) && double.IsFinite(f.Fitted) && f.Uncertainty > 0, f.Feature.Id));
        Assert.True(double.IsFinite(e.Misfit));
        Assert.False(e.Paragraph.IsEmpty);
    }

    [Fact]
    public void ALogCutOffInTheMiddleOfALineIsExplainedAsFarAsItGoes()
    {
        var (run, log) = _good.Value;
        var e = blind.Explain((run, log[..(int)(0.4 * log.Length)]), SensorSet.Usual);
        Sane(e);
        Assert.DoesNotContain("warm-up", e.Phases.Select(p => p.Kind));
    }

    [Fact]
    public void ABinaryFileHasNoRecordAndSaysWhy()
    {
        var bytes = new byte[200_000];
        new Random(5).NextBytes(bytes);
        var read = RunImporter.ReadTexts(_good.Value.Run, bytes, TestContext.Current.CancellationToken);
        Assert.Null(read.Record);
        Assert.NotEmpty(read.Problems);
    }

    [Fact]
    public void TwoMillionLinesAreThinnedAndExplained()
    {
        // the same day read sixty times a second on two channels, noise and all
        var (run, log) = _good.Value;
        string[] rows = log.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        const int copies = 800;
        var text = new StringBuilder("s,vessel,high\n");
        var noise = new Random(3);
        for (int i = 1; i < rows.Length; i++)
        {
            string[] cells = rows[i].Split(',');
            double vessel = double.Parse(cells[1], CultureInfo.InvariantCulture), high = double.Parse(cells[2], CultureInfo.InvariantCulture);
            for (int k = 0; k < copies; k++) text.Append(CultureInfo.InvariantCulture, $"{(i - 1) * 12 + 12.0 * k / copies:0.000},{vessel + 0.1 * noise.NextDouble():0.00},{high:0.00}\n");
        }
        int lines = (rows.Length - 1) * copies;
        Assert.True(lines > 2_000_000);
        int channels = run.IndexOf("channels:", StringComparison.Ordinal), events = run.IndexOf("events:", StringComparison.Ordinal);
        string[] kept = [.. run[channels..events].Split('\n').Where(l => l.Contains("column: vessel,", StringComparison.Ordinal) || l.Contains("column: high,", StringComparison.Ordinal))];
        Assert.Equal(2, kept.Length);
        string lean = run[..channels].Replace("start: 2026-05-02 08:00", "start: 2026-05-02 08:00:00", StringComparison.Ordinal) + "channels:\n" + string.Join('\n', kept) + "\n" + run[events..];
        Sane(blind.Explain((lean, text.ToString()), SensorSet.Usual));
    }

    [Fact]
    public void AVesselThatNeverCoolsWhileAllElseDoesIsNoReasonForAWrongFigure()
    {
        var (run, log) = _good.Value;
        string[] rows = log.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        string stuck = string.Join('\n', rows.Select((r, i) => i == 0 ? r : string.Join(',', r.Split(',').Select((cell, c) => c == 1 ? (20 + 0.1 * (i % 3)).ToString("0.0", CultureInfo.InvariantCulture) : cell)))) + "\n";
        Sane(blind.Explain((run, stuck), SensorSet.Usual));
    }

    [Fact]
    public void EventsThatContradictTheClockAreRefusedInWords()
    {
        var (run, log) = _good.Value;
        // stopped before it was started: the warm-up would be a pull-down
        string odd = run.Replace("what: stop", "what: begin", StringComparison.Ordinal).Replace("what: start", "what: stop", StringComparison.Ordinal).Replace("what: begin", "what: start", StringComparison.Ordinal);
        var e = Assert.Throws<SolveException>(() => Sane(blind.Explain((odd, log), SensorSet.Usual)));
        Assert.Contains("contradict one another", e.Report.Advice, StringComparison.Ordinal);
    }

    /// <summary>The heat of the pull-down: what the gas carries off came out of metal, insulation and room; the course's own balance closes to a per cent.</summary>
    [Fact]
    public void TheHeatOfThePullDownAddsUp()
    {
        var terms = HeatLedger.Of(blind.Runs.Plain, BlindMarch.FeedOnS);
        Assert.Equal(terms[0].Joules, terms.Skip(1).Sum(t => t.Joules), 0.01 * terms[0].Joules);
        // copper from 293 to 113 K gives up 63 kJ/kg: NIST's cryogenic specific heat, integrated, from memory to 3 %
        Assert.InRange(terms.First(t => t.Id == "load").Joules / 1.52 / 63e3, 0.9, 1.25);
    }
}
