using System.Text.Json;

namespace Coldwright.Cli.Tests;

/// <summary><c>charge</c> from its words to its answer.</summary>
public class ChargeTests
{
    private static readonly string[] _warm = ["--warm-only", "--model", "cubic"];

    [Fact]
    public void TheJsonHasWhatProgramsNeed()
    {
        using var document = JsonDocument.Parse(CliRun.Of(["charge", Repository.Example("workshop"), "--json", .. _warm]).MustSucceed().Output);
        var root = document.RootElement;
        Assert.Equal("coldwright/charge/1", root.GetProperty("schema").GetString());
        var steps = root.GetProperty("steps").EnumerateArray().ToArray();
        Assert.Equal(320, steps.Sum(s => s.GetProperty("grams").GetDouble()), 1e-6);
        Assert.All(steps, s => Assert.True(s.GetProperty("tolerance").GetProperty("grams").GetDouble() > 0 && s.GetProperty("until_gauge_Pa").GetDouble() > 0 && s.GetProperty("gas").GetString()!.Length > 0));
        Assert.True(root.GetProperty("standstill_Pa").GetDouble() > 5e5);
        Assert.NotEmpty(root.GetProperty("findings").EnumerateArray());
        Assert.Equal(JsonValueKind.Null, root.GetProperty("circulating").ValueKind);
    }

    [Theory]
    [InlineData("si", "bar gauge")]
    [InlineData("us", "psig")]
    public void ScreenAndPageShowTheRecipe(string units, string unit)
    {
        using var folder = new TemporaryFolder();
        var run = CliRun.Of(["charge", Repository.Example("workshop"), "--report", folder["out"], "--units", units, "--lost", "30 g", .. _warm]).MustSucceed();
        foreach (var word in (string[])["Before anything goes in", "isobutane", unit, "tell it by", "a fine leak", "ocal codes and licensed practice come first", "charge.html"])
            Assert.Contains(word, run.Output, StringComparison.Ordinal);
        Assert.All(run.Output.Split('\n').Where(l => !l.StartsWith("Report page", StringComparison.Ordinal)), l => Assert.True(l.Length <= 88, $"{l.Length} columns: {l}"));
        Assert.Contains("<svg", File.ReadAllText(folder["out/charge.html"]), StringComparison.Ordinal);
    }

    [Fact]
    public void WrongWordsAreRefusedByName()
    {
        string dir = Repository.Example("workshop");
        CliRun.Of("charge", dir, "--mass", "320").MustRefuse("--mass");
        CliRun.Of("charge", dir, "--vacuum", "1 barg").MustRefuse("--vacuum");
        CliRun.Of("charge", dir, "--rinses", "-1").MustRefuse("--rinses", "0 to 10");
        CliRun.Of("charge", dir, "--mixture", "nitrogen 0.5, methan 0.5").MustRefuse("--mixture", "methane");
        CliRun.Of("charge", dir, "--warm-only", "--lost", "5 kg").MustRefuse("lost");
        CliRun.Of("charge", dir, "--warm-only", "--now", "60 barg").MustRefuse("nothing is lost");
    }

    [Fact]
    public void MoreThanTheLoopStandsEndsWithNo() => Assert.Equal(ExitCode.No, CliRun.Of(["charge", Repository.Example("workshop"), "--mass", "900 g", .. _warm]).Code);

    [Fact]
    public void StoppedAtOnceItSaysSo()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.Equal(ExitCode.Stopped, CliRun.Of(source.Token, "charge", Repository.Example("workshop")).Code);
    }
}
