using System.Text.Json;

namespace Coldwright.Cli.Tests;

/// <summary><c>batch</c> from the folder to the screen, the JSON and the page.</summary>
public class BatchTests
{
    // the two pressures of the file: closing the loop is another test's matter
    private static readonly string[] Held = ["--hold", "both"], Given = ["--hold", "both", "--fill", "60 %", "--open-at", "9 barg"];

    [Fact]
    public void TheWorkshopCoolersLedgerClosesInTheJson()
    {
        var run = CliRun.Of(["batch", Repository.Example("workshop"), "--json", .. Given]).MustSucceed();
        using var document = JsonDocument.Parse(run.Output);
        var root = document.RootElement;
        Assert.Equal("coldwright/batch/1", root.GetProperty("schema").GetString());
        foreach (var field in (string[])["ledger_g", "ledger_J", "schedule", "collected_L_h", "energy_kWh_L", "series", "warnings", "findings", "waiting", "impurities", "feed_compressor", "balance"])
            Assert.True(root.TryGetProperty(field, out _), $"{field} is missing");
        var grams = root.GetProperty("ledger_g").EnumerateObject().ToDictionary(p => p.Name, p => p.Value.GetDouble());
        Assert.Equal(["fed", "lines", "vapour_left", "flashed", "line_boil", "flask_boil", "collected"], grams.Keys);
        Assert.Equal(grams["fed"], grams.Where(p => p.Key != "fed").Sum(p => p.Value), 1e-9 * grams["fed"]);
        Assert.True(grams["collected"] > 20);
        var joules = root.GetProperty("ledger_J").EnumerateObject().Select(p => p.Value.GetDouble()).ToArray();
        Assert.True(Math.Abs(joules.Sum()) < 1e-6 * joules.Max(Math.Abs));
        Assert.Equal("feed", root.GetProperty("schedule")[0].GetProperty("action").GetString());
        var series = root.GetProperty("series").EnumerateObject().Select(p => p.Value.GetArrayLength()).Distinct();
        Assert.True(Assert.Single(series) > 30);
        Assert.Contains(root.GetProperty("findings").EnumerateArray(), f => f.GetProperty("id").GetString() == "can-trap-liquid");
    }

    [Fact]
    public void ScreenAndPageTellWhereTheGasWent()
    {
        using var folder = new TemporaryFolder();
        var run = CliRun.Of(["batch", Repository.Example("workshop"), "--report", folder["out"], .. Given]).MustSucceed();
        foreach (var word in (string[])["flashed", "in the flask", "What to do", "the next minute brings", "ocal codes and licensed practice come first", "batch.html"])
            Assert.Contains(word, run.Output, StringComparison.Ordinal);
        Assert.All(run.Output.Split('\n').Where(l => !l.StartsWith("Report page", StringComparison.Ordinal)), l => Assert.True(l.Length <= 88, $"{l.Length} columns: {l}"));
        var page = File.ReadAllText(folder["out/batch.html"]);
        Assert.Contains("<svg", page, StringComparison.Ordinal);
        Assert.DoesNotContain("http://", page.Replace("http://www.w3.org/", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    /// <summary>The search: the best schedule is no worse than a schedule that was given, and both goals are told apart.</summary>
    [Fact]
    public void TheScheduleFoundIsNoWorseThanAGivenOne()
    {
        double Litres(params string[] more)
        {
            using var document = JsonDocument.Parse(CliRun.Of(["batch", Repository.Example("workshop"), "--json", .. more]).MustSucceed().Output);
            return document.RootElement.GetProperty("collected_L_h").GetDouble();
        }
        Assert.True(Litres(Held) >= Litres(Given));
    }

    [Fact]
    public void WrongWordsAreRefusedByName()
    {
        CliRun.Of("batch", Repository.Example("workshop"), "--for", "speed").MustRefuse("--for", "litres, energy");
        CliRun.Of("batch", Repository.Example("workshop"), "--fill", "60 %").MustRefuse("--open-at");
        CliRun.Of("batch", Repository.Example("workshop"), "--fill", "60 %", "--open-at", "9 bar").MustRefuse("--open-at", "gauge");
        CliRun.Of("batch", Repository.Example("workshop"), "--fill", "99 %", "--open-at", "9 barg").MustRefuse("--fill", "too large");
        CliRun.Of("batch", Repository.Example("workshop"), "--batches", "0").MustRefuse("--batches", "1 to 50");
    }

    [Fact]
    public void StoppedBeforeAnythingWasTriedItSaysSo()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.Equal(ExitCode.Stopped, CliRun.Of(source.Token, "batch", Repository.Example("workshop")).Code);
    }

    /// <summary>A receiver, a feed compressor that is too hot and too slow, a leaking seat, impure gas: each is found and the ledger still closes.</summary>
    [Fact]
    public void AReceiverAndAWornFeedCompressorAreFollowed()
    {
        using var folder = new TemporaryFolder();
        var machine = File.ReadAllText(Path.Combine(Repository.Example("workshop"), "machine.yaml"));
        machine = machine.Replace("    gas: nitrogen\n", "    gas: nitrogen\n    supply-pressure: 3 barg\n    compressor-efficiency: 0.4\n    receiver: {volume: 80 L, pressure: 6 barg, lowest-pressure: 2 barg}\n"
            + "    compressor: {type: reciprocating, displacement: 6 cm3, speed: 700 rpm, mass: 3 kg, maximum-shell-temperature: 24 °C, maximum-discharge-temperature: 200 °C, lubrication: splash, oil-charge: 200 g}\n", StringComparison.Ordinal)
            .Replace("drain-valve: {kind: valve}", "drain-valve: {kind: valve, kv: 0.006, seat-leak: 1 mg/s, body-mass: 80 g}", StringComparison.Ordinal);
        File.WriteAllText(folder["machine.yaml"], machine);
        File.WriteAllText(folder["shop.yaml"], File.ReadAllText(Path.Combine(Repository.Example("workshop"), "shop.yaml")).Replace("purity: 99.9 %}", "purity: 99.9 %, oxygen: 600 ppm, argon: 300 ppm, water: 20 ppm}", StringComparison.Ordinal));
        var run = CliRun.Of(["batch", folder.Path, "--json", .. Given]);
        Assert.Contains(run.Code, (int[])[ExitCode.Done, ExitCode.No]);
        using var document = JsonDocument.Parse(run.Output);
        var root = document.RootElement;
        Assert.True(Math.Abs(root.GetProperty("balance").GetProperty("mass").GetDouble()) < 1e-9);
        Assert.True(Math.Abs(root.GetProperty("balance").GetProperty("energy").GetDouble()) < 1e-6);
        var ids = root.GetProperty("findings").EnumerateArray().Select(f => f.GetProperty("id").GetString()).ToArray();
        foreach (var id in (string[])["oil-starvation", "oil-carried-off", "feed-compressor-hot", "freezes-water"]) Assert.Contains(id, ids);
        Assert.Contains(root.GetProperty("schedule").EnumerateArray(), s => s.GetProperty("action").GetString() == "rest");
        Assert.True(root.GetProperty("ledger_details_g").GetProperty("seat_leak").GetDouble() > 0);
    }
}
