using System.Text.Json;

namespace Coldwright.Cli.Tests;

/// <summary><c>blend</c> from its words to its answer.</summary>
public class BlendTests
{
    private static readonly string[] _quick = ["--for", "endless", "--at", "110 K", "--model", "cubic"];

    [Fact]
    public void TheJsonHasWhatProgramsNeed()
    {
        using var document = JsonDocument.Parse(CliRun.Of(["blend", Repository.Example("workshop"), "--json", .. _quick]).MustSucceed().Output);
        var root = document.RootElement;
        Assert.Equal("coldwright/blend/1", root.GetProperty("schema").GetString());
        Assert.Equal(1, root.GetProperty("best").GetProperty("mixture").EnumerateObject().Sum(p => p.Value.GetDouble()), 1e-9);
        Assert.True(root.GetProperty("best").GetProperty("figures").GetProperty("merit").GetDouble() >= root.GetProperty("now").GetProperty("figures").GetProperty("merit").GetDouble());
        Assert.Equal(5, root.GetProperty("sensitivities").GetArrayLength());
        Assert.True(root.GetProperty("effort").GetProperty("ratings_per_second").GetDouble() > 0);
        Assert.NotEmpty(root.GetProperty("near").EnumerateArray());
        Assert.NotEmpty(root.GetProperty("findings").EnumerateArray());
    }

    [Theory]
    [InlineData("si")]
    [InlineData("us")]
    public void ScreenAndPageShowTheMixture(string units)
    {
        using var folder = new TemporaryFolder();
        var run = CliRun.Of(["blend", Repository.Example("workshop"), "--report", folder["out"], "--units", units, "--gases", "nitrogen, methane, ethane", .. _quick]).MustSucceed();
        foreach (var word in (string[])["nitrogen", "1 % more", "With fewer gases", "ratings a second", "ocal codes and licensed practice come first", "blend.html"]) Assert.Contains(word, run.Output, StringComparison.Ordinal);
        Assert.All(run.Output.Split('\n').Where(l => !l.StartsWith("Report page", StringComparison.Ordinal)), l => Assert.True(l.Length <= 88, $"{l.Length} columns: {l}"));
        Assert.Contains("<svg", File.ReadAllText(folder["out/blend.html"]), StringComparison.Ordinal);
    }

    [Fact]
    public void WrongWordsAreRefusedByName()
    {
        string dir = Repository.Example("workshop");
        CliRun.Of("blend", dir, "--for", "fun").MustRefuse("--for", "cooling");
        CliRun.Of("blend", dir, "--gases", "nitrogen, methan").MustRefuse("--gases", "methane");
        CliRun.Of("blend", dir, "--gases", "nitrogen").MustRefuse("--gases", "2 to 8");
        CliRun.Of("blend", dir, "--at", "100").MustRefuse("--at");
        CliRun.Of("blend", dir, "--flammable", "120 %").MustRefuse("--flammable");
        CliRun.Of("blend", dir, "--filling-error", "20 %").MustRefuse("--filling-error");
        CliRun.Of("blend", dir, "--gases", "argon, methane", "--price", "5 per kg").MustRefuse("price");
    }

    [Fact]
    public void StoppedAtOnceItSaysSo()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.Equal(ExitCode.Stopped, CliRun.Of(source.Token, "blend", Repository.Example("workshop")).Code);
    }
}
