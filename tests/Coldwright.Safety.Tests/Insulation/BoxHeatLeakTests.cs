using Coldwright.Machine.Description;
using Coldwright.Machine.Insulation;
using Coldwright.Materials.Solids;
using Xunit;

namespace Coldwright.Safety.Tests.Insulation;

/// <summary>Heat leak of the cold box: the shape factor, the film in series, tubes and wires.</summary>
public sealed class BoxHeatLeakTests
{
    private static readonly SolidLibrary Solids = SolidLibrary.Default;

    /// <summary>Langmuir, Adams, Meikle 1913, by hand for a cube of 1 m with 0.1 m of wall: 60 + 0.54 x 12 + 0.15 x 8 x 0.1 = 66.6 m.</summary>
    [Fact]
    public void Shape_factor_of_a_cube()
    {
        var shape = BoxShapeFactor.Of((1, 1, 1), 0.1);
        Assert.Equal(66.6, shape.ShapeFactorM, 1e-12);
        Assert.Equal(6 * 1.2 * 1.2, shape.OutsideAreaM2, 1e-12);
        Assert.Null(shape.Warning);
        Assert.Contains("fifth", BoxShapeFactor.Of((0.02, 1, 1), 0.2).Warning);
    }

    /// <summary>Any wall obeys this: more than the inside faces alone, less than the outside faces over the wall.</summary>
    [Fact]
    public void Shape_factor_lies_between_inside_and_outside_faces()
    {
        foreach (var wall in (double[])[0.01, 0.05, 0.1, 0.2])
        {
            var shape = BoxShapeFactor.Of((0.3, 0.25, 0.4), wall);
            Assert.InRange(shape.ShapeFactorM, 2 * (0.3 * 0.25 + 0.25 * 0.4 + 0.3 * 0.4) / wall, shape.OutsideAreaM2 / wall);
        }
    }

    /// <summary>Glass wool has one mean value, so wall and film are two resistances in series: by hand.</summary>
    [Fact]
    public void A_wall_of_constant_conductivity_is_two_resistances_in_series()
    {
        var machine = Bench("glass-wool") with { Lines = [] };
        var shape = BoxShapeFactor.Of((0.3, 0.3, 0.4), 0.1);
        var leak = new BoxHeatLeak(machine, Solids).At(90, 250);
        var expected = (295.0 - 90) / (1 / (0.0325 * shape.ShapeFactorM) + 0.13 / shape.OutsideAreaM2);
        Assert.Equal(expected, leak.ColdEndW, 1e-8);
        Assert.Equal(295 - expected * 0.13 / shape.OutsideAreaM2, leak.OutsideSurfaceTemperatureK, 1e-7);
        Assert.Contains(leak.Warnings, w => w.Contains("from memory", StringComparison.Ordinal));
    }

    [Fact]
    public void The_leak_falls_as_the_inside_warms_and_vanishes_at_room_temperature()
    {
        var box = new BoxHeatLeak(Bench("polyurethane-foam"), Solids);
        var last = double.PositiveInfinity;
        for (var t = 77.0; t < 295; t += 2)
        {
            var now = box.At(t, 250).ColdEndW;
            Assert.True(now < last && now > 0);
            last = now;
        }
        Assert.Equal(0, box.At(295, 295).ColdEndW + box.At(295, 295).WarmEndW, 1e-9);
    }

    [Fact]
    public void Tubes_of_the_recuperator_end_warm_and_others_cold()
    {
        var leak = new BoxHeatLeak(Bench("polyurethane-foam"), Solids).At(90, 250);
        var warm = leak.Paths.Where(p => p.End == LeakEnd.Warm).Select(p => p.Name);
        Assert.Equal(["tube precooler.high to recuperator.high", "tube recuperator.low to compressor", "tube bottle to recuperator.feed"], warm);
        Assert.Contains(leak.Paths, p => p.Name == "tube vessel to outlet" && p.End == LeakEnd.Cold);
        Assert.DoesNotContain(leak.Paths, p => p.Name.Contains("capillary", StringComparison.Ordinal));

        // 1/4 in ACR by hand: metal (0.25^2 - 0.19^2) pi/4 in2 over 0.1 m of wall times the integral of straight lines 135 to 340 W/(m K).
        var area = Math.PI / 4 * (0.25 * 0.25 - 0.19 * 0.19) * 0.0254 * 0.0254;
        var slope = (340.0 - 135) / (300 - 77);
        double K(double t) => 135 + slope * (t - 77);
        var expected = area / 0.1 * (K(90) + K(295)) / 2 * (295 - 90);
        Assert.Equal(expected, leak.Paths.Single(p => p.Name == "tube vessel to outlet").PowerW, 1e-6);
    }

    [Fact]
    public void Wires_count_and_bad_boxes_are_refused()
    {
        var machine = Bench("polyurethane-foam");
        var wired = machine.With<ColdBoxPart>(b => b with { Penetrations = [("stainless-304", 1e-5, 0.15)] });
        var path = new BoxHeatLeak(wired, Solids).At(77, 250).Paths.Single(p => p.Name == "penetration 1 stainless-304");
        Assert.Equal(1e-5 / 0.15 * Solids.Find("stainless-304").Integral(77, 295).Value, path.PowerW, 1e-9);

        Assert.Throws<ArgumentException>(() => new BoxHeatLeak(machine.Without("box"), Solids));
        Assert.Throws<ArgumentException>(() => new BoxHeatLeak(Bench("straw"), Solids));
        var joined = machine with { Lines = [Workbench.Join("vessel", "outlet")] };
        Assert.Contains(new BoxHeatLeak(joined, Solids).At(90, 250).Warnings, w => w.Contains("without a tube", StringComparison.Ordinal));
    }

    private static MachineDescription Bench(string insulation) => Workbench.Sound.With<ColdBoxPart>(b => b with { Insulation = insulation });
}
