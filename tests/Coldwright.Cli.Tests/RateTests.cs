using System.Text.Json;

namespace Coldwright.Cli.Tests;

/// <summary><c>rate</c> from the folder to the screen, the JSON and the page.</summary>
public class RateTests
{
    [Fact]
    public void TheWorkshopCoolerWorksOnScreenAndPage()
    {
        using var folder = new TemporaryFolder();
        var run = CliRun.Of("rate", Repository.Example("workshop"), "--report", folder["deep/out"]).MustSucceed();
        Assert.Contains("No-load temperature", run.Output, StringComparison.Ordinal);
        Assert.Contains("reference", run.Output, StringComparison.Ordinal);
        Assert.Contains("cubic", run.Output, StringComparison.Ordinal);
        Assert.Contains("ocal codes and licensed practice come first", run.Output, StringComparison.Ordinal);
        Assert.Contains("rating.html", run.Output, StringComparison.Ordinal);
        var page = File.ReadAllText(folder["deep/out/rating.html"]);
        Assert.Contains("<svg", page, StringComparison.Ordinal);
        Assert.DoesNotContain("http://", page.Replace("http://www.w3.org/", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Equal(["rating.html"], Directory.EnumerateFileSystemEntries(folder["deep/out"]).Select(Path.GetFileName));
    }

    [Fact]
    public void JsonStandsAloneWithEveryField()
    {
        var run = CliRun.Of("rate", Repository.Example("workshop"), "--json").MustSucceed();
        using var document = JsonDocument.Parse(run.Output);
        var root = document.RootElement;
        Assert.Equal("coldwright/rate/1", root.GetProperty("schema").GetString());
        foreach (var field in (string[])
            [
                "no_load_temperature_K", "throttle_outlet_K", "cooling_curve", "loop", "power", "heat_leak_W", "liquid", "energy_kWh_L", "cost_per_L",
                "carnot_fraction", "exergy", "balance", "limits", "second_opinion", "warnings", "findings",
            ])
            Assert.True(root.TryGetProperty(field, out _), $"{field} is missing");
        Assert.True(Math.Abs(root.GetProperty("balance").GetProperty("energy").GetDouble()) < 1e-8);
        Assert.True(root.GetProperty("findings").GetArrayLength() > 0);
    }

    [Theory]
    [InlineData("short-exchanger", "pinch")]
    [InlineData("leaky-box", "leak")]
    public void ACoolerThatDoesNotWorkSaysWhyAndAnswersNo(string example, string cause)
    {
        var run = CliRun.Of("rate", Repository.Example(example), "--model", "reference", "--json");
        Assert.Equal(ExitCode.No, run.Code);
        using var document = JsonDocument.Parse(run.Output);
        Assert.Equal(cause, document.RootElement.GetProperty("limited_by").GetProperty("kind").GetString());
        Assert.Equal(JsonValueKind.Null, document.RootElement.GetProperty("second_opinion").ValueKind);
    }

    [Fact]
    public void WithoutAShopThereIsNoCostRatherThanACostOfNothing()
    {
        using var folder = new TemporaryFolder();
        File.Copy(Path.Combine(Repository.Example("workshop"), "machine.yaml"), folder["machine.yaml"]);
        var run = CliRun.Of("rate", folder.Path, "--model", "cubic", "--json").MustSucceed();
        using var document = JsonDocument.Parse(run.Output);
        Assert.Equal(JsonValueKind.Null, document.RootElement.GetProperty("cost_per_L").ValueKind);
        Assert.Contains(document.RootElement.GetProperty("warnings").EnumerateArray(), w => w.GetString()!.Contains("shop.yaml", StringComparison.Ordinal));
    }

    [Fact]
    public void CtrlCStopsIt()
    {
        using var folder = new TemporaryFolder();
        var run = CliRun.Of(new CancellationToken(canceled: true), "rate", Repository.Example("workshop"), "--report", folder["out"]);
        Assert.Equal(ExitCode.Stopped, run.Code);
        Assert.Equal("", run.Output);
        Assert.Contains("stopped", run.Error, StringComparison.Ordinal);
    }
}
