namespace Coldwright.Cli.Tests;

/// <summary>The program as a whole: overview, help, words that are no command or option.</summary>
public class CommandLineTests
{
    [Fact]
    public void AloneItExplainsItselfOnOneScreen()
    {
        var run = CliRun.Of().MustSucceed();
        foreach (var command in (string[])["new", "check", "rate", "state"]) Assert.Contains($"coldwright {command} ", run.Output, StringComparison.Ordinal);
        Assert.InRange(run.Output.Split('\n').Length, 10, 40);
        Assert.All(run.Output.Split('\n'), line => Assert.InRange(line.Length, 0, 100));
        Assert.Equal(run.Output, CliRun.Of("--help").MustSucceed().Output);
    }

    [Theory]
    [InlineData("new")]
    [InlineData("check")]
    [InlineData("rate")]
    [InlineData("state")]
    public void EveryCommandHasHelp(string command)
    {
        var run = CliRun.Of(command, "--help").MustSucceed();
        foreach (var option in (string[])["--json", "--units", "--model", "--no-colour"]) Assert.Contains(option, run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void VersionIsShown() => Assert.Matches(@"^\d+\.\d+\.\d+", CliRun.Of("--version").MustSucceed().Output);

    [Fact]
    public void AMisspeltCommandNamesTheNearest() => CliRun.Of("stat", "nitrogen").MustRefuse("'stat'", "did you mean 'state'?");

    [Fact]
    public void AMisspeltOptionNamesTheNearest() => CliRun.Of("state", "nitrogen", "--modle", "cubic").MustRefuse("'--modle'", "--model");

    [Fact]
    public void AnUnquotedMixtureIsExplained() => CliRun.Of("state", "nitrogen", "0.5,", "methane", "0.5").MustRefuse("quotes");

    [Fact]
    public void AnOptionWithoutItsValueIsRefused() => CliRun.Of("state", "nitrogen", "-p", "17 barg", "-T").MustRefuse("-T");

    [Theory]
    [InlineData("--units", "metric", "si, us")]
    [InlineData("--model", "reference2", "did you mean reference?")]
    public void AWrongWordForAnOptionShowsTheRightOnes(string option, string word, string expected) =>
        CliRun.Of("state", "nitrogen", "-T", "300 K", "-p", "1 bara", option, word).MustRefuse(option, word, expected);
}
