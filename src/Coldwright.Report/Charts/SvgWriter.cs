using System.Globalization;
using System.Text;

namespace Coldwright.Report.Charts;

/// <summary>Writes the few SVG elements that the pictures need, for use inside an HTML page (which needs no vocabulary name).</summary>
internal sealed class SvgWriter
{
    private readonly StringBuilder _text = new();

    public void Open(double width, double height, string cssClass, string description, string scales = "") =>
        _text.Append($"<svg class=\"chart {cssClass}\" viewBox=\"0 0 {N(width)} {N(height)}\" role=\"img\" aria-label=\"{Markup.Escape(description)}\"{scales}>\n");

    /// <summary>Where the plot lies and what its edges stand for, so that the browser's page can show a part of it larger.</summary>
    public static string Scales(Box plot, (double Low, double High) x, (double Low, double High) y, bool isLogarithmicY = false) =>
        $" data-plot=\"{N(plot.X)} {N(plot.Y)} {N(plot.Width)} {N(plot.Height)}\" data-x=\"{Exact(x.Low)} {Exact(x.High)}\" data-y=\"{Exact(y.Low)} {Exact(y.High)}\"{(isLogarithmicY ? " data-y-scale=\"log\"" : "")}";

    public string Close() => _text.Append("</svg>\n").ToString();

    public void Line(Segment s, string cssClass) =>
        _text.Append($"<line class=\"{cssClass}\" x1=\"{N(s.X1)}\" y1=\"{N(s.Y1)}\" x2=\"{N(s.X2)}\" y2=\"{N(s.Y2)}\"/>\n");

    public void Polyline(IEnumerable<(double X, double Y)> points, string cssClass) =>
        _text.Append($"<polyline class=\"{cssClass}\" points=\"{Points(points)}\"/>\n");

    public void Polygon(IEnumerable<(double X, double Y)> points, string cssClass) =>
        _text.Append($"<polygon class=\"{cssClass}\" points=\"{Points(points)}\"/>\n");

    public void Rectangle(Box box, string cssClass, string? hover, double opacity = 1) =>
        _text.Append($"<rect class=\"{cssClass}\" x=\"{N(box.X)}\" y=\"{N(box.Y)}\" width=\"{N(box.Width)}\" height=\"{N(box.Height)}\"{(opacity < 1 ? $" fill-opacity=\"{N(opacity)}\"" : "")}>{Hover(hover)}</rect>\n");

    public void Circle(double x, double y, double radius, string cssClass, string? hover) =>
        _text.Append($"<circle class=\"{cssClass}\" cx=\"{N(x)}\" cy=\"{N(y)}\" r=\"{N(radius)}\">{Hover(hover)}</circle>\n");

    /// <summary>One line of text with its baseline at y; anchor is start, middle or end.</summary>
    public void Text(double x, double y, string text, double fontSize, string cssClass = "", string anchor = "start") =>
        _text.Append($"<text x=\"{N(x)}\" y=\"{N(y)}\" font-size=\"{N(fontSize)}\"{(cssClass == "" ? "" : $" class=\"{cssClass}\"")}{(anchor == "start" ? "" : $" text-anchor=\"{anchor}\"")}>{Markup.Escape(text)}</text>\n");

    private static string Hover(string? hover) => hover is null ? "" : $"<title>{Markup.Escape(hover)}</title>";

    private static string Points(IEnumerable<(double X, double Y)> points) => string.Join(' ', points.Select(p => $"{N(p.X)},{N(p.Y)}"));

    private static string Exact(double value) => value.ToString("G9", CultureInfo.InvariantCulture);

    private static string N(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
