using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Machine.Description;
using Coldwright.Machine.Feed;

namespace Coldwright.Machine.Tests.Feed;

/// <summary>The feed compressor: flow from clearance and ratio, heat into the shell, cooling.</summary>
public sealed class FeedCompressorTests
{
    private static readonly GasPhase _nitrogen = new(ReferenceModel.Create(["nitrogen"]), [1.0]);

    private static FeedCompressorDescription Machine(FeedCooling cooling = FeedCooling.StillAir, double clearance = 0.04) => new()
    {
        Type = CompressorType.Reciprocating, DisplacementM3 = 7e-6, SpeedRevPerS = 24, ClearanceFraction = clearance, Cooling = cooling,
    };

    /// <summary>
    /// Clearance volumetric efficiency 1 - c (r^(1/n) - 1) with n = k = 1.4 (standard form, as published at hqcalculator.com): the model with its real gas,
    /// leak must stay below it and, turning fast so that the leak hardly counts, near it.
    /// </summary>
    [Theory]
    [InlineData(3.0)]
    [InlineData(5.0)]
    [InlineData(8.0)]
    public void FlowFollowsClearanceAndRatio(double ratio)
    {
        var at = new FeedCompressor(Machine() with { SpeedRevPerS = 250 }, _nitrogen, 293.15).At(293.15, 2e5, 2e5 * ratio, 293.15);
        double textbook = 1 - 0.04 * (Math.Pow(ratio, 1 / 1.4) - 1);
        Assert.InRange(at.VolumetricEfficiency, textbook - 0.08, textbook + 0.002);
    }

    [Fact]
    public void MoreRatioAndMoreClearanceGiveLessAndNothingFallsBelowZero()
    {
        double before = double.PositiveInfinity;
        var machine = new FeedCompressor(Machine(clearance: 0.1), _nitrogen, 293.15);
        for (double ratio = 1; ratio < 60; ratio *= 1.2)
        {
            double flow = machine.At(293.15, 1e5, 1e5 * ratio, 320).FlowKgPerS;
            Assert.InRange(flow, 0, before * (1 + 1e-9));
            before = flow;
        }
        Assert.True(before < 2e-6, $"{before} kg/s at a ratio where the clearance gas fills the cylinder");
    }

    [Theory]
    [InlineData(1e5, 8e5, 300)]
    [InlineData(5e5, 18e5, 340)]
    [InlineData(9e5, 4e5, 310)]
    public void ElectricityLeavesWithTheGasOrThroughTheShell(double suctionPa, double dischargePa, double shellK)
    {
        var p = new FeedCompressor(Machine(), _nitrogen, 293.15).At(293.15, suctionPa, dischargePa, shellK);
        double gas = p.FlowKgPerS * (p.DischargeEnthalpy - _nitrogen.At(293.15, suctionPa).Enthalpy);
        Assert.Equal(p.ElectricalW, gas + p.ShellGainW, 1e-9 * p.ElectricalW);
        Assert.True(p.ElectricalW > 0);
    }

    /// <summary>Isentropic discharge of an ideal gas at k = 1.4 from 300 K over a ratio of 5 is 475 K (T r^((k-1)/k), textbook); losses come on top, heat to the shell goes off.</summary>
    [Fact]
    public void TheDischargeIsHot() => Assert.InRange(new FeedCompressor(Machine(), _nitrogen, 300).At(300, 2e5, 10e5, 330).DischargeK, 390, 520);

    [Fact]
    public void WaterCoolsBetterThanAFanAndAFanBetterThanStillAir()
    {
        double Steady(FeedCooling cooling) => new FeedCompressor(Machine(cooling), _nitrogen, 293.15).SteadyShellK(293.15, 3e5, 18e5);
        Assert.True(Steady(FeedCooling.WaterBath) < Steady(FeedCooling.Fan) - 2);
        Assert.True(Steady(FeedCooling.Fan) < Steady(FeedCooling.StillAir) - 2);
    }
}
