namespace Coldwright.Cli.Tests;

/// <summary>The clone the tests run in.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    public static string Example(string name) => Path.Combine(Root, "examples", name);

    /// <summary>A copy of an example with one text replaced.</summary>
    public static string Changed(TemporaryFolder folder, string example, string find, string replace)
    {
        var text = File.ReadAllText(Path.Combine(Example(example), "machine.yaml"));
        Assert.Contains(find, text, StringComparison.Ordinal);
        folder.Write("machine.yaml", text.Replace(find, replace, StringComparison.Ordinal));
        File.Copy(Path.Combine(Example(example), "shop.yaml"), folder["shop.yaml"], overwrite: true);
        return folder.Path;
    }

    private static string Find()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Coldwright.slnx"))) folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException($"no Coldwright.slnx above {AppContext.BaseDirectory}");
    }
}
