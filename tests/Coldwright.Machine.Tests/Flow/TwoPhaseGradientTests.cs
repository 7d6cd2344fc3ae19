using Coldwright.Machine.Flow;
using CsCheck;

namespace Coldwright.Machine.Tests.Flow;

/// <summary>0.6 kg/s, quality 0.1, bore 50 mm: S. M. Ghiaasiaan, Two-Phase Flow, Boiling and Condensation, worked example (chapter 8).</summary>
public sealed class TwoPhaseGradientTests
{
    private const double Bore = 0.05;
    private const double LiquidDensity = 915;
    private const double VapourDensity = 2.67;
    private const double LiquidViscosity = 180e-6;
    private const double VapourViscosity = 14e-6;
    private const double Tension = 0.0487;
    private static readonly double Flux = 0.6 / (Math.PI / 4 * Bore * Bore);

    // The book's value as quoted in the fluids documentation: 738.65 Pa over 1 m. 1 % is the spread between smooth-tube laws.
    [Fact]
    public void FriedelOfTheBook() => Assert.Equal(1, Friedel(Flux, 0.1) / 738.65, 0.01);

    [Fact] // H. Mueller-Steinhagen, K. Heck 1986; fluids documentation, 793.447 Pa.
    public void MuellerSteinhagenHeckAtItsPublishedPoint()
    {
        Assert.Equal(1, Heck(Flux, 0.1) / 793.447, 0.005);
        double liquid = FrictionTests.SmoothTube(Flux * Bore / LiquidViscosity) * Flux * Flux / (2 * LiquidDensity * Bore);
        double vapour = FrictionTests.SmoothTube(Flux * Bore / VapourViscosity) * Flux * Flux / (2 * VapourDensity * Bore);
        Assert.Equal(1, TwoPhaseGradient.MuellerSteinhagenHeck(0.1, liquid, vapour) / 793.447, 2e-5);
    }

    // Fluids documentation, same case: the spread of published laws is the honest band of any of them.
    [Theory]
    [InlineData("Lockhart-Martinelli (Chisholm)", 716.47)]
    [InlineData("Kim-Mudawar", 840.41)]
    [InlineData("Mishima-Hibiki", 732.43)]
    [InlineData("Zhang-Webb", 712.10)]
    public void OtherLawsLieWithinTheStatedUncertainty(string law, double published) =>
        Assert.True(
            Math.Abs((Heck(Flux, 0.1) / published) - 1) < TwoPhaseGradient.MuellerSteinhagenHeckCorrelation.RelativeUncertainty, law);

    [Theory] // The two laws that stand apart: within two standard deviations of ours.
    [InlineData("Chisholm", 1084.15)]
    [InlineData("Gronnerud", 384.13)]
    public void TheOutlyingLawsLieWithinTwo(string law, double published) =>
        Assert.True(
            Math.Abs((published / Heck(Flux, 0.1)) - 1) < 2 * TwoPhaseGradient.MuellerSteinhagenHeckCorrelation.RelativeUncertainty, law);

    [Fact]
    public void EndsAreTheSinglePhases() =>
        Gen.Select(Gen.Double[0.1, 2000], Gen.Double[0, 0.1]).Sample((flux, coil) =>
        {
            double liquid = PressureGradient.SinglePhase(flux, Bore, LiquidDensity, LiquidViscosity, 1e-4, coil);
            double vapour = PressureGradient.SinglePhase(flux, Bore, VapourDensity, VapourViscosity, 1e-4, coil);
            foreach ((double quality, double alone) in ((double, double)[])[(0, liquid), (1, vapour)])
            {
                double heck = TwoPhaseGradient.MuellerSteinhagenHeck(
                    flux, quality, Bore, LiquidDensity, VapourDensity, LiquidViscosity, VapourViscosity, 1e-4, coil);
                double friedel = TwoPhaseGradient.Friedel(
                    flux, quality, Bore, LiquidDensity, VapourDensity, LiquidViscosity, VapourViscosity, Tension, 1e-4, coil);
                Assert.Equal(1, heck / alone, 1e-12);
                Assert.Equal(1, friedel / alone, 1e-12);
            }
        });

    [Fact]
    public void NoFlowNoLoss()
    {
        Assert.Equal(0, Heck(0, 0.5));
        Assert.Equal(0, Friedel(0, 0.5));
    }

    [Fact] // Hagen-Poiseuille, exact.
    public void CreepingFlow() =>
        Assert.Equal(1, PressureGradient.SinglePhase(1e-7, Bore, 915, 180e-6) / (32 * 180e-6 * 1e-7 / 915 / Bore / Bore), 1e-12);

    [Fact]
    public void NoJumpAlongTheQuality() =>
        Gen.Select(Gen.Double[0.01, 0.98], Gen.Double[1, 1000]).Sample((quality, flux) =>
        {
            Assert.Equal(1, Heck(flux, quality + 1e-5) / Heck(flux, quality), 0.01);
            Assert.Equal(1, Friedel(flux, quality + 1e-5) / Friedel(flux, quality), 0.01);
        });

    private static double Heck(double flux, double quality) => TwoPhaseGradient.MuellerSteinhagenHeck(
        flux, quality, Bore, LiquidDensity, VapourDensity, LiquidViscosity, VapourViscosity);

    private static double Friedel(double flux, double quality) => TwoPhaseGradient.Friedel(
        flux, quality, Bore, LiquidDensity, VapourDensity, LiquidViscosity, VapourViscosity, Tension);
}
