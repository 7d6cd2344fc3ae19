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

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task EveryCommandOfThePageRuns(string page) => Assert.Null(await _pages.Value[page]);

    // All pages from the first question on, two at a time: most of what they do is computing. A page's fault in words, or null.
    private static readonly Lazy<Dictionary<string, Task<string?>>> _pages = new(() =>
    {
        var two = new SemaphoreSlim(2);
        return Pages.Select(p => p.Data).ToDictionary(p => p, p => Task.Run(async () =>
        {
            await two.WaitAsync();
            try
            {
                return FaultOf(p);
            }
            finally
            {
                two.Release();
            }
        }));
    });

    // Runs them one after the other on a copy of the examples, so that nothing is left in the clone.
    private static string? FaultOf(string page)
    {
        var commands = Commands(File.ReadAllLines(Path.Combine(Repository.Root, page))).ToArray();
        if (!commands.Any(c => c is ["./coldwright", ..])) return "no command";
        foreach (var script in commands.Select(c => c[0]).Distinct())
            if (!File.Exists(Path.Combine(Repository.Root, script))) return $"{script} is not in the clone";
        using var folder = new TemporaryFolder();
        foreach (var file in Directory.EnumerateFiles(Repository.Example(""), "*", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(folder["examples"], Path.GetRelativePath(Repository.Example(""), file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }
        // as if the reader stood in that folder
        string Here(string word) => word.StartsWith("examples/", StringComparison.Ordinal) || word.StartsWith("artifacts/", StringComparison.Ordinal) || word == "my-cooler" ? folder[word] : word;
        foreach (var command in commands.Where(c => c[0] == "./coldwright"))
        {
            // A page is served until somebody ends it.
            using var end = new CancellationTokenSource();
            if (command[1] == "page") end.CancelAfter(TimeSpan.FromSeconds(3));
            string[] words = [.. command[1..].Select(Here)];
            var run = CliRun.Of(end.Token, command[1] == "page" ? [.. words, "--no-browser"] : words);
            // An example that does not work ends with "no"; wrong input or a defect is what must not happen.
            if (run.Code is not (ExitCode.Done or ExitCode.No)) return $"{string.Join(' ', command)}: exit code {run.Code}: {run.Error}";
            if (run.Output.Length == 0) return $"{string.Join(' ', command)}: exit code {run.Code}, nothing on standard output: {run.Error}";
        }
        return null;
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
