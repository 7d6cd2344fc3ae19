using System.Text.Json;

namespace Coldwright.Cli.Tests;

/// <summary><c>size</c> from its words to its answer.</summary>
public class SizeTests
{
    [Theory]
    [InlineData("throttle", "length_m")]
    [InlineData("vessel", "length_m")]
    [InlineData("cold-box", "wall_m")]
    [InlineData("vessel-relief", "bore_m")]
    [InlineData("precooler", "charge_kg")]
    [InlineData("compressor", "sump_m3")]
    public void TheJsonHasWhatProgramsNeed(string part, string figure)
    {
        using var document = JsonDocument.Parse(CliRun.Of("size", Repository.Example("workshop"), part, "--json", "--model", "cubic").MustSucceed().Output);
        var root = document.RootElement;
        Assert.Equal("coldwright/size/1", root.GetProperty("schema").GetString());
        Assert.True(root.GetProperty("best").GetProperty(figure).GetDouble() > 0);
        Assert.True(root.GetProperty("best").GetProperty("keys").EnumerateObject().Any());
        Assert.NotEmpty(root.GetProperty("sources").EnumerateArray());
        Assert.NotEmpty(root.GetProperty("findings").EnumerateArray());
    }

    [Theory]
    [InlineData("si")]
    [InlineData("us")]
    public void ScreenAndPageHaveACutList(string units)
    {
        using var folder = new TemporaryFolder();
        var run = CliRun.Of("size", Repository.Example("workshop"), "aftercooler", "--report", folder["out"], "--units", units, "--model", "cubic").MustSucceed();
        foreach (var word in (string[])["Buy or cut", "EUR", "In machine.yaml", "ocal codes and licensed practice come first", "size-aftercooler.html"]) Assert.Contains(word, run.Output, StringComparison.Ordinal);
        Assert.All(run.Output.Split('\n').Where(l => !l.StartsWith("Report page", StringComparison.Ordinal)), l => Assert.True(l.Length <= 88, $"{l.Length} columns: {l}"));
        Assert.Contains("<svg", File.ReadAllText(folder["out/size-aftercooler.html"]), StringComparison.Ordinal);
    }

    [Fact]
    public void WrongWordsAreRefusedByName()
    {
        string dir = Repository.Example("workshop");
        CliRun.Of("size", dir, "vesel").MustRefuse("vesel", "did you mean vessel");
        CliRun.Of("size", dir, "warm-exchanger").MustRefuse("warm-exchanger", "not sized");
        CliRun.Of("size", dir, "vessel", "--target", "3 W").MustRefuse("--target", "0.6 L");
        CliRun.Of("size", dir, "vessel", "--target", "0.6").MustRefuse("--target");
        CliRun.Of("size", dir, "vessel-relief", "--target", "3 mm").MustRefuse("takes no target");
        CliRun.Of("size", dir, "fill-valve").MustRefuse("drain valve");
    }

    [Fact]
    public void WhatNoStockDoesEndsWithNo() => Assert.Equal(ExitCode.No, CliRun.Of("size", Repository.Example("workshop"), "cold-box", "--target", "0.1 W", "--model", "cubic").Code);

    [Fact]
    public void StoppedAtOnceItSaysSo()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.Equal(ExitCode.Stopped, CliRun.Of(source.Token, "size", Repository.Example("workshop"), "vessel").Code);
    }

    /// <summary>What a solver advises is said in the units asked for.</summary>
    [Theory]
    [InlineData("si", " K are asked for")]
    [InlineData("us", " °F are asked for")]
    public void AdviceIsSaidInTheReadersUnits(string units, string words)
    {
        var run = CliRun.Of("size", Repository.Example("workshop"), "recuperator", "--target", "5000 W", "--model", "cubic", "--units", units);
        Assert.Equal(ExitCode.No, run.Code);
        Assert.Contains(words, run.Error, StringComparison.Ordinal);
    }
}
