namespace Coldwright.Runs.Logs;

/// <summary>Walks through the cells of a line. Quotes may stand around a cell; blanks around it are dropped; with a blank as delimiter runs of blanks and tabs count as one.</summary>
internal ref struct CellWalker
{
    private readonly ReadOnlySpan<byte> _line;
    private readonly byte _delimiter;
    private int _next;

    public CellWalker(ReadOnlySpan<byte> line, byte delimiter)
    {
        _line = line;
        _delimiter = delimiter;
        if (delimiter == ' ') _next = SkipBlanks(0);
        if (delimiter == ' ' && _next == line.Length) _next = line.Length + 1;
    }

    /// <summary>The cell without blanks and quotes.</summary>
    public ReadOnlySpan<byte> Cell { get; private set; }

    public bool Move()
    {
        if (_next > _line.Length) return false;
        var start = _next;
        var from = SkipBlanks(start);
        int end;
        if (from < _line.Length && _line[from] == '"' && ClosingQuote(from) is var quote and > 0)
        {
            Cell = Trim(_line[(from + 1)..quote]);
            end = NextDelimiter(quote + 1);
        }
        else
        {
            end = NextDelimiter(start);
            Cell = Trim(_line[start..end]);
        }
        _next = end + 1;
        if (_delimiter == ' ')
        {
            _next = SkipBlanks(end);
            if (_next == _line.Length) _next++;
        }
        return true;
    }

    /// <summary>How many cells a line has.</summary>
    public static int Count(ReadOnlySpan<byte> line, byte delimiter)
    {
        var cells = new CellWalker(line, delimiter);
        var n = 0;
        while (cells.Move()) n++;
        return n;
    }

    private readonly int NextDelimiter(int from)
    {
        var rest = _line[from..];
        var at = _delimiter == ' ' ? rest.IndexOfAny((byte)' ', (byte)'\t') : rest.IndexOf(_delimiter);
        return at < 0 ? _line.Length : from + at;
    }

    private readonly int SkipBlanks(int i)
    {
        while (i < _line.Length && _line[i] != _delimiter && IsBlank(_line[i]) || i < _line.Length && _delimiter == ' ' && IsBlank(_line[i])) i++;
        return i;
    }

    // A doubled quote inside is no end; the cell is then shown with it, which no number or time ever has.
    private readonly int ClosingQuote(int open)
    {
        for (var i = open + 1; i < _line.Length; i++)
        {
            if (_line[i] != '"') continue;
            if (i + 1 < _line.Length && _line[i + 1] == '"') i++;
            else return i;
        }
        return -1;
    }

    private static ReadOnlySpan<byte> Trim(ReadOnlySpan<byte> cell)
    {
        while (cell.Length > 0 && IsBlank(cell[0])) cell = cell[1..];
        while (cell.Length > 0 && IsBlank(cell[^1])) cell = cell[..^1];
        // no-break space in UTF-8
        while (cell.Length > 1 && cell[^2] == 0xC2 && cell[^1] == 0xA0) cell = cell[..^2];
        return cell;
    }

    private static bool IsBlank(byte b) => b is (byte)' ' or (byte)'\t' or 0 or (byte)'\r';
}
