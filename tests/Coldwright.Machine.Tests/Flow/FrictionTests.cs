using Coldwright.Machine.Flow;
using CsCheck;

namespace Coldwright.Machine.Tests.Flow;

/// <summary>
/// Published values: worked values in the documentation of the open library "fluids" (C. Bell, MIT licence), which names the papers.
/// </summary>
public sealed class FrictionTests
{
    // S. W. Churchill, Chem. Eng. 84(24), 1977, 91; value from the fluids documentation.
    [Fact]
    public void ChurchillAtItsPublishedPoint() => Assert.Equal(0.01846262, Friction.Churchill(1e5, 1e-4), 5e-9);

    [Theory]
    [InlineData(0.01851387)] // Colebrook
    [InlineData(0.01826505)] // Haaland
    [InlineData(0.01845242)] // Swamee-Jain
    public void ChurchillAgreesWithTheOtherExplicitForms(double published) =>
        Assert.Equal(1, Friction.Churchill(1e5, 1e-4) / published, 0.012);

    [Fact]
    public void LaminarLawIsMetFromBelow()
    {
        Assert.Equal(1, Friction.Churchill(1, 1e-4) / 64, 1e-9);
        Assert.Equal(1, Friction.Churchill(1e-6, 1e-4) / 64e6, 1e-12);
        Assert.Equal(1, Friction.Churchill(1000, 0) / 0.064, 1e-4);
        Assert.Equal(1, Friction.Coiled(1e-6, 1e-4, 0.05) / 64e6, 1e-12);
    }

    [Theory] // Re 250, Di 0.02, Dc 0.1; fluids documentation of White (1929), Mori-Nakayama (1965), Schmidt (1967).
    [InlineData("White", 0.406328)]
    [InlineData("Mori-Nakayama", 0.422246)]
    [InlineData("Schmidt", 0.474607)]
    public void LaminarCoil(string law, double published)
    {
        double value = law switch
        {
            "White" => CoilFriction.White(250, 0.2),
            "Mori-Nakayama" => CoilFriction.MoriNakayamaLaminar(250, 0.2),
            _ => CoilFriction.SchmidtLaminar(250, 0.2),
        };
        Assert.Equal(published, value, 6e-7);
    }

    // Re 1e4, Di 0.01, Dc 0.2; fluids documentation of Mori-Nakayama (1967) and Mandal-Nigam (2009), the latter on the smooth straight tube.
    [Fact]
    public void TurbulentCoil()
    {
        Assert.Equal(0.0373118, CoilFriction.MoriNakayamaTurbulent(1e4, 0.05), 6e-8);
        Assert.Equal(0.0383166, SmoothTube(1e4) * CoilFriction.MandalNigamFactor(1e4, 0.05), 5e-7);
    }

    [Fact]
    public void TheJoinedCoilFormMeetsItsLimits()
    {
        Assert.Equal(1, Friction.Coiled(250, 0, 0.2) / 0.406328, 2e-3);
        // Both published turbulent values at Re 1e4, just above the coil's transition (Re_c 7436), where the blend adds a little.
        Assert.Equal(1, Friction.Coiled(1e4, 0, 0.05) / 0.0383166, Friction.CoiledCorrelation.RelativeUncertainty);
        Assert.Equal(1, Friction.Coiled(1e4, 0, 0.05) / 0.0373118, Friction.CoiledCorrelation.RelativeUncertainty);
        Assert.Equal(
            1, Friction.Coiled(1e5, 0, 0.05) / CoilFriction.MoriNakayamaTurbulent(1e5, 0.05), Friction.CoiledCorrelation.RelativeUncertainty);
    }

    // E. F. Schmidt, Chem.-Ing.-Tech. 39, 1967, 781.
    [Fact]
    public void CoilStaysLaminarLonger()
    {
        Assert.Equal(2300, Friction.CoiledTransitionReynolds(0), 1e-9);
        Assert.Equal(2300 * (1 + (8.6 * Math.Pow(0.05, 0.45))), Friction.CoiledTransitionReynolds(0.05), 1e-9);
    }

    [Fact]
    public void StraightIsTheLimitOfTheCoil()
    {
        foreach (double reynolds in (double[])[10, 1000, 2300, 3000, 1e4, 1e6])
        {
            double straight = Friction.Churchill(reynolds, 5e-4);
            Assert.Equal(1, Friction.Coiled(reynolds, 5e-4, 0) / straight, 1e-12);
            Assert.Equal(1, Friction.Coiled(reynolds, 5e-4, 1e-14) / straight, 1e-2);
        }
    }

    [Fact]
    public void NoJumpInAnyRegime() =>
        Gen.Select(Gen.Double[-1, 7], Gen.Double[0, 0.02], Gen.Double[0, 0.3]).Sample((logarithm, roughness, coil) =>
        {
            double reynolds = Math.Pow(10, logarithm);
            // 64/Re itself changes by 0.1 % over this step, so a jump of 1 % would stand out.
            double next = reynolds * 1.001;
            Assert.Equal(1, Friction.Churchill(next, roughness) / Friction.Churchill(reynolds, roughness), 0.01);
            Assert.Equal(1, Friction.Coiled(next, roughness, coil) / Friction.Coiled(reynolds, roughness, coil), 0.01);
        });

    [Theory]
    [InlineData(0, 0, 0)]
    [InlineData(-1, 0, 0)]
    [InlineData(double.NaN, 0, 0)]
    [InlineData(1e4, -1e-4, 0)]
    [InlineData(1e4, 0, 0.6)]
    public void RefusesNonsense(double reynolds, double roughness, double coil) =>
        Assert.Throws<ArgumentException>(() => Friction.Coiled(reynolds, roughness, coil));

    /// <summary>Smooth tube by Prandtl and Karman, 1/sqrt f = 2 log10(Re sqrt f) - 0.8 with Colebrook's 2.51, by iteration.</summary>
    internal static double SmoothTube(double reynolds)
    {
        double f = 0.02;
        for (int i = 0; i < 60; i++)
        {
            f = Math.Pow(-2 * Math.Log10(2.51 / reynolds / Math.Sqrt(f)), -2);
        }

        return f;
    }
}
