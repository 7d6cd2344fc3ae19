using System.Text.Json;
using System.Text.RegularExpressions;
using Coldwright.Fluids.Substances;
using Coldwright.Quantities;
using Coldwright.Report.Cooldown;
using Coldwright.Safety;
using Coldwright.Simulation.Cooldown;

namespace Coldwright.Report.Tests;

/// <summary>The forms of a cooldown, from figures made up for the test.</summary>
public class CooldownReportTests
{
    private static readonly double[] _time = [.. Enumerable.Range(0, 200).Select(i => 60.0 * i)];

    private static double[] Of(Func<double, double> f) => [.. _time.Select(f)];

    internal static CooldownReport Report(bool warmUp = false, UnitSystem units = UnitSystem.Si) => new()
    {
        Machine = FakeRating.Working.Machine,
        Findings = [new("trapped-liquid", Grade.Stop, "vessel <1>", 2929e5, 25e5, "Pa", "every space has a relief", "somebody, 2020", "it bursts", "put one on"), Cautions.LocalCodes],
        Units = units,
        Result = new CooldownResult
        {
            Model = "reference", IsWarmUp = warmUp, PlateauK = 131.2, EndK = 133, EndRateKPerH = -0.4, CondensingK = 113.7,
            TimeToK = [new(200, 3000, ""), new(113.7, null, "nitrogen <condenses>")],
            StoppedBy = warmUp ? [] : [new("leak", "heat leak", 40, 0.8), new("exchanger", "left in the recuperator", 10, 0.2)],
            Sentence = Spoken.Of($"It stops at {SpokenAmount.Temperature(131.2)}. The heat leak stops it & more."),
            Series = new CooldownSeries
            {
                TimeS = _time, TemperatureK = Of(t => 130 + 160 * Math.Exp(-t / 3000)), ThrottleInletK = Of(t => 140 + 150 * Math.Exp(-t / 2500)), PrecooledK = Of(t => 240 + 50 * Math.Exp(-t / 100)),
                HighPressurePa = Of(t => 2e6 - 50 * t), LowPressurePa = Of(_ => 4e5), MolarFlow = Of(_ => 0.05), CoolingW = Of(t => 60 - t / 1000), StoredHeatW = Of(t => 60 * Math.Exp(-t / 3000)),
                RecuperatorW = Of(t => 30 * Math.Exp(-t / 3000)), LoadMassW = Of(t => 20 * Math.Exp(-t / 3000)), InsulationW = Of(t => 10 * Math.Exp(-t / 3000)), LeakW = Of(t => 40 * (1 - Math.Exp(-t / 4000))),
                LoadW = Of(_ => 0), PowerW = Of(t => 600 + t / 100),
            },
            Events = [new(30, Spoken.Of($"high side highest: {SpokenAmount.Pressure(20e5)}")), new(3000, "the cold has come through")],
            Masses = [new("vessel", 1.2, 80e3)],
            Changes = [new("leak", "half the heat leak", -12, 141.2, 9000, 4000)],
            Sensitivities = [new("leak", "heat leak", 24, 1200)],
            EnergyError = 3e-12, LargestDrift = 0.05, Circulating = new Composition(["nitrogen", "methane"], [0.4, 0.6]), Steps = 300, Warnings = ["one thing was assumed"],
        },
    };

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Lines_fit_safety_stands_first_and_colour_changes_no_word(bool warmUp)
    {
        var text = CooldownText.Write(Report(warmUp), colour: false);
        Assert.All(text.Split('\n'), l => Assert.True(l.Length <= CooldownText.Columns, l));
        Assert.StartsWith("DANGER", text, StringComparison.Ordinal);
        Assert.Equal(text, Regex.Replace(CooldownText.Write(Report(warmUp), colour: true), "\e\\[[0-9;]*m", ""));
        Assert.Contains("The heat leak stops it", text, StringComparison.Ordinal);
        Assert.Contains("one thing was assumed", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Json_has_equally_long_series_and_null_for_never()
    {
        using var document = JsonDocument.Parse(CooldownJson.Write(Report()));
        var root = document.RootElement;
        Assert.Equal(0.8, root.GetProperty("stopped_by").GetProperty("leak").GetDouble());
        Assert.Equal(JsonValueKind.Null, root.GetProperty("time_to_K")[1].GetProperty("s").ValueKind);
        Assert.All(root.GetProperty("series").EnumerateObject(), p => Assert.Equal(_time.Length, p.Value.GetArrayLength()));
    }

    [Theory]
    [InlineData(false, UnitSystem.Si)]
    [InlineData(true, UnitSystem.Us)]
    public void The_page_stands_alone_and_escapes(bool warmUp, UnitSystem units)
    {
        var page = CooldownPage.Write(Report(warmUp, units));
        Assert.DoesNotContain("vessel <1>", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", page, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", page, StringComparison.Ordinal);
        Assert.Equal(warmUp ? 6 : 8, Regex.Count(page, "<svg"));
        Assert.True(page.IndexOf("Before anything is built or run", StringComparison.Ordinal) < page.IndexOf("It stops at", StringComparison.Ordinal));
    }
}
