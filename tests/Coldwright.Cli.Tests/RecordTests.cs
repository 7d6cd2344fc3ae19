using System.Globalization;
using Coldwright.Cli.Commands;
using Coldwright.Runs;
using Coldwright.Runs.Tests.Live;

namespace Coldwright.Cli.Tests;

/// <summary><c>record</c>, from a file and from a broker.</summary>
public class RecordTests
{
    private readonly CancellationToken _cancel = TestContext.Current.CancellationToken;

    [Fact]
    public void RefusesWhatIsNotThere()
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(ExitCode.BadInput, CliRun.Of("record", folder["nowhere"]).Code);
        Assert.Equal(ExitCode.BadInput, CliRun.Of("record", folder.Path, "--like", folder["nowhere"]).Code);
        Assert.Equal(ExitCode.BadInput, CliRun.Of("record", folder.Path, "--from", folder["no-port"]).Code);
        Assert.False(Directory.Exists(folder["runs"]));
    }

    [Fact]
    public void KeepsEveryLineOfAFile()
    {
        using var folder = new TemporaryFolder();
        string port = folder["port"];
        File.WriteAllText(port, "T;p\n20,1;5\n19,0;6\n\n18,2;7\n");
        var run = CliRun.Of("record", folder.Path, "--from", port, "--name", "first cold");
        Assert.Equal(ExitCode.Done, run.Code);
        string made = Assert.Single(Directory.EnumerateDirectories(folder["runs"]));
        Assert.EndsWith("-first-cold", made, StringComparison.Ordinal);
        string[] lines = File.ReadAllLines(Path.Combine(made, "log.csv"));
        Assert.Equal("time;T;p", lines[0]);
        Assert.Equal(3, lines.Length - 1);
        Assert.EndsWith(";18,2;7", lines[^1], StringComparison.Ordinal);
        Assert.Contains("name: first cold", File.ReadAllText(Path.Combine(made, "run.yaml")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--topic", "--topic", "cooler/#")]
    [InlineData("--qos", "--qos", "1")]
    [InlineData("which topics?", "--mqtt", "localhost")]
    [InlineData("'http'", "--mqtt", "http://localhost", "--topic", "#")]
    [InlineData("at the end", "--mqtt", "localhost", "--topic", "a#")]
    [InlineData("one place", "--mqtt", "localhost", "--topic", "#", "--from", "x")]
    [InlineData("is not one of 0, 1, 2", "--mqtt", "localhost", "--topic", "#", "--qos", "3")]
    [InlineData("nothing listens there", "--mqtt", "127.0.0.1:9", "--topic", "#")]
    public void RefusesABrokerThatCannotBe(string word, params string[] options)
    {
        using var folder = new TemporaryFolder();
        CliRun.Of(["record", folder.Path, .. options]).MustRefuse(word);
        Assert.Empty(Directory.Exists(folder["runs"]) ? Directory.EnumerateDirectories(folder["runs"]) : []);
    }

    /// <summary>The commands as the how-to page gives them, with the test's own broker: a first run from topics, its channels filled in as the page says, a second one like it.</summary>
    [Fact]
    public async Task TheCommandsOfTheHowToPageRun()
    {
        string[] page = File.ReadAllLines(Path.Combine(Repository.Root, "docs", "how-to", "keep-a-log.md"));
        string[] commands = [.. page.Where(l => l.StartsWith("coldwright record", StringComparison.Ordinal) && l.Contains("--mqtt localhost:1883", StringComparison.Ordinal))];
        Assert.Equal(2, commands.Length);
        Assert.Contains(page, l => l.Contains($"{RecordTopics.UserVariable}=", StringComparison.Ordinal) && l.Contains($"{RecordTopics.PasswordVariable}=", StringComparison.Ordinal));
        using var folder = new TemporaryFolder();
        Directory.CreateDirectory(folder["my-cooler"]);
        await using var broker = await TestBroker.StartAsync();
        broker.Wants = ("me", "opensesame");
        Environment.SetEnvironmentVariable(RecordTopics.UserVariable, "me");
        Environment.SetEnvironmentVariable(RecordTopics.PasswordVariable, "opensesame");
        try
        {
            var first = await RecordAsync(commands[0], folder, broker);
            Assert.Contains("Columns: cooler/vessel, cooler/gauges#/high, cooler/gauges#/low", first.Output, StringComparison.Ordinal);
            string made = Assert.Single(Directory.EnumerateDirectories(folder["my-cooler/runs"]));
            string[] channels = [.. page.SkipWhile(l => !l.Contains("column: cooler/vessel", StringComparison.Ordinal)).TakeWhile(l => l.StartsWith("  ", StringComparison.Ordinal))];
            Assert.Equal(2, channels.Length);
            string today = DateTime.Now.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
            string description = Path.Combine(made, RunImporter.RunFile);
            File.WriteAllText(description, $"name: first\nstart: {today}\nlog: {{file: log.csv}}\nchannels:\n{string.Join('\n', channels)}\n");
            Assert.Contains("2 channels", CliRun.Of("import", made).MustSucceed().Output, StringComparison.Ordinal);
            Directory.Move(made, folder["my-cooler/runs/2026-05-02-first-cold"]);

            var second = await RecordAsync(commands[1], folder, broker);
            string like = Assert.Single(Directory.EnumerateDirectories(folder["my-cooler/runs"]), d => d.EndsWith("second-cold", StringComparison.Ordinal));
            Assert.Equal("time;cooler/vessel;cooler/gauges#/high", File.ReadLines(Path.Combine(like, "log.csv")).First());
            Assert.Contains("2 channels", CliRun.Of("import", like).MustSucceed().Output, StringComparison.Ordinal);
            foreach (var run in (CliRun[])[first, second]) Assert.DoesNotContain("opensesame", run.Output + run.Error, StringComparison.Ordinal);
        }
        finally
        {
            Environment.SetEnvironmentVariable(RecordTopics.UserVariable, null);
            Environment.SetEnvironmentVariable(RecordTopics.PasswordVariable, null);
        }
    }

    private async Task<CliRun> RecordAsync(string command, TemporaryFolder folder, TestBroker broker)
    {
        string[] words = [.. command.Split(' ').Skip(1).Select(w => w.Trim('\'').Replace("localhost:1883", $"127.0.0.1:{broker.Port}", StringComparison.Ordinal)).Select(w => w.StartsWith("my-cooler", StringComparison.Ordinal) ? folder[w] : w)];
        using var end = CancellationTokenSource.CreateLinkedTokenSource(_cancel);
        var run = Task.Run(() => CliRun.Of(end.Token, words), _cancel);
        await broker.WhenAskedAsync(_cancel);
        foreach (string figure in (string[])["20.1", "19.4", "18.0"])
        {
            await broker.SayAsync("cooler/vessel", figure, _cancel);
            await broker.SayAsync("cooler/gauges", """{"high": 17.2, "low": 2.1}""", _cancel);
        }
        await end.CancelAsync();
        return (await run).MustSucceed();
    }
}
