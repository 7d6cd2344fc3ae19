using System.Text;

namespace Coldwright.Cli.Tests;

/// <summary>Every command a reader finds in a code fence of the README or of a how-to page runs.</summary>
public class ReadmeTests
{
    private static readonly string[] _scripts = ["./test", "./bench"];

    public static TheoryData<string> Pages =>
        ["README.md", .. Directory.EnumerateFiles(Path.Combine(Repository.Root, "docs", "how-to"), "*.md").Where(f => Commands(File.ReadAllLines(f)).Any()).Select(f => Path.GetRelativePath(Repository.Root, f)).Order(StringComparer.Ordinal)];

    [Fact]
    public void TheReadmeAndTheHowToPagesHaveCommands() =>
        Assert.Superset(new HashSet<string> { "README.md", "docs/how-to/rate-your-cooler.md", "docs/how-to/is-it-safe.md" }, Pages.Select(p => p.Data.Replace('\\', '/')).ToHashSet());

    /// <summary>Runs them one after the other in a folder that holds the examples, so that nothing is left in the clone.</summary>
    [Theory]
    [MemberData(nameof(Pages))]
    public void EveryCommandOfThePageRuns(string page)
    {
        var commands = Commands(File.ReadAllLines(Path.Combine(Repository.Root, page))).ToArray();
        Assert.Contains(commands, c => c is ["./coldwright", ..]);
        foreach (var script in commands.Select(c => c[0]).Distinct()) Assert.True(File.Exists(Path.Combine(Repository.Root, script)), $"{script} is not in the clone");

        using var folder = new TemporaryFolder();
        foreach (var file in Directory.EnumerateFiles(Repository.Example(""), "*", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(folder["examples"], Path.GetRelativePath(Repository.Example(""), file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }
        var home = Directory.GetCurrentDirectory();
        Directory.SetCurrentDirectory(folder.Path);
        try
        {
            foreach (var command in commands.Where(c => c[0] == "./coldwright"))
            {
                // A page is served until somebody ends it.
                using var end = new CancellationTokenSource();
                if (command[1] == "page") end.CancelAfter(TimeSpan.FromSeconds(3));
                var run = CliRun.Of(end.Token, command[1] == "page" ? [.. command[1..], "--no-browser"] : command[1..]);
                // An example that does not work ends with "no"; wrong input or a defect is what must not happen.
                Assert.True(run.Code is ExitCode.Done or ExitCode.No, $"{string.Join(' ', command)}: exit code {run.Code}: {run.Error}");
                Assert.True(run.Output.Length > 0, $"{string.Join(' ', command)}: exit code {run.Code}, nothing on standard output: {run.Error}");
            }
        }
        finally
        {
            Directory.SetCurrentDirectory(home);
        }
    }

    [Fact]
    public void CommandsAreReadAsAShellReadsThem()
    {
        var found = Commands(["text ./coldwright no", "```", "$ ./coldwright state \"nitrogen 0.5, argon 0.5\" -T '-150 °C'   # a note", "./test", "other", "./coldwright rate x --json > y.json", "```", "./coldwright no"]).ToArray();
        Assert.Equal(
            [["./coldwright", "state", "nitrogen 0.5, argon 0.5", "-T", "-150 °C"], ["./test"], ["./coldwright", "rate", "x", "--json"]],
            found);
    }

    private static IEnumerable<string[]> Commands(IEnumerable<string> lines)
    {
        var fenced = false;
        foreach (var raw in lines)
        {
            var line = raw.Trim();
            if (line.StartsWith("```", StringComparison.Ordinal)) fenced = !fenced;
            if (!fenced) continue;
            if (line.StartsWith("$ ", StringComparison.Ordinal)) line = line[2..];
            var words = Words(line);
            if (words.Count > 0 && (words[0] == "./coldwright" || _scripts.Contains(words[0]))) yield return [.. words];
        }
    }

    // Words up to a comment, a pipe or a redirection; quotes keep blanks.
    private static List<string> Words(string line)
    {
        var words = new List<string>();
        var word = new StringBuilder();
        var (quote, open) = ('\0', false);
        foreach (var c in line + " ")
        {
            if (quote != '\0')
            {
                if (c == quote) quote = '\0';
                else word.Append(c);
            }
            else if (c is '"' or '\'') (quote, open) = (c, true);
            else if (c == ' ')
            {
                if (word.Length > 0 || open) words.Add(word.ToString());
                word.Clear();
                open = false;
            }
            else if (c is '#' or '|' or '>' or '&' && word.Length == 0) break;
            else word.Append(c);
        }
        return words;
    }
}
