using Coldwright.Quantities;
using Coldwright.Runs.Sensors;

namespace Coldwright.Runs.Tests.Sensors;

/// <summary>Tolerances and the way they add up.</summary>
public sealed class UncertaintyTests
{
    /// <summary>IEC 60584-1:2013, tolerance classes (as tabulated by Pico Technology and others).</summary>
    [Theory]
    [InlineData(ThermocoupleType.K, 1, 20, 1.5, true)]
    [InlineData(ThermocoupleType.K, 1, 500, 2.0, true)]
    [InlineData(ThermocoupleType.K, 2, 20, 2.5, true)]
    [InlineData(ThermocoupleType.K, 2, 400, 3.0, true)]
    [InlineData(ThermocoupleType.K, 3, -100, 2.5, true)]
    [InlineData(ThermocoupleType.K, 3, -196, 2.94, true)]
    [InlineData(ThermocoupleType.T, 1, 20, 0.5, true)]
    [InlineData(ThermocoupleType.T, 2, 20, 1.0, true)]
    [InlineData(ThermocoupleType.T, 3, -196, 2.94, true)]
    [InlineData(ThermocoupleType.K, 1, -196, 2.94, false)]
    [InlineData(ThermocoupleType.T, 2, -100, 1.5, false)]
    public void ThermocoupleClassesKeepTheStandard(ThermocoupleType type, int grade, double celsius, double limitK, bool inside)
    {
        var limit = ToleranceClass.Thermocouple(type, grade, celsius + 273.15);
        Assert.Equal(limitK, limit.LimitK, 1e-9);
        Assert.Equal(inside, limit.InsideStandard);
    }

    /// <summary>A junction wrong by 1 K makes 2.5 K at boiling nitrogen with type K: 40 over 16 µV/K (NIST Monograph 175).</summary>
    [Fact]
    public void TheColdJunctionIsMagnifiedByTheRatioOfSensitivities()
    {
        var parts = Budget(Couple() with { ColdJunctionUncertaintyK = 1 }, 0.1, 0).At(77.36);
        Assert.Equal(40.3 / 16.0, parts.Single(p => p.Name == "cold junction").Standard, 0.04);
        Assert.True(parts.Single(p => p.Name == "cold junction").IsCommon);
    }

    /// <summary>JCGM 100:2008, 4.3.7: limits with an even spread give the limit over the square root of 3; a step gives its half over the square root of 3.</summary>
    [Fact]
    public void LimitsCountAsEvenlySpread()
    {
        var parts = Budget(Couple() with { Grade = "3" }, 0.1, 0.05).At(173.15);
        Assert.Equal(2.5 / Math.Sqrt(3), parts.Single(p => p.Name == "wire").Standard, 1e-9);
        Assert.Equal(0.1 / Math.Sqrt(12), parts.Single(p => p.Name == "step of the logger").Standard, 1e-9);
        Assert.Equal(0.05, parts.Single(p => p.Name == "scatter").Standard, 1e-9);
        Assert.Equal(Math.Sqrt(parts.Sum(p => p.Standard * p.Standard)), SensorUncertainty.Combine(parts), 1e-12);
    }

    /// <summary>EN 837-1:1996, 8: class 1.6 is 1.6 % of the span, so 0.16 bar on 10 bar (WIKA, testing instructions for pressure gauges).</summary>
    [Fact]
    public void AGaugesClassIsAShareOfItsSpan()
    {
        var gauge = Gauge() with { Grade = "1.6", SpanPa = 10e5 };
        Assert.Equal(0.16e5 / Math.Sqrt(3), Budget(gauge, 0, 0).At(5e5).Single(p => p.Name == "gauge").Standard, 1e-6);
        Assert.Empty(Budget(gauge, 0, 0).Assumptions);
        Assert.Equal(2, Budget(Gauge(), 0, 0).Assumptions.Count);
    }

    [Fact]
    public void AVoltagesStepWeighsMoreInTheCold()
    {
        var bare = Couple() with { Scale = RawScale.Millivolt, Unit = null, UnitWord = "mV", ColdJunctionK = 293.15 };
        double Step(double t) => Budget(bare, 0.001, 0).At(t).Single(p => p.Name == "step of the logger").Standard;
        Assert.Equal(Thermocouple.K.SensitivityVPerK(290) / Thermocouple.K.SensitivityVPerK(77), Step(77) / Step(290), 1e-6);
    }

    [Fact]
    public void TheOwnersOwnFigureReplacesTheClass()
    {
        var parts = Budget(Couple() with { Uncertainty = 0.4 }, 0, 0).At(77);
        Assert.Equal([0.4], parts.Select(p => p.Standard));
        Assert.Equal(5, Budget(Power() with { RelativeUncertainty = 0.01 }, 0, 0).At(500).Single().Standard, 1e-9);
    }

    private static SensorUncertainty Budget(SensorDescription sensor, double step, double noise) => new(new SensorModel(sensor), step, noise, 20e5, 293.15, 0);

    private static SensorDescription Couple() => Of("thermocouple-K", "°C");
    private static SensorDescription Gauge() => Of("pressure-gauge", "barg");
    private static SensorDescription Power() => Of("power-meter", "W");

    private static SensorDescription Of(string word, string unit)
    {
        Assert.True(UnitTable.TryFindWord(unit, out var found));
        return new() { Kind = SensorKind.Find(word)!, UnitWord = unit, Scale = RawScale.Unit, Unit = found };
    }
}
