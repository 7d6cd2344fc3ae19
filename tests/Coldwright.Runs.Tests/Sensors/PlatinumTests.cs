using Coldwright.Runs.Sensors;
using CsCheck;

namespace Coldwright.Runs.Tests.Sensors;

/// <summary>Platinum thermometers against the table of IEC 60751 and tables printed from it.</summary>
public sealed class PlatinumTests
{
    /// <summary>IEC 60751:2008, table 1 (values as printed in makers' tables), ohm, two decimals.</summary>
    [Theory]
    [InlineData(-200, 18.52)]
    [InlineData(-100, 60.26)]
    [InlineData(0, 100.00)]
    [InlineData(100, 138.51)]
    public void ResistanceKeepsTheTable(double celsius, double ohm) => Assert.Equal(ohm, 100 * PlatinumThermometer.Ratio(celsius + 273.15), 0.0051);

    /// <summary>
    /// Permitted resistances of classes A and B as printed in WIKA's operating instructions 11208287 (2010) from DIN EN 60751: the equation at the end of
    /// the tolerance must give the printed ohm.
    /// </summary>
    [Theory]
    [InlineData("B", -196, 19.69, 20.80)]
    [InlineData("B", -100, 59.93, 60.58)]
    [InlineData("A", -100, 60.11, 60.40)]
    [InlineData("AA", -50, 80.23, 80.38)]
    [InlineData("A", -30, 88.14, 88.30)]
    [InlineData("B", 20, 107.64, 107.95)]
    [InlineData("B", 100, 138.20, 138.81)]
    [InlineData("A", 100, 138.37, 138.64)]
    [InlineData("B", 600, 312.65, 314.77)]
    public void TolerancesKeepThePrintedOhm(string grade, double celsius, double lowest, double highest)
    {
        var limit = ToleranceClass.Platinum(grade, celsius + 273.15);
        Assert.True(limit.InsideStandard);
        Assert.Equal(lowest, 100 * PlatinumThermometer.Ratio(celsius + 273.15 - limit.LimitK), 0.0101);
        Assert.Equal(highest, 100 * PlatinumThermometer.Ratio(celsius + 273.15 + limit.LimitK), 0.0101);
    }

    /// <summary>IEC 60751 (1995), allowed deviations: class A 0.55 K and class B 1.3 K at -200 °C.</summary>
    [Fact]
    public void DeviationsKeepTheTable()
    {
        Assert.Equal(0.55, ToleranceClass.Platinum("A", 73.15).LimitK, 1e-9);
        Assert.Equal(1.3, ToleranceClass.Platinum("B", 73.15).LimitK, 1e-9);
        Assert.False(ToleranceClass.Platinum("A", 73.15).InsideStandard);
    }

    [Fact]
    public void ThereAndBackAgainIsExact() => Gen.Double[73.2, 1100].Sample(t =>
    {
        Assert.True(PlatinumThermometer.TryTemperatureK(PlatinumThermometer.Ratio(t), out var back));
        Assert.Equal(t, back, 1e-7);
        Assert.Equal((PlatinumThermometer.Ratio(t + 1e-3) - PlatinumThermometer.Ratio(t - 1e-3)) / 2e-3, PlatinumThermometer.RatioPerK(t), 1e-8);
    }, iter: 2000);

    [Theory]
    [InlineData(0)]
    [InlineData(5)]
    [InlineData(double.NaN)]
    public void ResistancesOfNoTemperatureAreRefused(double ratio)
    {
        Assert.False(PlatinumThermometer.TryTemperatureK(ratio, out var t));
        Assert.True(double.IsFinite(t));
    }
}
