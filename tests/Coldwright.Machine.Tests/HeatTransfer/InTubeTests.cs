using Coldwright.Machine.HeatTransfer;
using CsCheck;

namespace Coldwright.Machine.Tests.HeatTransfer;

/// <summary>The joined coefficients: limits, continuity, order. Cold nitrogen-hydrocarbon flow in a 5 mm tube; magnitudes, not data.</summary>
public sealed class InTubeTests
{
    private static readonly TwoPhaseFlow Cold = new()
    {
        MassFlux = 120, Quality = 0.5, DiameterM = 0.005, LiquidDensity = 620, VapourDensity = 25, LiquidViscosity = 1.8e-4,
        VapourViscosity = 9e-6, LiquidConductivity = 0.13, VapourConductivity = 0.017, LiquidHeatCapacity = 2200,
        VapourHeatCapacity = 1500, LatentHeat = 3e5, ReducedPressure = 0.35,
    };

    [Theory]
    [InlineData(0)]
    [InlineData(0.04)]
    public void EndsAreTheSinglePhases(double coil)
    {
        double liquid = InTube.OnePhase(120, 0.005, 1.8e-4, 0.13, 2200, coil);
        double vapour = InTube.OnePhase(120, 0.005, 9e-6, 0.017, 1500, coil);
        Assert.Equal(liquid, InTube.Condensing(Cold with { Quality = 0 }, 0, coil), 1e-9 * liquid);
        Assert.Equal(liquid, InTube.BoilingFlow(Cold with { Quality = 0 }, 5000, 0, coil), 1e-9 * liquid);
        Assert.Equal(vapour, InTube.Condensing(Cold with { Quality = 1 }, 1, coil), 1e-9 * vapour);
        Assert.Equal(vapour, InTube.BoilingFlow(Cold with { Quality = 1 }, 5000, 1, coil), 1e-9 * vapour);
    }

    [Fact]
    public void NoJumpAlongTheQuality() =>
        Gen.Select(Gen.Double[0, 0.9999], Gen.Double[5, 600], Gen.Double[0, 0.6], Gen.Double[0, 0.1]).Sample((quality, flux, share, coil) =>
        {
            TwoPhaseFlow here = Cold with { Quality = quality, MassFlux = flux };
            TwoPhaseFlow next = here with { Quality = quality + 1e-5 };
            Assert.Equal(1, InTube.Condensing(next, share, coil) / InTube.Condensing(here, share, coil), 0.01);
            Assert.Equal(1, InTube.BoilingFlow(next, 3000, share, coil) / InTube.BoilingFlow(here, 3000, share, coil), 0.01);
        });

    [Fact]
    public void TwoPhaseBeatsVapourAndTheGlideCosts()
    {
        double vapour = InTube.OnePhase(60, 0.005, 9e-6, 0.017, 1500);
        foreach (double share in (double[])[0.05, 0.2, 0.5])
        {
            double pure = InTube.Condensing(Cold, 0);
            double mixed = InTube.Condensing(Cold, share);
            Assert.True(mixed < pure);
            Assert.InRange(mixed, 1 / ((1 / pure) + (1 / vapour)), pure);
            Assert.True(InTube.BoilingFlow(Cold, 3000, share) < InTube.BoilingFlow(Cold, 3000, 0));
        }
    }

    [Fact] // L. Silver 1947, K. J. Bell and M. A. Ghaly 1973, by hand.
    public void SilverBellGhalyByHand()
    {
        Assert.Equal(1 / ((1 / 2000.0) + (0.3 / 300)), MixtureCorrection.SilverBellGhaly(2000, 300, 0.3), 1e-9);
        Assert.Equal(2000, MixtureCorrection.SilverBellGhaly(2000, 0, 0));
        Assert.Equal(0.5 * 1500 / 4000, MixtureCorrection.SensibleShare(0.5, 1500, 1.0 / 4000), 1e-12);
        Assert.Equal(0, MixtureCorrection.SensibleShare(0.5, 1500, -1e-12));
        Assert.Equal(1, MixtureCorrection.SensibleShare(1, 1500, 1.0 / 1500));
        Assert.Throws<ArgumentException>(() => MixtureCorrection.SensibleShare(0.5, 1500, double.NaN));
    }

    [Fact]
    public void OutsideTheDataIsSaid()
    {
        Assert.Contains(FlowRange.Condensing(Cold), w => w.Contains("bore 5 mm is below its data (7 mm)", StringComparison.Ordinal));
        Assert.Empty(FlowRange.Condensing(Cold with { DiameterM = 0.008 }));
        Assert.Empty(FlowRange.Boiling(Cold));
        Assert.Single(FlowRange.Boiling(Cold with { MassFlux = 5 }));
    }

    [Fact] // regression
    public void Regression()
    {
        Assert.Equal(2351.5, InTube.Condensing(Cold, 0), 0.5);
        Assert.Equal(869, InTube.Condensing(Cold, 0.2), 1.0);
        Assert.Equal(2156, InTube.BoilingFlow(Cold, 3000, 0), 0.5);
        Assert.Equal(841, InTube.BoilingFlow(Cold, 3000, 0.2), 1.0);
    }

    [Fact] // The four published condensation laws, and the two boiling laws, on the flow of a small cooler: the spread is the band.
    public void TheDefaultsLieAmongThePublishedLaws()
    {
        double shah = Condensation.Shah(Cold);
        Assert.InRange(Condensation.BoykoKruzhilin(Cold) / shah, 0.82, 1.18);
        Assert.InRange(Condensation.CavalliniSmithZecchin(Cold) / shah, 0.7, 1.3);
        double winterton = Boiling.LiuWintertonAtFlux(Cold with { MolarMass = 0.03 }, 3000);
        Assert.InRange(Boiling.GungorWinterton(Cold, 3000) / winterton, 0.5, 1.5);
    }

    [Fact] // A mixture can be in two phases above its pseudo-critical pressure; the coefficient must still exist.
    public void AboveThePseudoCriticalPressure() =>
        Assert.True(InTube.Condensing(Cold with { ReducedPressure = 1.2 }, 0) > 0);
}
