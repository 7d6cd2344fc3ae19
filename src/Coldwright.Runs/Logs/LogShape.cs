namespace Coldwright.Runs.Logs;

/// <summary>How a log is laid out.</summary>
internal sealed record LogShape
{
    /// <summary>Byte between cells; a blank stands for runs of blanks.</summary>
    public required byte Delimiter { get; init; }
    /// <summary>True when a comma is the decimal sign.</summary>
    public required bool DecimalComma { get; init; }
    /// <summary>Headings; empty when the log has none.</summary>
    public required IReadOnlyList<string> Headings { get; init; }
    /// <summary>A second row of headings, such as units; empty when there is none.</summary>
    public required IReadOnlyList<string> Units { get; init; }
    /// <summary>How many columns the data have.</summary>
    public required int Columns { get; init; }
    /// <summary>Where the first row of data begins.</summary>
    public required int DataOffset { get; init; }
    /// <summary>Its line, from 1.</summary>
    public required int DataLine { get; init; }

    /// <summary>The delimiter in words.</summary>
    public string DelimiterWord => Delimiter switch
    {
        (byte)',' => "comma",
        (byte)';' => "semicolon",
        (byte)'\t' => "tab",
        (byte)'|' => "bar",
        _ => "space",
    };

    /// <summary>Name of a column: its heading, or its number.</summary>
    public string NameOf(int column) => column < Headings.Count && Headings[column].Length > 0 ? Headings[column] : $"column {column + 1}";

    /// <summary>Index of a column given by heading or by number from 1; -1 when there is none, with the nearest headings.</summary>
    public int Find(string name)
    {
        for (var i = 0; i < Headings.Count; i++)
            if (Headings[i] == name) return i;
        var bare = Bare(name);
        for (var i = 0; i < Headings.Count; i++)
            if (string.Equals(Bare(Headings[i]), bare, StringComparison.OrdinalIgnoreCase)) return i;
        return int.TryParse(name, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var number) && number >= 1 && number <= Columns ? number - 1 : -1;
    }

    // "T1 [°C]" is found as "T1".
    private static string Bare(string heading)
    {
        var cut = heading.IndexOfAny(['[', '(']);
        return (cut > 0 ? heading[..cut] : heading).Trim();
    }
}
