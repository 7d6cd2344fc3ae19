using System.Text.Json;

namespace Coldwright.Cli.Tests;

/// <summary><c>envelope</c>: every way of output, and bad input.</summary>
public class EnvelopeTests
{
    private const string Mixture = "methane 0.5, ethane 0.5";

    [Fact]
    public void OneScreenWithTheFiguresFirst()
    {
        var run = CliRun.Of("envelope", Mixture, "--model", "cubic").MustSucceed();
        Assert.Contains("Critical point", run.Output, StringComparison.Ordinal);
        Assert.Contains("cricondenbar", run.Output, StringComparison.Ordinal);
        Assert.Contains("30.0 bar abs", run.Output, StringComparison.Ordinal);
        Assert.True(run.Output.Split('\n').Length < 40);
    }

    /// <summary>The bubble temperature of the table is the one that state finds.</summary>
    [Fact]
    public void TheTableAgreesWithState()
    {
        using var envelope = JsonDocument.Parse(CliRun.Of("envelope", Mixture, "--json").MustSucceed().Output);
        using var state = JsonDocument.Parse(CliRun.Of("state", Mixture, "-p", "10 bara", "--vapour-fraction", "0", "--json").MustSucceed().Output);
        double bubble = state.RootElement.GetProperty("temperature_K").GetDouble();
        Assert.Equal("coldwright/envelope/1", envelope.RootElement.GetProperty("schema").GetString());
        Assert.Equal("reference", envelope.RootElement.GetProperty("model").GetString());
        Assert.Contains($"{bubble:0.0} K", CliRun.Of("envelope", Mixture).MustSucceed().Output, StringComparison.Ordinal);
    }

    [Fact]
    public void ReportAndTableAreWrittenAndJsonStaysAlone()
    {
        using var folder = new TemporaryFolder();
        string report = Path.Combine(folder.Path, "out"), table = Path.Combine(folder.Path, "lines.csv");
        var run = CliRun.Of("envelope", Mixture, "--model", "both", "--json", "--report", report, "--table", table).MustSucceed();
        using var document = JsonDocument.Parse(run.Output);
        Assert.Equal("cubic", document.RootElement.GetProperty("second_opinion").GetProperty("model").GetString());
        Assert.StartsWith("<!DOCTYPE html>", File.ReadAllText(Path.Combine(report, "envelope.html")), StringComparison.Ordinal);
        Assert.StartsWith("model,line,kind", File.ReadAllText(table), StringComparison.Ordinal);
        Assert.Contains("envelope.html", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void MassFractionsBecomeMoleFractions()
    {
        using var document = JsonDocument.Parse(CliRun.Of("envelope", "methane 0.5, ethane 0.5", "--mass", "--model", "cubic", "--json").MustSucceed().Output);
        // equal masses: mole fractions in the inverse ratio of 16.0428 and 30.069 g/mol
        Assert.Equal(30.069 / (30.069 + 16.0428), document.RootElement.GetProperty("mixture").GetProperty("methane").GetDouble(), 1e-4);
    }

    [Theory]
    [InlineData("nitrogen")]
    [InlineData("nitrogen 1, methane 0")]
    public void APureSubstanceIsToldWhatToUse(string mixture) => CliRun.Of("envelope", mixture).MustRefuse("nitrogen", "pure substance", "coldwright state");

    [Fact]
    public void BadInputIsRefused()
    {
        CliRun.Of("envelope").MustRefuse("mixture is missing");
        CliRun.Of("envelope", "methane 0.5, ethan 0.5").MustRefuse("ethan", "ethane");
        CliRun.Of("envelope", "methane 0.5, ethane 0.7").MustRefuse("1.2");
        CliRun.Of("envelope", Mixture, "--table", "no/such/folder/x.csv").MustRefuse("--table", "no folder");
        CliRun.Of("envelope", Mixture, "--model", "cubical").MustRefuse("--model", "cubic");
    }

    [Fact]
    public void CtrlCStopsIt()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Equal(ExitCode.Stopped, CliRun.Of(stop.Token, "envelope", Mixture).Code);
    }
}
