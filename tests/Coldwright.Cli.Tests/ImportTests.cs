using System.Text.Json;

namespace Coldwright.Cli.Tests;

/// <summary><c>import</c> from the folder to the screen, the JSON and the page.</summary>
public class ImportTests
{
    private static string Run(string name) => Path.Combine(Repository.Example("workshop"), "runs", name);

    [Fact]
    public void ARunIsShownOnScreenAndPage()
    {
        using var folder = new TemporaryFolder();
        var log = File.ReadAllBytes(Path.Combine(Run("2026-03-14-first-cold"), "log.csv"));
        var run = CliRun.Of("import", Run("2026-03-14-first-cold"), "--report", folder["out"]).MustSucceed();
        Assert.Contains("first cold run: record of a run", run.Output, StringComparison.Ordinal);
        Assert.Contains("vessel stands still at -170.4 °C", run.Output, StringComparison.Ordinal);
        Assert.Contains("6 rows were written twice", run.Output, StringComparison.Ordinal);
        Assert.All(run.Output.Split('\n').Where(l => !l.StartsWith("Report page", StringComparison.Ordinal)), l => Assert.True(l.Length <= 88, l));
        Assert.Equal(["run-2026-03-14-first-cold.html"], Directory.EnumerateFileSystemEntries(folder["out"]).Select(Path.GetFileName));
        Assert.Contains("<svg", File.ReadAllText(folder["out/run-2026-03-14-first-cold.html"]), StringComparison.Ordinal);
        // The log itself is never changed.
        Assert.Equal(log, File.ReadAllBytes(Path.Combine(Run("2026-03-14-first-cold"), "log.csv")));
    }

    [Fact]
    public void ALeakAnswersNo()
    {
        var run = CliRun.Of("import", Run("2026-03-07-leak-test"));
        Assert.Equal(ExitCode.No, run.Code);
        Assert.Contains("Failed: it leaks (", run.Output, StringComparison.Ordinal);
        Assert.Contains("methane first", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2026-03-14-first-cold", ExitCode.Done)]
    [InlineData("2026-03-07-leak-test", ExitCode.No)]
    public void JsonStandsAlone(string name, int code)
    {
        var run = CliRun.Of("import", Run(name), "--json");
        Assert.Equal(code, run.Code);
        using var document = JsonDocument.Parse(run.Output);
        var root = document.RootElement;
        Assert.Equal("coldwright/import/1", root.GetProperty("schema").GetString());
        Assert.Equal(JsonValueKind.Array, root.GetProperty("warnings").ValueKind);
        Assert.True(root.GetProperty("findings").GetArrayLength() > 0);
        foreach (var channel in root.GetProperty("channels").EnumerateArray())
        {
            Assert.True(channel.GetProperty("uncertainty_at_lowest").GetProperty("standard").GetDouble() > 0);
            Assert.Contains(channel.GetProperty("unit").GetString(), new[] { "K", "Pa", "W" });
        }
        if (code == ExitCode.No) Assert.Equal("failed", root.GetProperty("leak_test").GetProperty("verdict").GetString());
    }

    [Fact]
    public void EveryProblemIsSaidAtOnceWithItsLine()
    {
        using var folder = new TemporaryFolder();
        folder.Write("run.yaml", "name: x\nchannels:\n  a: {at: coil, sensor: thermocouple-X}\n  b: {att: coil, sensor: balance}\n");
        CliRun.Of("import", folder.Path).MustRefuse("run.yaml:3:25", "run.yaml:4:7", "the nearest is 'at'", "problems in", "nothing was imported");
        using var document = JsonDocument.Parse(CliRun.Of("import", folder.Path, "--json").Output);
        Assert.False(document.RootElement.GetProperty("good").GetBoolean());
    }

    [Fact]
    public void APlaceThatTheCoolerDoesNotHaveIsRefused()
    {
        using var folder = new TemporaryFolder();
        folder.Write("run.yaml", $"name: x\ncooler: {Repository.Example("workshop")}\nchannels:\n  a: {{at: vesel, sensor: thermometer}}\nreadings: [{{time: 0 s, values: {{a: 20 °C}}}}]\n");
        CliRun.Of("import", folder.Path).MustRefuse("no part or stream 'vesel'", "the nearest is 'vessel'");
    }

    [Theory]
    [InlineData("nowhere", "there is no folder")]
    [InlineData("examples", "holds no run.yaml")]
    public void WhatIsNoRunIsAnswered(string name, string said) => CliRun.Of("import", Path.Combine(Repository.Root, name)).MustRefuse(said);

    [Fact]
    public void CtrlCStopsIt()
    {
        var run = CliRun.Of(new CancellationToken(canceled: true), "import", Run("2026-03-14-first-cold"));
        Assert.Equal(ExitCode.Stopped, run.Code);
        Assert.Equal("", run.Output);
    }
}
