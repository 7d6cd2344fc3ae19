using Coldwright.Machine.Flow;
using CsCheck;

namespace Coldwright.Machine.Tests.Flow;

public sealed class VoidFractionTests
{
    [Fact]
    public void EndsAreExactAndOrderHolds() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[20, 1000], Gen.Double[1, 80], Gen.Double[0, 0.03]).Sample((x, flux, vapour, tension) =>
        {
            const double liquid = 600;
            Assert.Equal(0, VoidFraction.Rouhani(flux, 0, liquid, vapour, tension));
            Assert.Equal(1, VoidFraction.Rouhani(flux, 1, liquid, vapour, tension), 1e-12);
            Assert.Equal(1, VoidFraction.Zivi(1, liquid, vapour), 1e-12);
            double none = VoidFraction.Homogeneous(x, liquid, vapour);
            Assert.InRange(VoidFraction.Rouhani(flux, x, liquid, vapour, tension), 0, none + 1e-12);
            Assert.InRange(VoidFraction.Zivi(x, liquid, vapour), 0, none + 1e-12);
        });

    // S. M. Zivi 1964, from his formula by hand: x = 1/2, density ratio 1/1000 -> 1/(1 + 0.01).
    [Fact]
    public void ZiviByHand() => Assert.Equal(1 / 1.01, VoidFraction.Zivi(0.5, 1000, 1), 1e-12);

    // Rouhani's form by hand: 0.015 / (1.084 x 0.0161667 + 1.18 x 0.7 x (9.80665 x 0.01 x 580)^0.25 / (100 sqrt 600)).
    [Fact]
    public void RouhaniByHand() => Assert.Equal(0.812976, VoidFraction.Rouhani(100, 0.3, 600, 20, 0.01), 1e-6);

    // Momentum balance by hand: no slip gives G^2 / rho_h.
    [Fact]
    public void MomentumWithoutSlip()
    {
        double alpha = VoidFraction.Homogeneous(0.3, 600, 20);
        double expected = 100 * 100 / VoidFraction.HomogeneousDensity(0.3, 600, 20);
        Assert.Equal(expected, MomentumFlux.Separated(100, 0.3, alpha, 600, 20), 1e-9);
        Assert.Equal(1e4 / 600, MomentumFlux.Separated(100, 0, 0, 600, 20), 1e-9);
        Assert.Equal(1e4 / 20, MomentumFlux.Separated(100, 1, 1, 600, 20), 1e-9);
    }

    [Fact]
    public void RefusesLiquidLighterThanVapour() => Assert.Throws<ArgumentException>(() => VoidFraction.Zivi(0.5, 10, 20));
}
