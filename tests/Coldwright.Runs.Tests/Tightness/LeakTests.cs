using System.Globalization;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Runs.Record;
using Coldwright.Runs.Tightness;

namespace Coldwright.Runs.Tests.Tightness;

/// <summary>Leak tests made with a known leak, temperatures that swing, and gauges that round.</summary>
public sealed class LeakTests
{
    private const double VolumeM3 = 2e-3;

    /// <summary>
    /// A log of a shut-in gas: the amount falls at the given rate, the temperature swings, the pressure follows from the reference equation of state
    /// (solved here for p, so that the test does not use the code under test).
    /// </summary>
    private static string Log(string gas, double leakMolS, double swingK, double hours, double stepBar, int seed, double pressurePa = 16e5)
    {
        var flash = new Flash(ReferenceModel.Create([gas]));
        var random = new Random(seed);
        flash.TrySolve(293.15, pressurePa, [1.0]);
        var amount = flash.Density() * VolumeM3;
        var text = new System.Text.StringBuilder("time [s],p,T\n");
        for (var i = 0; i <= 120; i++)
        {
            var t = hours * 3600 * i / 120;
            var temperature = 293.15 + swingK * Math.Sin(2 * Math.PI * t / 86400 + 0.4);
            var density = (amount - leakMolS * t) / VolumeM3;
            double low = 0.5 * pressurePa, high = 1.5 * pressurePa;
            for (var k = 0; k < 60; k++)
            {
                var p = 0.5 * (low + high);
                flash.TrySolve(temperature, p, [1.0]);
                if (flash.Density() < density) low = p;
                else high = p;
            }
            var read = Math.Round((low / 1e5 + 0.3 * stepBar * (random.NextDouble() - 0.5)) / stepBar) * stepBar;
            text.Append(CultureInfo.InvariantCulture, $"{t:0},{read:0.0000},{temperature:0.00}\n");
        }
        return text.ToString();
    }

    private static string Yaml(string gas, string more = "") => $$"""
        name: t
        kind: leak-test
        room: {pressure: 1013 mbara}
        log: {}
        channels:
          loop: {column: p, at: coil, sensor: pressure-gauge, unit: bara, class: 1, span: 25 bar}
          air: {column: T, at: room, sensor: thermometer, unit: °C, uncertainty: 0.2 K}
        test: {gas: {{gas}}, volume: 2 L, volume-uncertainty: 2 %, temperature-drift: 0.1 K{{more}}}
        """;

    private static LeakTestResult Evaluate(string yaml, string log)
    {
        var result = LeakTest.Evaluate(Make.Record(yaml, log), out var complaint);
        Assert.True(result is not null, complaint);
        return result;
    }

    private static string Celsius(string log) => string.Join('\n', log.Split('\n').Select((line, i) =>
        i == 0 || line.Length == 0 ? line : string.Join(',', line.Split(',')[..2]) + "," + (double.Parse(line.Split(',')[2], CultureInfo.InvariantCulture) - 273.15).ToString("0.00", CultureInfo.InvariantCulture)));

    [Theory]
    [InlineData("nitrogen", 2e-8)]
    [InlineData("nitrogen", 3e-7)]
    [InlineData("argon", 5e-8)]
    [InlineData("ethane", 1e-7)]
    [InlineData("propane", 1e-8)]
    public void AKnownLeakIsFound(string gas, double leakMolS)
    {
        var pressure = gas == "propane" ? 4e5 : 16e5;
        var result = Evaluate(Yaml(gas), Celsius(Log(gas, leakMolS, 3, 72, 0.001, 5, pressure)));
        // Scatter, steps and a drift of 0.1 K are what the test may be off by.
        Assert.Equal(leakMolS, result.LeakMolS, 2 * result.UncertaintyMolS + 0.001 * leakMolS);
        Assert.True(result.UncertaintyMolS < 2e-8, $"{result.UncertaintyMolS}");
    }

    /// <summary>A tight vessel in a room that swings by 6 K: the pressure moves by a third of a bar, the amount does not (conservation of mass).</summary>
    [Fact]
    public void WarmingIsNoLeak()
    {
        var result = Evaluate(Yaml("nitrogen"), Celsius(Log("nitrogen", 0, 6, 30, 0.0001, 5)));
        Assert.True(Math.Abs(result.ChangeAsReadPa) > 5000, $"{result.ChangeAsReadPa}");
        Assert.True(Math.Abs(result.ChangeCorrectedPa) < 60, $"{result.ChangeCorrectedPa}");
        Assert.True(Math.Abs(result.LeakMolS) < 0.1 * result.UncertaintyMolS);
        Assert.False(result.IsSeen);
    }

    /// <summary>At 20 °C one Pa m3/s is 4.103e-4 mol/s: 1/(R T), R of the CODATA 2018 constants.</summary>
    [Fact]
    public void TheThreeUnitsOfALeakAgree()
    {
        var result = Evaluate(Yaml("nitrogen"), Celsius(Log("nitrogen", 3e-7, 0, 48, 0.001, 5)));
        Assert.Equal(4.103e-4, result.LeakMolS / result.LeakPaM3S, 1e-7);
        Assert.Equal(28.0134e-3 * 31557600, result.LeakKgPerYear / result.LeakMolS, 28.0134e-3 * 31557600 * 1e-4);
    }

    [Fact]
    public void VerdictsFollowTheUncertainty()
    {
        var log = Celsius(Log("nitrogen", 5e-8, 1, 48, 0.002, 5));
        // 5e-8 mol/s of nitrogen are 44 g a year.
        Assert.Equal(TightnessVerdict.Passed, Evaluate(Yaml("nitrogen", ", allowed-per-year: 120 g"), log).Verdict);
        Assert.Equal(TightnessVerdict.Failed, Evaluate(Yaml("nitrogen", ", allowed-per-year: 10 g"), log).Verdict);
        var between = Evaluate(Yaml("nitrogen", ", allowed-per-year: 46 g"), log);
        Assert.True(TightnessVerdict.CannotTell == between.Verdict, $"{between.Verdict}: {between.LeakKgPerYear} ± {between.UncertaintyKgPerYear}");
        Assert.Equal(TightnessVerdict.NoLimit, Evaluate(Yaml("nitrogen"), log).Verdict);
        var brief = Evaluate(Yaml("nitrogen", ", allowed-per-year: 70 g"), Celsius(Log("nitrogen", 5e-8, 1, 4, 0.002, 5)));
        Assert.Equal(TightnessVerdict.CannotTell, brief.Verdict);
        Assert.InRange(brief.NeededS!.Value, 4 * 3600, 60 * 3600);
    }

    /// <summary>The stated uncertainty is honest: over many seeded tests the error over its uncertainty has the size it should (not far above 1).</summary>
    [Fact]
    public void TheUncertaintyCoversTheError()
    {
        var pulls = Enumerable.Range(1, 25).Select(seed =>
        {
            var result = Evaluate(Yaml("nitrogen"), Celsius(Log("nitrogen", 4e-8, 2, 24, 0.02, seed)));
            return (result.LeakMolS - 4e-8) / result.UncertaintyMolS;
        }).ToArray();
        Assert.True(pulls.All(p => Math.Abs(p) < 3), string.Join(' ', pulls.Select(p => p.ToString("0.0", CultureInfo.InvariantCulture))));
        Assert.True(Math.Sqrt(pulls.Average(p => p * p)) < 1.2);
    }

    [Fact]
    public void AGasThatCondensesIsRefused()
    {
        var yaml = Yaml("propane");
        var log = "time [s],p,T\n" + string.Concat(Enumerable.Range(0, 50).Select(i => $"{600 * i},14.5,20.00\n"));
        Assert.NotNull(LeakTest.Evaluate(Make.Record(yaml, log), out _));
        var mixture = yaml.Replace("gas: propane", "gas: \"nitrogen 0.3, propane 0.4, isobutane 0.3\"", StringComparison.Ordinal);
        Assert.Null(LeakTest.Evaluate(Make.Record(mixture, log), out var complaint));
        Assert.Contains("part of the gas is liquid", complaint, StringComparison.Ordinal);
    }
}
