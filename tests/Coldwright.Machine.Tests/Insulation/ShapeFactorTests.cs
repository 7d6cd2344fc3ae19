using Coldwright.Machine.Insulation;

namespace Coldwright.Machine.Tests.Insulation;

/// <summary>Shape factors against exact solutions, published fits and our own solution of Laplace's equation.</summary>
public sealed class ShapeFactorTests
{
    /// <summary>Textbook solutions in closed form.</summary>
    [Fact]
    public void Spheres_and_cylinders_are_exact()
    {
        Assert.Equal(4 * Math.PI / (1 / 0.1 - 1 / 0.3), ConductionShapeFactors.ConcentricSpheres(0.1, 0.3), 1e-12);
        Assert.Equal(2 * Math.PI * 2 / Math.Log(3), ConductionShapeFactors.ConcentricCylinders(2, 0.1, 0.3), 1e-12);
        // thin shells are flat walls
        Assert.Equal(1, ConductionShapeFactors.ConcentricSpheres(1, 1 + 1e-9) * 1e-9 / (4 * Math.PI), 1e-7);
        Assert.Equal(1, ConductionShapeFactors.ConcentricCylinders(1, 1, 1 + 1e-9) * 1e-9 / (2 * Math.PI), 1e-7);
        Assert.Throws<ArgumentException>(() => ConductionShapeFactors.ConcentricSpheres(0.3, 0.1));
        foreach (var bad in new WallShape[] { new FlatWall(0), new CylinderWall(0.1, -1), new CylinderWall(0, 1), new SphereWall(double.NaN), new BoxWall(0.1, 0, 0.1) })
            Assert.Throws<ArgumentException>(() => bad.ShapeFactorM(0, 0.1));
    }

    /// <summary>Volumes and areas belong together: dV/dx = A.</summary>
    [Fact]
    public void Volume_grows_by_the_area()
    {
        foreach (var shape in new WallShape[] { new FlatWall(0.7), new CylinderWall(0.2, 0.5), new SphereWall(0.3), new BoxWall(0.3, 0.4, 0.5) })
            foreach (var x in new[] { 0.01, 0.1 })
                Assert.Equal(1, (shape.VolumeM3(x + 1e-5) - shape.VolumeM3(x - 1e-5)) / (2e-5 * shape.AreaM2(x)), 1e-6);
    }

    /// <summary>
    /// A square line in a square shield of twice its size: S = 10.234 per metre (exact, F. Bowman, Proc. London Math. Soc. 39 (1935) 205; from memory), and the
    /// published fits 2 pi L/(0.785 ln(W/w)), 2 pi L/(0.930 ln(W/w) - 0.0502) (Incropera and DeWitt, table 4.1), which lie 2 to 7 % above.
    /// 1 - (2/pi) ln 2 = 0.5587: P. M. Hall, Thin Solid Films 1 (1968) 277 gives 0.559 squares for the bend.
    /// </summary>
    [Fact]
    public void Square_in_square_agrees_with_the_exact_value_and_the_published_fit()
    {
        Assert.Equal(0.559, ConductionShapeFactors.EdgePerLength, 5e-4);
        Assert.Equal(10.234, ConductionShapeFactors.SquareInSquare(1, 1, 2), 2e-3);
        Assert.Equal(ConductionShapeFactors.SquareInSquare(1, 1, 3), ConductionShapeFactors.SquareInSquare(1, 1, 3 + 1e-9), 0.01);
        foreach (var ratio in new[] { 1.15, 1.25, 1.39, 1.5, 2, 3, 5 })
        {
            var fit = 2 * Math.PI / (ratio < 1.4 ? 0.785 * Math.Log(ratio) : 0.930 * Math.Log(ratio) - 0.0502);
            Assert.InRange(fit / ConductionShapeFactors.SquareInSquare(1, 1, ratio), 1, 1.08);
        }
    }

    /// <summary>Our own solution of Laplace's equation for a long bar: the difference of two lengths has no ends in it and is the exact square.</summary>
    [Fact]
    public void Laplace_solution_agrees_with_the_exact_square()
    {
        const double unit = 0.05;
        var perLength = (LaplaceBox.ShapeFactor([8, 8, 24], 8, unit) - LaplaceBox.ShapeFactor([8, 8, 16], 8, unit)) / (16 * unit);
        Assert.Equal(1, perLength / ConductionShapeFactors.SquareInSquare(1, 1, 2), 0.002);
    }

    /// <summary>A round tube in a square lies between the circles inscribed and circumscribed, whose solutions are exact.</summary>
    [Fact]
    public void Tube_in_square_lies_between_two_circles()
    {
        foreach (var w in new[] { 1.5, 2, 4 })
            Assert.InRange(ConductionShapeFactors.CylinderInSquare(1, 1, w),
                ConductionShapeFactors.ConcentricCylinders(1, 1, w * Math.Sqrt(2)), ConductionShapeFactors.ConcentricCylinders(1, 1, w));
    }

    /// <summary>
    /// The box rule of Langmuir, Adams and Meikle (Trans. Am. Electrochem. Soc. 24 (1913) 53) against Laplace's equation solved here in three dimensions:
    /// within 2 % from walls of a quarter of the inside up to walls as thick as the inside.
    /// </summary>
    [Theory]
    [InlineData(8, 8, 8, 4)]
    [InlineData(6, 6, 6, 6)]
    [InlineData(4, 6, 8, 6)]
    [InlineData(4, 4, 4, 8)]
    public void Box_rule_agrees_with_laplace(int a, int b, int c, int wall)
    {
        const double unit = 0.0125;
        var numerical = LaplaceBox.ShapeFactor([a, b, c], wall, unit);
        var rule = BoxShapeFactor.Of((2 * a * unit, 2 * b * unit, 2 * c * unit), wall * unit).ShapeFactorM;
        Assert.InRange(rule / numerical, 0.98, 1.02);
    }
}
