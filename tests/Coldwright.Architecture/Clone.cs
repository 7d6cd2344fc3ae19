namespace Coldwright.Architecture;

/// <summary>The files of the clone the tests run in.</summary>
internal static class Clone
{
    public static string Root { get; } = FindRoot();

    /// <summary>Names of the projects under src.</summary>
    public static IReadOnlyList<string> Projects { get; } =
        Directory.EnumerateDirectories(Path.Combine(Root, "src")).Select(d => Path.GetFileName(d)!).Order(StringComparer.Ordinal).ToArray();

    public static string ProjectFile(string project) => Path.Combine(Root, "src", project, project + ".csproj");

    /// <summary>Source files of one folder of the clone, build output left out; paths relative to the clone.</summary>
    public static IReadOnlyList<string> Sources(params string[] folders) => folders.SelectMany(folder => Directory
        .EnumerateFiles(Path.Combine(Root, folder), "*.cs", SearchOption.AllDirectories)
        .Select(f => Path.GetRelativePath(Root, f).Replace('\\', '/'))
        .Where(f => !f.Contains("/obj/", StringComparison.Ordinal) && !f.Contains("/bin/", StringComparison.Ordinal)))
        .Order(StringComparer.Ordinal).ToArray();

    public static string[] Lines(string file) => File.ReadAllLines(Path.Combine(Root, file));

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Coldwright.slnx"))) folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException($"no Coldwright.slnx above {AppContext.BaseDirectory}");
    }
}
