namespace Coldwright.Report.Terminal;

/// <summary>Text broken at blanks.</summary>
internal static class Wrapping
{
    /// <summary>Lines no wider than <paramref name="width"/>; a longer word stands alone and is cut. What does not fit in <paramref name="most"/> lines ends in an ellipsis.</summary>
    public static IReadOnlyList<string> Wrap(string text, int width, int most = int.MaxValue)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in Words(text))
        {
            var cut = word.Length > width ? word[..(width - 1)] + "…" : word;
            if (line.Length > 0 && line.Length + 1 + cut.Length > width)
            {
                lines.Add(line);
                line = cut;
            }
            else
            {
                line = line.Length == 0 ? cut : $"{line} {cut}";
            }
        }
        if (line.Length > 0) lines.Add(line);
        if (lines.Count <= most) return lines;
        var last = lines[most - 1];
        while (last.Length > width - 2 && last.Contains(' ')) last = last[..last.LastIndexOf(' ')];
        return [.. lines.Take(most - 1), last + " …"];
    }

    // A number keeps its unit beside it.
    private static IEnumerable<string> Words(string text)
    {
        var words = text.Split([' ', '\n', '\r', '\t'], StringSplitOptions.RemoveEmptyEntries);
        for (var i = 0; i < words.Length; i++)
        {
            if (i + 1 < words.Length && char.IsAsciiDigit(words[i][^1]) && Units.Contains(words[i + 1].TrimEnd('.', ',', ';', ':', ')')))
                yield return $"{words[i]} {words[++i]}";
            else
                yield return words[i];
        }
    }

    private static readonly string[] Units = ["W", "mW", "kW", "K", "°C", "°F", "%", "L/h", "kWh/L", "bar", "psig", "psia", "kg", "g", "g/s", "J/mol", "W/K", "Pa"];

    /// <summary>One line, cut at a word.</summary>
    public static string OneLine(string text, int width) => Wrap(text, width, 1) is { Count: > 0 } lines ? lines[0] : "";
}
