namespace Coldwright.Runs.Tests;

/// <summary>The runs that come with the clone.</summary>
internal static class Examples
{
    public static string Root { get; } = FindRoot();

    public static IReadOnlyList<string> Runs { get; } = [.. Directory.EnumerateFiles(Path.Combine(Root, "examples"), "run.yaml", SearchOption.AllDirectories).Select(f => Path.GetDirectoryName(f)!).Order(StringComparer.Ordinal)];

    public static string Run(string name) => Path.Combine(Root, "examples", "workshop", "runs", name);

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Coldwright.slnx"))) folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException($"no Coldwright.slnx above {AppContext.BaseDirectory}");
    }
}
