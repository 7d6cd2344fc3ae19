using Coldwright.Runs.Sensors;
using CsCheck;

namespace Coldwright.Runs.Tests.Sensors;

/// <summary>Reference functions of types K and T against NIST's published tables, and their inverse against themselves.</summary>
public sealed class ThermocoupleTests
{
    /// <summary>ITS-90 table of type K (NIST Monograph 175, as printed in ASTM E230 table 9), mV, three decimals.</summary>
    [Theory]
    [InlineData(-270, -6.458)]
    [InlineData(-260, -6.441)]
    [InlineData(-250, -6.404)]
    [InlineData(-230, -6.262)]
    [InlineData(-210, -6.035)]
    [InlineData(-200, -5.891)]
    [InlineData(-196, -5.829)]
    [InlineData(-195, -5.813)]
    [InlineData(-190, -5.730)]
    [InlineData(-183, -5.606)]
    [InlineData(-180, -5.550)]
    [InlineData(-170, -5.354)]
    [InlineData(-160, -5.141)]
    [InlineData(-150, -4.913)]
    [InlineData(-140, -4.669)]
    [InlineData(-130, -4.411)]
    public void TypeKKeepsTheTable(double celsius, double millivolt) => Assert.Equal(millivolt, 1e3 * Thermocouple.K.VoltageV(celsius + 273.15), 0.00051);

    /// <summary>ITS-90 table of type T (NIST SRD 60, type_t.tab), mV, three decimals.</summary>
    [Theory]
    [InlineData(-270, -6.258)]
    [InlineData(-260, -6.232)]
    [InlineData(-240, -6.105)]
    [InlineData(-220, -5.888)]
    [InlineData(-200, -5.603)]
    [InlineData(-196, -5.539)]
    [InlineData(-190, -5.439)]
    [InlineData(-183, -5.316)]
    [InlineData(-170, -5.070)]
    [InlineData(-150, -4.648)]
    [InlineData(-130, -4.177)]
    [InlineData(-100, -3.379)]
    [InlineData(-80, -2.788)]
    [InlineData(-60, -2.153)]
    [InlineData(-50, -1.819)]
    [InlineData(-40, -1.475)]
    public void TypeTKeepsTheTable(double celsius, double millivolt) => Assert.Equal(millivolt, 1e3 * Thermocouple.T.VoltageV(celsius + 273.15), 0.00051);

    /// <summary>Above 0 °C: NIST SRD 60 gives 1.000 and 4.096 mV for type K, 0.992 and 4.279 mV for type T at 25 and 100 °C.</summary>
    [Theory]
    [InlineData(ThermocoupleType.K, 0, 0)]
    [InlineData(ThermocoupleType.K, 25, 1.000)]
    [InlineData(ThermocoupleType.K, 100, 4.096)]
    [InlineData(ThermocoupleType.T, 0, 0)]
    [InlineData(ThermocoupleType.T, 25, 0.992)]
    [InlineData(ThermocoupleType.T, 100, 4.279)]
    public void WarmValuesKeepTheTable(ThermocoupleType type, double celsius, double millivolt) => Assert.Equal(millivolt, 1e3 * Thermocouple.Of(type).VoltageV(celsius + 273.15), 0.00051);

    /// <summary>Type K near boiling nitrogen gives some 16 µV for a kelvin: the table's step from -196 to -195 °C is 0.016 mV (NIST Monograph 175).</summary>
    [Fact]
    public void SensitivityFallsToTheColdOne()
    {
        Assert.Equal(16e-6, Thermocouple.K.SensitivityVPerK(77.35), 0.2e-6);
        Assert.Equal(39.45e-6, Thermocouple.K.SensitivityVPerK(273.15), 0.1e-6);
        foreach (var couple in new[] { Thermocouple.K, Thermocouple.T })
            for (var t = 20.0; t < 600; t += 7.3)
                Assert.Equal((couple.VoltageV(t + 0.01) - couple.VoltageV(t - 0.01)) / 0.02, couple.SensitivityVPerK(t), 2e-9);
    }

    [Theory]
    [InlineData(ThermocoupleType.K)]
    [InlineData(ThermocoupleType.T)]
    public void ThereAndBackAgainIsExact(ThermocoupleType type)
    {
        var couple = Thermocouple.Of(type);
        Gen.Double[20, 600].Sample(t =>
        {
            Assert.True(couple.TryTemperatureK(couple.VoltageV(t), out var back));
            Assert.Equal(t, back, 1e-6);
        }, iter: 3000);
    }

    /// <summary>NIST states that its inverse polynomials are off by at most 0.04 °C between -200 and 0 °C; the solved inverse lies within that of them.</summary>
    [Theory]
    [InlineData(ThermocoupleType.K)]
    [InlineData(ThermocoupleType.T)]
    public void TheInverseAgreesWithNistsOwn(ThermocoupleType type)
    {
        var couple = Thermocouple.Of(type);
        var d = type == ThermocoupleType.K ? ThermocoupleCoefficients.InverseK : ThermocoupleCoefficients.InverseT;
        for (var t = -200.0; t <= 0; t += 1.7)
        {
            var e = 1e3 * couple.VoltageV(t + 273.15);
            var nist = d.Reverse().Aggregate(0.0, (sum, c) => sum * e + c);
            Assert.InRange(nist - t, -0.05, 0.05);
        }
    }

    [Theory]
    [InlineData(-0.0066)]
    [InlineData(0.2)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void VoltagesOfNoTemperatureAreRefused(double volt)
    {
        Assert.False(Thermocouple.K.TryTemperatureK(volt, out var t));
        Assert.True(double.IsFinite(t));
        Assert.False(Thermocouple.T.TryTemperatureK(volt, out t));
        Assert.True(double.IsFinite(t));
    }
}
