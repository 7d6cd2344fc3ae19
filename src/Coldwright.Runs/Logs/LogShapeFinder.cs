using Coldwright.Quantities;
using Coldwright.Runs.Files;

namespace Coldwright.Runs.Logs;

/// <summary>Finds delimiter, decimal sign, headings and the first row of data by looking at the first lines; the description goes before what is found.</summary>
internal static class LogShapeFinder
{
    private const int LinesLookedAt = 400;
    private static readonly string[] _otherUnits = ["mv", "v", "µv", "uv", "a", "ma", "ohm", "ohms", "ω", "k\u03c9", "%rh", "hh:mm:ss", "yyyy-mm-dd", "dd.mm.yyyy"];
    private static readonly byte[] _delimiters = [(byte)';', (byte)'\t', (byte)'|', (byte)',', (byte)' '];

    /// <summary>The layout; null when no two lines in a row look like data.</summary>
    public static LogShape? Find(ReadOnlySpan<byte> bytes, LogDescription log)
    {
        LogShape? best = null;
        var most = 0.0;
        foreach (var delimiter in _delimiters)
        {
            if (Byte(log.Delimiter) is { } given && given != delimiter) continue;
            if (Try(bytes, delimiter, log, out var score) is not { } shape || score <= most) continue;
            (best, most) = (shape, score);
        }
        return best;
    }

    private static byte? Byte(string? word) => word switch
    {
        "comma" => (byte)',',
        "semicolon" => (byte)';',
        "tab" => (byte)'\t',
        "bar" => (byte)'|',
        "space" => (byte)' ',
        _ => null,
    };

    private static LogShape? Try(ReadOnlySpan<byte> bytes, byte delimiter, LogDescription log, out double score)
    {
        score = 0;
        var counts = new Dictionary<int, int>();
        var walker = new LineWalker(bytes);
        var looked = 0;
        while (looked < LinesLookedAt && walker.Move())
        {
            if (IsEmpty(walker.Line)) continue;
            looked++;
            var n = CellWalker.Count(walker.Line, delimiter);
            counts[n] = counts.GetValueOrDefault(n) + 1;
        }
        if (looked == 0) return null;
        var columns = counts.OrderByDescending(c => c.Value).ThenByDescending(c => c.Key).First().Key;
        var comma = log.Decimal is { } d ? d == "comma" : DecimalComma(bytes, delimiter, columns);

        // The data begin with the first two lines in a row that have the usual count of cells and numbers in them.
        walker = new LineWalker(bytes);
        var before = new List<(int Line, string[] Cells)>();
        (int Offset, int Line)? first = null;
        double cells = 0, numbers = 0;
        looked = 0;
        var startsWithNumber = FirstCellIsUsuallyANumber(bytes, delimiter, columns, comma);
        while (looked < LinesLookedAt && walker.Move())
        {
            if (IsEmpty(walker.Line)) continue;
            looked++;
            var n = Numbers(walker.Line, delimiter, comma, out var count);
            // "Serial, 12345" before the heading of a log with two columns is no data.
            var isData = count == columns && n >= 1 && n * 4 >= count && (!startsWithNumber || FirstCellIsANumber(walker.Line, delimiter, comma));
            if (isData)
            {
                first ??= (walker.Offset, walker.Number);
                cells += count;
                numbers += n;
            }
            else if (first is null)
            {
                before.Add((walker.Number, Texts(walker.Line, delimiter)));
                if (before.Count > 2) before.RemoveAt(0);
            }
        }
        if (first is not { } data) return null;
        // Many columns that are numbers are better than few; a blank cuts words too easily and comes last, and one column is the last resort.
        score = numbers / cells * numbers / looked * (delimiter == ' ' ? 0.5 : 1) + (columns > 1 ? 1e-3 : 1e-6);
        var (headings, units) = Headings(before, columns);
        return new()
        {
            Delimiter = delimiter,
            DecimalComma = comma,
            Headings = headings,
            Units = units,
            Columns = columns,
            DataOffset = data.Offset,
            DataLine = data.Line,
        };
    }

    private static (string[] Headings, string[] Units) Headings(List<(int Line, string[] Cells)> before, int columns)
    {
        if (before.Count == 0 || before[^1].Cells.Length != columns) return ([], []);
        var last = before[^1].Cells;
        return before.Count == 2 && before[0].Cells.Length == columns && LooksLikeUnits(last) ? (before[0].Cells, last) : (last, []);
    }

    // A row of units stands under the headings; a preamble that happens to have as many cells stands above them.
    private static bool LooksLikeUnits(string[] cells)
    {
        var words = cells.Select(c => c.Trim('[', ']', '(', ')', ' ')).Where(c => c.Length > 0).ToArray();
        return words.Length > 0 && 2 * words.Count(w => UnitExpression.TryParse(w, out _) || _otherUnits.Contains(w.ToLowerInvariant())) > words.Length;
    }

    // A comma is the decimal sign when it stands between digits inside cells and a point does not.
    private static bool DecimalComma(ReadOnlySpan<byte> bytes, byte delimiter, int columns)
    {
        var walker = new LineWalker(bytes);
        int commas = 0, points = 0, looked = 0;
        while (looked < LinesLookedAt && walker.Move())
        {
            if (IsEmpty(walker.Line)) continue;
            looked++;
            if (CellWalker.Count(walker.Line, delimiter) != columns) continue;
            var cells = new CellWalker(walker.Line, delimiter);
            while (cells.Move())
            {
                var cell = cells.Cell;
                // Dates and clocks say nothing about the decimal sign.
                if (cell.Length == 0 || cell.IndexOfAny((byte)':', (byte)'/') >= 0 || cell.Count((byte)'.') > 1) continue;
                if (IsDecimal(cell, (byte)',')) commas++;
                if (IsDecimal(cell, (byte)'.')) points++;
            }
        }
        return commas > points;
    }

    private static bool IsDecimal(ReadOnlySpan<byte> cell, byte sign)
    {
        var at = cell.LastIndexOf(sign);
        return at >= 0 && at + 1 < cell.Length && IsDigit(cell[at + 1]) && (at == 0 || IsDigit(cell[at - 1]) || cell[at - 1] is (byte)'-' or (byte)'+') && cell[..at].IndexOf(sign) < 0;
    }

    private static int Numbers(ReadOnlySpan<byte> line, byte delimiter, bool comma, out int count)
    {
        var cells = new CellWalker(line, delimiter);
        int numbers = 0, empty = 0;
        count = 0;
        if (line[0] == '#') return 0;
        while (cells.Move())
        {
            count++;
            var content = NumberCell.Read(cells.Cell, comma, out _, out _, out var rest);
            // A unit may stand behind a number; a date or clock counts as one too. A long text does not, nor what another sign cuts off ("000;20" between two decimal commas).
            if (content == CellContent.Number && (rest.Length <= 4 && rest.IndexOfAny((byte)';', (byte)'\t', (byte)'|') < 0 || TimeCell.IsTime(cells.Cell))) numbers++;
            else if (content is CellContent.Nothing or CellContent.Beyond) empty++;
        }
        return numbers > 0 ? numbers + empty : 0;
    }

    private static bool FirstCellIsUsuallyANumber(ReadOnlySpan<byte> bytes, byte delimiter, int columns, bool comma)
    {
        var walker = new LineWalker(bytes);
        int yes = 0, no = 0, looked = 0;
        while (looked < LinesLookedAt && walker.Move())
        {
            if (IsEmpty(walker.Line)) continue;
            looked++;
            if (CellWalker.Count(walker.Line, delimiter) != columns) continue;
            if (FirstCellIsANumber(walker.Line, delimiter, comma)) yes++;
            else no++;
        }
        return yes > no;
    }

    private static bool FirstCellIsANumber(ReadOnlySpan<byte> line, byte delimiter, bool comma)
    {
        var cells = new CellWalker(line, delimiter);
        return cells.Move() && NumberCell.Read(cells.Cell, comma, out _, out _, out _) == CellContent.Number;
    }

    private static string[] Texts(ReadOnlySpan<byte> line, byte delimiter)
    {
        // "# time, T1, T2": a heading behind a remark sign.
        while (line.Length > 0 && line[0] is (byte)'#' or (byte)' ') line = line[1..];
        var cells = new CellWalker(line, delimiter);
        var texts = new List<string>();
        while (cells.Move()) texts.Add(LogBytes.Text(cells.Cell));
        return [.. texts];
    }

    internal static bool IsEmpty(ReadOnlySpan<byte> line) => line.IndexOfAnyExcept([(byte)' ', (byte)'\t', (byte)0, (byte)'\r']) < 0;

    private static bool IsDigit(byte b) => (uint)(b - '0') <= 9;
}
