using Coldwright.Fluids.Substances;
using Coldwright.Safety.Warming;
using Xunit;

namespace Coldwright.Safety.Tests.Warming;

/// <summary>Full vessels that warm up shut.</summary>
public sealed class WarmFullTests
{
    /// <summary>
    /// Computed at constant volume to 300 K from Span et al. 2000 and Tegeler et al. 1999 by a second implementation of the same equations: nitrogen
    /// 2929, 2023, 482 bar with 100, 90, 50 % liquid; argon 3386 and 506 bar. Whether the vapour over the liquid was counted there is not said; it
    /// changes the figure for 50 % by 1 %.
    /// </summary>
    [Theory]
    [InlineData("nitrogen", 1.0, 2929, 0.001)]
    [InlineData("nitrogen", 0.9, 2023, 0.005)]
    [InlineData("nitrogen", 0.5, 482, 0.015)]
    [InlineData("argon", 1.0, 3386, 0.001)]
    [InlineData("argon", 0.5, 506, 0.015)]
    public void Shut_in_liquid_at_room_temperature(string gas, double fill, double bar, double relative) =>
        Assert.Equal(bar, WarmFullVessel.PressurePa(gas, fill, 300) / 1e5, relative * bar);

    /// <summary>Physics: pressure rises with filling and with temperature; at no liquid it is that of the cold vapour warmed.</summary>
    [Fact]
    public void Pressure_rises_with_filling_and_temperature()
    {
        double last = 0;
        for (var fill = 0.0; fill <= 1; fill += 0.1)
        {
            var now = WarmFullVessel.PressurePa("nitrogen", fill, 300);
            Assert.True(now > last);
            last = now;
        }
        Assert.True(WarmFullVessel.PressurePa("nitrogen", 0.5, 310) > WarmFullVessel.PressurePa("nitrogen", 0.5, 300));
        Assert.Equal(101325 * 300 / 77.355, WarmFullVessel.PressurePa("nitrogen", 0, 300), 0.06 * 4e5);
    }

    [Fact]
    public void Largest_fill_gives_back_its_pressure()
    {
        var fill = WarmFullVessel.LargestFill("nitrogen", 25e5, 295);
        Assert.InRange(fill, 0.02, 0.04);
        Assert.Equal(25e5, WarmFullVessel.PressurePa("nitrogen", fill, 295), 1e3);
        Assert.Equal(0, WarmFullVessel.LargestFill("nitrogen", 2e5, 295));
        Assert.Equal(1, WarmFullVessel.LargestFill("nitrogen", 4e8, 295));
    }

    /// <summary>Propane at room temperature boils: a half-full vessel holds its vapour pressure (7.3 to 8.4 bar between 288 and 294 K by any table).</summary>
    [Fact]
    public void A_fluid_that_stays_two_phase_keeps_its_vapour_pressure()
    {
        Assert.InRange(WarmFullVessel.PressurePa("propane", 0.5, 293.15) / 1e5, 8.2, 8.5);
        Assert.True(WarmFullVessel.PressurePa("propane", 1, 293.15) > 100e5);
    }

    [Fact]
    public void A_mixture_shut_in_as_liquid()
    {
        var mixture = new Composition(["nitrogen", "methane", "argon"], [0.2, 0.8, 0]);
        var pressure = WarmFullVessel.LiquidFullPa(mixture, 100, 20e5, 295);
        Assert.True(pressure > 1000e5);
        Assert.Null(WarmFullVessel.LiquidFullPa(mixture, 250, 20e5, 295));
        // A pure fluid by the mixture's way: the same as by its own.
        Assert.Equal(1, WarmFullVessel.LiquidFullPa(new Composition(["nitrogen"], [1]), 77.35, 1.02e5, 300)!.Value / WarmFullVessel.PressurePa("nitrogen", 1, 300), 0.001);
    }
}
