using Coldwright.Machine.ColdVessel;
using Coldwright.Machine.HeatTransfer;
using Coldwright.Machine.Recuperation;
using static Coldwright.Machine.Tests.ColdVessel.ColdVesselSamples;

namespace Coldwright.Machine.Tests.ColdVessel;

/// <summary>Outside films against published values.</summary>
public class FilmAndConvectionTests
{
    // worked value in the documentation of the open library ht (C. Bell): Pr 0.69, Gr 2.63e9
    [Fact]
    public void CylinderMatchesTheWorkedValue() => Assert.Equal(139.13493970073597, FreeConvection.HorizontalCylinder(0.69 * 2.63e9, 0.69), 1e-9);

    // hot-water pipe of Cengel and Ghajar, Heat and Mass Transfer: Ra 1.867e6, Pr 0.7241, Nu 17.40 (numbers as quoted in a public repository's tests)
    [Fact]
    public void CylinderMatchesTheTextbookPipe() => Assert.Equal(17.40, FreeConvection.HorizontalCylinder(1.867e6, 0.7241), 0.02);

    // Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, example 9.2: Ra 1.813e9, Pr 0.690, Nu 147 (as quoted in a public repository's tests)
    [Fact]
    public void PlateMatchesTheTextbookScreen() => Assert.Equal(147, FreeConvection.VerticalPlate(1.813e9, 0.690), 0.5);

    [Fact]
    public void StillFluidConducts()
    {
        Assert.Equal(0.36, FreeConvection.HorizontalCylinder(0, 1), 1e-12);
        Assert.Equal(0.825 * 0.825, FreeConvection.VerticalPlate(0, 1), 1e-12);
        Assert.Throws<ArgumentException>(() => FreeConvection.HorizontalCylinder(-1, 1));
        Assert.Throws<ArgumentException>(() => FreeConvection.VerticalPlate(1, 0));
    }

    // twelve tubes, three below one another, steam at 40 C on surfaces of 30 C: numbers and formula of example 10-7 in Cengel, Heat and Mass Transfer, as read in
    // its public Scilab companion; the printed 9292 W/(m2 K) of the single tube of example 10-6 from memory
    [Fact]
    public void ATierOfThreeMatchesTheTextbook()
    {
        double latent = 2407e3 + 0.68 * 4178 * 10;
        double single = FilmCondensation.HorizontalTube(994, 0.05, 0.623, 0.720e-3, latent, 10, 0.03);
        Assert.Equal(9292, single, 0.003 * 9292);
        double formula = 0.729 * Math.Pow(9.81 * 994 * 994 * latent * Math.Pow(0.623, 3) / (0.720e-3 * 0.03 * 10), 0.25) / Math.Pow(3, 0.25);
        Assert.Equal(formula, single * RowCorrection.Mean(3, RowRule.Nusselt), 0.003 * formula);
    }

    // Hewitt, Shires, Bott, Process Heat Transfer (1994) p. 578, as read in the documentation of the open library ht: 1482.206 W/(m2 K)
    [Fact]
    public void PlateFilmIsTheCommonOne() => Assert.Equal(1482.206, FilmCondensation.VerticalPlate(585, 7.0, 0.091, 158.9e-6, 776900, 20, 0.1), 0.01);

    [Theory]
    [InlineData(RowRule.Kern)]
    [InlineData(RowRule.Nusselt)]
    [InlineData(RowRule.None)]
    public void RowsAddUpToTheirMean(RowRule rule)
    {
        double sum = 0;
        for (int n = 1; n <= 12; n++)
        {
            sum += RowCorrection.OfRow(n, rule);
            Assert.Equal(RowCorrection.Mean(n, rule), sum / n, 1e-12);
            Assert.InRange(RowCorrection.OfRow(n, rule), 0.3, 1);
        }
        Assert.Equal(1, RowCorrection.OfRow(0.5, rule));
        Assert.Throws<ArgumentException>(() => RowCorrection.Mean(0.5, rule));
    }

    [Fact]
    public void TheCoilUsesTheseFilms()
    {
        var r = (Case() with { Options = new ColdVesselOptions { Band = false } }).Solve();
        var top = r.Profile[^1];
        double dt = r.SaturationK!.Value - top.WallK, film = top.WallK + 0.31 * dt;
        var liquid = Nitrogen.Liquid(film);
        double h = FilmCondensation.HorizontalTube(liquid.Density, Nitrogen.Gas(Nitrogen.DewK!.Value).Density, liquid.Conductivity, liquid.Viscosity,
            Nitrogen.HeatOfCondensation + 0.68 * liquid.HeatCapacity * dt, dt, Coil.OutsideDiameterM);
        Assert.Equal(h, top.OutsideFilm, 1e-9 * h);
        var submerged = r.Profile.First(s => s.Zone == CoilZone.Submerged);
        ProductProperties wall = Nitrogen.Liquid(submerged.WallK), bulk = Nitrogen.Liquid(r.LiquidK), mean = Nitrogen.Liquid(0.5 * (submerged.WallK + r.LiquidK));
        double cp = (bulk.MassEnthalpy - wall.MassEnthalpy) / (r.LiquidK - submerged.WallK), d = Coil.OutsideDiameterM;
        double ra = 9.80665 * (wall.Density - bulk.Density) * mean.Density * cp * d * d * d / (mean.Viscosity * mean.Conductivity);
        double free = FreeConvection.HorizontalCylinder(ra, cp * mean.Viscosity / mean.Conductivity) * mean.Conductivity / d;
        Assert.Equal(free, submerged.OutsideFilm, 1e-9 * free);
    }

    [Fact]
    public void RowRulesOrderTheHeat()
    {
        double Heat(RowRule rule) => (Case(0) with { Options = new ColdVesselOptions { Band = false, Rows = rule } }).Solve().HeatW;
        Assert.True(Heat(RowRule.None) > Heat(RowRule.Kern));
        Assert.True(Heat(RowRule.Kern) > Heat(RowRule.Nusselt));
    }

    [Fact]
    public void AFixedFilmIsUsedAsGiven()
    {
        var r = (Case() with { Options = new ColdVesselOptions { Band = false, Condensing = new SideOptions(1234), Convection = new SideOptions(321), Inside = new SideOptions(567) } }).Solve();
        Assert.All(r.Profile, s => Assert.Equal(s.Zone == CoilZone.Condensing ? 1234 : 321, s.OutsideFilm));
        Assert.All(r.Profile, s => Assert.Equal(567, s.InsideFilm));
    }
}
