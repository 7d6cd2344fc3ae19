using Coldwright.Machine.Compression;

namespace Coldwright.Machine.Tests.Compression;

/// <summary>Starting against standstill pressures: common practice, so only orders and limits are checked.</summary>
public sealed class StartingTests
{
    private static readonly CompressorMachine Rotary = CompressorCases.Machine(CompressorKind.Rotary);

    /// <summary>
    /// By hand: 15 cm3, 3 bar of difference, rolling piston: 3e5 x 15e-6/pi = 1.432 N m; friction at rest
    /// 2 x 4.5e4 x 15e-6/(2 pi) = 0.215 N m; sum 1.647 N m. Rated torque 1e6 Pa x 15e-6/(2 pi) = 2.387 N m, 0.4 of it 0.955 N m.
    /// </summary>
    [Fact]
    public void TorquesByHand()
    {
        var r = StartingCheck.Judge(Rotary, new StartingConditions(5e5, 8e5, StartingMotor.RunCapacitor));
        Assert.Equal(1.647, r.BreakawayTorqueNm, 0.001);
        Assert.Equal(0.955, r.LockedRotorTorqueNm, 0.001);
        Assert.Equal(StartingVerdict.DoesNotStart, r.Verdict);
        Assert.Contains(r.Reasons, s => s.Contains("our assumption"));
    }

    /// <summary>A run-capacitor motor starts on equal pressures, not against 3 bar; a start capacitor helps; low voltage hurts.</summary>
    [Fact]
    public void EqualPressuresAndCapacitor()
    {
        Assert.Equal(StartingVerdict.Starts, StartingCheck.Judge(Rotary, new StartingConditions(5e5, 5e5, StartingMotor.RunCapacitor)).Verdict);
        Assert.Equal(StartingVerdict.Starts, StartingCheck.Judge(Rotary, new StartingConditions(5e5, 8e5, StartingMotor.StartCapacitor)).Verdict);
        Assert.True(StartingCheck.Judge(Rotary, new StartingConditions(5e5, 5e5, StartingMotor.RunCapacitor, 0.8)).LockedRotorTorqueNm < 0.65 * 0.955);
    }

    /// <summary>A high standstill level stalls the run-up though nothing opposes the first turn.</summary>
    [Fact]
    public void HighStandstillLevel()
    {
        var r = StartingCheck.Judge(Rotary, new StartingConditions(60e5, 60e5, StartingMotor.ThreePhase));
        Assert.Equal(StartingVerdict.DoesNotStart, r.Verdict);
        Assert.InRange(r.HighestStandstillPressurePa, 15e5, 40e5);
        var just = StartingCheck.Judge(Rotary, new StartingConditions(r.HighestStandstillPressurePa, r.HighestStandstillPressurePa, StartingMotor.ThreePhase));
        Assert.Equal(just.BreakdownTorqueNm, just.PullUpTorqueNm, 1e-9);
        Assert.Equal(StartingVerdict.Doubtful, just.Verdict);
    }

    /// <summary>A high side below the low side is refused.</summary>
    [Fact]
    public void BadInput()
    {
        Assert.Contains("DischargePressurePa", Assert.Throws<ArgumentException>(() => StartingCheck.Judge(Rotary, new StartingConditions(5e5, 4e5, StartingMotor.RunCapacitor))).Message);
        Assert.Contains("LineVoltageShare", Assert.Throws<ArgumentException>(() => StartingCheck.Judge(Rotary, new StartingConditions(5e5, 5e5, StartingMotor.RunCapacitor, 0.1))).Message);
    }

    /// <summary>Limits are judged with their reason; one that is not known is not judged.</summary>
    [Fact]
    public void Limits()
    {
        var limits = new CompressorLimits { DischargePressurePa = 25e5, ElectricalPowerW = 800 };
        var found = limits.Judge(385, 420, 370, 2e5, 26e5, 700, null, 1.0);
        Assert.Equal(["discharge line temperature", "discharge pressure", "pressure ratio"], found.Where(f => f.Exceeded).Select(f => f.Name));
        Assert.DoesNotContain(found, f => f.Name is "current" or "suction pressure");
        Assert.All(found, f => Assert.False(f.Reason.IsEmpty));
        Assert.Contains("111.9 °C", found[0].ToString());
    }
}
