namespace Coldwright.Cli.Tests;

/// <summary>Wrong input to <c>state</c>: value, limit and unit in the message, exit 2, nothing on standard output.</summary>
public class BadInputTests
{
    public static TheoryData<string[], string[]> Cases => new()
    {
        // wrong unit
        { ["nitrogen", "-T", "300 K", "-p", "17 W"], ["-p", "'17 W'", "17 barg"] },
        { ["nitrogen", "-T", "300", "-p", "17 barg"], ["-T", "'300'", "unit", "°C"] },
        { ["nitrogen", "-p", "1 bara", "--enthalpy", "-12 kJ/kg"], ["--enthalpy", "kJ/kg", "J/mol"] },
        // bare bar
        { ["nitrogen", "-T", "300 K", "-p", "17 bar"], ["'17 bar'", "gauge or absolute", "17 barg", "17 bara"] },
        // fractions
        { ["nitrogen 0.5, methane 0.3", "-T", "300 K", "-p", "1 bara"], ["0.8", "sum to 1", "0.001"] },
        { ["nitrogen -0.5, methane 1.5", "-T", "300 K", "-p", "1 bara"], ["-0.5", "0 to 1"] },
        // unknown substances
        { ["nitrogn", "-T", "300 K", "-p", "1 bara"], ["'nitrogn'", "did you mean nitrogen?"] },
        { ["nitrogen 0.5, methan 0.5", "-T", "300 K", "-p", "1 bara"], ["'methan'", "methane"] },
        { ["unobtainium", "-T", "300 K", "-p", "1 bara"], ["'unobtainium'", "known are"] },
        { ["", "-T", "300 K", "-p", "1 bara"], ["mixture is empty"] },
        // below absolute zero and below vacuum
        { ["nitrogen", "-T", "-300 °C", "-p", "1 bara"], ["-300 °C", "absolute zero", "-273.15 °C"] },
        { ["nitrogen", "-T", "0 K", "-p", "1 bara"], ["0 K", "absolute zero"] },
        { ["nitrogen", "-T", "300 K", "-p", "-2 barg"], ["-2 barg", "vacuum", "-1.01325 barg"] },
        // outside the equation: limits of Span et al. 2000
        { ["nitrogen", "-T", "2500 K", "-p", "1 bara"], ["2500 K", "2000 K", "nitrogen"] },
        { ["nitrogen", "-T", "50 K", "-p", "1 bara"], ["50 K", "63.151 K", "triple point"] },
        { ["nitrogen", "-T", "300 K", "-p", "30000 bara"], ["30000 bara", "22000 bara"] },
        // numbers that are none
        { ["nitrogen", "-T", "1e999 K", "-p", "1 bara"], ["too large"] },
        { ["nitrogen", "-T", "NaN K", "-p", "1 bara"], ["NaN"] },
        { ["nitrogen", "-T", "300 K", "--vapour-fraction", "1.5"], ["--vapour-fraction", "1.5", "at most 1"] },
        // not two values, or not two that can be used
        { ["nitrogen", "-T", "300 K"], ["two values", "1 is given"] },
        { ["nitrogen", "-T", "300 K", "-p", "1 bara", "--enthalpy", "0 J/mol"], ["two values", "3 are given"] },
        { ["nitrogen", "-T", "300 K", "--enthalpy", "0 J/mol"], ["no pair", "temperature with vapour fraction"] },
        { ["-T", "300 K", "-p", "1 bara"], ["mixture is missing"] },
        { ["nitrogen", "-T", "300 K", "-p", "1 bara", "--out", "x.csv"], ["--out", "--table"] },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void IsRefusedWithValueLimitAndUnit(string[] args, string[] words) => CliRun.Of(["state", .. args]).MustRefuse(words);

    [Fact]
    public void EveryProblemIsToldAtOnce() => CliRun.Of("state", "nitrogen", "-T", "-300 °C", "-p", "17 bar").MustRefuse("-T:", "-p:");

    [Fact]
    public void AVeryLongTextIsQuotedShort()
    {
        var run = CliRun.Of("state", "nitrogen", "-T", new string('9', 100_000), "-p", "1 bara");
        run.MustRefuse("100000 characters", "200");
        Assert.InRange(run.Error.Length, 1, 1000);
        Assert.InRange(CliRun.Of("state", new string('x', 100_000), "-T", "300 K", "-p", "1 bara").Error.Length, 1, 2000);
    }
}
