using System.Globalization;

namespace Coldwright.Runs.Live;

/// <summary>Text of a new run's <c>run.yaml</c>.</summary>
public static class NewRunText
{
    private static readonly string[] _ofThatDay = ["name:", "start:", "readings:", "events:", "room:", "kind:", "test:", "log:"];

    private static readonly string[] _hint = ["# What you did and when: take the # away.", "# events:", "#   - {time: \"09:20\", what: start, at: compressor}"];
    private static readonly string _events = string.Join('\n', _hint) + "\n";

    /// <summary>With the channels of an earlier run; without one, with a channel to fill in.</summary>
    /// <param name="name">Name of the run.</param>
    /// <param name="start">When it began.</param>
    /// <param name="earlier">Text of the earlier run's file; null for none.</param>
    /// <param name="column">Column of the channel to fill in.</param>
    public static string Of(string name, DateTime start, string? earlier, string column = "c1")
    {
        string head = $"name: {Quoted(name)}\nstart: {start.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)}\nlog: {{file: log.csv}}\n";
        if (earlier is null)
            return head + $$"""

                # One channel for each column of log.csv that is a sensor: where it sits, what it is, its unit.
                channels:
                  vessel: {column: {{column}}, at: vessel, end: surface, sensor: thermocouple-K, unit: °C, class: 1}


                """.ReplaceLineEndings("\n") + _events;
        var kept = new List<string>();
        bool keep = false;
        foreach (string line in earlier.ReplaceLineEndings("\n").Split('\n'))
        {
            bool key = line.Length > 0 && !char.IsWhiteSpace(line[0]) && line[0] is not ('#' or '-');
            if (key) keep = !_ofThatDay.Any(k => line.StartsWith(k, StringComparison.Ordinal));
            if (keep && !_hint.Contains(line)) kept.Add(line);
        }
        return head + "\n" + string.Join('\n', kept).Trim('\n') + "\n\n" + _events;
    }

    // letters, digits, blanks and dashes mean themselves in YAML
    private static string Quoted(string name) => name.All(c => char.IsLetterOrDigit(c) || c is ' ' or '_' or '-') && char.IsLetterOrDigit(name[0]) ? name : $"\"{name.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";
}
