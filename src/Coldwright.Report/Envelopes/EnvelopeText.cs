using Coldwright.Report.Terminal;

namespace Coldwright.Report.Envelopes;

/// <summary>An envelope on one screen of a terminal: the figures that matter first, then bubble and dew temperatures at round pressures.</summary>
public static class EnvelopeText
{
    private const int Columns = 88;
    private const int MostNotes = 8;

    /// <summary>The screen, ending with a line end.</summary>
    /// <param name="report">The envelope.</param>
    /// <param name="colour">True to use ANSI colours.</param>
    public static string Write(EnvelopeReport report, bool colour)
    {
        var (readout, style) = (report.Readout(typographic: false), new TerminalStyle(colour));
        List<string> lines =
        [
            .. Wrapping.Wrap($"Phase envelope, {report.Main.Model} model: {report.Mixture}", Columns).Select(style.Bold), "",
            .. Figures(report, readout, style), "", .. Table(report, readout, style), "", .. Notes(report, readout, style),
        ];
        return string.Join('\n', lines) + "\n";
    }

    private static IEnumerable<string> Figures(EnvelopeReport report, Readout readout, TerminalStyle style)
    {
        var figures = EnvelopeWords.Figures(report, readout).ToArray();
        var (names, values, seconds) = (figures.Max(f => f.Name.Length), figures.Max(f => f.Value.Length), figures.Max(f => f.Second.Length));
        if (report.Second is { } second) yield return style.Quiet($"  {"".PadRight(names)}  {report.Main.Model.PadRight(values)}   {second.Model}");
        foreach (var f in figures)
        {
            var note = report.Second is null ? f.Note : "";
            var other = report.Second is null ? "" : "   " + style.Quiet(f.Second);
            yield return $"  {f.Name.PadRight(names)}  {style.Bold(f.Value.PadRight(values))}{other}   {style.Quiet(note)}".TrimEnd();
        }
    }

    // boiling begins at the bubble temperature and is over at the dew temperature
    private static IEnumerable<string> Table(EnvelopeReport report, Readout readout, TerminalStyle style)
    {
        string Cell(double? temperatureK) => temperatureK is { } t ? $"{readout.Temperature(t),9}  {readout.TemperatureBeside(t),9}" : $"{"-",9}  {"",9}";
        string Pair(ModelEnvelope m, double p) => $"{Cell(m.Envelope.BubbleTemperatureK(p))}   {Cell(m.Envelope.DewTemperatureK(p))}";
        string Heads(string model) => $"{"bubble" + model,-20}   {"dew" + model,-20}";
        var second = report.Second;
        string Short(ModelEnvelope m, double p) => $"{OneUnit(m.Envelope.BubbleTemperatureK(p))}   {OneUnit(m.Envelope.DewTemperatureK(p))}";
        string OneUnit(double? temperatureK) => temperatureK is { } t ? $"{readout.Temperature(t),9}" : $"{"-",9}";
        yield return style.Quiet(second is null
            ? $"  {"pressure",12}   {Heads("")}".TrimEnd()
            : $"  {"pressure",12}   {"bubble",9}   {"dew",9}     {"bubble",9}   {"dew",9}   ({report.Main.Model}, {second.Model})");
        foreach (var p in report.TablePressuresPa)
        {
            var label = $"{readout.Figures(report.PressureValue(p), 3)} {report.PressureSymbol}";
            yield return (second is null ? $"  {label,12}   {Pair(report.Main, p)}" : $"  {label,12}   {Short(report.Main, p)}     {style.Quiet(Short(second, p))}").TrimEnd();
        }
    }

    private static IEnumerable<string> Notes(EnvelopeReport report, Readout readout, TerminalStyle style)
    {
        var notes = report.Main.AllNotes.Concat(report.Second is { } s ? s.AllNotes.Except(report.Main.AllNotes).Select(n => n with { Before = $"{s.Model}: {n.Before}" }) : []).Select(n => report.Say(n, readout)).ToArray();
        foreach (var note in notes.Take(MostNotes))
            foreach (var (line, i) in Wrapping.Wrap(note, Columns - 6, 3).Select((l, i) => (l, i)))
                yield return (i == 0 ? style.Warm("note") + "  " : "      ") + line;
        if (notes.Length > MostNotes) yield return style.Quiet($"      and {notes.Length - MostNotes} more: see --json");
        yield return style.Quiet("Bubble: first vapour on heating. Dew: first drop on cooling. Pressures are absolute.");
    }
}
