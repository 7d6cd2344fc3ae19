using Coldwright.Report.Charts;

namespace Coldwright.Report.Loops;

/// <summary>Rows of text kept to a width.</summary>
internal sealed class TextBlock
{
    /// <summary>Between two texts in one row, px.</summary>
    public const double Between = 12;
    /// <summary>Room for the flag ahead of a warning, px.</summary>
    public const double Flag = 15;

    private const int MostNameLines = 3;

    private readonly LoopSize _size;
    private readonly double _width;
    private readonly List<IReadOnlyList<TextLine>> _rows = [];

    /// <param name="size">Letters.</param>
    /// <param name="width">Width to keep to, px.</param>
    public TextBlock(LoopSize size, double width) => (_size, _width) = (size, Math.Max(width, 3 * size.Font));

    public IReadOnlyList<IReadOnlyList<TextLine>> Rows => _rows;

    public double Width => _rows.Count == 0 ? 0 : _rows.Max(r => WidthOf(r, _size));

    public double Height => _rows.Count * _size.LineHeight;

    /// <summary>Width of a row, px.</summary>
    public static double WidthOf(IReadOnlyList<TextLine> row, LoopSize size) => row.Sum(t => WidthOf(t, size)) + Between * (row.Count - 1);

    /// <summary>Width of a text, px, its flag included.</summary>
    public static double WidthOf(TextLine text, LoopSize size) =>
        TextWidth.Of(text.Text, size.Font, text.Tone is TextTone.Name or TextTone.Warn) + (text.Tone == TextTone.Warn ? Flag : 0);

    /// <summary>Adds a text, broken at spaces and after hyphens, within a word only when it must; a name ends after a few lines.</summary>
    public TextBlock Add(string text, TextTone tone, FigureKind? kind = null)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var piece in Pieces(text, " -_").SelectMany(p => Fits(p, tone) ? [p] : Pieces(p, "\u00a0")).SelectMany(p => Short(p, tone)))
        {
            if (line != "" && !Fits(line + piece, tone))
            {
                lines.Add(line.TrimEnd());
                line = "";
            }
            line += piece;
        }
        if (line != "") lines.Add(line.TrimEnd());
        if (tone == TextTone.Name && lines.Count > MostNameLines)
        {
            lines.RemoveRange(MostNameLines, lines.Count - MostNameLines);
            lines[^1] = lines[^1][..^1] + "…";
        }
        foreach (var text1 in lines) _rows.Add([new(text1, tone, kind)]);
        return this;
    }

    /// <summary>Adds short texts one behind the other while they fit.</summary>
    public TextBlock AddInRows(IEnumerable<TextLine> texts)
    {
        var row = new List<TextLine>();
        foreach (var text in texts)
        {
            if (row.Count > 0 && WidthOf([.. row, text], _size) > _width)
            {
                _rows.Add(row);
                row = [];
            }
            row.Add(text);
        }
        if (row.Count > 0) _rows.Add(row);
        return this;
    }

    private bool Fits(string text, TextTone tone) => WidthOf(new TextLine(text.TrimEnd(), tone), _size) <= _width;

    // A piece ends after a space, a hyphen or the like; a figure stays with its unit as long as both fit.
    private static IEnumerable<string> Pieces(string text, string ends)
    {
        var from = 0;
        for (var i = 0; i < text.Length; i++)
            if (ends.Contains(text[i]))
            {
                yield return text[from..(i + 1)];
                from = i + 1;
            }
        if (from < text.Length) yield return text[from..];
    }

    private IEnumerable<string> Short(string piece, TextTone tone)
    {
        var from = 0;
        for (var i = 1; i < piece.Length; i++)
            if (!Fits(piece[from..(i + 1)], tone))
            {
                yield return piece[from..i];
                from = i;
            }
        yield return piece[from..];
    }
}
