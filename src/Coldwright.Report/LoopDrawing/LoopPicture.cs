using Coldwright.Machine.Description;
using Coldwright.Report.Charts;

namespace Coldwright.Report.Loops;

/// <summary>How a line is drawn.</summary>
/// <param name="Ink">Colour: high, low or cooling (the product).</param>
/// <param name="IsSide">True for a branch that carries nothing in normal running: thin.</param>
internal sealed record WireForm(Ink Ink, bool IsSide = false)
{
    public static WireForm High { get; } = new(Ink.High);
    public static WireForm Low { get; } = new(Ink.Low);
    public static WireForm Product { get; } = new(Ink.Cooling);

    public WireForm Side => this with { IsSide = true };

    public string Class => $"{ChartStyle.Class(Ink)}{(IsSide ? " side" : "")}";
}

/// <summary>A line of the machine as strokes from port to port, in the direction of flow.</summary>
internal sealed record PlacedWire(Line Line, WireForm Form, IReadOnlyList<(double X, double Y)> Points);

/// <summary>A part's sign.</summary>
/// <param name="Part">Part.</param>
/// <param name="Sign">What is drawn.</param>
/// <param name="Box">Where.</param>
/// <param name="Scale">Against the sign's own size.</param>
/// <param name="IsAccessory">True for what belongs to a part but stands apart from it: an oil separator, a feed compressor.</param>
internal sealed record PlacedSign(Part Part, Signs.Sign Sign, Box Box, double Scale, bool IsAccessory = false);

/// <summary>Weight of a line of text.</summary>
internal enum TextTone
{
    Quiet,
    Name,
    Figure,
    Warn,
}

/// <summary>A line of text; with the figure it shows, so that a page can renew it.</summary>
internal sealed record TextLine(string Text, TextTone Tone, FigureKind? Kind = null);

/// <summary>Text at a part or line.</summary>
/// <param name="Place">Name of the part or line; empty for the drawing's own words.</param>
/// <param name="Box">Where.</param>
/// <param name="Rows">Row by row.</param>
/// <param name="IsRightAligned">True when the rows end at the box's right side.</param>
internal sealed record PlacedText(string Place, Box Box, IReadOnlyList<IReadOnlyList<TextLine>> Rows, bool IsRightAligned);

/// <summary>The insulated box: outer and inner edge, and where lines pass its wall.</summary>
internal sealed record Enclosure(Part Part, Box Outer, Box Inner, IReadOnlyList<Box> Sleeves);

/// <summary>Everything on the drawing with its place, before a stroke is written; what overlaps is known here.</summary>
internal sealed record LoopPicture
{
    public required LoopSize Size { get; init; }
    public required double Height { get; init; }
    public required IReadOnlyList<PlacedSign> Signs { get; init; }
    public required IReadOnlyList<PlacedWire> Wires { get; init; }
    public required IReadOnlyList<PlacedText> Texts { get; init; }
    /// <summary>Strokes from the compressor to its oil separator.</summary>
    public required IReadOnlyList<IReadOnlyList<(double X, double Y)>> Leads { get; init; }
    /// <summary>The oil's way back.</summary>
    public required IReadOnlyList<(double X, double Y)> OilReturn { get; init; }
    public Enclosure? ColdBox { get; init; }
}
