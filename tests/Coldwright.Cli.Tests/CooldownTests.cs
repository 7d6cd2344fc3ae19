using System.Text.Json;

namespace Coldwright.Cli.Tests;

/// <summary><c>cooldown</c> from the folder to the screen, the JSON and the page.</summary>
public class CooldownTests
{
    private static string[] Quick(params string[] more) => ["cooldown", Repository.Example("stops-pinch"), "--model", "cubic", .. more];

    [Fact]
    public void ACoolerThatStopsTooWarmSaysWhyOnScreenAndPage()
    {
        using var folder = new TemporaryFolder();
        var run = CliRun.Of(Quick("--report", folder["out"]));
        Assert.Equal(ExitCode.No, run.Code);
        Assert.Contains("The recuperator stops it", run.Output, StringComparison.Ordinal);
        Assert.Contains("half the heat leak", run.Output, StringComparison.Ordinal);
        Assert.Contains("ocal codes and licensed practice come first", run.Output, StringComparison.Ordinal);
        Assert.All(run.Output.Split('\n').Where(l => !l.StartsWith("Report page", StringComparison.Ordinal)), l => Assert.True(l.Length <= 88, l));
        var page = File.ReadAllText(folder["out/cooldown.html"]);
        Assert.Contains("What the cooling is used for", page, StringComparison.Ordinal);
        Assert.DoesNotContain("http://", page.Replace("http://www.w3.org/", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void JsonStandsAloneWithEveryField()
    {
        var run = CliRun.Of(Quick("--until", "30 min", "--json"));
        using var document = JsonDocument.Parse(run.Output);
        var root = document.RootElement;
        Assert.Equal("coldwright/cooldown/1", root.GetProperty("schema").GetString());
        foreach (var field in (string[])["plateau_K", "time_to_K", "stopped_by", "series", "energy_error", "warnings", "findings", "changes", "masses"]) Assert.True(root.TryGetProperty(field, out _), $"{field} is missing");
        var series = root.GetProperty("series");
        int count = series.GetProperty("time_s").GetArrayLength();
        Assert.True(count > 20);
        foreach (var name in (string[])["temperature_K", "high_pressure_Pa", "low_pressure_Pa", "stored_heat_W", "leak_W", "load_W", "power_W"]) Assert.Equal(count, series.GetProperty(name).GetArrayLength());
        Assert.Equal(1800, series.GetProperty("time_s")[count - 1].GetDouble(), 1e-6);
        Assert.True(root.GetProperty("energy_error").GetDouble() < 1e-6);
    }

    [Fact]
    public void AWarmUpIsFollowedFromATemperature()
    {
        var run = CliRun.Of(Quick("--warm-up", "--from", "150 K", "--until", "2 h", "--units", "us")).MustSucceed();
        Assert.Contains("warm-up", run.Output, StringComparison.Ordinal);
        Assert.Contains("psig", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void WrongOptionsAreRefusedWithTheirValue()
    {
        CliRun.Of(Quick("--until", "soon")).MustRefuse("--until", "soon", "neither a time");
        CliRun.Of(Quick("--from", "5 K")).MustRefuse("FromK", "60 to 330 K");
        CliRun.Of(Quick("--load", "5 K")).MustRefuse("--load");
    }

    [Fact]
    public void AFileThatDescribesTooLittleIsToldWhatIsMissing() =>
        CliRun.Of("cooldown", Repository.Example("leaky-box")).MustRefuse("a cooldown needs");

    [Fact]
    public void ItStopsCleanly()
    {
        using var cancel = new CancellationTokenSource();
        cancel.Cancel();
        var run = CliRun.Of(cancel.Token, Quick());
        Assert.Equal(ExitCode.Stopped, run.Code);
        Assert.Equal("", run.Output);
    }
}
