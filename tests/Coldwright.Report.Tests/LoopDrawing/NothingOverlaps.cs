using System.Globalization;
using System.Xml.Linq;
using Coldwright.Machine.Description;
using Coldwright.Report.Charts;
using Coldwright.Report.Loops;

namespace Coldwright.Report.Tests.LoopDrawings;

/// <summary>The examples, variants of them and random machines, in both sizes: signs, lines and words keep apart and nothing is left out.</summary>
public class NothingOverlaps
{
    private const int RandomMachines = 200;

    public static TheoryData<string> Names => [.. Machines.All.Select(d => d.Name), .. Enumerable.Range(1, RandomMachines).Select(i => $"random {i}")];

    private static Machines.Drawn Find(string name) => name.StartsWith("random ", StringComparison.Ordinal) ? RandomMachine.Make(int.Parse(name[7..], CultureInfo.InvariantCulture)) : Machines.Find(name);

    private static IEnumerable<LoopPicture> Pictures(Machines.Drawn drawn) =>
        from isPhone in new[] { false, true }
        from figures in new[] { LoopFigures.None, Machines.Figures(drawn) with { Marks = [.. drawn.Machine.Parts.Where((_, i) => i % 3 == 0).Select(p => new LoopMark(p.Name, "danger", "why")), new("charge", "serious", "why")] } }
        select LoopDrawing.Picture(drawn.Machine, drawn.Layout, figures, isPhone ? UnitSystem.Us : UnitSystem.Si, isPhone);

    [Theory]
    [MemberData(nameof(Names))]
    public void Signs_and_words_keep_apart(string name)
    {
        foreach (var picture in Pictures(Find(name)))
        {
            var frame = new Box(0, 0, picture.Size.Width, picture.Height);
            var boxes = picture.Signs.Select(s => (What: $"sign of {s.Part.Name}", s.Box, Part: (Part?)s.Part))
                .Concat(picture.Texts.Select(t => (What: $"words '{t.Rows[0][0].Text}' at {t.Place}", t.Box, Part: (Part?)null))).ToArray();
            foreach (var box in boxes) Assert.True(frame.Contains(box.Box), $"{picture.Size.Class}: {box.What} leaves the picture: {box.Box} in {frame}");
            for (var i = 0; i < boxes.Length; i++)
                for (var j = i + 1; j < boxes.Length; j++)
                    // A coil lies in or around its load.
                    if (!(boxes[i].Part is CoilPart or VesselPart or BlockPart && boxes[j].Part is CoilPart or VesselPart or BlockPart))
                        Assert.False(boxes[i].Box.Overlaps(boxes[j].Box), $"{picture.Size.Class}: {boxes[i].What} covers {boxes[j].What}");
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Lines_pass_through_no_sign_and_no_word(string name)
    {
        foreach (var picture in Pictures(Find(name)))
            foreach (var wire in picture.Wires)
                foreach (var stroke in Strokes(wire))
                {
                    foreach (var sign in picture.Signs) Assert.True(sign.Box.Grown(-6).LengthInside(stroke) == 0, $"{picture.Size.Class}: line {LoopFigures.PlaceOf(wire.Line)} crosses the sign of {sign.Part.Name}");
                    foreach (var text in picture.Texts) Assert.True(text.Box.Grown(1).LengthInside(stroke) == 0, $"{picture.Size.Class}: line {LoopFigures.PlaceOf(wire.Line)} crosses '{text.Rows[0][0].Text}' at {text.Place}");
                }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Lines_do_not_cross_one_another(string name)
    {
        foreach (var picture in Pictures(Find(name)))
            for (var i = 0; i < picture.Wires.Count; i++)
                for (var j = i + 1; j < picture.Wires.Count; j++)
                    foreach (var a in Strokes(picture.Wires[i]))
                        foreach (var b in Strokes(picture.Wires[j]))
                            Assert.False(Cross(a, b), $"{picture.Size.Class}: {LoopFigures.PlaceOf(picture.Wires[i].Line)} crosses {LoopFigures.PlaceOf(picture.Wires[j].Line)}");
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_part_and_every_line_is_there_by_name(string name)
    {
        var drawn = Find(name);
        foreach (var isPhone in new[] { false, true })
        {
            var svg = XElement.Parse(LoopDrawing.Svg(drawn.Machine, drawn.Layout, Machines.Figures(drawn), UnitSystem.Si, isPhone));
            var parts = svg.Descendants("g").Select(g => g.Attribute("data-part")?.Value).OfType<string>().Order(StringComparer.Ordinal);
            Assert.Equal(drawn.Machine.Parts.Select(p => p.Name).Order(StringComparer.Ordinal), parts);
            var lines = svg.Descendants("g").Select(g => g.Attribute("data-line")?.Value).OfType<string>().ToHashSet();
            Assert.All(drawn.Machine.Lines, l => Assert.Contains(LoopFigures.PlaceOf(l), lines));
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Legend_and_words_keep_apart_on_the_page(string name)
    {
        var drawn = Find(name);
        foreach (var isPhone in new[] { false, true })
        {
            var svg = XElement.Parse(LoopDrawing.Svg(drawn.Machine, drawn.Layout, Machines.Figures(drawn), UnitSystem.Si, isPhone));
            var texts = svg.Descendants("text").Where(t => t.Parent!.Attribute("transform") is null).Select(t => (t.Value, Box: BoxOf(t))).ToArray();
            var size = svg.Attribute("viewBox")!.Value.Split(' ').Select(Number).ToArray();
            for (var i = 0; i < texts.Length; i++)
            {
                Assert.True(new Box(0, 0, size[2], size[3]).Contains(texts[i].Box), $"'{texts[i].Value}' leaves the picture");
                for (var j = i + 1; j < texts.Length; j++) Assert.False(texts[i].Box.Overlaps(texts[j].Box), $"'{texts[i].Value}' covers '{texts[j].Value}'");
            }
        }
    }

    private static IEnumerable<Segment> Strokes(PlacedWire wire) => wire.Points.Zip(wire.Points.Skip(1), (a, b) => new Segment(a.X, a.Y, b.X, b.Y));

    // Upright against level: inside both, not at an end, where a branch begins.
    private static bool Cross(Segment a, Segment b)
    {
        var (upright, level) = Math.Abs(a.X1 - a.X2) < 0.5 ? (a, b) : (b, a);
        if (Math.Abs(upright.X1 - upright.X2) >= 0.5 || Math.Abs(level.Y1 - level.Y2) >= 0.5) return false;
        const double near = 3.5;
        return upright.X1 > Math.Min(level.X1, level.X2) + near && upright.X1 < Math.Max(level.X1, level.X2) - near
            && level.Y1 > Math.Min(upright.Y1, upright.Y2) + near && level.Y1 < Math.Max(upright.Y1, upright.Y2) - near;
    }

    private static Box BoxOf(XElement text)
    {
        var size = Number(text.Attribute("font-size")!.Value);
        var width = 0.97 * TextWidth.Of(text.Value, size, text.Attribute("class")!.Value is "name" or "warn");
        var x = Number(text.Attribute("x")!.Value);
        return new(text.Attribute("text-anchor")?.Value == "end" ? x - width : x, Number(text.Attribute("y")!.Value) - 0.76 * size, width, size);
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
