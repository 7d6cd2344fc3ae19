using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Coldwright.Report.Charts;
using Coldwright.Report.Rating;

namespace Coldwright.Report.Tests;

/// <summary>Every picture of every fake report: well-formed, inside its frame, labels apart.</summary>
public partial class PictureTests
{
    public static TheoryData<int> Reports => [.. Enumerable.Range(0, FakeRating.All.Count())];

    [Theory]
    [MemberData(nameof(Reports))]
    public void Drawings_are_well_formed_and_come_in_both_sizes(int report)
    {
        var drawings = Drawings(report);
        // A closed loop adds two pictures, its sensitivities two more; each is there twice.
        var closed = FakeRating.All.ElementAt(report).Result.Main.Closed;
        var pictures = 5 + (closed is null ? 0 : 2) + (closed?.Sensitivity is null ? 0 : 2);
        Assert.Equal(2 * pictures, drawings.Count);
        Assert.Equal(pictures, drawings.Count(d => d.Attribute("class")!.Value == "chart wide"));
        Assert.All(drawings, d => Assert.NotEmpty(d.Attribute("aria-label")!.Value));
        Assert.All(drawings, d => Assert.Contains(d.Descendants("title"), t => t.Value.Length > 3));
    }

    [Theory]
    [MemberData(nameof(Reports))]
    public void Labels_stay_inside_and_apart(int report)
    {
        foreach (var drawing in Drawings(report))
        {
            var frame = drawing.Attribute("viewBox")!.Value.Split(' ').Select(Number).ToArray();
            var boxes = drawing.Elements("text").Select(t => (Text: t.Value, Box: BoxOf(t))).ToArray();
            foreach (var (text, box) in boxes)
                Assert.True(box.X >= -0.5 && box.Y >= -0.5 && box.X + box.W <= frame[2] + 0.5 && box.Y + box.H <= frame[3] + 0.5, $"'{text}' leaves the picture");
            for (var i = 0; i < boxes.Length; i++)
                for (var j = i + 1; j < boxes.Length; j++)
                    Assert.False(Overlap(boxes[i].Box, boxes[j].Box), $"'{boxes[i].Text}' covers '{boxes[j].Text}'");
        }
    }

    [Theory]
    [MemberData(nameof(Reports))]
    public void Strokes_stay_inside(int report)
    {
        foreach (var drawing in Drawings(report))
        {
            var frame = drawing.Attribute("viewBox")!.Value.Split(' ').Select(Number).ToArray();
            foreach (var line in drawing.Elements("polyline"))
                foreach (var point in line.Attribute("points")!.Value.Split(' '))
                {
                    var xy = point.Split(',').Select(Number).ToArray();
                    Assert.InRange(xy[0], 0, frame[2]);
                    Assert.InRange(xy[1], 0, frame[3]);
                }
        }
    }

    [Fact]
    public void Ticks_are_round()
    {
        Assert.Equal([0, 20, 40, 60, 80, 100], Ticks.For(new Axis("", 0, 100, true), 6).Values);
        Assert.Equal([90, 95, 100, 105], Ticks.For(new Axis("", 88, 106, true), 5).Values);
        Assert.Equal(["0.0", "0.5", "1.0"], Ticks.For(new Axis("", 0, 0.9), 3).Values.Select(Ticks.For(new Axis("", 0, 0.9), 3).Text));
        Assert.Equal(["\u221220", "0", "20"], Ticks.For(new Axis("", -20, 20), 3).Values.Select(Ticks.For(new Axis("", -20, 20), 3).Text));
    }

    [Fact]
    public void Crowded_labels_are_left_out_rather_than_laid_over_one_another()
    {
        var chart = new LineChart
        {
            Description = "crowd",
            X = new("x", 0, 1),
            Y = new("y", 0, 1),
            Marks = [.. Enumerable.Range(0, 60).Select(i => new Mark(0.5, 0.5, Ink.Plain, [$"a rather long label {i}"]))],
        };
        var labels = XElement.Parse(chart.Draw(ChartSize.Phone)).Elements("text").Select(BoxOf).ToArray();
        for (var i = 0; i < labels.Length; i++)
            for (var j = i + 1; j < labels.Length; j++) Assert.False(Overlap(labels[i], labels[j]));
    }

    private static List<XElement> Drawings(int report) =>
        [.. Drawing().Matches(RatingPage.Write(FakeRating.All.ElementAt(report))).Select(m => XElement.Parse(m.Value))];

    // Nearly the cautious estimate by which the labels were placed: still wider than usual screen fonts.
    private static (double X, double Y, double W, double H) BoxOf(XElement text)
    {
        var size = Number(text.Attribute("font-size")!.Value);
        var width = 0.95 * TextWidth.Of(text.Value, size, text.Attribute("class")?.Value.Contains("bold") == true);
        var x = Number(text.Attribute("x")!.Value);
        var left = text.Attribute("text-anchor")?.Value switch { "middle" => x - width / 2, "end" => x - width, _ => x };
        return (left, Number(text.Attribute("y")!.Value) - 0.78 * size, width, size);
    }

    private static bool Overlap((double X, double Y, double W, double H) a, (double X, double Y, double W, double H) b) =>
        a.X < b.X + b.W && b.X < a.X + a.W && a.Y < b.Y + b.H && b.Y < a.Y + a.H;

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex("<svg.*?</svg>", RegexOptions.Singleline)]
    private static partial Regex Drawing();
}
