using System.Text.RegularExpressions;

namespace Coldwright.Architecture;

/// <summary>What the source text itself must keep to.</summary>
public partial class SourceHabits
{
    [GeneratedRegex(@"\bConsole\.")]
    private static partial Regex ConsoleUse();

    // Written in two pieces so that this file keeps the rule it checks.
    [GeneratedRegex(@"\bTO" + @"DO\b|\bFIX" + @"ME\b|NotImplemented" + "Exception")]
    private static partial Regex Unfinished();

    [GeneratedRegex(@"catch\s*(\([^)]*\)\s*(when\s*\([^{]*\))?)?\s*\{\s*\}")]
    private static partial Regex SwallowingCatch();

    [GeneratedRegex(@"JsonSerializer\.|DeserializerBuilder|SerializerBuilder")]
    private static partial Regex ReflectionSerialisation();

    private static void NoneIn(IEnumerable<string> files, Regex pattern)
    {
        var found = files.SelectMany(f => Clone.Lines(f).Select((text, i) => (f, i, text))).Where(l => pattern.IsMatch(l.text)).Select(l => $"{l.f}:{l.i + 1}: {l.text.Trim()}");
        Assert.Empty(found);
    }

    [Fact]
    public void NothingBelowTheFacesWritesToTheConsole() =>
        NoneIn(Clone.Sources("src").Where(f => !f.StartsWith("src/Coldwright.Cli/", StringComparison.Ordinal)), ConsoleUse());

    [Fact]
    public void NothingIsLeftUnfinished() => NoneIn(Clone.Sources("src", "tests", "benchmarks"), Unfinished());

    [Fact]
    public void NothingInTheProgramNeedsReflectionToReadOrWrite() => NoneIn(Clone.Sources("src"), ReflectionSerialisation());

    [Fact]
    public void NoExceptionIsSwallowed()
    {
        var found = Clone.Sources("src").Where(f => SwallowingCatch().IsMatch(string.Join('\n', Clone.Lines(f)))).ToArray();
        Assert.Empty(found);
    }

    [Fact]
    public void FilesAreSmall()
    {
        var sizes = Clone.Sources("src", "tests", "benchmarks").Select(f => (File: f, Lines: Clone.Lines(f).Length)).OrderBy(s => s.Lines).ToArray();
        Assert.InRange(sizes[sizes.Length / 2].Lines, 1, 150);
        Assert.All(sizes, s => Assert.True(s.Lines <= 800, $"{s.File} has {s.Lines} lines; the limit is 800"));
        var large = sizes.Where(s => s.Lines > 500).Select(s => s.File).ToArray();
        Assert.True(large.Length <= 0.02 * sizes.Length, $"over 500 lines: {string.Join(", ", large)}");
    }

    [Fact]
    public void NamespacesAreFileScopedAndFollowTheProject()
    {
        foreach (var file in Clone.Sources("src"))
        {
            var project = file.Split('/')[1];
            var line = Clone.Lines(file).FirstOrDefault(l => l.StartsWith("namespace ", StringComparison.Ordinal));
            Assert.True(line is not null && line.StartsWith($"namespace {project}", StringComparison.Ordinal) && line.EndsWith(';'), $"{file}: {line ?? "no namespace"}");
        }
    }

    /// <summary>Every public type and member of the lower floors says what it is. Found in the text: the line above (attributes skipped) is a docstring.</summary>
    [Fact]
    public void PublicMembersOfFluidsAreExplained()
    {
        var missing = new List<string>();
        foreach (var file in Clone.Sources("src/Coldwright.Fluids"))
        {
            var lines = Clone.Lines(file);
            var inside = PublicTypeStack(lines);
            for (var i = 0; i < lines.Length; i++)
            {
                var text = lines[i].TrimStart();
                if (!inside[i] || !text.StartsWith("public ", StringComparison.Ordinal) || text.StartsWith("public override ", StringComparison.Ordinal) || IsConstructor(text, file)) continue;
                var above = i - 1;
                while (above >= 0 && lines[above].TrimStart().StartsWith('[')) above--;
                if (above < 0 || !lines[above].TrimStart().StartsWith("///", StringComparison.Ordinal)) missing.Add($"{file}:{i + 1}: {text}");
            }
        }
        Assert.Empty(missing);
    }

    // A file that holds only internal types needs no docstrings on their public members.
    private static bool[] PublicTypeStack(string[] lines)
    {
        var inside = new bool[lines.Length];
        var isPublic = false;
        for (var i = 0; i < lines.Length; i++)
        {
            if (TypeDeclaration().Match(lines[i]) is { Success: true } type) isPublic = type.Groups[1].Value.StartsWith("public", StringComparison.Ordinal);
            inside[i] = isPublic;
        }
        return inside;
    }

    [GeneratedRegex(@"^\s*(public|internal|private|file)\b[\w\s]*\b(class|record|struct|interface|enum)\s")]
    private static partial Regex TypeDeclaration();

    // The parameters of a constructor are explained by its param tags or by the type.
    private static bool IsConstructor(string text, string file) => text.StartsWith($"public {Path.GetFileNameWithoutExtension(file)}(", StringComparison.Ordinal);
}
