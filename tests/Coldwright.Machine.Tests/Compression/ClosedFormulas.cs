using Coldwright.Machine.Compression;

namespace Coldwright.Machine.Tests.Compression;

/// <summary>Clearance, isentropic work and choked flow against worked values.</summary>
public sealed class ClosedFormulas
{
    /// <summary>
    /// 80/400 psig, clearance 5 %, n 1.15 (worked example of a calculator page, calcady.com). The page prints 90.9 %; its own formula gives:
    /// r = 414.7/94.7 = 4.3791; 4.3791^(1/1.15) = exp(1.47684/1.15) = exp(1.28421) = 3.6118; 1 - 0.05 (3.6118 - 1) = 0.8694.
    /// </summary>
    [Fact]
    public void ClearanceExampleWithItsArithmeticCorrected()
    {
        double ratio = (400 + 14.7) / (80 + 14.7);
        Assert.Equal(4.38, ratio, 0.005);
        double efficiency = ClearanceReExpansion.Polytropic(0.05, ratio, 1.15);
        Assert.Equal(0.869, efficiency, 0.0005);
        Assert.True(Math.Abs(efficiency - 0.909) > 0.03);
    }

    /// <summary>Rows computed from 1 - c (r^(1/n) - 1) by hand, c = 4 %.</summary>
    [Theory]
    [InlineData(1.1, 5, 0.867)]
    [InlineData(1.1, 8, 0.775)]
    [InlineData(1.1, 10, 0.716)]
    [InlineData(1.1, 15, 0.571)]
    [InlineData(1.3, 5, 0.902)]
    [InlineData(1.3, 8, 0.842)]
    [InlineData(1.3, 10, 0.805)]
    [InlineData(1.3, 15, 0.719)]
    public void ClearanceTable(double exponent, double ratio, double expected) =>
        Assert.Equal(expected, ClearanceReExpansion.Polytropic(0.04, ratio, exponent), 0.00051);

    /// <summary>1 to 10 bar, 300 K, k 1.4, efficiency 0.78: values of the tests of the open library "fluids" (C. Bell).</summary>
    [Fact]
    public void IsentropicAndIsothermalWork()
    {
        Assert.Equal(10416.877, PerfectGasCompression.Work(300, 10, 1.4, 0.78), 0.02);
        Assert.Equal(5743.427, PerfectGasCompression.Work(300, 10, 1), 0.01);
    }

    /// <summary>300 K, isentropic efficiency 0.7; computed by hand: 300 (1 + (5^(0.4/1.4) - 1)/0.7) = 300 (1 + 0.58382/0.7) = 550.2.</summary>
    [Theory]
    [InlineData(1.15, 5, 400)]
    [InlineData(1.2, 5, 432)]
    [InlineData(1.4, 5, 550)]
    [InlineData(1.15, 10, 450)]
    [InlineData(1.3, 10, 601)]
    [InlineData(1.4, 10, 699)]
    public void DischargeTemperatureTable(double k, double ratio, double expectedK) =>
        Assert.Equal(expectedK, PerfectGasCompression.OutletTemperature(300, ratio, k, 0.7), 0.6);

    /// <summary>Critical flow, k 1.289, 14 bar: p* = 7.66813 bar (textbook example 12-4 in Cengel and Cimbala, as quoted by the tests of "fluids").</summary>
    [Fact]
    public void CriticalPressure() => Assert.Equal(7.66813, 14 * GasRestriction.CriticalPressureRatio(1.289), 1e-4);

    /// <summary>Choked flux against its closed formula sqrt(k p rho (2/(k+1))^((k+1)/(k-1))), and 0 without a difference.</summary>
    [Fact]
    public void NozzleChokes()
    {
        const double k = 1.4, p = 10e5, rho = 11.6;
        double choked = Math.Sqrt(k * p * rho * Math.Pow(2 / (k + 1), (k + 1) / (k - 1)));
        Assert.Equal(choked, GasRestriction.Nozzle(p, rho, 1e5, k), 1e-9 * choked);
        Assert.Equal(choked, GasRestriction.Nozzle(p, rho, 5e5, k), 1e-9 * choked);
        Assert.True(GasRestriction.Nozzle(p, rho, 7e5, k) < choked);
        Assert.Equal(0, GasRestriction.Nozzle(p, rho, p, k));
    }

    /// <summary>A small pressure drop over a long line is that of an incompressible flow, G = sqrt(2 rho dp/K); a large one chokes.</summary>
    [Fact]
    public void IsothermalLineLimits()
    {
        double small = GasRestriction.IsothermalLine(10e5, 12, 9.99e5, 50);
        Assert.Equal(Math.Sqrt(2 * 12 * 1e3 / 50), small, 2e-3 * small);
        Assert.Equal(GasRestriction.IsothermalLine(10e5, 12, 0.5e5, 50), GasRestriction.IsothermalLine(10e5, 12, 0.1e5, 50), 1e-9);
    }

    /// <summary>
    /// Cross flow over a cylinder: Re 6071, Pr 0.70 gives Nu 40.6 (F. P. Incropera and others, Fundamentals of Heat and Mass Transfer,
    /// example 7.4; from memory, and by hand: 0.3 + 0.62 x 77.92 x 0.8879/1.1399 x 1.0727 = 40.7).
    /// </summary>
    [Fact]
    public void CrossFlow() => Assert.Equal(40.6, ShellCooling.CrossFlowNusselt(6071, 0.70), 0.2);

    /// <summary>
    /// By hand: 40 K over 0.3 m: 1.42 (40/0.3)^0.25 = 4.825; 0.1 m2 black at 340 K in 300 K:
    /// 0.1 (4.825 x 40 + 5.6704e-8 (340^4 - 300^4)) = 19.30 + 29.84 = 49.14 W.
    /// </summary>
    [Fact]
    public void StillAir()
    {
        var shell = new ShellCooling { AreaM2 = 0.1, HeightM = 0.3, Emissivity = 1 };
        Assert.Equal(49.14, shell.HeatToRoom(340, 300, double.NaN), 0.03);
        Assert.Equal(0, shell.HeatToRoom(300, 300, double.NaN), 1e-12);
        Assert.True((shell with { FanAirSpeedMPerS = 3 }).HeatToRoom(340, 300, double.NaN) > 60);
        Assert.Equal(80, (shell with { ConductanceWPerK = 2 }).HeatToRoom(340, 300, double.NaN), 1e-9);
    }
}
