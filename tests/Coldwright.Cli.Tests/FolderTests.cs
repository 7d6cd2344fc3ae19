using System.Text.Json;

namespace Coldwright.Cli.Tests;

/// <summary><c>new</c> and <c>check</c>.</summary>
public class FolderTests
{
    [Fact]
    public void NewWritesAFolderThatCheckAccepts()
    {
        using var folder = new TemporaryFolder();
        var made = CliRun.Of("new", folder["mine"]).MustSucceed();
        Assert.Contains("Before anything is built or run", made.Output, StringComparison.Ordinal);
        Assert.Contains("Local codes and licensed practice come first", made.Output, StringComparison.Ordinal);
        Assert.True(File.Exists(folder["mine/machine.yaml"]) && File.Exists(folder["mine/shop.yaml"]) && Directory.Exists(folder["mine/runs"]));
        Assert.Contains("good", CliRun.Of("check", folder["mine"]).MustSucceed().Output, StringComparison.Ordinal);
    }

    [Fact]
    public void NewNeverOverwrites()
    {
        using var folder = new TemporaryFolder();
        folder.Write("machine.yaml", "mine");
        CliRun.Of("new", folder.Path).MustRefuse("machine.yaml", "not overwritten");
        Assert.Equal(["machine.yaml"], folder.Names);
        Assert.Equal("mine", File.ReadAllText(folder["machine.yaml"]));
        CliRun.Of("new", folder["machine.yaml"]).MustRefuse("file");
    }

    [Theory]
    [InlineData("new")]
    [InlineData("check")]
    public void JsonStandsAlone(string command)
    {
        using var folder = new TemporaryFolder();
        var run = CliRun.Of(command, command == "new" ? folder["mine"] : Repository.Example("workshop"), "--json").MustSucceed();
        Assert.Equal("", run.Error);
        using var document = JsonDocument.Parse(run.Output);
        Assert.Equal($"coldwright/{command}/1", document.RootElement.GetProperty("schema").GetString());
        Assert.True(document.RootElement.GetProperty("findings").GetArrayLength() > 0);
        Assert.Equal(JsonValueKind.Array, document.RootElement.GetProperty("warnings").ValueKind);
    }

    [Fact]
    public void CheckWithJsonListsTheProblems()
    {
        using var folder = new TemporaryFolder();
        var run = CliRun.Of("check", Repository.Changed(folder, "high-pressure: [0-9.]+ barg", "high-pressure: 17.5 bar"), "--json");
        Assert.Equal(ExitCode.BadInput, run.Code);
        using var document = JsonDocument.Parse(run.Output);
        var problem = document.RootElement.GetProperty("problems")[0];
        Assert.Equal("machine.yaml", problem.GetProperty("file").GetString());
        Assert.True(problem.GetProperty("line").GetInt32() > 1);
    }

    [Theory]
    [InlineData("workshop")]
    [InlineData("short-exchanger")]
    [InlineData("leaky-box")]
    public void TheExamplesAreGood(string example) => CliRun.Of("check", Repository.Example(example)).MustSucceed();

    [Fact]
    public void AnOptionWithoutUseIsSaid()
    {
        using var folder = new TemporaryFolder();
        var run = CliRun.Of("check", Repository.Example("workshop"), "--report", folder["out"], "--model", "cubic").MustSucceed();
        Assert.Contains("--report is not used", run.Error, StringComparison.Ordinal);
        Assert.Contains("--model is not used", run.Error, StringComparison.Ordinal);
        Assert.Empty(folder.Names);
    }
}
