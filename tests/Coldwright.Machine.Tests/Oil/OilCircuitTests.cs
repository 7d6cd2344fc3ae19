using Coldwright.Machine.Compression;
using Coldwright.Machine.Oil;

namespace Coldwright.Machine.Tests.Oil;

/// <summary>Oil circuit: arithmetic by hand, balance, and what it warns of. Its figures are common practice, so none is a validation.</summary>
public sealed class OilCircuitTests
{
    private static readonly OilCircuitInput Case = new()
    {
        Kind = CompressorKind.Rotary, GasMassFlow = 2e-3, HighPressurePa = 18e5, SuctionPressurePa = 2e5, GasDensityKgPerM3 = 22,
        Circulation = 0.02, SeparatorEfficiency = 0.95, SumpVolumeM3 = 60e-6, UsedShare = 0.5, ReturnBoreM = 1.0e-3, ReturnLengthM = 0.5,
    };

    /// <summary>
    /// By hand: oil 0.02 x 2 g/s = 40 mg/s, caught 38 mg/s; half of 60 cm3 at 920 kg/m3 is 27.6 g, filled in 726.3 s; a timer at half of
    /// that, 363.2 s. Half of 350 g is gone after 4375 s. 2 mg/s pass: 1000 ppm. A plug of 0.8 mm x 10 mm weighs 4.624 mg; with 1 % of 2 mg/s
    /// freezing there it is made in 231 s, x10 either way.
    /// </summary>
    [Fact]
    public void AmountsByHand()
    {
        var r = OilCircuit.Run(Case);
        Assert.Equal(38e-6, r.CaughtFlow, 1e-12);
        Assert.Equal(726.3, r.FillTimeS.Value, 0.1);
        Assert.Equal(2, r.FillTimeS.High / r.FillTimeS.Value, 1e-9);
        Assert.Equal(363.2, r.IntervalS, 0.1);
        Assert.Equal(4375, r.HalfLostWithoutReturnS, 0.1);
        Assert.Equal(1e-3, r.ToColdEndShare.Value, 1e-9);
        Assert.Equal(231.2, r.PlugTimeS.Value, 0.1);
        Assert.Equal(10, r.PlugTimeS.High / r.PlugTimeS.Value, 1e-9);
        Assert.True(Math.Abs(r.MassBalanceError) < 1e-12);
    }

    /// <summary>
    /// Laminar return line by Hagen and Poiseuille (ends negligible): 0.6 mm bore, 2 m, 16 bar, 920 kg/m3, 100 mm2/s:
    /// u = dp D^2/(32 mu L) = 16e5 x 3.6e-7/(32 x 0.092 x 2) = 0.09783 m/s; x 920 x pi/4 x 3.6e-7 = 2.545e-5 kg/s.
    /// </summary>
    [Fact]
    public void LaminarLine()
    {
        var (flow, reynolds) = OilReturnLine.Flow(16e5, 0.6e-3, 2, 920, 100e-6);
        Assert.Equal(2.545e-5, flow, 0.01e-5);
        Assert.Equal(0.587, reynolds, 0.001);
    }

    /// <summary>Open time drains the oil of one interval at twice the viscosity; gas goes back for the rest, and costs capacity.</summary>
    [Fact]
    public void OpenTimeAndLostGas()
    {
        var r = OilCircuit.Run(Case);
        Assert.Equal(2 * r.CaughtFlow * r.IntervalS / r.ReturnFlow, r.OpenTimeS, 1e-9);
        Assert.Equal(0.5 * r.OpenTimeS * r.GasThroughLine, r.GasPerOpeningKg.Value, 1e-12);
        Assert.Equal(r.GasPerOpeningKg.Value / (Case.GasMassFlow * r.IntervalS), r.LostCapacityShare.Value, 1e-12);
        Assert.InRange(r.LostCapacityShare.Value, 1e-5, 0.02);
        Assert.Equal(3, r.Level.Count(p => p.LevelShare > 0.2));
        Assert.Equal(0, r.Level[^1].LevelShare, 1e-12);
    }

    /// <summary>Circulation that is not given is the usual one of the kind, and said; it spans 0.5 to 5 %.</summary>
    [Fact]
    public void UsualCirculation()
    {
        var r = OilCircuit.Run(Case with { Circulation = null });
        Assert.Equal(0.005 * 2e-3, r.OilFlow.Low, 1e-12);
        Assert.Equal(0.05 * 2e-3, r.OilFlow.High, 1e-12);
        Assert.Contains(r.Warnings, w => w.Contains("1.5 % of the gas flow") && w.Contains("0.5 to 5 %"));
        Assert.Contains(r.Warnings, w => w.Contains("our assumption"));
        Assert.True(OilCircuit.Run(Case with { ColdTrapEfficiency = 0.9 }).ToColdEnd.Value < 0.11 * r.OilFlow.High);
    }

    /// <summary>A line too narrow to keep up, a line too wide to time, and a greedy sump are said.</summary>
    [Fact]
    public void Warns()
    {
        Assert.Contains(OilCircuit.Run(Case with { ReturnBoreM = 0.25e-3, ReturnLengthM = 5, OilViscosityM2PerS = 200e-6 }).Warnings, w => w.Contains("overflows"));
        Assert.Contains(OilCircuit.Run(Case with { ReturnBoreM = 6e-3, SumpVolumeM3 = 5e-6 }).Warnings, w => w.Contains("open time"));
        Assert.Contains(OilCircuit.Run(Case with { SumpVolumeM3 = 500e-6 }).Warnings, w => w.Contains("open earlier"));
    }

    /// <summary>Without a separator nothing fills and all passes.</summary>
    [Fact]
    public void NoSeparator()
    {
        var r = OilCircuit.Run(Case with { SeparatorEfficiency = 0, SeparatorEfficiencyLow = 0 });
        Assert.Equal(double.PositiveInfinity, r.FillTimeS.Value);
        Assert.Equal(0.02, r.ToColdEndShare.Value, 1e-12);
        Assert.Equal(0, r.LostCapacityShare.High);
    }

    /// <summary>Bad input is refused by name, value, limit and unit.</summary>
    [Fact]
    public void BadInput()
    {
        void Refused(OilCircuitInput input, params string[] words)
        {
            var e = Assert.Throws<ArgumentException>(() => OilCircuit.Run(input));
            Assert.All(words, w => Assert.Contains(w, e.Message));
        }

        Refused(Case with { Circulation = 2 }, "Circulation", "0.1");
        Refused(Case with { SeparatorEfficiency = 1.1 }, "SeparatorEfficiency");
        Refused(Case with { SumpVolumeM3 = 60 }, "SumpVolumeM3", "60", "m3");
        Refused(Case with { ReturnBoreM = 1 }, "ReturnBoreM", "0.02", "m");
        Refused(Case with { HighPressurePa = 1e5 }, "SuctionPressurePa", "below", "Pa");
    }
}
