using Coldwright.Machine.Description;
using Coldwright.Report.Charts;
using Coldwright.Report.Loops.Signs;
using Coldwright.Report.Parts;

namespace Coldwright.Report.Loops;

/// <summary>Takes signs, lines and texts, keeps them apart and knows what is written at each.</summary>
internal sealed class Canvas(LoopSize size, LoopFigures figures, PartUnits units)
{
    /// <summary>Least length of a line between two signs, so that its arrow can be seen.</summary>
    public const double LineGap = 17;
    /// <summary>Between a sign and its text.</summary>
    public const double TextGap = 6;

    private readonly List<PlacedSign> _signs = [];
    private readonly List<PlacedWire> _wires = [];
    private readonly List<PlacedText> _texts = [];

    public LoopSize Size => size;
    public Packing Packing { get; } = new();
    public IReadOnlyList<PlacedSign> Signs => _signs;
    public IReadOnlyList<PlacedWire> Wires => _wires;
    public IReadOnlyList<PlacedText> Texts => _texts;

    /// <summary>An empty canvas on which the same is written.</summary>
    public Canvas NewSheet() => new(size, figures, units);

    /// <summary>Takes over everything from a sheet, moved down as a whole to the highest place from <paramref name="y"/> on where it fits; the result is the way moved.</summary>
    public double Take(Canvas sheet, double y)
    {
        var down = Packing.Fit(y, [.. sheet.Packing.Taken]);
        _signs.AddRange(sheet._signs.Select(s => s with { Box = s.Box with { Y = s.Box.Y + down } }));
        _wires.AddRange(sheet._wires.Select(w => w with { Points = [.. w.Points.Select(p => (p.X, p.Y + down))] }));
        _texts.AddRange(sheet._texts.Select(t => t with { Box = t.Box with { Y = t.Box.Y + down } }));
        foreach (var box in sheet.Packing.Taken) Packing.Take(box with { Y = box.Y + down });
        return down;
    }

    /// <summary>The box of a sign whose line stands at <paramref name="x"/>.</summary>
    public Box BoxOf(Sign sign, double x, double y) => new(x - sign.LineX * size.Scale, y, sign.Width * size.Scale, sign.Height * size.Scale);

    public void Add(Part part, Sign sign, Box box, bool isAccessory = false)
    {
        _signs.Add(new(part, sign, box, size.Scale, isAccessory));
        Packing.Take(box);
    }

    /// <summary>Adds a line; its level stretches are kept free of what comes later.</summary>
    public void Add(Line line, WireForm form, IReadOnlyList<(double X, double Y)> points)
    {
        _wires.Add(new(line, form, points));
        for (var i = 1; i < points.Count; i++)
        {
            var ((x1, y1), (x2, y2)) = (points[i - 1], points[i]);
            if (Math.Abs(y1 - y2) < 0.5 || form.IsSide) Packing.Take(new(Math.Min(x1, x2) - 2, Math.Min(y1, y2) - 3, Math.Abs(x2 - x1) + 4, Math.Abs(y2 - y1) + 6));
        }
    }

    public void Add(string place, TextBlock text, double x, double y, bool isRightAligned)
    {
        var box = TextBox(text, x, isRightAligned) with { Y = y };
        _texts.Add(new(place, box, text.Rows, isRightAligned));
        Packing.Take(box);
    }

    /// <summary>Where a text stands, its top at 0, when it begins or ends at x.</summary>
    public static Box TextBox(TextBlock text, double x, bool isRightAligned) => new(isRightAligned ? x - text.Width : x, 0, text.Width, text.Height);

    /// <summary>What is written at a part.</summary>
    public TextBlock TextOf(Part part, double width, string? place = null)
    {
        var text = new TextBlock(size, width);
        if (figures.MarkAt(part.Name) is { } mark) text.Add(mark.Word, TextTone.Warn);
        text.Add(part.Name, TextTone.Name);
        foreach (var detail in PartDetails.Of(part, units)) text.Add(detail, TextTone.Quiet);
        if (place is not null) text.Add(place, TextTone.Quiet);
        foreach (var figure in figures.At(part.Name)) text.Add(FigureText.Of(figure, units.Readout), TextTone.Figure, figure.Kind);
        return text;
    }

    /// <summary>What is written at a line; empty when nothing is known of it.</summary>
    public TextBlock TextOf(Line line, double width)
    {
        var (text, place) = (new TextBlock(size, width), LoopFigures.PlaceOf(line));
        if (figures.MarkAt(place) is { } mark) text.Add(mark.Word, TextTone.Warn);
        var texts = figures.At(place).Select(f => new TextLine(FigureText.Of(f, units.Readout), TextTone.Figure, f.Kind)).ToArray();
        if (!size.IsPhone) return text.AddInRows(texts);
        foreach (var t in texts) text.Add(t.Text, t.Tone, t.Kind);
        return text;
    }

    /// <summary>A part's sign in a line, its text beside it; the line so far ends at the sign and goes on below it.</summary>
    /// <param name="track">Line.</param>
    /// <param name="part">Part.</param>
    /// <param name="sign">Its sign.</param>
    /// <param name="line">The line of the machine that the sign ends or, when the gas flows up, begins; null for an accessory.</param>
    public void InLine(Track track, Part part, Sign sign, Line? line)
    {
        var facing = track.Side > 0 ? sign : sign.Mirrored();
        var box = BoxOf(facing, track.X, 0);
        var x = track.Side > 0 ? box.Right + TextGap : box.X - TextGap;
        var text = TextOf(part, Math.Abs(track.Edge - x));
        var height = Math.Max(box.Height, text.Height);
        box = box with { Y = (height - box.Height) / 2 };
        var textBox = TextBox(text, x, track.Side < 0) with { Y = (height - text.Height) / 2 };
        var gap = Math.Max(0, LineGap - box.Y);
        var y = Packing.Fit(track.Y + gap, box, textBox);
        Add(part.Name, text, x, y + textBox.Y, track.Side < 0);
        Pass(track, part, facing, box with { Y = y + box.Y }, line);
        track.Y = Math.Max(track.Y, y + height);
    }

    /// <summary>Ends the line so far at a sign's top and starts the next at its bottom.</summary>
    public void Pass(Track track, Part part, Sign sign, Box box, Line? line, bool isAccessory = false)
    {
        if (line is not null) Add(line, track.Form, track.To((track.X, box.Y)));
        Add(part, sign, box, isAccessory);
        track.Start((track.X, box.Bottom));
    }

    /// <summary>A sign in a line that belongs to the part the line comes from: the line so far leads into it from above and goes on below.</summary>
    public void Accessory(Track track, Part part, Sign sign, Box box)
    {
        Leads.Add([.. track.Open, (track.X, box.Y)]);
        Add(part, sign, box, isAccessory: true);
        track.Start((track.X, box.Bottom));
    }

    /// <summary>The oil's way from the separator back to the compressor; empty without one.</summary>
    public IReadOnlyList<(double X, double Y)> OilReturn { get; set; } = [];

    /// <summary>Strokes between a part and its accessory, which are no lines of the machine.</summary>
    public List<IReadOnlyList<(double X, double Y)>> Leads { get; } = [];

    /// <summary>What is written at a line, beside it.</summary>
    public void Write(Track track, Line line)
    {
        var x = track.X + track.Side * 10;
        var text = TextOf(line, Math.Abs(track.Edge - x));
        if (text.Rows.Count == 0) return;
        var y = Packing.Fit(track.Y + 5, TextBox(text, x, track.Side < 0));
        Add(LoopFigures.PlaceOf(line), text, x, y, track.Side < 0);
        track.Y = y + text.Height;
    }
}
