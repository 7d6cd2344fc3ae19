using Coldwright.Machine.HeatTransfer;

namespace Coldwright.Machine.Tests.HeatTransfer;

/// <summary>Published values: documentation of the open library "ht" (C. Bell, MIT licence).</summary>
public sealed class BoilingTests
{
    private static readonly TwoPhaseFlow Wide = new()
    {
        MassFlux = 1 / (Math.PI / 4 * 0.3 * 0.3), Quality = 0.4, DiameterM = 0.3, LiquidDensity = 567, VapourDensity = 18.09,
        LiquidViscosity = 156e-6, LiquidConductivity = 0.086, LiquidHeatCapacity = 2300, ReducedPressure = 1.0 / 22, MolarMass = 0.04402,
        LatentHeat = 2e5,
    };

    private static readonly TwoPhaseFlow Narrow = new()
    {
        MassFlux = 0.106 / (Math.PI / 4 * 0.0212 * 0.0212), Quality = 0.2, DiameterM = 0.0212, LiquidDensity = 567, VapourDensity = 18.09,
        LiquidViscosity = 156e-6, VapourViscosity = 7.11e-6, LiquidConductivity = 0.086, LiquidHeatCapacity = 2730,
        LatentHeat = 2e5, SurfaceTension = 0.02,
    };

    [Fact] // Z. Liu, R. H. S. Winterton 1991.
    public void LiuWinterton() => Assert.Equal(4747.749, Boiling.LiuWinterton(Wide, 7), 1e-3);

    [Fact] // D. L. Bennett, J. C. Chen 1980.
    public void ChenBennett() => Assert.Equal(4938.275, Boiling.ChenBennett(Narrow, 3, 1e5), 1e-3);

    [Fact] // K. E. Gungor, R. H. S. Winterton 1987; its formula by hand at x = 1/2, Bo = 1e-4, density ratio 100.
    public void GungorWintertonByHand()
    {
        TwoPhaseFlow flow = Narrow with { Quality = 0.5, VapourDensity = 5.67 };
        double liquid = SinglePhase.DittusBoelter(flow.LiquidReynolds, flow.LiquidPrandtl) * 0.086 / 0.0212;
        double enhancement = 1 + (3000 * 3.6308e-4) + (1.12 * 6.6069);
        Assert.Equal(1, Boiling.GungorWinterton(flow, 1e-4 * flow.MassFlux * 2e5) / (liquid * enhancement), 1e-4);
    }

    [Fact] // The three laws must agree within what they claim where all apply (two standard deviations).
    public void LawsAgreeWithinTheirBands()
    {
        double chen = Boiling.ChenBennett(Narrow, 3, 1e5);
        double flux = chen * 3;
        Assert.InRange(Boiling.GungorWinterton(Narrow, flux) / chen, 0.4, 1.6);
    }

    [Fact]
    public void CooperInBothForms()
    {
        double flux = 2e4;
        double coefficient = PoolBoiling.CooperAtFlux(0.05, 0.044, flux);
        Assert.Equal(coefficient, PoolBoiling.CooperAtSuperheat(0.05, 0.044, flux / coefficient), 1e-6 * coefficient);
    }

    [Fact]
    public void LiquidAloneAtQualityZero() => Assert.Equal(
        SinglePhase.DittusBoelter(Wide.AllLiquidReynolds, Wide.LiquidPrandtl) * 0.086 / 0.3,
        Boiling.GungorWinterton(Wide with { Quality = 0 }, 0), 1e-9);

    [Fact]
    public void CoolingIsNotBoiling() => Assert.Equal(Boiling.GungorWinterton(Wide, 0), Boiling.GungorWinterton(Wide, -1e4));
}
