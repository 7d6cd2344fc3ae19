using Coldwright.Quantities;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Coldwright.Report;

/// <summary>Small habits shared by every machine-readable output.</summary>
public static class Json
{
    private static readonly JsonWriterOptions Options = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The text of one document, indented, ending with a line end.</summary>
    /// <param name="write">Writes one value.</param>
    public static string Text(Action<Utf8JsonWriter> write)
    {
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream, Options)) write(writer);
        return Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length) + "\n";
    }

    /// <summary>Writes a number; a value that is not a number is an error of the solver and is named, never written.</summary>
    internal static void Number(this Utf8JsonWriter writer, string name, double value)
    {
        if (!double.IsFinite(value)) throw new InvalidOperationException($"{name} is {value}: a result must be a finite number");
        writer.WriteNumber(name, value);
    }

    /// <summary>Writes a number or null.</summary>
    internal static void NumberOrNull(this Utf8JsonWriter writer, string name, double? value)
    {
        if (value is { } number) writer.Number(name, number);
        else writer.WriteNull(name);
    }

    /// <summary>Writes an object.</summary>
    internal static void Object(this Utf8JsonWriter writer, string name, Action content)
    {
        writer.WriteStartObject(name);
        content();
        writer.WriteEndObject();
    }

    /// <summary>Writes an array of objects.</summary>
    internal static void Objects<T>(this Utf8JsonWriter writer, string name, IEnumerable<T> items, Action<T> content)
    {
        writer.WriteStartArray(name);
        foreach (var item in items)
        {
            writer.WriteStartObject();
            content(item);
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
    }

    /// <summary>Writes an array of texts.</summary>
    internal static void Texts(this Utf8JsonWriter writer, string name, IEnumerable<string> items)
    {
        writer.WriteStartArray(name);
        foreach (var item in items) writer.WriteStringValue(item);
        writer.WriteEndArray();
    }

    /// <summary>Writes an array of sentences, in SI.</summary>
    internal static void Texts(this Utf8JsonWriter writer, string name, IEnumerable<Spoken> items) => writer.Texts(name, items.Select(i => i.ToString()));

    /// <summary>Writes names with numbers; a name that comes twice is summed, since a key may stand only once.</summary>
    internal static void Map(this Utf8JsonWriter writer, string name, IEnumerable<(string Name, double Value)> items) => writer.Object(name, () =>
    {
        foreach (var group in items.GroupBy(i => i.Name, StringComparer.Ordinal)) writer.Number(group.Key, group.Sum(i => i.Value));
    });
}
