using System.Text.RegularExpressions;
using Xunit;

namespace Coldwright.Safety.Tests;

/// <summary>Every finding that the rules can make danger or serious has a machine that triggers it and a mended one that does not.</summary>
public sealed partial class CompletenessTests
{
    [GeneratedRegex("""new\("(?<id>[a-z-]+)", (?<grade>[^"]*?), [a-zA-Z$"]""")]
    private static partial Regex Making();

    [Fact]
    public void Every_grave_finding_has_its_machine()
    {
        var grave = Directory.EnumerateFiles(Path.Combine(Root(), "src", "Coldwright.Safety"), "*.cs", SearchOption.AllDirectories)
            .SelectMany(f => Making().Matches(File.ReadAllText(f)))
            .Where(m => m.Groups["grade"].Value.Contains("Stop", StringComparison.Ordinal) || m.Groups["grade"].Value.Contains("Serious", StringComparison.Ordinal) || m.Groups["grade"].Value == "grade")
            .Select(m => m.Groups["id"].Value).Distinct().ToArray();
        Assert.InRange(grave.Length, 25, 60);
        var triggered = CautionTests.Breakages.Concat(ReviewTests.Breakages).Where(b => b.Data.Item3 is Grade.Stop or Grade.Serious).Select(b => b.Data.Item1).Concat(BatchFindingTests.Breakages.Select(b => b.Data.Item1)).ToHashSet();
        Assert.Empty(grave.Except(triggered));
    }

    internal static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Coldwright.slnx"))) folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException($"no Coldwright.slnx above {AppContext.BaseDirectory}");
    }
}
