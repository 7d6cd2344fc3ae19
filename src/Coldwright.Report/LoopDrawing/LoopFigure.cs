namespace Coldwright.Report.Loops;

/// <summary>A figure at a part or a line of the drawing.</summary>
/// <param name="Place">Name of the part, or of the line as <see cref="LoopFigures.PlaceOf"/> writes it.</param>
/// <param name="Kind">What it measures.</param>
/// <param name="Value">In the SI unit of the kind; null, shown as a dash, when it is not known or too old to be believed.</param>
/// <param name="Word">Short word in front of the figure, such as <c>leaks in</c>; the usual word of the kind when empty.</param>
public sealed record LoopFigure(string Place, FigureKind Kind, double? Value, string Word = "");
