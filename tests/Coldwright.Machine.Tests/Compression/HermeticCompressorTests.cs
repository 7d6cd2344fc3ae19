using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.States;
using Coldwright.Machine.Compression;
using Coldwright.Numerics;

namespace Coldwright.Machine.Tests.Compression;

/// <summary>The physical model: limits, balances, and how it answers what it cannot do.</summary>
public sealed class HermeticCompressorTests
{
    /// <summary>Argon at low pressure is a perfect gas of k = 5/3: without losses the machine is the textbook's.</summary>
    [Fact]
    public void LosslessMachineOnAPerfectGas()
    {
        var machine = CompressorCases.Lossless();
        var p = CompressorCases.OnPure(machine, "argon", 300, 2e3, 8e3);
        double swept = 15e-6 * 50, work = PerfectGasCompression.Work(300, 4, 5.0 / 3);
        Assert.Equal(swept * 2e3 / (8.314462618 * 300), p.MolarFlow, 2e-4 * p.MolarFlow);
        Assert.Equal(p.MolarFlow * work, p.ElectricalPowerW, 2e-3 * p.ElectricalPowerW);
        Assert.Equal(PerfectGasCompression.OutletTemperature(300, 4, 5.0 / 3), p.ValveTemperatureK, 0.5);
        Assert.Equal(1, p.VolumetricEfficiency!.Value, 1e-3);
        Assert.Equal(1, p.OverallIsentropicEfficiency, 2e-3);
    }

    /// <summary>With clearance alone the volumetric efficiency is the closed formula's, n = k.</summary>
    [Fact]
    public void ClearanceAloneOnAPerfectGas()
    {
        var p = CompressorCases.OnPure(CompressorCases.Lossless(0.04), "argon", 300, 2e3, 10e3);
        Assert.Equal(ClearanceReExpansion.Polytropic(0.04, 5, 5.0 / 3), p.VolumetricEfficiency!.Value, 1e-3);
        var polytropic = CompressorCases.Lossless(0.04) with { Traits = CompressorCases.Lossless(0.04).Traits with { ReExpansionExponent = 1.1 } };
        Assert.Equal(0.867, CompressorCases.OnPure(polytropic, "argon", 300, 2e3, 10e3).VolumetricEfficiency!.Value, 2e-3);
    }

    /// <summary>Energy closes to 1e-9, volumetric factors multiply and power parts add up to the whole.</summary>
    [Theory]
    [InlineData(CompressorKind.Rotary, 1.2)]
    [InlineData(CompressorKind.Rotary, 5)]
    [InlineData(CompressorKind.Rotary, 10)]
    [InlineData(CompressorKind.Reciprocating, 1.2)]
    [InlineData(CompressorKind.Reciprocating, 5)]
    [InlineData(CompressorKind.Reciprocating, 10)]
    public void Closes(CompressorKind kind, double ratio)
    {
        foreach (double suction in new[] { 0.8e5, 2e5, 5e5 })
        {
            var p = CompressorCases.OnMixture(CompressorCases.Machine(kind), suction, ratio);
            Assert.True(Math.Abs(p.EnergyBalanceError) < 1e-9, $"{p.EnergyBalanceError}");
            Assert.Equal(p.VolumetricEfficiency!.Value, p.Volumetric!.Product, 1e-9);
            Assert.Equal(p.ElectricalPowerW, p.Power!.TotalW, 1e-8 * p.ElectricalPowerW);
            Assert.All(new[] { p.Power.IsentropicW, p.Power.SuctionHeatingW, p.Power.ThrottlingW, p.Power.LeakageW, p.Power.FrictionW, p.Power.MotorW }, w => Assert.True(w >= -1e-9));
            Assert.Equal(p.Power.IsentropicW / p.ElectricalPowerW, p.OverallIsentropicEfficiency, 1e-9);
        }
    }

    /// <summary>Less flow and a hotter valve as the ratio rises; small steps in, small steps out.</summary>
    [Theory]
    [InlineData(CompressorKind.Rotary)]
    [InlineData(CompressorKind.Reciprocating)]
    public void RisingRatio(CompressorKind kind)
    {
        CompressorPerformance? last = null;
        for (double ratio = 2; ratio < 8; ratio += 0.5)
        {
            var p = CompressorCases.OnMixture(CompressorCases.Machine(kind), 2e5, ratio);
            if (last is not null)
            {
                Assert.True(p.MolarFlow < last.MolarFlow && p.MolarFlow > 0.9 * last.MolarFlow);
                Assert.True(p.ValveTemperatureK > last.ValveTemperatureK && p.ValveTemperatureK < last.ValveTemperatureK + 25);
            }
            last = p;
        }
    }

    /// <summary>A component with z = 0 and another order of components change nothing.</summary>
    [Fact]
    public void ComponentsDoNotMatterBeyondTheirAmounts()
    {
        var machine = CompressorCases.Machine(CompressorKind.Rotary);
        var a = CompressorCases.Run(machine, ReferenceModel.Create(["nitrogen", "methane", "propane"]), [0.3, 0.4, 0.3], 295, 2e5, 12e5);
        var b = CompressorCases.Run(machine, ReferenceModel.Create(["propane", "ethane", "methane", "nitrogen"]), [0.3, 0, 0.4, 0.3], 295, 2e5, 12e5);
        Assert.Equal(a.MolarFlow, b.MolarFlow, 1e-9 * a.MolarFlow);
        Assert.Equal(a.ElectricalPowerW, b.ElectricalPowerW, 1e-8 * a.ElectricalPowerW);
        Assert.Equal(a.Discharge.TemperatureK, b.Discharge.TemperatureK, 1e-6);
    }

    /// <summary>The cubic model is a second opinion within a few per cent.</summary>
    [Fact]
    public void SecondModel()
    {
        var machine = CompressorCases.Machine(CompressorKind.Reciprocating);
        var a = CompressorCases.OnMixture(machine, 2e5, 6);
        var b = CompressorCases.Run(machine, CubicModel.Create(CompressorCases.MixtureNames), CompressorCases.Mixture, 295, 2e5, 12e5);
        Assert.Equal(a.MolarFlow, b.MolarFlow, 0.02 * a.MolarFlow);
        Assert.Equal(a.ElectricalPowerW, b.ElectricalPowerW, 0.02 * a.ElectricalPowerW);
    }

    /// <summary>A fan cools the shell and what leaves it; a small displacement of the same kind gives about its share.</summary>
    [Fact]
    public void CoolingAndSize()
    {
        var machine = CompressorCases.Machine(CompressorKind.Rotary);
        var still = CompressorCases.OnMixture(machine, 2e5, 7);
        var fan = CompressorCases.OnMixture(machine with { Cooling = new ShellCooling { FanAirSpeedMPerS = 4 } }, 2e5, 7);
        Assert.True(fan.ShellTemperatureK < still.ShellTemperatureK - 8 && fan.Discharge.TemperatureK < still.Discharge.TemperatureK - 8);
        Assert.True(fan.MolarFlow > still.MolarFlow);
        var half = CompressorCases.OnMixture(CompressorCases.Machine(CompressorKind.Rotary, 7.5), 2e5, 7);
        Assert.InRange(half.MolarFlow / still.MolarFlow, 0.42, 0.5);
    }

    /// <summary>Light gas overheats a rotary at a ratio that a heavy mixture bears (common practice, no source).</summary>
    [Fact]
    public void NitrogenOverheats()
    {
        var machine = CompressorCases.Machine(CompressorKind.Rotary);
        var nitrogen = CompressorCases.OnPure(machine, "nitrogen", 300, 2e5, 12e5);
        Assert.Contains(nitrogen.Limits, l => l.Name == "discharge valve temperature" && l.Exceeded);
        Assert.Contains(nitrogen.Warnings, w => w.Contains("discharge valve temperature"));
        var propane = CompressorCases.OnPure(machine, "propane", 300, 2e5, 8e5);
        Assert.DoesNotContain(propane.Limits, l => l.Exceeded);
    }

    /// <summary>Wet suction is computed with its liquid, and said; pentane that condenses while compressed as well.</summary>
    [Fact]
    public void LiquidTakesPart()
    {
        var machine = CompressorCases.Machine(CompressorKind.Reciprocating);
        var model = ReferenceModel.Create(["propane", "butane"]);
        var wet = CompressorCases.Run(machine, model, [0.5, 0.5], 270, 2.0e5, 8e5);
        Assert.True(wet.Suction.VapourFraction is > 0.02 and < 0.999);
        Assert.Contains(wet.Warnings, w => w.Contains("suction carries liquid"));
        Assert.True(Math.Abs(wet.EnergyBalanceError) < 1e-8);
    }

    /// <summary>A ratio that clearance or leak cannot serve is refused with its reason.</summary>
    [Fact]
    public void NothingDelivered()
    {
        foreach (var kind in new[] { CompressorKind.Rotary, CompressorKind.Reciprocating })
        {
            var e = Assert.Throws<SolveException>(() => CompressorCases.OnPure(CompressorCases.Machine(kind, 5), "helium", 300, 0.2e5, 20e5));
            Assert.NotEqual(SolveStatus.Solved, e.Report.Status);
            Assert.Contains("compressor", e.Message);
        }
    }

    /// <summary>Bad input is refused by name, value, limit and unit.</summary>
    [Fact]
    public void BadInput()
    {
        var good = CompressorCases.Machine(CompressorKind.Rotary);
        void Refused(CompressorMachine machine, params string[] words)
        {
            var e = Assert.Throws<ArgumentException>(() => CompressorCases.OnPure(machine, "nitrogen", 300, 2e5, 4e5));
            Assert.All(words, w => Assert.Contains(w, e.Message));
        }

        Refused(good with { DisplacementM3 = 15 }, "DisplacementM3", "15", "0.01", "m3");
        Refused(good with { Poles = 3 }, "Poles", "3", "even");
        Refused(good with { SupplyFrequencyHz = double.NaN }, "SupplyFrequencyHz", "Hz");
        Refused(good with { PowerFactor = 1.2 }, "PowerFactor");
        Refused(good with { Traits = good.Traits with { ClearanceFraction = 4 } }, "ClearanceFraction", "0.3");
        Refused(good with { Traits = good.Traits with { LeakageAreaFactor = -1 } }, "LeakageAreaFactor");
        Refused(good with { Cooling = new ShellCooling { AreaM2 = 0 } }, "AreaM2", "m2");
        Refused(good with { Limits = new CompressorLimits { DischargeLineK = 107 } }, "DischargeLineK", "107", "K");
        Assert.Contains("below", Assert.Throws<ArgumentException>(() => CompressorCases.OnPure(good, "nitrogen", 300, 4e5, 2e5)).Message);
        Assert.Throws<ArgumentException>(() => CompressorCases.Run(good, ReferenceModel.Create(["nitrogen"]), [0.5], 300, 2e5, 4e5));
        Assert.Throws<ArgumentException>(() => CompressorCases.Run(good, ReferenceModel.Create(["nitrogen"]), [0.5, 0.5], 300, 2e5, 4e5));
    }

    /// <summary>Asked to stop, it stops.</summary>
    [Fact]
    public void Cancels() => Assert.Throws<OperationCanceledException>(() =>
        new HermeticCompressor(CompressorCases.Machine(CompressorKind.Rotary), ReferenceModel.Create(["nitrogen"]), [1])
            .Run(new CompressorDuty { SuctionTemperatureK = 300, SuctionPressurePa = 2e5, DischargePressurePa = 6e5 }, new CancellationToken(true)));

    /// <summary>Slip: the loaded motor runs below the synchronous speed, an inverter at its own.</summary>
    [Fact]
    public void Speed()
    {
        var machine = CompressorCases.Machine(CompressorKind.Rotary);
        Assert.InRange(CompressorCases.OnMixture(machine, 4e5, 4).ShaftSpeedRevPerS!.Value, 46, 49.9);
        Assert.Equal(57, CompressorCases.OnMixture(machine with { ShaftSpeedRevPerS = 57 }, 4e5, 4).ShaftSpeedRevPerS!.Value, 1e-9);
        Assert.InRange(CompressorCases.OnMixture(machine with { SupplyFrequencyHz = 60, Poles = 4 }, 4e5, 4).ShaftSpeedRevPerS!.Value, 27.5, 30);
    }
}
