namespace Coldwright.Report.Charts;

/// <summary>Horizontal bars made of pieces: a row may have several bars side by side, a bar several pieces, to either side of zero.</summary>
public sealed record PieceChart
{
    /// <summary>What the picture shows, for people who cannot see it.</summary>
    public required string Description { get; init; }
    /// <summary>Axis label with unit.</summary>
    public required string AxisLabel { get; init; }
    /// <summary>Rows from top to bottom.</summary>
    public required IReadOnlyList<PieceRow> Rows { get; init; }
    /// <summary>What the colours stand for, written above; empty where the axis says it.</summary>
    public IReadOnlyList<(string Text, Ink Ink)> Key { get; init; } = [];

    /// <summary>The picture as an SVG element.</summary>
    /// <param name="size">Page or telephone; the height follows the rows.</param>
    public string Draw(ChartSize size) => new PieceChartDrawing(this, size).Draw();
}

/// <summary>A named row.</summary>
/// <param name="Name">Written beside it, or above it on a telephone.</param>
/// <param name="Lanes">Its bars from top to bottom.</param>
public sealed record PieceRow(string Name, IReadOnlyList<PieceLane> Lanes);

/// <summary>A bar.</summary>
/// <param name="Pieces">Its pieces.</param>
/// <param name="Text">Its size in words, written at its end.</param>
public sealed record PieceLane(IReadOnlyList<Piece> Pieces, string Text);

/// <summary>A piece of a bar.</summary>
/// <param name="From">Start, axis units.</param>
/// <param name="To">End, axis units.</param>
/// <param name="Ink">Colour.</param>
/// <param name="Hover">Text shown over it.</param>
public sealed record Piece(double From, double To, Ink Ink, string Hover);
