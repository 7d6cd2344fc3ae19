using Coldwright.Report.Safety;
using Coldwright.Report.Terminal;
using Coldwright.Runs.Record;
using Coldwright.Runs.Tightness;

namespace Coldwright.Report.Runs;

/// <summary>An imported run in a terminal: lines of at most 88 columns.</summary>
public static class RunText
{
    /// <summary>Most columns of a line.</summary>
    public const int Columns = 88;

    private const int Margin = 9;
    private const int MostFaults = 30;
    private const int Fields = 7;

    /// <summary>The text, ending with a line end.</summary>
    /// <param name="report">What was imported.</param>
    /// <param name="colour">True to use ANSI colours.</param>
    public static string Write(RunReport report, bool colour)
    {
        var (record, units, style) = (report.Record, new RunUnits(report, typographic: false), new TerminalStyle(colour));
        var lines = new List<string>(GraveLines.Of(report.Findings, units.Readout, colour));
        if (lines.Count > 0) lines.Add("");
        lines.Add(style.Bold(Wrapping.OneLine(report.Title, Columns)));
        Paragraph(lines, RunWords.Extent(report, units), style.Quiet);
        Paragraph(lines, RunWords.Log(record), style.Quiet);
        lines.Add("");
        if (RunWords.Verdict(report, units) is { Length: > 0 } verdict)
        {
            Paragraph(lines, verdict, report.IsNo ? style.Alarm : style.Bold);
            lines.Add("");
        }
        if (report.Answer.Leak is { } leak) Leak(lines, report, leak, units, style);
        if (report.Answer.Proof is { } proof) Rows(lines, RunWords.Proof(proof, units), style);
        Channels(lines, record, units, style);
        Faults(lines, record, units, style);
        if (record.Events.Count > 0)
        {
            lines.Add("");
            lines.Add(style.Bold("Events"));
            foreach (var e in record.Events) Item(lines, units.Moment(e.TimeS).PadRight(Margin) + " ", RunWords.Event(e, units));
        }
        var notes = RunWords.Notes(report).Select(units.Readout.Say).ToArray();
        if (notes.Length > 0) lines.Add("");
        foreach (var note in notes) Item(lines, style.Warm("note") + "     ", note, Margin);
        return string.Join('\n', lines) + "\n";
    }

    private static void Leak(List<string> lines, RunReport report, LeakTestResult leak, RunUnits units, TerminalStyle style)
    {
        Rows(lines, RunWords.Leak(leak, units), style);
        if (leak.Charge.Count == 0) return;
        lines.Add(style.Bold("For the charge at standstill, by how gas may flow through the leak (bounds)"));
        foreach (var row in RunWords.ChargeRows(leak, units))
            Item(lines, $"  {row[0],-10} ", $"{row[1]} a year, a tenth gone {row[2]}; " + (row[4].Length == 0 ? "the mixture stays as it is" : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"some mole fraction off by {report.Record.Test!.ChargeShift:0.###} {row[3]}, {row[4]}")), 13);
        lines.Add("");
    }

    private static void Rows(List<string> lines, IEnumerable<(string Name, string Value, string Note)> rows, TerminalStyle style)
    {
        foreach (var (name, value, note) in rows)
        {
            var line = $"  {name,-28}{value}";
            if (note.Length == 0) lines.Add(line);
            else if (line.Length + 3 + note.Length <= Columns) lines.Add($"{line}   {style.Quiet(note)}");
            else
            {
                lines.Add(line);
                foreach (var more in Wrapping.Wrap(note, Columns - 30)) lines.Add(new string(' ', 30) + style.Quiet(more));
            }
        }
        lines.Add("");
    }

    private static void Channels(List<string> lines, RunRecord record, RunUnits units, TerminalStyle style)
    {
        var rows = record.Channels.Select(c =>
        {
            var (low, high) = RunWords.Uncertainty(c, units);
            return c.GoodCount == 0
                ? new[] { c.Name, c.Place.ToString(), ShortSensor(c), "no good sample", "", "", "" }
                : [c.Name, c.Place.ToString(), ShortSensor(c), units.Value(c.Measured, c.Lowest), "± " + low, units.Value(c.Measured, c.Highest), "± " + high];
        }).Prepend(["channel", "where", "sensor", "lowest", "", "highest", ""]).ToArray();
        var widths = Enumerable.Range(0, Fields).Select(i => rows.Max(r => r[i].Length)).ToArray();
        // The place gives way first, then the name: the numbers never do.
        foreach (var (field, least) in new[] { (1, 10), (0, 10), (1, 4), (0, 4) })
            widths[field] = Math.Max(Math.Min(least, widths[field]), widths[field] - Math.Max(0, widths.Sum() + 2 * (Fields - 1) - Columns));
        foreach (var (row, index) in rows.Select((r, i) => (r, i)))
        {
            var line = string.Join("  ", row.Select((t, i) => i is 3 or 5 ? t.PadLeft(widths[i]) : Cut(t, widths[i]).PadRight(widths[i]))).TrimEnd();
            lines.Add(index == 0 ? style.Quiet(line) : line);
        }
        lines.Add(style.Quiet("± is one standard deviation: class, cold junction, barometer, logger's step, scatter."));
    }

    private static string ShortSensor(RunChannel c) => c.Sensor.Kind.Word.Replace("thermocouple-", "type ", StringComparison.Ordinal).Replace("pressure-gauge", "gauge", StringComparison.Ordinal).Replace("-meter", "", StringComparison.Ordinal);

    private static void Faults(List<string> lines, RunRecord record, RunUnits units, TerminalStyle style)
    {
        if (record.Log is null) return;
        lines.Add("");
        lines.Add(style.Bold(record.Faults.Count == 0 ? "Nothing wrong was found in the log." : "Found in the log, which stays as it is"));
        foreach (var f in record.Faults.Take(MostFaults))
            Item(lines, units.Moment(f.FromS).PadRight(Margin) + " ", f.Line > 0 ? $"{f.Text} (line {f.Line})" : f.Text);
        if (record.Faults.Count > MostFaults) lines.Add(style.Quiet($"and {record.Faults.Count - MostFaults} more; --report and --json list them"));
    }

    private static void Paragraph(List<string> lines, string text, Func<string, string> look) => lines.AddRange(Wrapping.Wrap(text, Columns).Select(look));

    private static void Item(List<string> lines, string margin, string text, int width = -1)
    {
        var indent = width < 0 ? margin.Length : width;
        lines.AddRange(Wrapping.Wrap(text, Columns - indent).Select((line, i) => (i == 0 ? margin : new string(' ', indent)) + line));
    }

    private static string Cut(string text, int width) => text.Length <= width ? text : text[..(width - 1)] + "…";
}
