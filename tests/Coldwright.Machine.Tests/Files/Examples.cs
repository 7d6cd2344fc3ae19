namespace Coldwright.Machine.Tests.Files;

/// <summary>The repository's own files, found from the test's place upwards.</summary>
internal static class Examples
{
    public static string Root { get; } = FindRoot();

    public static string Workshop { get; } = File.ReadAllText(Folder("workshop", "machine.yaml"));

    public static string WorkshopShop { get; } = File.ReadAllText(Folder("workshop", "shop.yaml"));

    public static string Folder(params string[] path) => Path.Combine([Root, "examples", .. path]);

    /// <summary>The workshop's file with one piece of text replaced; the piece must be there exactly once.</summary>
    public static string With(string old, string replacement)
    {
        var first = Workshop.IndexOf(old, StringComparison.Ordinal);
        Assert.True(first >= 0 && Workshop.IndexOf(old, first + 1, StringComparison.Ordinal) < 0, $"'{old}' must be in the example exactly once");
        return Workshop.Replace(old, replacement, StringComparison.Ordinal);
    }

    private static string FindRoot()
    {
        var at = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(at.FullName, "Coldwright.slnx")))
            at = at.Parent ?? throw new InvalidOperationException("no Coldwright.slnx above the test's folder");
        return at.FullName;
    }
}
