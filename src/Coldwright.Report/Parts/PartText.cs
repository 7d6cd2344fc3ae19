using Coldwright.Report.Rating;
using Coldwright.Report.Safety;
using Coldwright.Report.Terminal;
using Coldwright.Safety;
using Coldwright.Simulation.Parts;

namespace Coldwright.Report.Parts;

/// <summary>A part's rating in a terminal: lines of at most 88 columns.</summary>
public static class PartText
{
    /// <summary>Most columns of a line.</summary>
    public const int Columns = 88;

    private const int Margin = 9;

    /// <summary>The text, ending with a line end.</summary>
    /// <param name="report">What was rated.</param>
    /// <param name="colour">True to use ANSI colours.</param>
    public static string Write(PartReport report, bool colour)
    {
        var (units, style, rating) = (report.PartUnits(typographic: false), new TerminalStyle(colour), report.Rating);
        var lines = new List<string>(GraveLines.Of(report.Findings, units.Readout, colour, Columns, wrap: 4));
        if (lines.Count > 0) lines.Add("");
        lines.Add(style.Bold(Wrapping.OneLine($"{report.Title} alone, {rating.FluidModel} model", Columns)));
        lines.AddRange(Wrapping.Wrap($"By {rating.Method}. {PartFigures.Point(rating.Point, units)}", Columns).Select(l => style.Quiet(l)));
        lines.Add("");
        lines.AddRange(Wrapping.Wrap(rating.Verdict, Columns).Select(l => rating.BreaksLimit ? style.Alarm(l) : style.Bold(l)));
        foreach (var section in rating.Sections) Section(lines, section, units, style);
        Limits(lines, rating, units, style);
        lines.Add("");
        foreach (var (name, error) in rating.Balances) lines.Add(style.Quiet(Wrapping.OneLine($"Closes to {units.Readout.Error(error)}: {name}.", Columns)));
        if (rating.Sections.Any(s => s.Figures.Any(f => f.Band is not null))) lines.Add(style.Quiet("In brackets: the band of the model, one standard deviation unless said otherwise."));
        foreach (var warning in rating.Warnings) Item(lines, style.Warm("note") + "     ", units.Readout.Say(warning));
        foreach (var source in rating.Sources) Item(lines, style.Quiet("source") + "   ", source);
        lines.Add(Wrapping.OneLine($"{RatingHeadline.Capital(Cautions.LocalCodes.Rule)}.", Columns));
        return string.Join('\n', lines) + "\n";
    }

    private static void Section(List<string> lines, PartSection section, PartUnits units, TerminalStyle style)
    {
        lines.Add("");
        lines.Add(style.Bold(section.Title));
        var rows = PartFigures.Rows(section, units);
        if (rows.Count > 0)
        {
            int names = Math.Min(rows.Max(r => r.Name.Length), 46);
            foreach (var row in rows)
            {
                var band = row.Band == "" ? "" : $" [{row.Band}]";
                var head = $"  {Cut(row.Name, names).PadRight(names)}  {style.Bold(row.Value)}{style.Quiet(band)}";
                int used = 4 + names + row.Value.Length + band.Length, room = Columns - used - 2;
                if (row.Note == "") lines.Add(head);
                else if (row.Note.Length <= room) lines.Add($"{head}  {style.Quiet(row.Note)}");
                else
                {
                    lines.Add(head);
                    foreach (var line in Wrapping.Wrap(row.Note, Columns - 4 - names)) lines.Add(new string(' ', 4 + names) + style.Quiet(line));
                }
            }
        }
        foreach (var note in section.Notes)
            foreach (var (line, i) in Wrapping.Wrap(note, Columns - 4).Select((l, i) => (l, i))) lines.Add(style.Quiet((i == 0 ? "  - " : "    ") + line));
    }

    private static void Limits(List<string> lines, PartRating rating, PartUnits units, TerminalStyle style)
    {
        if (rating.Limits.Count == 0) return;
        lines.Add("");
        lines.Add(style.Bold("Limits"));
        int names = rating.Limits.Max(l => l.What.Length);
        foreach (var l in rating.Limits)
        {
            var (value, limit) = units.Texts(l);
            var text = $"  {l.What.PadRight(names)}  {value} of {limit}{(l.Broken ? "  BROKEN" : "")}";
            lines.Add(l.Broken ? style.Alarm(text) : text);
        }
    }

    private static void Item(List<string> lines, string margin, string text) =>
        lines.AddRange(Wrapping.Wrap(text, Columns - Margin).Select((line, i) => (i == 0 ? margin : new string(' ', Margin)) + line));

    private static string Cut(string text, int width) => text.Length <= width ? text : text[..(width - 1)] + "…";
}
