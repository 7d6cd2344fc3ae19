using System.Text;
using Coldwright.Machine.Description;
using Coldwright.Report.Charts;
using static Coldwright.Report.Loops.Signs.Sign;

namespace Coldwright.Report.Loops;

/// <summary>Writes a picture as SVG: box, lines, signs, texts, each part and line in a group with its name.</summary>
internal sealed class LoopPainter(LoopPicture picture, LoopFigures figures, LoopTitles titles, bool isClickable)
{
    private readonly StringBuilder _svg = new();

    public string Write(LoopLegend? legend, string description)
    {
        var (width, size) = (picture.Size.Width, picture.Size);
        var height = picture.Height + (legend?.Height ?? 0);
        _svg.Append($"<svg class=\"chart loop {size.Class}\" viewBox=\"0 0 {N(width)} {N(height)}\" role=\"{(isClickable ? "group" : "img")}\" aria-label=\"{Markup.Escape(description)}\">\n");
        Ribbon();
        if (picture.ColdBox is { } box) Box(box);
        foreach (var lead in picture.Leads) Stroke(WireForm.High, lead);
        if (picture.OilReturn.Count > 0) _svg.Append("<g class=\"leak\">").Append(Path("tube fine", Rounded(picture.OilReturn))).Append("</g>\n");
        foreach (var group in picture.Wires.GroupBy(w => w.Line, ReferenceEqualityComparer.Instance)) Wires([.. group]);
        // An arrow lies above every line, so that a crossing stroke never hides it.
        foreach (var wire in picture.Wires) Arrow(wire);
        foreach (var group in picture.Signs.GroupBy(s => s.Part.Name)) Part(group.Key, [.. group]);
        var written = picture.Signs.Select(s => s.Part.Name).Concat(picture.Wires.Select(w => LoopFigures.PlaceOf(w.Line))).Append(picture.ColdBox?.Part.Name ?? "").ToHashSet(StringComparer.Ordinal);
        foreach (var text in picture.Texts.Where(t => t.Place == "" || !written.Contains(t.Place))) Text(text);
        legend?.Write(_svg, picture.Height);
        return _svg.Append("</svg>\n").ToString();
    }

    // Warm above, cold below: a narrow strip at the left edge.
    private void Ribbon()
    {
        const int steps = 30;
        var bottom = picture.ColdBox?.Inner.Bottom ?? picture.Height - 8;
        for (var i = 0; i < steps; i++)
        {
            var share = i / (steps - 1.0);
            var (ink, strength) = share < 0.5 ? ("high", 1 - 1.7 * share) : ("low", 1.7 * share - 0.7);
            _svg.Append($"<rect class=\"ribbon {ink}\" shape-rendering=\"crispEdges\" x=\"0\" y=\"{N(6 + (bottom - 6) * i / steps)}\" width=\"{(picture.Size.IsPhone ? 3 : 5)}\" height=\"{N((bottom - 6) / steps)}\" fill-opacity=\"{N(Math.Max(0.15, strength))}\"/>");
        }
        _svg.Append('\n');
    }

    private void Box(Enclosure box)
    {
        var (o, i) = (box.Outer, box.Inner);
        Open(box.Part.Name, "part", titles.Of(box.Part), figures.MarkAt(box.Part.Name) is not null);
        string Rectangle(Box b, double radius) => $"x=\"{N(b.X)}\" y=\"{N(b.Y)}\" width=\"{N(b.Width)}\" height=\"{N(b.Height)}\" rx=\"{N(radius)}\"";
        _svg.Append($"<rect class=\"wall shell\" {Rectangle(o, 10)}/>");
        // rows of dots: the cells of the insulation, more of them where the wall is drawn thicker
        var rows = picture.Size.IsPhone ? 1 : 2;
        for (var r = 0; r < rows; r++)
        {
            double part = (r + 1.0) / (rows + 1), side = picture.Size.SideWall * part, end = picture.Size.EndWall * part;
            _svg.Append($"<rect class=\"foam\"{(r % 2 == 1 ? " stroke-dashoffset=\"4\"" : "")} {Rectangle(new(o.X + side, o.Y + end, o.Width - 2 * side, o.Height - 2 * end), 8)}/>");
        }
        _svg.Append($"<rect class=\"wall\" {Rectangle(i, 6)}/><rect class=\"cold\" {Rectangle(i, 6)}/>");
        foreach (var sleeve in box.Sleeves) _svg.Append($"<rect class=\"sleeve\" {Rectangle(sleeve with { Y = sleeve.Y + 1, Height = sleeve.Height - 2 }, 0)}/>");
        foreach (var text in picture.Texts.Where(t => t.Place == box.Part.Name)) Text(text);
        _svg.Append("</g>\n");
    }

    private void Wires(IReadOnlyList<PlacedWire> wires)
    {
        var line = wires[0].Line;
        Open(LoopFigures.PlaceOf(line), "line", titles.Of(line), figures.MarkAt(LoopFigures.PlaceOf(line)) is not null);
        foreach (var wire in wires) Stroke(wire.Form, wire.Points);
        foreach (var text in picture.Texts.Where(t => t.Place == LoopFigures.PlaceOf(line))) Text(text);
        _svg.Append("</g>\n");
    }

    private void Stroke(WireForm form, IReadOnlyList<(double X, double Y)> points)
    {
        var path = Rounded(points);
        _svg.Append(Path($"pipe {form.Class}", path));
        if (form is { Ink: Ink.Low, IsSide: false }) _svg.Append(Path("bore", path));
    }

    private void Arrow(PlacedWire wire)
    {
        var best = wire.Points.Zip(wire.Points.Skip(1)).MaxBy(s => Length(s.First, s.Second));
        var length = Length(best.First, best.Second);
        var half = wire.Form.IsSide ? 4.0 : 5.5;
        if (length < 2 * half) return;
        double dx = (best.Second.X - best.First.X) / length, dy = (best.Second.Y - best.First.Y) / length;
        double x = (best.First.X + best.Second.X) / 2, y = (best.First.Y + best.Second.Y) / 2;
        _svg.Append($"<path class=\"arrow {ChartStyle.Class(wire.Form.Ink)}\" d=\"M{N(x + half * dx)} {N(y + half * dy)}L{N(x - half * dx - half * dy)} {N(y - half * dy + half * dx)}L{N(x - half * dx + half * dy)} {N(y - half * dy - half * dx)}Z\"/>\n");
    }

    private static double Length((double X, double Y) a, (double X, double Y) b) => Math.Abs(a.X - b.X) + Math.Abs(a.Y - b.Y);

    private void Part(string name, IReadOnlyList<PlacedSign> signs)
    {
        Open(name, "part", titles.Of(signs[0].Part), figures.MarkAt(name) is not null);
        foreach (var sign in signs)
        {
            _svg.Append($"<g transform=\"translate({N(sign.Box.X)} {N(sign.Box.Y)}) scale({N(sign.Scale)})\">{sign.Sign.Body}</g>");
            // the coil lies over its vessel, which must still answer to the pointer around it
            if (sign.Part is not CoilPart) _svg.Append($"<rect class=\"touch\" x=\"{N(sign.Box.X)}\" y=\"{N(sign.Box.Y)}\" width=\"{N(sign.Box.Width)}\" height=\"{N(sign.Box.Height)}\"/>");
        }
        foreach (var text in picture.Texts.Where(t => t.Place == name)) Text(text);
        _svg.Append("</g>\n");
    }

    private void Open(string name, string kind, string title, bool isMarked) => _svg.Append(
        $"<g class=\"{kind}{(isMarked ? " marked" : "")}\" data-{kind}=\"{Markup.Escape(name)}\"{(isClickable ? $" tabindex=\"0\" role=\"button\" aria-label=\"{Markup.Escape(title)}\"" : "")}><title>{Markup.Escape(title)}</title>");

    private void Text(PlacedText text)
    {
        var size = picture.Size;
        var y = text.Box.Y + 0.79 * size.LineHeight;
        foreach (var row in text.Rows)
        {
            var x = text.IsRightAligned ? text.Box.Right - TextBlock.WidthOf(row, size) : text.Box.X;
            foreach (var span in row)
            {
                var width = TextBlock.WidthOf(span, size);
                var start = x;
                if (span.Tone == TextTone.Warn)
                {
                    _svg.Append(Flag(text.IsRightAligned ? text.Box.Right - width : start, y, size.Font));
                    start += TextBlock.Flag;
                }
                // single texts end exactly at the right edge, whatever the reader's font
                var (at, anchor) = text.IsRightAligned && row.Count == 1 ? (text.Box.Right, " text-anchor=\"end\"") : (start, "");
                _svg.Append($"<text class=\"{Tone(span.Tone)}\" x=\"{N(at)}\" y=\"{N(y)}\" font-size=\"{N(size.Font)}\"{anchor}{(span.Kind is { } kind ? $" data-figure=\"{kind}\"" : "")}>{Markup.Escape(span.Text)}</text>");
                x += width + TextBlock.Between;
            }
            y += size.LineHeight;
        }
    }

    /// <summary>A pennant on its pole, standing on a line of text.</summary>
    public static string Flag(double x, double y, double font) =>
        $"<path class=\"flag\" d=\"M{N(x + 2)} {N(y + 1)}V{N(y - 0.85 * font)}L{N(x + 11)} {N(y - 0.6 * font)}L{N(x + 2)} {N(y - 0.3 * font)}\"/>";

    public static string Tone(TextTone tone) => tone switch
    {
        TextTone.Name => "name",
        TextTone.Figure => "figure",
        TextTone.Warn => "warn",
        _ => "quiet",
    };

    /// <summary>A path with its corners rounded.</summary>
    public static string Rounded(IReadOnlyList<(double X, double Y)> points)
    {
        var path = new StringBuilder($"M{N(points[0].X)} {N(points[0].Y)}");
        for (var i = 1; i < points.Count; i++)
        {
            var at = points[i];
            if (i + 1 < points.Count)
            {
                var (before, after) = (points[i - 1], points[i + 1]);
                var radius = Math.Min(7, Math.Min(Length(before, at), Length(at, after)) / 2);
                var (from, to) = (Towards(at, before, radius), Towards(at, after, radius));
                path.Append($"L{N(from.X)} {N(from.Y)}Q{N(at.X)} {N(at.Y)} {N(to.X)} {N(to.Y)}");
            }
            else path.Append($"L{N(at.X)} {N(at.Y)}");
        }
        return path.ToString();
    }

    private static (double X, double Y) Towards((double X, double Y) from, (double X, double Y) to, double by)
    {
        var length = Length(from, to);
        return length < 1e-6 ? from : (from.X + (to.X - from.X) * by / length, from.Y + (to.Y - from.Y) * by / length);
    }
}
