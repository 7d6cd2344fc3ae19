namespace Coldwright.Report.Charts;

/// <summary>A picture of lines over two axes, each line labelled where it runs.</summary>
public sealed record LineChart
{
    /// <summary>What the picture shows, for people who cannot see it.</summary>
    public required string Description { get; init; }
    /// <summary>Horizontal axis.</summary>
    public required Axis X { get; init; }
    /// <summary>Vertical axis.</summary>
    public required Axis Y { get; init; }
    /// <summary>Filled areas, drawn first.</summary>
    public IReadOnlyList<Area> Areas { get; init; } = [];
    /// <summary>Lines.</summary>
    public IReadOnlyList<Curve> Curves { get; init; } = [];
    /// <summary>Upright dotted lines over the whole height.</summary>
    public IReadOnlyList<Upright> Uprights { get; init; } = [];
    /// <summary>Upright distances between two values.</summary>
    public IReadOnlyList<Span> Spans { get; init; } = [];
    /// <summary>Marked points.</summary>
    public IReadOnlyList<Mark> Marks { get; init; } = [];
    /// <summary>Row of named ranges above the plot; empty for none.</summary>
    public Strip? Above { get; init; }
    /// <summary>Row of named ranges below the plot.</summary>
    public Strip? Below { get; init; }

    /// <summary>The picture as an SVG element.</summary>
    /// <param name="size">Page or telephone.</param>
    public string Draw(ChartSize size) => new LineChartDrawing(this, size).Draw();
}

/// <summary>A line through points, in axis units.</summary>
/// <param name="Name">Label written at the line; empty where the axis already says it.</param>
/// <param name="Ink">Colour.</param>
/// <param name="Points">Points from left to right.</param>
/// <param name="Hover">Text shown over each point; empty for none.</param>
/// <param name="Thin">True for a second voice: thin and broken.</param>
public sealed record Curve(string Name, Ink Ink, IReadOnlyList<(double X, double Y)> Points, IReadOnlyList<string> Hover, bool Thin = false);

/// <summary>An area between two lines.</summary>
/// <param name="Ink">Colour.</param>
/// <param name="Points">x, lower and upper value, from left to right.</param>
/// <param name="Label">Text inside; null for none.</param>
public sealed record Area(Ink Ink, IReadOnlyList<(double X, double Low, double High)> Points, string? Label = null);

/// <summary>An upright dotted line.</summary>
/// <param name="X">Where, axis units.</param>
/// <param name="Ink">Colour.</param>
/// <param name="Lines">Label, line by line.</param>
public sealed record Upright(double X, Ink Ink, IReadOnlyList<string> Lines);

/// <summary>An upright distance with end strokes.</summary>
/// <param name="X">Where, axis units.</param>
/// <param name="From">One end, axis units.</param>
/// <param name="To">Other end, axis units.</param>
/// <param name="Ink">Colour.</param>
/// <param name="Lines">Label, line by line.</param>
public sealed record Span(double X, double From, double To, Ink Ink, IReadOnlyList<string> Lines);

/// <summary>A marked point.</summary>
/// <param name="X">Axis units.</param>
/// <param name="Y">Axis units.</param>
/// <param name="Ink">Colour.</param>
/// <param name="Lines">Label, line by line.</param>
public sealed record Mark(double X, double Y, Ink Ink, IReadOnlyList<string> Lines);

/// <summary>A row of named ranges along the horizontal axis.</summary>
/// <param name="Name">Short name of the row, written left of it.</param>
/// <param name="Ink">Colour.</param>
/// <param name="Ranges">From, to (axis units), name, and a shorter name for narrow ranges.</param>
public sealed record Strip(string Name, Ink Ink, IReadOnlyList<(double From, double To, string Text, string Short)> Ranges);
