using Coldwright.Fluids.Substances;
using Coldwright.Machine.Files;
using Coldwright.Simulation.Rating;
using Coldwright.Web.Answers;

namespace Coldwright.Web.Tests;

/// <summary>Figures along slopes: what moves them, by how much, and when there is no forecast.</summary>
public class SlopeForecastTests
{
    private static readonly string _file = File.ReadAllText(Path.Combine(CoolerCopy.Root, "examples", "closed-loop", "machine.yaml"));
    private static readonly string[] _gases = ["nitrogen", "methane", "ethane", "propane", "isobutane"];

    // Made-up slopes: cooling by length 2 W/m, by the bore 1e4 W/m, by each gas's amount so many W/kg.
    private static readonly SensitivityResult _slopes = new()
    {
        Figures = [new("net_cooling_W", "Cooling left at the load", "W", 30, 1)],
        Inputs =
        [
            new("recuperator.length", "length of the recuperator", "m", 20, 2, false, [2]), new("throttle.capillary.bore", "bore of the capillary", "m", 0.9e-3, 4.5e-5, false, [1e4]),
            new("room.temperature", "temperature of the room", "K", 293.15, 5, false, [-0.5]), new("charge.mass", "charge", "kg", 0.3, 0.015, false, [40]),
            .. _gases.Select((g, i) => new InputSensitivity($"charge.{g}", $"{g} in the charge", "kg", 0.06, 0.006, false, [100.0 * (i + 1)])),
            new("doubt.leak", "heat leak", "", 1, 0.2, true, [-7]),
        ],
    };

    [Theory]
    [InlineData("length: 20 m", "length: 21.5 m", 33.0, false)]
    [InlineData("length: 20 m", "length: 30 m", 50.0, true)]
    [InlineData("{bore: 0.9 mm,", "{bore: 0.92 mm,", 30.2, false)]
    [InlineData("temperature: 20 °C", "temperature: 24 °C", 28.0, false)]
    [InlineData("mass: 300 g", "mass: 310 g", 30.4, false)]
    [InlineData("# two layers of turns", "# three layers", 30.0, false)]
    public void AMovedInputGoesAlongItsSlope(string was, string now, double watts, bool isFar)
    {
        var forecast = Forecast(_file.Replace(was, now, StringComparison.Ordinal));
        Assert.NotNull(forecast);
        Assert.Equal(watts, Assert.Single(forecast.Figures).Value, 1e-9);
        Assert.Equal(isFar, forecast.IsFar);
    }

    [Fact]
    public void SeveralMovedInputsAddUp()
    {
        var forecast = Forecast(_file.Replace("length: 20 m", "length: 21 m", StringComparison.Ordinal).Replace("temperature: 20 °C", "temperature: 22 °C", StringComparison.Ordinal));
        Assert.Equal(30 + 2 - 1, Assert.Single(forecast!.Figures).Value, 1e-9);
    }

    [Fact]
    public void AnotherMixtureMovesTheAmountOfEachGas()
    {
        double[] before = [0.27, 0.38, 0.20, 0.09, 0.06], after = [0.29, 0.36, 0.20, 0.09, 0.06];
        double[] Grams(double[] z)
        {
            double[] w = [.. z.Select((x, i) => x * SubstanceCatalog.Get(_gases[i]).MolarMass)];
            return [.. w.Select(x => 0.3 * x / w.Sum())];
        }
        var expected = 30 + Grams(after).Zip(Grams(before), (a, b) => a - b).Select((d, i) => 100.0 * (i + 1) * d).Sum();
        var forecast = Forecast(_file.Replace("nitrogen 0.27, methane 0.38", "nitrogen 0.29, methane 0.36", StringComparison.Ordinal));
        Assert.Equal(expected, Assert.Single(forecast!.Figures).Value, 1e-9);
    }

    [Theory]
    [InlineData("gas-volume: 0.15 L", "gas-volume: 0.2 L")]
    [InlineData("nitrogen 0.27,", "argon 0.27,")]
    [InlineData("area: 24 mm2", "area: 30 mm2")]
    [InlineData("isentropic-efficiency: {2: 0.60,", "isentropic-efficiency: {2: 0.62,")]
    [InlineData("  mass: 300 g\n", "")]
    [InlineData("{from: compressor, to: aftercooler, tube: 3/8 in ACR, length: 0.9 m", "{from: compressor, to: aftercooler, tube: 3/8 in ACR, length: 1.9 m")]
    public void WhatHasNoSlopeHasNoForecast(string was, string now)
    {
        Assert.Contains(was, _file, StringComparison.Ordinal);
        Assert.Null(Forecast(_file.Replace(was, now, StringComparison.Ordinal)));
    }

    private static SlopeForecast? Forecast(string text)
    {
        if (Differences.AllOf(_file, text) is not { } places) return null;
        var (then, now) = (MachineFolderReader.ReadTexts(_file, null), MachineFolderReader.ReadTexts(text, null));
        Assert.True(now.IsGood, string.Join("; ", now.Problems));
        return SlopeForecast.Of(_slopes, (then.Machine!, then.Layout!), (now.Machine!, now.Layout!), [.. places.Select(Web.Answers.Forecast.Key)]);
    }
}
