using System.Text.RegularExpressions;
using System.Xml.Linq;
using Coldwright.Machine.Description;
using Coldwright.Report.Loops;
using Coldwright.Safety;

namespace Coldwright.Report.Tests.LoopDrawings;

public class DrawingTests
{
    private static string Svg(Machines.Drawn drawn, LoopFigures figures, UnitSystem units = UnitSystem.Si, bool isPhone = false, bool isClickable = false) =>
        LoopDrawing.Svg(drawn.Machine, drawn.Layout, figures, units, isPhone, isClickable: isClickable);

    [Fact]
    public void The_same_machine_gives_the_same_drawing() =>
        Assert.Equal(Svg(Machines.Workshop, Machines.Figures(Machines.Workshop)), Svg(Machines.Workshop, Machines.Figures(Machines.Workshop)));

    [Fact]
    public void Temperature_falls_downwards()
    {
        var picture = LoopDrawing.Picture(Machines.Workshop.Machine, Machines.Workshop.Layout, LoopFigures.None, UnitSystem.Si, isPhone: false);
        double Y<T>() where T : Part => picture.Signs.First(s => s.Part is T).Box.Y;
        double[] order = [Y<CompressorPart>(), Y<AftercoolerPart>(), Y<WarmExchangerPart>(), Y<PrecoolerPart>(), picture.ColdBox!.Outer.Y, Y<RecuperatorPart>(), Y<ThrottlePart>(), Y<VesselPart>(), picture.ColdBox.Outer.Bottom, Y<FlaskPart>()];
        Assert.Equal(order.Order(), order);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void What_is_cold_stands_in_the_box_and_the_rest_outside(bool isPhone)
    {
        foreach (var drawn in Machines.All.Where(d => d.Layout.ColdBox is not null))
        {
            var picture = LoopDrawing.Picture(drawn.Machine, drawn.Layout, Machines.Figures(drawn), UnitSystem.Si, isPhone);
            Assert.All(picture.Signs, s =>
            {
                if (s.Part is RecuperatorPart or ThrottlePart or CoilPart or VesselPart or BlockPart) Assert.True(picture.ColdBox!.Inner.Contains(s.Box), s.Part.Name);
                if (s.Part is CompressorPart or AftercoolerPart or WarmExchangerPart or PrecoolerPart or FeedPart or FlaskPart or BufferPart) Assert.False(picture.ColdBox!.Outer.Overlaps(s.Box), s.Part.Name);
            });
        }
    }

    [Fact]
    public void Letters_are_at_least_eleven_px_high_on_a_telephone_of_360_px()
    {
        // 42 px of a page's width go to margins and the figure's edge (PageStyle, telephones).
        foreach (var drawn in Machines.All)
        {
            var svg = XElement.Parse(Svg(drawn, Machines.Figures(drawn), isPhone: true));
            var width = double.Parse(svg.Attribute("viewBox")!.Value.Split(' ')[2], System.Globalization.CultureInfo.InvariantCulture);
            Assert.All(svg.Descendants("text"), t => Assert.InRange((360 - 42) / width * double.Parse(t.Attribute("font-size")!.Value, System.Globalization.CultureInfo.InvariantCulture), 11, 20));
        }
    }

    /// <summary>Without a precooler a closed loop has two points at one place, behind the aftercooler and ahead of the recuperator: each figure is written once.</summary>
    [Fact]
    public void AFigureStandsAtAPlaceOnce()
    {
        var main = FakeRating.Working.Result.Main;
        var twice = main with { Loop = main.Loop with { Points = [.. main.Loop.Points.SelectMany(p => new[] { p, p })] } };
        var entries = LoopFigures.From(twice, Machines.Workshop.Layout).Entries.Where(f => f.Kind is FigureKind.Temperature or FigureKind.Pressure).Select(f => (f.Place, f.Kind)).ToArray();
        Assert.Equal(entries.Distinct(), entries);
    }

    [Fact]
    public void A_closed_loop_brings_the_buffers_pressure_and_the_precoolers_temperature()
    {
        var figures = LoopFigures.From(FakeRating.Closed.Result.Main, Machines.Workshop.Layout).Entries;
        Assert.Contains(figures, f => f is { Place: "buffer", Kind: FigureKind.Pressure, Value: 7.37e5 });
        Assert.Contains(figures, f => f is { Place: "precooler", Kind: FigureKind.Temperature, Value: 225.9 });
        Assert.DoesNotContain(LoopFigures.From(FakeRating.Working.Result.Main, Machines.Workshop.Layout).Entries, f => f.Place == "buffer");
    }

    [Fact]
    public void Figures_are_in_the_readers_units_and_can_be_found_by_place()
    {
        LoopFigures figures = new() { Entries = [new("vessel", FigureKind.Temperature, 110), new("vessel", FigureKind.Pressure, 17e5), new("aftercooler to buffer", FigureKind.MassFlow, 1.5e-3)] };
        string Text(string svg, string kind) => XElement.Parse(svg).Descendants("text").Single(t => t.Attribute("data-figure")?.Value == kind).Value;
        Assert.Equal("110.0\u00a0K", Text(Svg(Machines.Workshop, figures), "Temperature"));
        Assert.Equal("17.0\u00a0bar abs", Text(Svg(Machines.Workshop, figures), "Pressure"));
        // 110 K = 110 * 1.8 - 459.67 degrees Fahrenheit (NIST SP 811, appendix B.8)
        Assert.Equal("\u2212261.7\u00a0°F", Text(Svg(Machines.Workshop, figures, UnitSystem.Us), "Temperature"));
    }

    [Theory]
    [InlineData(null)]
    [InlineData(double.NaN)]
    public void What_is_not_known_is_a_dash(double? value)
    {
        LoopFigures figures = new() { Entries = [new("vessel", FigureKind.Level, value)] };
        var svg = Svg(Machines.Workshop, figures);
        Assert.Contains(">level –\u00a0%<", svg);
        Assert.DoesNotContain("NaN", svg);
        Assert.Contains(LoopDrawing.Rows(Machines.Workshop.Machine, Machines.Workshop.Layout, figures, UnitSystem.Si), r => r[0] == "vessel" && r[2] == "level –\u00a0%");
    }

    [Fact]
    public void The_level_moves_the_liquid()
    {
        string Liquid(double level) => Regex.Match(Svg(Machines.Workshop, new() { Entries = [new("vessel", FigureKind.Level, level)] }), "class=\"surface\".*?d=\"([^\"]*)").Groups[1].Value;
        Assert.NotEqual(Liquid(0.2), Liquid(0.8));
        Assert.Equal(Liquid(1), Liquid(7));
    }

    [Fact]
    public void A_grave_finding_marks_its_part_with_flag_and_word_and_others_stand_at_the_head()
    {
        Finding Made(Grade grade, string part) => new("id", grade, part, null, null, "", "the rule", "source", "consequence", "do");
        var svg = XElement.Parse(Svg(Machines.Workshop, LoopFigures.None.With([Made(Grade.Serious, "vessel"), Made(Grade.Stop, "vessel"), Made(Grade.Stop, "charge"), Made(Grade.Caution, "coil")])));
        var vessel = svg.Descendants("g").Single(g => g.Attribute("data-part")?.Value == "vessel");
        Assert.Contains("marked", vessel.Attribute("class")!.Value);
        Assert.Equal("danger", vessel.Elements("text").First().Value);
        Assert.Contains(vessel.Elements("path"), p => p.Attribute("class")?.Value == "flag");
        Assert.Contains("the rule", vessel.Element("title")!.Value);
        Assert.Contains(svg.Elements("text"), t => t.Value == "charge: danger");
        Assert.Single(svg.Descendants("g"), g => g.Attribute("class")?.Value.Contains("marked") == true);
    }

    [Fact]
    public void The_table_has_every_figure_and_finding()
    {
        var figures = Machines.Figures(Machines.Workshop) with { Marks = [new("vessel", "danger", "why")] };
        var rows = LoopDrawing.Rows(Machines.Workshop.Machine, Machines.Workshop.Layout, figures, UnitSystem.Si);
        Assert.Equal(figures.Entries.Count + 1, rows.Count);
        Assert.Equal(["vessel", "danger", "why"], rows[0]);
    }

    [Fact]
    public void The_page_can_make_every_part_answer()
    {
        var svg = XElement.Parse(Svg(Machines.Workshop, LoopFigures.None, isClickable: true));
        Assert.Equal("group", svg.Attribute("role")!.Value);
        Assert.All(svg.Descendants("g").Where(g => g.Attribute("data-part") is not null || g.Attribute("data-line") is not null), g =>
        {
            Assert.Equal("0", g.Attribute("tabindex")!.Value);
            Assert.NotEmpty(g.Attribute("aria-label")!.Value);
        });
        Assert.DoesNotContain("tabindex", Svg(Machines.Workshop, LoopFigures.None));
    }

    [Fact]
    public void Asks_nothing_from_outside() => Assert.All(Machines.All, d => Assert.DoesNotMatch("""(src|href)\s*=|url\(|<script|http""", Svg(d, Machines.Figures(d)) + LoopStyle.Css));
}
