using System.Text.Json;

namespace Coldwright.Cli.Tests;

/// <summary><c>rate --part</c> from the folder to the screen, the JSON and the page.</summary>
public class RatePartTests
{
    [Fact]
    public void APartIsRatedOnScreenAndPage()
    {
        using var folder = new TemporaryFolder();
        var run = CliRun.Of("rate", Repository.Example("workshop"), "--part", "recuperator", "--report", folder["out"]).MustSucceed();
        Assert.Contains("workshop cooler: recuperator alone, reference model", run.Output, StringComparison.Ordinal);
        Assert.Contains("operating", run.Output, StringComparison.Ordinal);
        Assert.Contains("Conductance UA", run.Output, StringComparison.Ordinal);
        Assert.All(run.Output.Split('\n').Where(l => !l.StartsWith("Report page", StringComparison.Ordinal)), l => Assert.True(l.Length <= 88, l));
        Assert.Equal(["part-recuperator.html"], Directory.EnumerateFileSystemEntries(folder["out"]).Select(Path.GetFileName));
        Assert.Contains("<svg", File.ReadAllText(folder["out/part-recuperator.html"]), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("throttle")]
    [InlineData("coil")]
    [InlineData("cold-box")]
    [InlineData("buffer")]
    public void JsonStandsAlone(string part)
    {
        var run = CliRun.Of("rate", Repository.Example("workshop"), "--part", part, "--json", "--model", "cubic").MustSucceed();
        using var document = JsonDocument.Parse(run.Output);
        var root = document.RootElement;
        Assert.Equal("coldwright/rate-part/1", root.GetProperty("schema").GetString());
        Assert.Equal(part, root.GetProperty("part").GetString());
        Assert.Equal("cubic", root.GetProperty("model").GetString());
        Assert.True(root.GetProperty("profiles").GetArrayLength() > 0);
        Assert.True(root.GetProperty("findings").GetArrayLength() > 0);
    }

    [Theory]
    [InlineData("recuperater", "did you mean recuperator?")]
    [InlineData("aftercooler", "no model of its own")]
    [InlineData("", "is no part of")]
    public void AWrongNameIsAnsweredWithTheNamesThatExist(string name, string said) =>
        CliRun.Of("rate", Repository.Example("workshop"), "--part", name).MustRefuse("--part", said, "compressor, precooler, recuperator, throttle, coil, vessel, cold-box, buffer");

    [Theory]
    [InlineData("recuperator", "'arrangement'")]
    [InlineData("throttle", "'capillary, or valve'")]
    [InlineData("precooler", "'loop'")]
    public void WhatIsMissingIsNamedBeforeAnythingIsComputed(string part, string key) =>
        CliRun.Of("rate", Repository.Example("short-exchanger"), "--part", part).MustRefuse("machine.yaml", "add ", key, "nothing was computed");

    [Fact]
    public void ABrokenLimitAnswersNo()
    {
        using var folder = new TemporaryFolder();
        var text = File.ReadAllText(Path.Combine(Repository.Example("workshop"), "machine.yaml"));
        File.WriteAllText(folder["machine.yaml"], text.Replace("maximum-discharge-temperature: 125 °C", "maximum-discharge-temperature: 60 °C", StringComparison.Ordinal).Replace(", power: 790 W", "", StringComparison.Ordinal));
        var run = CliRun.Of("rate", folder.Path, "--part", "compressor", "--model", "cubic");
        Assert.Equal(ExitCode.No, run.Code);
        Assert.Contains("BROKEN", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void CtrlCStopsIt()
    {
        var run = CliRun.Of(new CancellationToken(canceled: true), "rate", Repository.Example("workshop"), "--part", "coil");
        Assert.Equal(ExitCode.Stopped, run.Code);
        Assert.Equal("", run.Output);
    }
}
