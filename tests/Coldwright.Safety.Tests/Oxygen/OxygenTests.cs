using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Safety.Oxygen;
using Xunit;

namespace Coldwright.Safety.Tests.Oxygen;

/// <summary>Air that condenses, and oxygen that stays behind.</summary>
public sealed class OxygenTests
{
    /// <summary>
    /// Peng-Robinson with the interaction parameters of Knapp et al. (1982), computed elsewhere: dew point 81.74 K at 1 atm, first liquid 51.5 % oxygen.
    /// Lemmon et al., J. Phys. Chem. Ref. Data 29 (2000) 331 give the normal dew point of air as 81.72 K (from memory): the reference model is held to it.
    /// </summary>
    [Fact]
    public void Dew_point_of_air()
    {
        var cubic = CondensedAir.At(101325, names => CubicModel.Create(names));
        Assert.Equal(81.74, cubic.DewPointK, 0.15);
        Assert.Equal(0.515, cubic.OxygenFraction, 0.015);
        var reference = CondensedAir.At(101325, names => ReferenceModel.Create(names));
        Assert.Equal(81.72, reference.DewPointK, 0.15);
        Assert.InRange(reference.OxygenFraction, 0.49, 0.54);
    }

    /// <summary>Rayleigh with a constant ratio y/x = K has L = (x/x0)^(1/(K-1)); the path lies between the bounds of its own smallest and largest K.</summary>
    [Fact]
    public void Boil_off_lies_between_the_bounds_of_constant_volatility()
    {
        var path = BoilOffEnrichment.Path(0.005, 101325);
        var k = path.Select(s => s.VapourOxygen / s.LiquidOxygen).ToArray();
        double Left(double ratio) => Math.Pow(BoilOffEnrichment.Limit / 0.005, 1 / (ratio - 1));
        var left = path[^1].RemainingFraction;
        Assert.InRange(left, Left(k.Max()), Left(k.Min()));
        Assert.InRange(k.Min(), 0.15, 0.35);
    }

    /// <summary>Oxygen balance: what left in the vapour and what stayed is what was there.</summary>
    [Fact]
    public void Oxygen_is_conserved()
    {
        var path = BoilOffEnrichment.Path(0.02, 101325, 0.6, 400);
        double gone = 0;
        for (var i = 1; i < path.Count; i++)
            gone += (path[i - 1].RemainingFraction - path[i].RemainingFraction) * (path[i - 1].VapourOxygen + path[i].VapourOxygen) / 2;
        Assert.Equal(0.02, gone + path[^1].RemainingFraction * path[^1].LiquidOxygen, 1e-5);
    }

    /// <summary>Second order: four times the steps change the answer sixteen times less.</summary>
    [Fact]
    public void Steps_converge_with_second_order()
    {
        double Left(int steps) => BoilOffEnrichment.Path(0.01, 101325, steps: steps)[^1].RemainingFraction;
        var exact = Left(512);
        var order = Math.Log((Left(8) - exact) / (Left(32) - exact)) / Math.Log(4);
        Assert.Equal(2, order, 0.2);
        Assert.Equal(1, Left(32) / exact, 2e-3);
    }

    [Fact]
    public void More_impurity_leaves_more_rich_liquid()
    {
        double last = 0;
        foreach (var x in (double[])[0.001, 0.01, 0.03, 0.1, 0.2])
        {
            var left = BoilOffEnrichment.RemainingAt(x, 101325);
            Assert.True(left > last && left < 1);
            last = left;
        }
        Assert.Equal(1, BoilOffEnrichment.RemainingAt(0.3, 101325));
    }
}
