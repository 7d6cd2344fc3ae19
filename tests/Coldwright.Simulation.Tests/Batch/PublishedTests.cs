using Coldwright.Machine.Feed;
using Coldwright.Simulation.Batch;
using Xunit;

namespace Coldwright.Simulation.Tests.Batch;

/// <summary>Batches against published values and what the trade knows.</summary>
public sealed class PublishedTests
{
    // A vessel of 0.32 L made of 2-1/8 in copper tube: 0.16 m of it with two caps weighs about this. Its wall is part of the vessel.
    private const double CopperKg = 0.75;

    /// <summary>Common practice: a vessel of 0.32 L drained from saturation at 17 bar into a cold flask, without line loss, leaves 103 to 114 g of nitrogen.</summary>
    [Fact]
    public void DrainedFromSeventeenBar() => Assert.InRange(1e3 * Bench.Drained(17e5, 0.32e-3, CopperKg).CollectedKg, 103, 114);

    /// <summary>Common practice: from 28 bar it leaves 60 to 70 g.</summary>
    [Fact]
    public void DrainedFromTwentyEightBar() => Assert.InRange(1e3 * Bench.Drained(28e5, 0.32e-3, CopperKg).CollectedKg, 60, 70);

    /// <summary>
    /// An insulated vessel without metal: what left carried U - m u (left) with it, and of each kilogram (hg - h)/(hg - hf) is liquid in the room. That is the first law
    /// with the equation of Span et al. (2000); it is not one flash at the start: the liquid that stays cools, and vapour stays.
    /// </summary>
    [Theory]
    [InlineData(3e5)]
    [InlineData(8e5)]
    [InlineData(17e5)]
    [InlineData(28e5)]
    public void DrainingObeysTheFirstLawAndIsNotOneFlash(double pressurePa)
    {
        var (full, collected, left, leftEnergy, endPa) = Bench.Drained(pressurePa, 0.5e-3, 0, shutShare: 5e-3);
        var fluid = new ProductFluid("nitrogen");
        double m = fluid.MolarMass;
        var start = fluid.Saturated(pressurePa, 0);
        var (f, g) = (fluid.Saturated(Bench.RoomPa, 0), fluid.Saturated(Bench.RoomPa, 1));
        double energy = full * (start.MolarEnthalpy - pressurePa / start.MolarDensity) / m, hf = f.MolarEnthalpy / m, hg = g.MolarEnthalpy / m;
        double expected = ((full - left) * hg - (energy - left * leftEnergy)) / (hg - hf);
        Assert.Equal(expected, collected, 0.001 * expected);
        Assert.True(endPa < 0.99 * pressurePa);
        double flash = fluid.LetDown(start.MolarEnthalpy, Bench.RoomPa).VapourFraction;
        // what is let out flashes less than at the start, since the liquid cools while it drains
        Assert.True(collected > (full - left) * (1 - flash));
        Assert.True(left > 0.01 * full);
    }

    /// <summary>1 W boils 0.0224 L/h of nitrogen and 0.0160 L/h of argon: latent heats of Span et al. (2000) and Tegeler, Span, Wagner (1999).</summary>
    [Theory]
    [InlineData("nitrogen", 0.0224)]
    [InlineData("argon", 0.0160)]
    public void AStandingFlaskLosesThePublishedRate(string gas, double litresPerHour)
    {
        var cooler = Bench.Cooler(gas, 10e5);
        double watt = 1 / (Bench.RoomK - cooler.AtRoom.BoilingK);
        var run = Bench.Run(cooler with { FlaskConductanceWPerK = watt }, Bench.Plan(10e5, 0.5, 6e5) with { StandS = 1 });
        Assert.Equal(litresPerHour, 3.6e6 * run.FlaskLossKgPerS / cooler.AtRoom.Density, 0.006 * litresPerHour);
    }

    /// <summary>
    /// The rule that 30 bar precooled to -100 C equals 300 bar at room temperature in a simple nitrogen loop (common practice). With the equation of Span et al. the
    /// isothermal enthalpy differences are 19.6 and 38.4 kJ/kg and the shares liquefied, (h1 - h2)/(h1 - hf), 0.065 and 0.089.
    /// </summary>
    [Fact]
    public void ThirtyBarPrecooledAgainstThreeHundredBarWarm()
    {
        var (cold, coldShare) = Loop(173.15, 30e5);
        var (warm, warmShare) = Loop(300, 300e5);
        Assert.Equal(19.6, cold, 0.15);
        Assert.Equal(38.4, warm, 0.4);
        Assert.Equal(0.065, coldShare, 0.0007);
        Assert.Equal(0.089, warmShare, 0.001);
    }

    /// <summary>R. F. Barron, Cryogenic Systems (2nd ed. 1985), table 3.3 (from memory): 0.0708 of the nitrogen is liquefied at 300 K and 20.27 MPa; the equation of Span et al. gives 0.0746.</summary>
    [Fact]
    public void TheSimpleLoopIsThatOfTheTextbook() => Assert.InRange(Loop(300, 20.265e6).Share, 0.0708, 0.0748);

    private static (double DifferenceKJPerKg, double Share) Loop(double temperatureK, double pressurePa)
    {
        var fluid = new ProductFluid("nitrogen");
        double low = fluid.At(temperatureK, 101325).MolarEnthalpy, high = fluid.At(temperatureK, pressurePa).MolarEnthalpy, liquid = fluid.Saturated(101325, 0).MolarEnthalpy;
        return ((low - high) / fluid.MolarMass / 1e3, (low - high) / (low - liquid));
    }
}
