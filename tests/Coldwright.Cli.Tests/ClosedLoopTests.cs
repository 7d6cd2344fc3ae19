using System.Text.Json;
using System.Text.RegularExpressions;

namespace Coldwright.Cli.Tests;

/// <summary><c>rate --hold</c> and <c>rate --sensitivity</c>: the loop closed from hardware and charge, from the folder to the screen, the JSON and the page.</summary>
public class ClosedLoopTests
{
    [Fact]
    public void TheScreenSaysWhatFollowsFromHardwareAndCharge()
    {
        var run = CliRun.Of("rate", Repository.Example("workshop"), "--hold", "neither", "--model", "cubic");
        Assert.True(run.Code is ExitCode.Done or ExitCode.No, run.Error);
        foreach (var words in (string[])["from hardware and charge", "Nothing is held", "High pressure", "Low pressure", "At rest", "the file's gauge", "Circulates", "In the loop", "Buffer", "Start"])
            Assert.Contains(words, Regex.Replace(run.Output, @"\s+", " "), StringComparison.Ordinal);
        Assert.All(run.Output.Split('\n'), l => Assert.True(l.Length <= 88, l));
    }

    [Fact]
    public void JsonAndPageHoldTheLedgerAndTheSensitivities()
    {
        using var folder = new TemporaryFolder();
        var run = CliRun.Of("rate", Repository.Example("workshop"), "--hold", "neither", "--sensitivity", "--model", "cubic", "--json", "--report", folder["out"]);
        Assert.True(run.Code is ExitCode.Done or ExitCode.No, run.Error);
        using var document = JsonDocument.Parse(run.Output);
        var closed = document.RootElement.GetProperty("closed");
        Assert.Equal("neither", closed.GetProperty("held").GetString());
        Assert.False(closed.GetProperty("charge_is_answer").GetBoolean());
        Assert.True(closed.GetProperty("charge_error").GetDouble() < 1e-6);
        Assert.True(closed.GetProperty("loop_error").GetDouble() < 1e-6);
        // Every gram is somewhere, and no place holds more liquid than it holds.
        var contents = closed.GetProperty("contents").EnumerateArray().ToArray();
        Assert.Equal(closed.GetProperty("charge_kg").GetDouble(), contents.Sum(c => c.GetProperty("kg").GetDouble()), 9);
        Assert.All(contents, c => Assert.InRange(c.GetProperty("liquid_kg").GetDouble(), 0, c.GetProperty("kg").GetDouble()));
        Assert.Equal(1, document.RootElement.GetProperty("loop").GetProperty("composition").EnumerateObject().Sum(z => z.Value.GetDouble()), 12);
        var sensitivity = document.RootElement.GetProperty("sensitivity");
        Assert.Contains(sensitivity.GetProperty("figures").EnumerateArray(), f => f.GetProperty("id").GetString() == "no_load_temperature_K" && f.GetProperty("deviation").GetDouble() > 0);
        Assert.True(sensitivity.GetProperty("inputs").GetArrayLength() > 20);
        var page = File.ReadAllText(folder["out/rating.html"]);
        foreach (var heading in (string[])["Where the charge is", "What was let in, and what circulates", "At rest and at the start", "What matters most", "What is in doubt"]) Assert.Contains($"<h2>{heading}</h2>", page, StringComparison.Ordinal);
    }

    [Fact]
    public void HeldPressuresAreMetAndChargeAndThrottleFollow()
    {
        var run = CliRun.Of("rate", Repository.Example("workshop"), "--hold", "both", "--sensitivity", "--model", "cubic", "--json");
        Assert.True(run.Code is ExitCode.Done or ExitCode.No, run.Error);
        using var document = JsonDocument.Parse(run.Output);
        var closed = document.RootElement.GetProperty("closed");
        Assert.Equal("both", closed.GetProperty("held").GetString());
        Assert.True(closed.GetProperty("charge_is_answer").GetBoolean());
        var machine = Machine.Files.MachineFolderReader.Read(Repository.Example("workshop")).Machine!;
        Assert.True(closed.GetProperty("throttle_length_m").GetDouble() > 0);
        var loop = document.RootElement.GetProperty("loop");
        Assert.Equal(1, loop.GetProperty("high_pressure_Pa").GetDouble() / machine.Operation.HighPressurePa, 6);
        Assert.Equal(1, loop.GetProperty("low_pressure_Pa").GetDouble() / machine.Operation.LowPressurePa, 6);
    }

    [Theory]
    [InlineData("--hold", "neither")]
    [InlineData("--sensitivity", "")]
    public void WhatIsMissingIsNamedWithAnExampleBeforeAnythingIsComputed(string option, string word)
    {
        using var folder = new TemporaryFolder();
        Workshop(folder, "(?m)^    capillary: .*$", "");
        string[] args = ["rate", folder.Path, option, .. word == "" ? Array.Empty<string>() : [word]];
        CliRun.Of(args).MustRefuse("machine.yaml", "add 'capillary, or valve' to throttle (capillary: ", "nothing was computed");
    }

    [Fact]
    public void AWordThatIsNoneIsAnsweredWithTheNearest() =>
        CliRun.Of("rate", Repository.Example("workshop"), "--hold", "nether").MustRefuse("--hold", "'nether'", "neither, high, low, both", "did you mean neither?");

    [Theory]
    [InlineData("(?m)^  mass: .*$", "  mass: 9 kg", "does not fit into the")]
    [InlineData(@"capillary: \{bore: [0-9.]+ mm", "capillary: {bore: 0.1 mm", "at rest and warm the charge of")]
    public void ALoopThatCannotBeClosedSaysWhichPartIsShortAndAnswersNo(string pattern, string replace, string said)
    {
        using var folder = new TemporaryFolder();
        Workshop(folder, pattern, replace);
        var run = CliRun.Of("rate", folder.Path, "--hold", "neither", "--model", "cubic");
        Assert.Equal(ExitCode.No, run.Code);
        Assert.Equal("", run.Output);
        Assert.Contains("no answer", run.Error, StringComparison.Ordinal);
        Assert.Contains(said, run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void APartAloneSaysThatItDoesNotUseThem()
    {
        var run = CliRun.Of("rate", Repository.Example("workshop"), "--part", "coil", "--hold", "high", "--model", "cubic");
        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Contains("--hold and --sensitivity are not used", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void CtrlCStopsIt()
    {
        var run = CliRun.Of(new CancellationToken(canceled: true), "rate", Repository.Example("workshop"), "--hold", "neither");
        Assert.Equal(ExitCode.Stopped, run.Code);
        Assert.Equal("", run.Output);
    }

    private static void Workshop(TemporaryFolder folder, string pattern, string replace)
    {
        var text = File.ReadAllText(Path.Combine(Repository.Example("workshop"), "machine.yaml"));
        Assert.Matches(pattern, text);
        folder.Write("machine.yaml", new Regex(pattern).Replace(text, replace, 1));
    }
}
