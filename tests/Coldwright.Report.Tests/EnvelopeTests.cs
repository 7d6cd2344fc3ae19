using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Coldwright.Fluids.Envelopes;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.Substances;
using Coldwright.Report.Charts;
using Coldwright.Report.Envelopes;

namespace Coldwright.Report.Tests;

/// <summary>Envelope output of a mixture with every kind of line, traced once with the cubic model, in both systems of units and with a second model.</summary>
public partial class EnvelopeTests
{
    private static readonly Lazy<ModelEnvelope> Ternary = new(() => Trace(["nitrogen", "methane", "ethane"], [0.35, 0.3, 0.35]));

    public static TheoryData<bool, bool> Ways => new() { { false, false }, { true, false }, { false, true } };

    private static ModelEnvelope Trace(string[] names, double[] z)
    {
        var model = CubicModel.Create(names);
        return new(model.Name, EnvelopeTracer.Trace(model, z, new EnvelopeWindow { Scans = 10 }), ["a warning about < pairs & such"]);
    }

    /// <summary>Every note with a place is said in the reader's units.</summary>
    [Fact]
    public void Notes_are_said_in_the_readers_units()
    {
        var report = Report(us: true, two: false);
        var note = new EnvelopeNote("a line is interrupted at ", 150, 20e5, ": beyond it nothing is known");
        Assert.Equal("a line is interrupted at 150.0 K and 20.00 bar: beyond it nothing is known", note.ToString());
        Assert.Equal("a line is interrupted at -189.7 °F and 290.1 psia: beyond it nothing is known", report.Say(note, report.Readout(typographic: false)));
        Assert.Equal(note.ToString(), Report(us: false, two: false).Say(note, report.Readout(typographic: false)));
    }

    internal static EnvelopeReport Report(bool us, bool two) => new()
    {
        Mixture = new Composition(["nitrogen", "methane", "ethane"], [0.35, 0.3, 0.35]),
        Envelopes = two ? [Ternary.Value, Ternary.Value with { Model = "second" }] : [Ternary.Value],
        Units = us ? UnitSystem.Us : UnitSystem.Si,
    };

    [Theory]
    [MemberData(nameof(Ways))]
    public void The_screen_fits_a_terminal(bool us, bool two)
    {
        var lines = EnvelopeText.Write(Report(us, two), colour: false).TrimEnd('\n').Split('\n');
        Assert.InRange(lines.Length, 10, 40);
        Assert.All(lines, l => Assert.InRange(l.Length, 0, 88));
        Assert.All(lines, l => Assert.Equal(l.TrimEnd(), l));
        Assert.Contains(lines, l => l.Contains("Critical point"));
        Assert.Contains(lines, l => l.Contains(us ? "15.0 psia" : "1.00 bar abs"));
        Assert.Contains(lines, l => l.Contains("a warning about"));
    }

    [Theory]
    [MemberData(nameof(Ways))]
    public void Pictures_are_well_formed_with_labels_inside_and_apart(bool us, bool two)
    {
        var page = EnvelopePage.Write(Report(us, two));
        Assert.DoesNotContain("<script", page);
        Assert.DoesNotContain("http", page);
        Assert.Contains("&lt; pairs &amp; such", page);
        var drawings = Drawing().Matches(page).Select(m => XElement.Parse(m.Value)).ToArray();
        Assert.Equal(["chart wide", "chart phone"], drawings.Select(d => d.Attribute("class")!.Value));
        foreach (var drawing in drawings)
        {
            var frame = drawing.Attribute("viewBox")!.Value.Split(' ').Select(Number).ToArray();
            var boxes = drawing.Elements("text").Select(BoxOf).ToArray();
            Assert.All(boxes, b => Assert.True(b.X >= -0.5 && b.Y >= -0.5 && b.Right <= frame[2] + 0.5 && b.Bottom <= frame[3] + 0.5));
            for (var i = 0; i < boxes.Length; i++)
                for (var j = i + 1; j < boxes.Length; j++) Assert.False(boxes[i].Overlaps(boxes[j]), $"labels {i} and {j} cover one another");
            Assert.True(drawing.Elements("polyline").Count() >= 5);
            foreach (var point in drawing.Elements("polyline").SelectMany(l => l.Attribute("points")!.Value.Split(' ')).Select(p => p.Split(',').Select(Number).ToArray()))
            {
                Assert.InRange(point[0], 0, frame[2]);
                Assert.InRange(point[1], 0, frame[3]);
            }
        }
    }

    [Fact]
    public void Pressures_are_marked_at_1_2_and_5()
    {
        var picture = XElement.Parse(Drawing().Match(EnvelopePage.Write(Report(us: false, two: false))).Value);
        var marks = picture.Elements("text").Select(t => t.Value).ToArray();
        Assert.All((string[])["0.2", "0.5", "1", "2", "5", "10", "20", "50", "100"], m => Assert.Contains(m, marks));
        // equal ratios, equal heights
        double Y(string mark) => Number(picture.Elements("text").First(t => t.Value == mark).Attribute("y")!.Value);
        Assert.Equal(Y("1") - Y("10"), Y("10") - Y("100"), 0.05);
    }

    [Fact]
    public void Json_holds_what_the_schema_names()
    {
        using var document = JsonDocument.Parse(EnvelopeJson.Write(Report(us: false, two: true)));
        var root = document.RootElement;
        Assert.Equal("coldwright/envelope/1", root.GetProperty("schema").GetString());
        Assert.Equal(0.35, root.GetProperty("mixture").GetProperty("nitrogen").GetDouble(), 1e-12);
        foreach (var line in root.GetProperty("lines").EnumerateArray())
        {
            Assert.Contains(line.GetProperty("kind").GetString(), (string[])["bubble", "dew", "liquid_liquid", "three_phase", "freezing"]);
            Assert.Contains(" | ", line.GetProperty("between").GetString());
            Assert.True(line.GetProperty("temperature_K").GetArrayLength() > 1);
            Assert.Equal(line.GetProperty("temperature_K").GetArrayLength(), line.GetProperty("pressure_Pa").GetArrayLength());
        }
        var critical = root.GetProperty("critical_points")[0];
        Assert.True(critical.GetProperty("stable").GetBoolean());
        Assert.True(critical.GetProperty("density_mol_m3").GetDouble() > 1000);
        Assert.True(root.GetProperty("cricondenbar").GetProperty("pressure_Pa").GetDouble() >= critical.GetProperty("pressure_Pa").GetDouble() - 1);
        Assert.True(root.GetProperty("cricondentherm").GetProperty("temperature_K").GetDouble() >= critical.GetProperty("temperature_K").GetDouble() - 0.01);
        Assert.Equal("second", root.GetProperty("second_opinion").GetProperty("model").GetString());
        Assert.NotEqual(0, root.GetProperty("warnings").GetArrayLength());
        Assert.Equal(0, root.GetProperty("findings").GetArrayLength());
    }

    [Fact]
    public void The_table_holds_every_point()
    {
        var report = Report(us: false, two: false);
        using var text = new StringWriter();
        EnvelopeCsv.Write(report, text);
        var rows = text.ToString().TrimEnd('\n').Split('\n');
        Assert.Equal("model,line,kind,between,T_K,p_Pa", rows[0]);
        var envelope = report.Main.Envelope;
        Assert.Equal(1 + envelope.Lines.Sum(l => l.Points.Count) + envelope.CriticalPoints.Count, rows.Length);
        Assert.All(rows, r => Assert.Equal(6, r.Split(',').Length));
    }

    // nearly the estimate by which the labels were placed
    private static Box BoxOf(XElement text)
    {
        var size = Number(text.Attribute("font-size")!.Value);
        var width = 0.95 * TextWidth.Of(text.Value, size, text.Attribute("class")?.Value.Contains("bold") == true);
        var x = Number(text.Attribute("x")!.Value);
        return new(text.Attribute("text-anchor")?.Value switch { "middle" => x - width / 2, "end" => x - width, _ => x }, Number(text.Attribute("y")!.Value) - 0.78 * size, width, size);
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex("<svg.*?</svg>", RegexOptions.Singleline)]
    private static partial Regex Drawing();
}
