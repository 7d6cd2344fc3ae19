using System.Text.Json;

namespace Coldwright.Materials;

/// <summary>Reads the JSON files of one data folder that were built into the program.</summary>
internal static class EmbeddedData
{
    /// <summary>Opens every file of the folder, in name order; the caller disposes the documents.</summary>
    /// <param name="folder">Folder under <c>data</c>, for example <c>tubes</c>.</param>
    public static IEnumerable<(string File, JsonDocument Document)> Read(string folder)
    {
        var assembly = typeof(EmbeddedData).Assembly;
        var prefix = folder + "/";
        foreach (var name in assembly.GetManifestResourceNames().Where(n => n.StartsWith(prefix, StringComparison.Ordinal)).Order(StringComparer.Ordinal))
        {
            using var stream = assembly.GetManifestResourceStream(name)
                ?? throw new InvalidOperationException($"the built-in data file {name} cannot be opened");
            yield return (name, JsonDocument.Parse(stream));
        }
    }

    /// <summary>A property that must be there as text.</summary>
    public static string Text(JsonElement element, string key, string file) =>
        element.GetProperty(key).GetString() ?? throw new InvalidDataException($"{file}: {key} must be text");

    /// <summary>A property that must be there as a list of numbers.</summary>
    public static double[] Numbers(JsonElement element, string key) =>
        element.GetProperty(key).EnumerateArray().Select(x => x.GetDouble()).ToArray();
}
