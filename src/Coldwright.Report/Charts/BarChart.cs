namespace Coldwright.Report.Charts;

/// <summary>Horizontal bars, each from one value to another, so that a sum can be seen shrinking step by step.</summary>
public sealed record BarChart
{
    /// <summary>What the picture shows, for people who cannot see it.</summary>
    public required string Description { get; init; }
    /// <summary>Axis label with unit.</summary>
    public required string AxisLabel { get; init; }
    /// <summary>Bars from top to bottom.</summary>
    public required IReadOnlyList<Bar> Bars { get; init; }

    /// <summary>The picture as an SVG element.</summary>
    /// <param name="size">Page or telephone; the height follows the number of bars.</param>
    public string Draw(ChartSize size) => new BarChartDrawing(this, size).Draw();
}

/// <summary>One bar.</summary>
/// <param name="Name">Written beside it.</param>
/// <param name="From">Start, axis units.</param>
/// <param name="To">End, axis units.</param>
/// <param name="Ink">Colour.</param>
/// <param name="ValueText">Its size in words, written at its end.</param>
/// <param name="Bold">True for the sums at both ends.</param>
public sealed record Bar(string Name, double From, double To, Ink Ink, string ValueText, bool Bold = false);
