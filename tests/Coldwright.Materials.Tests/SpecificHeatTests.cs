using Coldwright.Materials.Solids;
using Xunit;

namespace Coldwright.Materials.Tests;

/// <summary>Specific heats, contraction, resistivity and density.</summary>
public sealed class SpecificHeatTests
{
    private static readonly SolidLibrary Library = SolidLibrary.Default;

    /// <summary>
    /// J/(kg K) at 77, 150 and 293 K and kJ/kg from 77 to 300 K. NIST cryogenic material fits, evaluated by a second program;
    /// PTFE at 77 and 293 K also from a third party's evaluation of the same fit (301.1157 and 1015.6568).
    /// </summary>
    [Theory]
    [InlineData("copper-ofhc", 195.9, 324.1, 389.1, 74.96)]
    [InlineData("copper-dhp", 195.9, 324.1, 389.1, 74.96)]
    [InlineData("stainless-304", 204.5, 362.1, 470.5, 86.6)]
    [InlineData("stainless-316", 204.6, 366.7, 485.3, 87.6)]
    [InlineData("aluminium-6061", 348.1, 713.0, 942.9, 168.9)]
    [InlineData("g10", 239.4, 489.3, 976.8, 138.8)]
    [InlineData("ptfe", 301.1157, 564.1, 1015.6568, 153.7)]
    public void Agrees_with_the_published_fits(string name, double at77, double at150, double at293, double kiloJoule)
    {
        var solid = Library.Find(name);
        Assert.Equal(1, solid.SpecificHeat(77).Value / at77, 1e-3);
        Assert.Equal(1, solid.SpecificHeat(150).Value / at150, 1e-3);
        Assert.Equal(1, solid.SpecificHeat(293).Value / at293, 1e-3);
        Assert.Equal(1, solid.EnthalpyRise(77, 300).Value / (1000 * kiloJoule), 1e-3);
        Assert.Null(solid.EnthalpyRise(77, 300).Warning);
        Assert.Equal(-solid.EnthalpyRise(77, 300).Value, solid.EnthalpyRise(300, 77).Value, 1e-6);
    }

    /// <summary>An independent compilation of copper: G. K. White, S. J. Collocott, J. Phys. Chem. Ref. Data 13 (1984) 1251; within the 5 % NIST states for its fit.</summary>
    [Theory]
    [InlineData(77, 192)]
    [InlineData(100, 252)]
    [InlineData(150, 323)]
    [InlineData(200, 356)]
    [InlineData(300, 386)]
    public void Copper_agrees_with_the_reference_compilation(double temperatureK, double expected) =>
        Assert.Equal(1, Library.Find("copper-ofhc").SpecificHeat(temperatureK).Value / expected, 0.025);

    /// <summary>Coefficient and integral of oxygen-free copper, 304 and 6061: NIST cryogenic material fits, evaluated by a second program.</summary>
    [Fact]
    public void Contraction_agrees_with_the_published_fits()
    {
        var copper = Library.Find("copper-ofhc").Expansion!;
        Assert.Equal(-0.304e-2, copper.Relative(77).Value, 0.0005e-2);
        foreach (var (t, alpha) in new[] { (77.0, 7.95e-6), (100, 10.49e-6), (200, 15.21e-6), (293, 16.57e-6) })
            Assert.Equal(1, (copper.Relative(t + 0.5).Value - copper.Relative(t - 0.5).Value) / alpha, 1e-3);
        Assert.Equal(-279.9e-5, Library.Find("stainless-304").Expansion!.Relative(77).Value, 0.1e-5);
        // the polynomials pass zero within 1e-5 of 293 K
        foreach (var name in new[] { "copper-ofhc", "stainless-304", "aluminium-6061" })
            Assert.Equal(0, Library.Find(name).Expansion!.Relative(293).Value, 2e-5);
        Assert.Equal(-389e-5, Library.Find("aluminium-6061").Expansion!.Relative(77).Value, 3e-5); // regression
        Assert.NotNull(copper.Relative(4).Warning);
    }

    /// <summary>R. A. Matula, J. Phys. Chem. Ref. Data 8 (1979) 1147: rho(77)/rho(295) of pure copper.</summary>
    [Fact]
    public void Resistivity_ratio_of_copper()
    {
        var rho = Library.Find("copper-ofhc").ResistivityCurve!;
        Assert.Equal(0.1235, rho.At(77).Value / rho.At(295).Value, 1e-3);
        Assert.Null(Library.Find("copper-dhp").ResistivityCurve);
    }

    [Fact]
    public void Every_solid_has_density_and_specific_heat_and_says_how_far_to_trust_them()
    {
        foreach (var solid in Library.Materials)
        {
            Assert.InRange(solid.Density!.KgPerM3, 15, 9000);
            Assert.InRange(solid.Density.RelativeUncertainty, 0.001, 0.5);
            Assert.InRange(solid.ConductivityCurve.RelativeUncertainty, 0.005, 0.5);
            for (var t = 77.0; t <= 300; t += 1) Assert.InRange(solid.SpecificHeat(t).Value, 100, 2000);
        }
    }

    [Fact]
    public void A_solid_without_specific_heat_says_so()
    {
        var bare = new SolidMaterial("bare", "a solid", [], new MaterialProperty("conductivity of bare", "test", Provenance.Published, 0.1, "", [new PointsCurve([70, 300], [1, 2])]));
        Assert.Null(bare.SpecificHeatCurve);
        Assert.Contains("bare", Assert.Throws<InvalidOperationException>(() => bare.SpecificHeat(100)).Message);
        Assert.Throws<ArgumentException>(() => new MaterialProperty("x", "test", Provenance.Published, 2, "", [new PointsCurve([70, 300], [1, 2])]));
        Assert.Throws<ArgumentException>(() => new MaterialProperty("x", "test", Provenance.Published, 0.1, "", []));
        Assert.Throws<ArgumentException>(() => new MaterialProperty("x", "test", Provenance.Published, 0.1, "", [new PointsCurve([70, 100], [1, 2]), new PointsCurve([110, 300], [1, 2])]));
    }
}
