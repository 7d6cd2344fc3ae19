namespace Coldwright.Cli.Tests;

/// <summary>A folder of its own for one test.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("coldwright-cli-").FullName;

    public string this[string name] => System.IO.Path.Combine(Path, name);

    public string Write(string name, string text)
    {
        File.WriteAllText(this[name], text);
        return this[name];
    }

    /// <summary>Names of everything inside.</summary>
    public IReadOnlyList<string> Names => Directory.EnumerateFileSystemEntries(Path).Select(p => System.IO.Path.GetFileName(p)!).Order(StringComparer.Ordinal).ToArray();

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
