using Coldwright.Machine.Flow;
using Coldwright.Machine.HeatTransfer;
using CsCheck;

namespace Coldwright.Machine.Tests.HeatTransfer;

/// <summary>Published values: documentation of the open library "ht" (C. Bell, MIT licence), which names the papers.</summary>
public sealed class SinglePhaseTests
{
    [Fact] // V. Gnielinski 1976.
    public void Gnielinski() => Assert.Equal(254.627, SinglePhase.Nusselt(1e5, 1.2, 0.0185), 6e-4);

    [Fact] // Dittus-Boelter: heating and cooling.
    public void DittusBoelter()
    {
        Assert.Equal(247.400, SinglePhase.DittusBoelter(1e5, 1.2), 6e-4);
        Assert.Equal(242.931, SinglePhase.DittusBoelter(1e5, 1.2, 0.3), 6e-4);
    }

    [Fact] // Re 2e5, Pr 0.7, Di 0.01, Dc 0.2: Mori-Nakayama 1967, Schmidt 1967, Xin-Ebadian 1997.
    public void CoilsTurbulent()
    {
        Assert.Equal(496.252, CoilNusselt.MoriNakayama(2e5, 0.7, 0.05), 6e-4);
        Assert.Equal(466.257, CoilNusselt.SchmidtTurbulent(2e5, 0.7, 0.05), 6e-4);
        Assert.Equal(474.114, CoilNusselt.XinEbadian(2e5, 0.7, 0.05), 6e-4);
    }

    [Theory] // The default lies within one stated standard deviation of the three published values.
    [InlineData(496.252)]
    [InlineData(466.257)]
    [InlineData(474.114)]
    public void TheDefaultCoilLawAgreesWithTheOthers(double published) =>
        Assert.Equal(1, SinglePhase.NusseltCoiled(2e5, 0.7, 0.05) / published, SinglePhase.NusseltCoiledCorrelation.RelativeUncertainty);

    [Fact] // Graetz: 3.66 and 4.36 are exact results of theory.
    public void LaminarLiesBetweenTheTwoExactLimits()
    {
        Assert.InRange(SinglePhase.Nusselt(0, 1, 1), 3.657, 4.364);
        Assert.Equal(SinglePhase.Nusselt(0, 1, 1), SinglePhase.Nusselt(2300, 1, 1));
        Assert.Equal(3.66, CoilNusselt.Gnielinski(0, 1, 0.05), 1e-12);
    }

    [Fact]
    public void NoJumpInAnyRegime() =>
        Gen.Select(Gen.Double[0, 6.5], Gen.Double[0.6, 10], Gen.Double[0, 0.2]).Sample((logarithm, prandtl, coil) =>
        {
            double reynolds = Math.Pow(10, logarithm);
            Assert.Equal(1, Straight(reynolds * 1.0005, prandtl) / Straight(reynolds, prandtl), 0.01);
            Assert.Equal(
                1, SinglePhase.NusseltCoiled(reynolds * 1.0005, prandtl, coil) / SinglePhase.NusseltCoiled(reynolds, prandtl, coil), 0.01);
        });

    [Theory]
    [InlineData(2300)]
    [InlineData(4000)]
    [InlineData(22000)]
    public void NoJumpAtTheJoins(double reynolds)
    {
        Assert.Equal(1, Straight(reynolds * (1 + 1e-9), 2) / Straight(reynolds * (1 - 1e-9), 2), 1e-6);
        Assert.Equal(1, SinglePhase.NusseltCoiled(reynolds * (1 + 1e-9), 2, 0.05) / SinglePhase.NusseltCoiled(reynolds * (1 - 1e-9), 2, 0.05), 1e-6);
        double end = Friction.CoiledTransitionReynolds(0.05);
        Assert.Equal(1, SinglePhase.NusseltCoiled(end * (1 + 1e-9), 2, 0.05) / SinglePhase.NusseltCoiled(end * (1 - 1e-9), 2, 0.05), 1e-6);
    }

    [Fact]
    public void NoJumpFromStraightToCoiled()
    {
        foreach (double reynolds in (double[])[100, 2000, 5000, 1e5])
        {
            Assert.Equal(Straight(reynolds, 1), SinglePhase.NusseltCoiled(reynolds, 1, 0), 1e-9);
            Assert.Equal(1, SinglePhase.NusseltCoiled(reynolds, 1, 1e-6) / Straight(reynolds, 1), 1e-3);
            Assert.Equal(1, SinglePhase.NusseltCoiled(reynolds, 1, 0.01 - 1e-9) / SinglePhase.NusseltCoiled(reynolds, 1, 0.01), 1e-6);
        }
    }

    [Fact]
    public void RefusesNonsense()
    {
        Assert.Throws<ArgumentException>(() => SinglePhase.Nusselt(-1, 1, 0.02));
        Assert.Throws<ArgumentException>(() => SinglePhase.Nusselt(1e4, 0, 0.02));
        Assert.Throws<ArgumentException>(() => SinglePhase.NusseltCoiled(1e4, 1, -0.1));
    }

    private static double Straight(double reynolds, double prandtl) =>
        SinglePhase.Nusselt(reynolds, prandtl, Friction.Churchill(reynolds, 0));
}
