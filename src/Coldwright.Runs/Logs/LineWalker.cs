namespace Coldwright.Runs.Logs;

/// <summary>Walks through the lines of a log. Line ends are LF, CR LF, or CR alone when the log has no LF.</summary>
internal ref struct LineWalker
{
    private readonly ReadOnlySpan<byte> _bytes;
    private readonly byte _end;
    private int _next;

    public LineWalker(ReadOnlySpan<byte> bytes, int from = 0, int lineBefore = 0)
    {
        _bytes = bytes;
        _end = bytes[..Math.Min(bytes.Length, 1 << 16)].Contains((byte)'\n') ? (byte)'\n' : (byte)'\r';
        (_next, Number) = (from, lineBefore);
    }

    /// <summary>The line, without its end.</summary>
    public ReadOnlySpan<byte> Line { get; private set; }

    /// <summary>Its number, from 1.</summary>
    public int Number { get; private set; }

    /// <summary>Where it begins.</summary>
    public int Offset { get; private set; }

    /// <summary>False for a last line that has no end: the logger may have been cut off.</summary>
    public bool HasEnd { get; private set; }

    public bool Move()
    {
        if (_next >= _bytes.Length) return false;
        Offset = _next;
        var rest = _bytes[_next..];
        var at = rest.IndexOf(_end);
        HasEnd = at >= 0;
        var line = HasEnd ? rest[..at] : rest;
        _next += HasEnd ? at + 1 : rest.Length;
        if (line.Length > 0 && line[^1] == '\r') line = line[..^1];
        Line = line;
        Number++;
        return true;
    }
}
