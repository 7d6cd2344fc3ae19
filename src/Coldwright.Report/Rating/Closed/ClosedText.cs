using Coldwright.Report.Terminal;

namespace Coldwright.Report.Rating.Closed;

/// <summary>What a closed loop adds to the screen: pressures and flow beside the file's gauges, what circulates, where the charge is, rest and start.</summary>
internal static class ClosedText
{
    private const int Most = 5;

    public static IEnumerable<string> Lines(ClosedWords words, Readout readout, TerminalStyle style, int columns)
    {
        var rows = new List<(string Name, string Text)>();
        foreach (var (name, value, beside) in words.Pressures) rows.Add((name, beside == "" ? value : $"{value}, {beside}"));
        rows.AddRange(words.Flow.Where(f => f.Name is "Flow" or "Discharge"));
        rows.Add(("Charged", string.Join(", ", words.Mixture.Select(m => $"{m.Substance} {readout.Fixed(m.Charged, 3)}"))));
        rows.Add(("Circulates", string.Join(", ", words.Mixture.Select(m => $"{m.Substance} {readout.Fixed(m.Circulating, 3)}"))));
        rows.Add(("In the loop", words.Ledger));
        if (words.Buffer is { } buffer) rows.Add(("Buffer", buffer));
        rows.Add(("Start", words.Start));
        var width = rows.Max(r => r.Name.Length);
        foreach (var (name, text) in rows)
        {
            var lines = Wrapping.Wrap(text, columns - width - 4, Most);
            for (var i = 0; i < lines.Count; i++) yield return $"  {(i == 0 ? style.Quiet(name.PadRight(width)) : new string(' ', width))}  {lines[i]}";
        }
    }
}
