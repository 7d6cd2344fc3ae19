namespace Coldwright.Web.Tests;

/// <summary>A copy of an example for one test.</summary>
public sealed class CoolerCopy : IDisposable
{
    public CoolerCopy(string example = "workshop")
    {
        var from = System.IO.Path.Combine(Root, "examples", example);
        foreach (var name in (string[])["machine.yaml", "shop.yaml"]) File.Copy(System.IO.Path.Combine(from, name), System.IO.Path.Combine(Path, name));
    }

    /// <summary>The clone that the tests run in.</summary>
    public static string Root { get; } = FindRoot();

    public string Path { get; } = Directory.CreateTempSubdirectory("coldwright-page-").FullName;

    public string MachinePath => System.IO.Path.Combine(Path, "machine.yaml");

    public string Machine
    {
        get => File.ReadAllText(MachinePath);
        set => File.WriteAllText(MachinePath, value);
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(System.IO.Path.Combine(folder.FullName, "Coldwright.slnx"))) folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException($"no Coldwright.slnx above {AppContext.BaseDirectory}");
    }
}
