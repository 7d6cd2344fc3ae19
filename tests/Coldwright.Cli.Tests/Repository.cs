namespace Coldwright.Cli.Tests;

/// <summary>The clone the tests run in.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    public static string Example(string name) => Path.Combine(Root, "examples", name);

    /// <summary>Writes the starter folder with the first match of a pattern replaced.</summary>
    public static string Changed(TemporaryFolder folder, string pattern, string replace)
    {
        CliRun.Of("new", folder.Path).MustSucceed();
        var text = File.ReadAllText(folder["machine.yaml"]);
        Assert.Matches(pattern, text);
        folder.Write("machine.yaml", new System.Text.RegularExpressions.Regex(pattern).Replace(text, replace, 1));
        return folder.Path;
    }

    private static string Find()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Coldwright.slnx"))) folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException($"no Coldwright.slnx above {AppContext.BaseDirectory}");
    }
}
