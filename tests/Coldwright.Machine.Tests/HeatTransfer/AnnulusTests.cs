using Coldwright.Machine.Flow;
using Coldwright.Machine.HeatTransfer;
using CsCheck;

namespace Coldwright.Machine.Tests.HeatTransfer;

public sealed class AnnulusTests
{
    [Fact] // Exact laminar limits: round tube 3.66; parallel plates, one side insulated, 4.861 (Shah and London 1978).
    public void LaminarLimits()
    {
        Assert.Equal(3.66, Annulus.Nusselt(500, 1, 1e-9, AnnulusWall.Outer), 1e-3);
        Assert.Equal(4.861, Annulus.Nusselt(500, 1, 1 - 1e-9, AnnulusWall.Outer), 5e-3);
        Assert.Equal(4.861, Annulus.Nusselt(500, 1, 1 - 1e-9, AnnulusWall.Inner), 5e-3);
    }

    [Fact] // Exact laminar friction: 64/Re for a vanishing core (logarithmically slow), 96/Re between parallel plates.
    public void LaminarFriction()
    {
        Assert.Equal(1, Annulus.DarcyFriction(100, 0, 0.995) / 0.96, 1e-4);
        Assert.Equal(1, Annulus.DarcyFriction(100, 0, 0.9) / 0.96, 2e-3);
        // a = 1/2: f Re = 64 (1-a)^2 / (1 + a^2 + (1-a^2)/ln a) = 95.25, exact solution by hand.
        Assert.Equal(1, Annulus.DarcyFriction(100, 0, 0.5) / 0.9525, 2e-4);
    }

    [Fact]
    public void TwoPublishedFormsAgree() =>
        Gen.Select(Gen.Double[0.1, 0.95], Gen.Double[4.3, 5.5], Gen.Double[0.7, 5]).Sample((ratio, logarithm, prandtl) =>
        {
            double reynolds = Math.Pow(10, logarithm);
            double tube = SinglePhase.Nusselt(reynolds, prandtl, Friction.Churchill(reynolds, 0));
            foreach (AnnulusWall wall in Enum.GetValues<AnnulusWall>())
            {
                double petukhov = tube * Annulus.PetukhovRoizenFactor(ratio, wall);
                Assert.Equal(1, Annulus.Nusselt(reynolds, prandtl, ratio, wall) / petukhov, 0.2);
            }
        });

    [Fact]
    public void NoJump() =>
        Gen.Select(Gen.Double[0.05, 0.995], Gen.Double[0, 6], Gen.Double[0.7, 5]).Sample((ratio, logarithm, prandtl) =>
        {
            double reynolds = Math.Pow(10, logarithm);
            foreach (AnnulusWall wall in Enum.GetValues<AnnulusWall>())
            {
                double here = Annulus.Nusselt(reynolds, prandtl, ratio, wall);
                Assert.Equal(1, Annulus.Nusselt(reynolds * 1.0005, prandtl, ratio, wall) / here, 0.01);
                Assert.Equal(1, Annulus.Nusselt(reynolds, prandtl, ratio * 1.0005, wall) / here, 0.01);
            }
        });

    [Fact]
    public void RefusesAnInnerTubeThatFillsTheOuter() =>
        Assert.Throws<ArgumentException>(() => Annulus.Nusselt(1e4, 1, 1, AnnulusWall.Inner));
}
