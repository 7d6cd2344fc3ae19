using Coldwright.Machine.HeatTransfer;

namespace Coldwright.Machine.Tests.HeatTransfer;

/// <summary>Published values: documentation of the open library "ht" (C. Bell, MIT licence); "book" where that quotes a printed example.</summary>
public sealed class CondensationTests
{
    private static readonly TwoPhaseFlow Wide = new()
    {
        MassFlux = 1 / (Math.PI / 4 * 0.3 * 0.3), Quality = 0.4, DiameterM = 0.3, LiquidDensity = 800, VapourDensity = 2.5,
        LiquidViscosity = 1e-5, VapourViscosity = 1e-3, LiquidConductivity = 0.6, LiquidHeatCapacity = 2300, ReducedPressure = 1e6 / 2e7,
    };

    private static readonly TwoPhaseFlow Book = new()
    {
        MassFlux = 500, Quality = 0.85, DiameterM = 0.03, LiquidDensity = 582.9, VapourDensity = 6.36,
        LiquidViscosity = 159e-6, LiquidConductivity = 0.098, LiquidHeatCapacity = 2520,
    };

    [Fact] // Book: Hewitt, Shires, Bott, Process Heat Transfer, 1994, p. 589.
    public void BoykoKruzhilin() => Assert.Equal(10598.66, Condensation.BoykoKruzhilin(Book), 0.01);

    [Fact]
    public void AkersDeansCrosser() =>
        Assert.Equal(7117.24, Condensation.AkersDeansCrosser(Book with { MassFlux = 0.35 / (Math.PI / 4 * 0.03 * 0.03) }), 0.01);

    [Fact]
    public void CavalliniSmithZecchin() => Assert.Equal(5578.218, Condensation.CavalliniSmithZecchin(Wide), 1e-3);

    [Fact]
    public void Shah() => Assert.Equal(2561.2593, Condensation.Shah(Wide), 1e-4);

    [Fact] // Book: Hewitt, Shires, Bott, Process Heat Transfer, 1994, p. 578.
    public void NusseltFilmOnAPlate() =>
        Assert.Equal(1482.206, FilmCondensation.VerticalPlate(585, 7, 0.091, 158.9e-6, 776900, 370 - 350, 0.1), 1e-3);

    [Fact] // Nusselt's theory by hand: plate of height L against tube of diameter L, 0.943 / 0.728.
    public void PlateAndTubeDifferByTheoryOnly()
    {
        double plate = FilmCondensation.VerticalPlate(585, 7, 0.091, 158.9e-6, 776900, 20, 0.01);
        double tube = FilmCondensation.HorizontalTube(585, 7, 0.091, 158.9e-6, 776900, 20, 0.01);
        Assert.Equal(0.9428 / 0.728, plate / tube, 1e-4);
    }

    [Fact]
    public void ShahIsTheLiquidAloneAtQualityZero() => Assert.Equal(
        SinglePhase.DittusBoelter(Wide.AllLiquidReynolds, Wide.LiquidPrandtl) * 0.6 / 0.3, Condensation.Shah(Wide with { Quality = 0 }), 1e-9);

    [Fact]
    public void MissingPropertyIsNamed()
    {
        var thrown = Assert.Throws<ArgumentException>(() => Condensation.Shah(Book));
        Assert.Contains("ReducedPressure", thrown.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => FilmCondensation.VerticalPlate(585, 7, 0.091, 158.9e-6, 776900, 0, 0.1));
    }
}
