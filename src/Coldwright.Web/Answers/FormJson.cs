using System.Text.Json;
using Coldwright.Machine.Files.Editing;

namespace Coldwright.Web.Answers;

/// <summary>The machine file as fields to be filled in.</summary>
internal static class FormJson
{
    public static void Write(Utf8JsonWriter w, string text, string revision)
    {
        w.WriteStartObject();
        w.WriteString("revision", revision);
        w.WriteStartArray("sections");
        foreach (var section in MachineForm.Of(text))
        {
            w.WriteStartObject();
            w.WriteString("place", section.Place);
            w.WriteString("title", section.Title);
            w.WriteString("kind", section.Kind);
            w.WriteStartArray("fields");
            foreach (var field in section.Fields) Field(w, field);
            w.WriteEndArray();
            w.WriteEndObject();
        }
        w.WriteEndArray();
        w.WriteEndObject();
    }

    private static void Field(Utf8JsonWriter w, FormField field)
    {
        w.WriteStartObject();
        w.WriteString("place", field.Place);
        w.WriteString("label", field.Label);
        w.WriteString("meaning", field.Meaning);
        w.WriteString("value", field.Value);
        w.WriteString("example", field.Example);
        w.WriteStartArray("choices");
        foreach (var choice in field.Choices) w.WriteStringValue(choice);
        w.WriteEndArray();
        w.WriteBoolean("quantity", field.IsQuantity);
        w.WriteBoolean("required", field.IsRequired);
        w.WriteBoolean("editable", field.IsEditable);
        w.WriteEndObject();
    }
}
