using Coldwright.Machine.HeatTransfer;
using CsCheck;

namespace Coldwright.Machine.Tests.HeatTransfer;

/// <summary>Our own rule: limits, continuity and independence of order; there is no published value to meet.</summary>
public sealed class LiquidMixingTests
{
    private static readonly LiquidProperties Nitrogen = new(780, 1.4e-4, 0.14, 2050, 0.008);
    private static readonly LiquidProperties Ethane = new(620, 8e-4, 0.24, 2300, 0.03);

    [Fact]
    public void OneLiquidIsItself()
    {
        Assert.Equal(Nitrogen.Viscosity, LiquidMixing.Combine(Nitrogen, Ethane, 1).Viscosity, 1e-15);
        Assert.Equal(Ethane.Density, LiquidMixing.Combine(Nitrogen, Ethane, 0).Density, 1e-9);
        LiquidProperties twin = LiquidMixing.Combine(Ethane, Ethane, 0.37);
        Assert.Equal(Ethane.Viscosity, twin.Viscosity, 1e-15);
        Assert.Equal(Ethane.Conductivity, twin.Conductivity, 1e-12);
    }

    [Fact]
    public void TheContinuousLiquidRulesTheViscosity()
    {
        Assert.Equal(Nitrogen.Viscosity, LiquidMixing.Combine(Nitrogen, Ethane, 0.8).Viscosity, 1e-15);
        Assert.Equal(Ethane.Viscosity, LiquidMixing.Combine(Nitrogen, Ethane, 0.2).Viscosity, 1e-15);
    }

    [Fact]
    public void OrderDoesNotMatterAndNothingJumps() =>
        Gen.Double[0, 0.9999].Sample(w =>
        {
            LiquidProperties here = LiquidMixing.Combine(Nitrogen, Ethane, w);
            LiquidProperties swapped = LiquidMixing.Combine(Ethane, Nitrogen, 1 - w);
            LiquidProperties next = LiquidMixing.Combine(Nitrogen, Ethane, w + 1e-5);
            Assert.Equal(1, swapped.Viscosity / here.Viscosity, 1e-9);
            Assert.Equal(1, swapped.Density / here.Density, 1e-12);
            Assert.Equal(1, swapped.SurfaceTension / here.SurfaceTension, 1e-12);
            Assert.Equal(1, next.Viscosity / here.Viscosity, 0.01);
            Assert.Equal(1, next.Density / here.Density, 0.01);
        });
}
