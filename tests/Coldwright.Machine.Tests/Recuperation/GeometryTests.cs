using Coldwright.Machine.Recuperation;

namespace Coldwright.Machine.Tests.Recuperation;

/// <summary>Shapes: areas, resistances, refusals.</summary>
public class GeometryTests
{
    [Fact]
    public void TubeInTubeAreasByHand()
    {
        var g = new TubeInTubeGeometry(0.006, 0.001, 3, 0.022, 0.001, 5);
        Assert.Equal(3 * Math.PI / 4 * 0.004 * 0.004, g.Hot.AreaM2, 1e-12);
        Assert.Equal(Math.PI / 4 * (0.020 * 0.020 - 3 * 0.006 * 0.006), g.Cold.AreaM2, 1e-12);
        Assert.Equal((0.020 * 0.020 - 3 * 0.006 * 0.006) / (0.020 + 3 * 0.006), g.Cold.HydraulicDiameterM, 1e-12);
        Assert.Equal(Math.PI * (3 * 0.005 * 0.001 + 0.021 * 0.001), g.MetalAreaM2, 1e-12);
        Assert.Equal(LeakReceiver.Cold, g.LeakReceiver);
        // both halves of the wall make up the whole: ln(do/di)/(2 pi k n)
        double films = 1 / (100 * g.Hot.HeatedPerimeterM) + 1 / (200 * g.Cold.HeatedPerimeterM), wall = Math.Log(1.5) / (2 * Math.PI * 10 * 3);
        Assert.Equal(films + wall, 1 / g.HotConductance(100, 10) + 1 / g.ColdConductance(200, 10), 1e-12);
    }

    [Fact]
    public void SolderedTubesGatherHeatAsFins()
    {
        var g = new SideBySideGeometry(0.008, 0.001, 0.010, 0.001, 0.003, 0, 5);
        // metal that conducts perfectly: the film acts on the whole circumference of the wall's middle
        Assert.Equal(500 * Math.PI * 0.007, g.HotConductance(500, 1e9), 1e-4);
        // metal that hardly conducts: only the bond's width is left, behind half the wall
        double poor = g.HotConductance(500, 1e-4);
        Assert.InRange(poor, 0, 500 * 0.003);
        Assert.True(g.HotConductance(500, 380) < g.HotConductance(500, 1e9) && g.HotConductance(500, 380) > 0.5 * 500 * 0.003);
        var bonded = new SideBySideGeometry(0.008, 0.001, 0.010, 0.001, 0.003, 0.0005, 5);
        Assert.Equal(0.0005 / (50 * 0.003), 1 / bonded.HotConductance(500, 300) + 1 / bonded.ColdConductance(400, 300) - 1 / g.HotConductance(500, 300) - 1 / g.ColdConductance(400, 300), 1e-12);
    }

    [Theory]
    [InlineData(0.006, 0.004, 1, 0.022, 0.001, 5, "wall of the inner tube")]
    [InlineData(0.006, 0.001, 0, 0.022, 0.001, 5, "number of inner tubes")]
    [InlineData(0.006, 0.001, 7, 0.018, 0.001, 5, "outer bore")]
    [InlineData(0.006, 0.001, 1, 0.022, 0.001, -5, "length")]
    public void BadTubesAreRefused(double inner, double innerWall, int count, double outer, double outerWall, double length, string says) =>
        Assert.Contains(says, Assert.Throws<ArgumentException>(() => new TubeInTubeGeometry(inner, innerWall, count, outer, outerWall, length)).Message);

    [Fact]
    public void BadOptionsAreRefused()
    {
        Assert.Contains("even", Assert.Throws<ArgumentException>(() => new DistributedRecuperator(RecuperatorSamples.Simple(), null, null, new RecuperatorOptions { Cells = 7 })).Message);
        Assert.Contains("leak", Assert.Throws<ArgumentException>(() => new DistributedRecuperator(RecuperatorSamples.Simple(), null, new RoomLeak(-1, 300))).Message);
        Assert.Contains("molar flow", Assert.Throws<ArgumentException>(() => new DistributedRecuperator(RecuperatorSamples.Simple()).Solve(0, 300, 1, 100)).Message);
        Assert.Contains("coil", Assert.Throws<ArgumentException>(() => new TubeInTubeGeometry(0.006, 0.001, 1, 0.022, 0.001, 5, 0.005)).Message);
    }
}
