using Coldwright.Machine.Insulation;
using Coldwright.Materials.Solids;

namespace Coldwright.Machine.Tests.Insulation;

/// <summary>Tubes, wires and supports through the wall.</summary>
public sealed class WallPenetrationTests
{
    private static readonly SolidMaterial Steel = SolidLibrary.Default.Find("stainless-304");

    /// <summary>304 from 77 to 300 K: 2705 W/m (NIST fit, evaluated by a second program); 1 mm2 over 0.1 m conducts 27 mW.</summary>
    [Fact]
    public void A_wire_conducts_its_integral()
    {
        var wire = new WallPenetration("wire", Steel, 1e-6, 0.1);
        Assert.Equal(0.02705, wire.PowerW(77, 300), 2e-5);
        Assert.Equal(0, wire.PowerW(295, 295));
        Assert.True(wire.PowerW(300, 77) < 0);
    }

    /// <summary>With a constant conductivity and outflow C the exact answer is C dT/(exp(C L/(k A)) - 1).</summary>
    [Fact]
    public void Gas_that_leaves_carries_the_heat_back()
    {
        var flat = new SolidMaterial("flat", "test", [], new MaterialProperty("conductivity of flat", "test", Provenance.Published, 0.1, "", [new PointsCurve([4, 400], [10, 10])]));
        foreach (var c in new[] { 1e-6, 1e-3, 1e-2, 0.05 })
        {
            var tube = new WallPenetration("tube", flat, 1e-5, 0.1, null, c);
            Assert.Equal(1, tube.PowerW(80, 300) / (c * 220 / (Math.Exp(c * 0.1 / (10 * 1e-5)) - 1)), 1e-6);
        }
        var steel = new WallPenetration("tube", Steel, 1e-5, 0.1, null, 1e-3);
        Assert.InRange(steel.PowerW(80, 300) / (steel with { OutflowWPerK = 0 }).PowerW(80, 300), 0.5, 0.8);
    }

    [Fact]
    public void Paths_add_up_with_their_bands()
    {
        var box = new InsulatedEnclosure(new BoxWall(0.3, 0.3, 0.4), [ConductingLayer.Of(SolidLibrary.Default.Find("polyurethane-foam"), 0.1)],
            [new("tube", SolidLibrary.Default.Find("copper"), 2e-5, 0.3), new("support", SolidLibrary.Default.Find("g10"), 1e-4, 0.1), new("warm tube", Steel, 1e-5, 0.1, 250)], 295, 0.5, new FixedFilm());
        var leak = EnclosureSolver.Solve(box, 90);
        Assert.Equal(leak.Paths.Sum(p => p.PowerW), leak.TotalW, 1e-12);
        Assert.Equal(4, leak.Paths.Count);
        Assert.Equal(2e-5 / 0.3 * SolidLibrary.Default.Find("copper").Integral(90, 295).Value, leak.Paths[1].PowerW, 1e-9);
        Assert.Equal(0.25, leak.Paths[1].DeviationW / leak.Paths[1].PowerW, 1e-9);
        Assert.Equal(1e-4 * Steel.Integral(250, 295).Value, leak.Paths[3].PowerW, 1e-9);
        Assert.True(leak.DeviationW < leak.Paths.Sum(p => p.DeviationW) && leak.DeviationW > leak.Paths.Max(p => p.DeviationW));
        Assert.Contains(leak.Warnings, w => w.Contains("copper-dhp", StringComparison.Ordinal));
    }

    [Fact]
    public void Bad_penetrations_are_refused()
    {
        Assert.Throws<ArgumentException>(() => new WallPenetration("w", Steel, -1, 0.1).PowerW(80, 300));
        Assert.Throws<ArgumentException>(() => new WallPenetration("w", Steel, 1e-6, 0).PowerW(80, 300));
        Assert.Throws<ArgumentException>(() => new WallPenetration("w", Steel, 1e-6, 0.1, null, -1).PowerW(80, 300));
    }
}
