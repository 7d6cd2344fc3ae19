using Coldwright.Machine.Files;

namespace Coldwright.Web.Cooler;

/// <summary>Kept variants of a cooler: <c>variants/NAME/machine.yaml</c> with the shop of the day beside it, a folder like any other cooler's.</summary>
internal static class Variants
{
    /// <summary>Name of the folder inside the cooler's own that holds them.</summary>
    public const string Folder = "variants";

    private const int LongestName = 40, MostShown = 200;

    /// <summary>Names of the variants there are, in order of the alphabet.</summary>
    public static IReadOnlyList<string> Names(string directory)
    {
        var folder = Path.Combine(directory, Folder);
        if (!Directory.Exists(folder)) return [];
        return [.. Directory.EnumerateDirectories(folder).Select(d => Path.GetFileName(d)).Where(n => IsName(n) && Path.Exists(Path.Combine(folder, n, MachineFolderReader.MachineFile))).Order(StringComparer.Ordinal).Take(MostShown)];
    }

    /// <summary>A variant's files; null when there is none of that name, or when it is a link to another place.</summary>
    public static Snapshot? Read(string directory, string name)
    {
        if (!IsName(name)) return null;
        var folder = Path.Combine(directory, Folder, name);
        string[] way = [Path.Combine(directory, Folder), folder, Path.Combine(folder, MachineFolderReader.MachineFile), Path.Combine(folder, MachineFolderReader.ShopFile)];
        if (way.Any(p => new FileInfo(p).LinkTarget is not null)) return null;
        var text = MachineFile.Text(new MachineFile(way[2]).Bytes());
        return text is null ? null : Snapshot.Of(text, MachineFile.Text(new MachineFile(way[3]).Bytes()), folder);
    }

    /// <summary>Keeps the files as a variant; what stands in the way, empty when it is kept. A variant that exists is never written over.</summary>
    public static string Keep(string directory, string name, Snapshot files)
    {
        if (!IsName(name)) return $"a variant's name has 1 to {LongestName} letters, digits and - and begins with a letter or digit";
        if (files.Text is not { } text) return $"there is no {MachineFolderReader.MachineFile} to keep";
        var folder = Path.Combine(directory, Folder, name);
        if (new FileInfo(Path.Combine(directory, Folder)).LinkTarget is not null) return $"{Folder} is a link to another place; the page writes nothing outside its folder";
        if (Path.Exists(folder)) return $"there is a variant '{name}' already";
        try
        {
            Directory.CreateDirectory(folder);
            File.WriteAllText(Path.Combine(folder, MachineFolderReader.MachineFile), text);
            if (files.ShopText is { } shop) File.WriteAllText(Path.Combine(folder, MachineFolderReader.ShopFile), shop);
            return "";
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return $"it cannot be written: {e.Message}";
        }
    }

    private static bool IsName(string name) => name.Length is > 0 and <= LongestName && char.IsAsciiLetterOrDigit(name[0]) && name.All(c => char.IsAsciiLetterOrDigit(c) || c == '-');
}
