using System.Text.Json;

namespace Coldwright.Cli.Tests;

/// <summary><c>safety</c>, and its findings in the answers of the other commands.</summary>
public class SafetyTests
{
    private static readonly string[] _relief = ["  - {from: vessel, to: vessel-relief, tube: 1/8 in ACR, length: 0.5 m, in: room}\n", "  vessel-relief:\n    kind: relief\n    set-pressure: 21 barg\n"];

    [Fact]
    public void TheWorkshopHasNothingSerious()
    {
        var run = CliRun.Of("safety", Repository.Example("workshop")).MustSucceed();
        Assert.Contains("Nothing serious was found", run.Output, StringComparison.Ordinal);
        Assert.Contains("warm full vessel, 28", run.Output, StringComparison.Ordinal);
        Assert.Contains("Local codes and licensed practice come first; this list is no certificate.", run.Output, StringComparison.Ordinal);
        Assert.All(run.Output.Split('\n'), l => Assert.True(l.Length <= 88, l));
    }

    [Theory]
    [InlineData("workshop", ExitCode.Done)]
    [InlineData("short-exchanger", ExitCode.No)]
    [InlineData("leaky-box", ExitCode.No)]
    public void JsonHoldsEveryFieldGravestFirst(string example, int code)
    {
        var run = CliRun.Of("safety", Repository.Example(example), "--json");
        Assert.Equal(code, run.Code);
        using var document = JsonDocument.Parse(run.Output);
        var root = document.RootElement;
        Assert.Equal("coldwright/safety/1", root.GetProperty("schema").GetString());
        Assert.Equal(JsonValueKind.Array, root.GetProperty("warnings").ValueKind);
        string[] grades = ["danger", "serious", "caution", "note"];
        var findings = root.GetProperty("findings").EnumerateArray().ToArray();
        Assert.Equal("local-codes", findings[^1].GetProperty("id").GetString());
        var order = findings.SkipLast(1).Select(f => Array.IndexOf(grades, f.GetProperty("grade").GetString())).ToArray();
        Assert.Equal(order.Order(), order);
        Assert.Equal(code == ExitCode.No, order.Any(g => g is 0 or 1));
        foreach (var f in findings)
        {
            foreach (var key in (string[])["id", "part", "rule", "source", "consequence", "do"]) Assert.NotEqual("", f.GetProperty(key).GetString());
            foreach (var key in (string[])["value", "limit"]) Assert.True(f.GetProperty(key).ValueKind is JsonValueKind.Number or JsonValueKind.Null);
            Assert.Equal(JsonValueKind.String, f.GetProperty("unit").ValueKind);
        }
    }

    /// <summary>The workshop's vessel without its relief: the danger stands before anything else a command says.</summary>
    [Theory]
    [InlineData("safety")]
    [InlineData("check")]
    [InlineData("rate")]
    [InlineData("rate", "--part", "compressor")]
    public void ADangerStandsFirstInEveryAnswer(string command, params string[] more)
    {
        using var folder = new TemporaryFolder();
        Workshop(folder, "", "");
        WithoutRelief(folder);
        var run = CliRun.Of([command, folder.Path, .. more]);
        Assert.StartsWith("DANGER   vessel: trapped liquid", run.Output, StringComparison.Ordinal);
        using var document = JsonDocument.Parse(CliRun.Of([command, folder.Path, .. more, "--json"]).Output);
        var first = document.RootElement.GetProperty("findings")[0];
        Assert.Equal("trapped-liquid", first.GetProperty("id").GetString());
        Assert.Equal("danger", first.GetProperty("grade").GetString());
    }

    /// <summary>A mended machine is silent again, and the exit code follows.</summary>
    [Fact]
    public void ADangerEndsWithNoAndTheMendedMachineDoesNot()
    {
        using var folder = new TemporaryFolder();
        Workshop(folder, "", "");
        WithoutRelief(folder);
        Assert.Equal(ExitCode.No, CliRun.Of("safety", folder.Path).Code);
        Workshop(folder, "", "");
        CliRun.Of("safety", folder.Path).MustSucceed();
    }

    [Theory]
    [InlineData("cap-thickness: 2.5 mm", "cap-thickness: 1 mm", "vessel ends: cap over pressure")]
    [InlineData("evacuated-to: 0.5 mbara", "evacuated-to: 1 bara", "charge: residual air")]
    [InlineData("release-height: 0.9 m", "release-height: 0.6 m", "charge: flammable charge, 320 g, limit 240 g")]
    [InlineData("set-pressure: 21 barg", "set-pressure: 40 barg", "vessel-relief: relief set too high")]
    [InlineData("low-pressure: 3.6 barg", "low-pressure: -0.2 barg", "Air into loop")]
    [InlineData("tube: 2-1/8 in type L", "tube: 54 x 0.6 mm", "vessel: tube over pressure")]
    [InlineData("gas: nitrogen", "gas: oxygen", "bottle: oxygen product")]
    [InlineData("set-pressure: 21 barg", "set-pressure: 21 barg\n    bore: 0.5 mm", "vessel-relief: relief too small")]
    [InlineData("volume: 2 L\n", "volume: 60 L\n", "room: oxygen poor room")]
    public void WhatTheFileSaysIsFound(string old, string changed, string words)
    {
        using var folder = new TemporaryFolder();
        Workshop(folder, old, changed);
        var run = CliRun.Of("safety", folder.Path);
        Assert.Equal(ExitCode.No, run.Code);
        Assert.Contains(words, run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void PurityOfTheShopDecidesHowOxygenGathers()
    {
        using var folder = new TemporaryFolder();
        Workshop(folder, "", "");
        var shop = File.ReadAllText(folder["shop.yaml"]);
        Assert.Contains("purity: 99.9 %", shop, StringComparison.Ordinal);
        folder.Write("shop.yaml", shop.Replace("3.90 per kg, purity: 99.9 %", "3.90 per kg, purity: 92 %", StringComparison.Ordinal));
        Assert.Contains("SERIOUS  bottle: oxygen enriching", CliRun.Of("safety", folder.Path).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void ThePageStandsAlone()
    {
        using var folder = new TemporaryFolder();
        var run = CliRun.Of("safety", Repository.Example("short-exchanger"), "--report", folder["out"], "--units", "us");
        Assert.Equal(ExitCode.No, run.Code);
        var page = File.ReadAllText(folder["out/safety.html"]);
        Assert.Contains("Before anything is built or run", page, StringComparison.Ordinal);
        Assert.Contains("psig", page, StringComparison.Ordinal);
        Assert.Contains("no certificate", page, StringComparison.Ordinal);
        foreach (var outside in (string[])["http://", "https://", "<script"]) Assert.DoesNotContain(outside, page, StringComparison.Ordinal);
    }

    [Fact]
    public void ACoolerThatCannotBeRatedIsReviewedWithAWarning()
    {
        using var folder = new TemporaryFolder();
        Workshop(folder, "    conductance: 100 W/K\n", "");
        var run = CliRun.Of("safety", folder.Path);
        Assert.Contains("warning", run.Output, StringComparison.Ordinal);
        Assert.Contains("could not be rated", run.Output.Replace("\n         ", " ", StringComparison.Ordinal), StringComparison.Ordinal);
        WithoutRelief(folder);
        Assert.StartsWith("DANGER   vessel: trapped liquid", CliRun.Of("safety", folder.Path).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void WrongInputIsRefused()
    {
        CliRun.Of("safety", "nowhere").MustRefuse("nowhere");
        using var folder = new TemporaryFolder();
        Workshop(folder, "gas: nitrogen", "gas: nitrogn");
        CliRun.Of("safety", folder.Path).MustRefuse("nitrogen");
    }

    private static void WithoutRelief(TemporaryFolder folder)
    {
        var text = File.ReadAllText(folder["machine.yaml"]);
        Assert.All(_relief, r => Assert.Contains(r, text, StringComparison.Ordinal));
        folder.Write("machine.yaml", _relief.Aggregate(text, (t, r) => t.Replace(r, "", StringComparison.Ordinal)));
    }

    private static void Workshop(TemporaryFolder folder, string old, string changed)
    {
        var text = File.ReadAllText(Path.Combine(Repository.Example("workshop"), "machine.yaml"));
        if (old.Length > 0)
        {
            Assert.Contains(old, text, StringComparison.Ordinal);
            text = text.Replace(old, changed, StringComparison.Ordinal);
        }
        folder.Write("machine.yaml", text);
        folder.Write("shop.yaml", File.ReadAllText(Path.Combine(Repository.Example("workshop"), "shop.yaml")));
    }
}
