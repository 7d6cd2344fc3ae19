using System.Globalization;
using System.Text;
using Coldwright.Quantities;

namespace Coldwright.Cli.Tables;

/// <summary>Reads and checks a table of states before anything is computed.</summary>
internal static class TableReader
{
    /// <summary>Largest table, bytes: some 300,000 states.</summary>
    public const long LargestBytes = 50_000_000;

    /// <summary>The header and the rows; every problem (up to a number) is told at once.</summary>
    /// <exception cref="InputException">The table cannot be used.</exception>
    public static (IReadOnlyList<string> Header, IReadOnlyList<StateRow> Rows) Read(string path, bool byMass, int mostProblems)
    {
        if (Directory.Exists(path)) throw new InputException("--table", $"'{path}' is a folder; give the name of a file");
        if (!File.Exists(path)) throw new InputException("--table", $"there is no file '{path}'");
        var size = new FileInfo(path).Length;
        if (size > LargestBytes) throw new InputException(path, $"the file has {Megabytes(size)}; the limit is {Megabytes(LargestBytes)}", "split the table");

        // Strict: a byte that is not UTF-8 is an error, not a question mark.
        using var reader = new StreamReader(path, new UTF8Encoding(false, throwOnInvalidBytes: true));
        try
        {
            return Read(reader, path, byMass, mostProblems);
        }
        catch (DecoderFallbackException)
        {
            throw new InputException(path, "this is not UTF-8 text; save the table as UTF-8");
        }
    }

    private static (IReadOnlyList<string>, IReadOnlyList<StateRow>) Read(TextReader reader, string path, bool byMass, int mostProblems)
    {
        IReadOnlyList<string>? header = null;
        var rows = new List<StateRow>();
        var problems = new List<string>();
        foreach (var (line, cells) in CsvText.Read(reader, path))
        {
            // Tables often begin with a line that says where they come from.
            if (header is null && cells[0].StartsWith('#')) continue;
            if (header is null) CheckHeader(header = cells, path);
            else if (StateRow.Read(line, header, cells, byMass, problems) is { } row) rows.Add(row);
            if (problems.Count >= mostProblems) throw new InputException(path, problems, "there may be more; nothing was written");
        }
        if (header is null) throw new InputException(path, "the table is empty", $"its first line names the columns: {TableColumns.Mixture} and two of {string.Join(", ", TableColumns.Known)}");
        if (problems.Count > 0) throw new InputException(path, problems, "nothing was written");
        if (rows.Count == 0) throw new InputException(path, "the table has a header and no rows");
        return (header, rows);
    }

    private static void CheckHeader(IReadOnlyList<string> header, string path)
    {
        var problems = new List<string>();
        foreach (var group in header.GroupBy(h => h).Where(g => g.Count() > 1)) problems.Add($"the column '{Faces.Shorten(group.Key)}' is there {group.Count()} times");
        foreach (var column in header.Intersect(TableColumns.Computed)) problems.Add($"the column '{column}' is one that is computed; rename it or leave it out");
        Missing(TableColumns.Mixture);
        var known = TableColumns.Known.Where(header.Contains).ToArray();
        if (known.Length < 2)
        {
            problems.Add($"two of the columns {string.Join(", ", TableColumns.Known)} are needed, and there {(known.Length == 1 ? $"is only {known[0]}" : "are none")}");
            foreach (var column in TableColumns.Known.Except(known)) Missing(column, onlyIfNear: true);
        }
        if (problems.Count > 0) throw new InputException(path, problems, "nothing was written");

        void Missing(string column, bool onlyIfNear = false)
        {
            if (header.Contains(column)) return;
            var near = NearestWord.Find(column, header.Where(h => h.Length is > 0 and < 40 && !TableColumns.Known.Contains(h))).FirstOrDefault();
            if (near is not null) problems.Add($"the column '{near}' is not known; did you mean '{column}'?");
            else if (!onlyIfNear) problems.Add($"the column '{column}' is missing");
        }
    }

    private static string Megabytes(long bytes) => (bytes / 1e6).ToString("0.0#", CultureInfo.InvariantCulture) + " MB";
}
