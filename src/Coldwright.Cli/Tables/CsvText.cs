using System.Text;

namespace Coldwright.Cli.Tables;

/// <summary>Comma-separated text as RFC 4180 describes it: quotes around cells with commas, quotes or line ends; doubled quotes inside.</summary>
internal static class CsvText
{
    /// <summary>Reads the records; an empty line is skipped.</summary>
    /// <param name="reader">The text.</param>
    /// <param name="file">Name used in messages.</param>
    /// <returns>Each record with the line it starts on, from 1.</returns>
    /// <exception cref="InputException">A quote is not closed, or a cell is longer than the limit.</exception>
    public static IEnumerable<(int Line, IReadOnlyList<string> Cells)> Read(TextReader reader, string file)
    {
        var line = 0;
        while (reader.ReadLine() is { } text)
        {
            line++;
            var start = line;
            // A quoted cell may hold line ends: lines are joined until the quotes close.
            while (text.Count(c => c == '"') % 2 == 1)
            {
                var more = text.Length > LongestRecord ? null : reader.ReadLine();
                if (more is null) throw new InputException(file, $"line {start}: a quote is opened and not closed");
                line++;
                text += "\n" + more;
            }
            if (text.Trim().Length > 0) yield return (start, Cells(text));
        }
    }

    // One state is a few hundred characters; this is where a wrecked file is told from a table.
    private const int LongestRecord = 100_000;

    private static List<string> Cells(string record)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        var quoted = false;
        for (var i = 0; i < record.Length; i++)
        {
            var c = record[i];
            if (c == '"' && quoted && i + 1 < record.Length && record[i + 1] == '"') cell.Append(record[++i]);
            else if (c == '"') quoted = !quoted;
            else if (c == ',' && !quoted) EndCell();
            else cell.Append(c);
        }
        EndCell();
        return cells;

        void EndCell()
        {
            cells.Add(cell.ToString().Trim());
            cell.Clear();
        }
    }

    /// <summary>One record without its line end.</summary>
    public static string Record(IEnumerable<string> cells) => string.Join(',', cells.Select(Cell));

    private static string Cell(string text) => text.AsSpan().IndexOfAny(",\"\n\r") < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
