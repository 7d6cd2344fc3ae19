namespace Coldwright.Cli.Tests;

/// <summary>Wrong machine folders, through <c>check</c> and <c>rate</c>: exit 2, a clear message, nothing written.</summary>
public class BadMachineTests
{
    public static TheoryData<string, string, string[]> Changes => new()
    {
        { "high-pressure: [0-9.]+ barg", "high-pressure: 17.5 W", ["machine.yaml:", "'17.5 W'", "barg"] },
        { "high-pressure: [0-9.]+ barg", "high-pressure: 17.5 bar", ["'17.5 bar'", "gauge or absolute"] },
        { "nitrogen 0\\.[0-9]+", "nitrogen 0.99", ["mixture", "sum to 1"] },
        { "methane 0\\.", "methan 0.", ["'methan'", "methane"] },
        { "temperature: 20 °C", "temperature: -300 °C", ["-300 °C", "-273.15 °C"] },
        { "high-pressure: [0-9.]+ barg", "high-pressure: 90 barg", ["compressor", "made for at most", "bara"] },
        { "conductance: ", "conductanse: ", ["conductanse", "conductance"] },
    };

    [Theory]
    [MemberData(nameof(Changes))]
    public void IsRefusedByCheckAndRate(string pattern, string replace, string[] words)
    {
        using var folder = new TemporaryFolder();
        Repository.Changed(folder, pattern, replace);
        CliRun.Of("check", folder.Path).MustRefuse(words);
        CliRun.Of("rate", folder.Path, "--report", folder["out"]).MustRefuse(words);
        CliRun.Of("rate", folder.Path, "--json").MustRefuse(words);
        Assert.Equal(["machine.yaml", "runs", "shop.yaml"], folder.Names);
    }

    [Theory]
    [InlineData("check")]
    [InlineData("rate")]
    public void FoldersAndFilesThatAreNone(string command)
    {
        using var folder = new TemporaryFolder();
        CliRun.Of(command, folder["nowhere"]).MustRefuse("no folder", "nowhere");
        CliRun.Of(command, folder.Path).MustRefuse("machine.yaml");
        var file = folder.Write("machine.yaml", "");
        CliRun.Of(command, folder.Path).MustRefuse("empty");
        CliRun.Of(command, file).MustRefuse("is a file");
        File.WriteAllText(file, new string('a', 10_000_000));
        CliRun.Of(command, folder.Path).MustRefuse("10.0 MB", "1.0 MB");
        File.WriteAllBytes(file, [0x7F, 0x45, 0x4C, 0x46, 0, 1, 2, 0xFF]);
        CliRun.Of(command, folder.Path).MustRefuse("machine.yaml");
        Assert.Equal(["machine.yaml"], folder.Names);
    }

    [Fact]
    public void AReportFolderThatIsAFileIsRefusedBeforeTheWork()
    {
        using var folder = new TemporaryFolder();
        var file = folder.Write("out", "mine");
        CliRun.Of("rate", Repository.Example("workshop"), "--report", file).MustRefuse("--report", "is a file");
        Assert.Equal("mine", File.ReadAllText(file));
    }
}
