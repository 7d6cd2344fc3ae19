using System.Text.Json;

namespace Coldwright.Fluids.Substances;

/// <summary>The data files that travel inside the assembly.</summary>
internal static class EmbeddedJson
{
    /// <summary>Every embedded document whose name starts with <paramref name="prefix"/>.</summary>
    public static IEnumerable<JsonDocument> All(string prefix)
    {
        var assembly = typeof(EmbeddedJson).Assembly;
        foreach (var name in assembly.GetManifestResourceNames().Where(n => n.StartsWith(prefix, StringComparison.Ordinal)).Order(StringComparer.Ordinal))
        {
            using var stream = assembly.GetManifestResourceStream(name)!;
            yield return JsonDocument.Parse(stream);
        }
    }

    /// <summary>A child object; null when absent.</summary>
    public static JsonElement? Section(JsonElement parent, string key) =>
        parent.TryGetProperty(key, out var child) ? child : null;

    /// <summary>A numeric array; empty when the parent or the key is absent.</summary>
    public static double[] Numbers(JsonElement? parent, string key)
    {
        if (parent is not { } p || !p.TryGetProperty(key, out var array)) return [];
        var values = new double[array.GetArrayLength()];
        int i = 0;
        foreach (var item in array.EnumerateArray()) values[i++] = item.GetDouble();
        return values;
    }
}
