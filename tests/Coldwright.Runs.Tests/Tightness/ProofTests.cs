using System.Globalization;
using Coldwright.Runs.Tightness;

namespace Coldwright.Runs.Tests.Tightness;

/// <summary>Proof tests: reached, held, fallen, and what a kelvin does.</summary>
public sealed class ProofTests
{
    private static string Yaml(string medium, string drift = "0.01 K") => $$"""
        name: t
        kind: proof-test
        room: {pressure: 1000 mbara}
        log: {}
        channels:
          line: {column: p, at: coil, sensor: pressure-gauge, unit: barg, class: 0.6, span: 60 bar}
          air: {column: T, at: room, sensor: thermometer, unit: °C, uncertainty: 0.2 K}
        test: {gas: {{medium}}, proof-pressure: 35 barg, hold: 30 min, allowed-drop: 0.3 bar, temperature-drift: {{drift}}}
        """;

    private static ProofTestResult Evaluate(string yaml, Func<double, (double Barg, double Celsius)> at, double minutes = 45)
    {
        var log = "time [min],p,T\n" + string.Concat(Enumerable.Range(0, (int)(minutes * 4) + 1).Select(i => at(i / 4.0) is var (p, t) ? string.Create(CultureInfo.InvariantCulture, $"{i / 4.0:0.00},{p:0.000},{t:0.00}\n") : ""));
        var result = ProofTest.Evaluate(Make.Record(yaml, log), out var complaint);
        Assert.True(result is not null, complaint);
        return result;
    }

    // Pumped up within five minutes, let off after forty.
    private static double Course(double minute, double fallBarPerMinute) => minute < 5 ? 7.1 * minute : minute > 40 ? Math.Max(0, 35.5 - 5 * (minute - 40)) : 35.5 - fallBarPerMinute * (minute - 5);

    [Fact]
    public void AHeldPressurePasses()
    {
        var result = Evaluate(Yaml("water"), m => (Course(m, 0.001), 20));
        Assert.Equal(TightnessVerdict.Passed, result.Verdict);
        Assert.Equal(35 * 60, result.HeldS, 60.0);
        Assert.Equal(0.035e5, result.DropPa, 0.01e5);
    }

    [Fact]
    public void AFallingPressureFails() => Assert.Equal(TightnessVerdict.Failed, Evaluate(Yaml("water"), m => (Course(m, 0.03), 20)).Verdict);

    [Fact]
    public void TooShortFails()
    {
        var result = Evaluate(Yaml("water"), m => (m > 25 ? 10 : Course(m, 0), 20));
        Assert.Equal(TightnessVerdict.Failed, result.Verdict);
        Assert.Contains("30 min were asked for", result.Reason.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void NotReachedFails()
    {
        var result = Evaluate(Yaml("water"), m => (Course(m, 0) * 0.95, 20));
        Assert.False(result.Reached);
        Assert.Contains("35.0 bar gauge was not reached; the highest reading is 33.7", result.Reason.ToString(), StringComparison.Ordinal);
    }

    /// <summary>
    /// Nitrogen at 36.5 bar: dp/dT = R rho (1 + rho (B + T dB/dT)), the virial equation cut after B (any textbook), with B = -5.9 and T dB/dT = 56 cm3/mol
    /// at 293 K (from memory, after the table of second virial coefficients in the CRC Handbook). The ideal gas alone would say 8 % less.
    /// </summary>
    [Fact]
    public void CoolingIsNoFall()
    {
        var result = Evaluate(Yaml("nitrogen"), m => (Course(m, 0.1358 / 10), 20 - m / 10));
        double ideal = 36.5e5 / (8.314462618 * 293.15), rho = ideal * (1 + ideal * 5.9e-6);
        Assert.Equal(8.314462618 * rho * (1 + rho * 50.1e-6), result.PressurePerK, 0.01 * result.PressurePerK);
        Assert.InRange(result.DropAsReadPa, 0.44e5, 0.50e5);
        Assert.InRange(result.DropPa, -0.01e5, 0.01e5);
        Assert.Equal(TightnessVerdict.Passed, result.Verdict);
        Assert.Contains(result.Warnings, w => w.Contains("what bursts flies", StringComparison.Ordinal));
    }

    /// <summary>Water in a full pipe moves by bars for a kelvin, so a thermometer that may drift by 0.3 K cannot tell 0.3 bar.</summary>
    [Fact]
    public void AFullPipeOfWaterIsAThermometer()
    {
        var result = Evaluate(Yaml("water", "0.3 K"), m => (Course(m, 0.001), 20));
        Assert.Equal(TightnessVerdict.CannotTell, result.Verdict);
        Assert.InRange(result.PressurePerK, 3e5, 4e5);
    }
}
