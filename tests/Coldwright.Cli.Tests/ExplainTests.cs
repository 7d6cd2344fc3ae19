namespace Coldwright.Cli.Tests;

/// <summary>explain, next and record on wrong input, and record on a pipe. A whole explanation is run by the page "Why did it stay warm?".</summary>
public class ExplainTests
{
    [Theory]
    [InlineData("explain")]
    [InlineData("next")]
    public void WrongInputIsRefusedInWords(string command)
    {
        using var folder = new TemporaryFolder();
        var nothing = CliRun.Of(command, folder["nowhere"]);
        Assert.Equal(ExitCode.BadInput, nothing.Code);
        Assert.Contains("there is no folder", nothing.Error, StringComparison.Ordinal);

        var test = CliRun.Of(command, Repository.Example("workshop/runs/2026-03-07-leak-test"));
        Assert.Equal(ExitCode.BadInput, test.Code);
        Assert.Contains("not a run of the cooler", test.Error, StringComparison.Ordinal);

        // a run whose cooler is not there
        Directory.CreateDirectory(folder["alone"]);
        foreach (string file in Directory.EnumerateFiles(Repository.Example("workshop/runs/2026-05-02-too-warm"))) File.Copy(file, Path.Combine(folder["alone"], Path.GetFileName(file)));
        var alone = CliRun.Of(command, folder["alone"]);
        Assert.Equal(ExitCode.BadInput, alone.Code);
        Assert.Contains("machine.yaml", alone.Error, StringComparison.Ordinal);
    }
}
