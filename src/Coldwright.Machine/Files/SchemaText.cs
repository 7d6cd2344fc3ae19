using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Coldwright.Machine.Files.Keys;
using Coldwright.Quantities;

namespace Coldwright.Machine.Files;

/// <summary>Writes the JSON schema of a file from its key table (JSON Schema draft 2020-12), for completion and checking in editors.</summary>
public static class SchemaText
{
    private static readonly JsonWriterOptions _options = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Schema of <c>machine.yaml</c>.</summary>
    public static string Machine() => Write(MachineKeys.Root, "Coldwright machine.yaml: the cooler as built");

    /// <summary>Schema of <c>shop.yaml</c>.</summary>
    public static string Shop() => Write(ShopKeys.Root, "Coldwright shop.yaml: what is at hand and what it costs");

    /// <summary>Schema of any file that is read by a key table.</summary>
    /// <param name="root">Its key table.</param>
    /// <param name="title">Title of the schema.</param>
    public static string Write(FileSection root, string title)
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, _options))
        {
            json.WriteStartObject();
            json.WriteString("$schema", "https://json-schema.org/draft/2020-12/schema");
            json.WriteString("title", title);
            SectionBody(json, root);
            json.WriteEndObject();
        }
        return Encoding.UTF8.GetString(buffer.ToArray()) + "\n";
    }

    private static void SectionBody(Utf8JsonWriter json, FileSection section)
    {
        json.WriteString("type", "object");
        json.WriteBoolean("additionalProperties", false);
        Strings(json, "required", section.Keys.Where(k => k.IsRequired).Select(k => k.Name));
        if (section.Needs.Count > 0) Needs(json, section.Needs);
        json.WriteStartObject("properties");
        foreach (var key in section.Keys)
        {
            json.WriteStartObject(key.Name);
            json.WriteString("description", key.Meaning);
            Form(json, key.Form);
            json.WriteEndObject();
        }
        json.WriteEndObject();
    }

    private static void Needs(Utf8JsonWriter json, IReadOnlyList<KeyNeed> needs)
    {
        json.WriteStartArray("allOf");
        foreach (var need in needs)
        {
            json.WriteStartObject();
            json.WriteStartArray("anyOf");
            foreach (var way in need.Ways)
            {
                json.WriteStartObject();
                Strings(json, "required", way);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static void Form(Utf8JsonWriter json, ValueForm form)
    {
        switch (form)
        {
            case QuantityForm quantity: Quantity(json, quantity.Kind); break;
            case TextForm: Text(json); break;
            case PortForm: Text(json, "compressor", "recuperator.high"); break;
            case ChoiceForm choice: Strings(json, "enum", choice.Choices); break;
            case TubeForm: Text(json, "3/8 in ACR", "2-1/8 in type L", "6.35 x 0.8 mm"); break;
            case MixtureForm: Text(json, "nitrogen 0.35, methane 0.65"); break;
            case MaterialForm: Text(json); break;
            case BoxForm: Text(json, "0.5 x 0.4 x 0.4 m"); break;
            case EfficiencyForm: Efficiency(json); break;
            case RefrigerantForm: Text(json, "R290", "R410A", "propane 0.6, isobutane 0.4"); break;
            case WholeNumberForm whole: WholeNumber(json, whole); break;
            case NumberListForm list:
                json.WriteString("type", "array");
                json.WriteNumber("minItems", list.Count);
                json.WriteNumber("maxItems", list.Count);
                json.WriteStartObject("items");
                Strings(json, "type", ["number", "string"]);
                json.WriteEndObject();
                break;
            case SectionForm section: SectionBody(json, section.Section); break;
            case SectionListForm list:
                json.WriteString("type", "array");
                json.WriteStartObject("items");
                SectionBody(json, list.Section);
                json.WriteEndObject();
                break;
            case BySubstanceForm bySubstance:
                json.WriteString("type", "object");
                json.WriteStartObject("additionalProperties");
                Form(json, bySubstance.Value);
                json.WriteEndObject();
                break;
            case PartsForm: Parts(json); break;
            default: throw new InvalidOperationException($"no schema is written for {form}");
        }
    }

    private static void Parts(Utf8JsonWriter json)
    {
        json.WriteString("type", "object");
        json.WriteStartObject("additionalProperties");
        json.WriteString("type", "object");
        Strings(json, "required", ["kind"]);
        json.WriteStartObject("properties");
        json.WriteStartObject("kind");
        Strings(json, "enum", PartKinds.Words);
        json.WriteEndObject();
        json.WriteEndObject();
        // One branch by kind, rather than "one of": an editor then shows the keys and errors of that kind only.
        json.WriteStartArray("allOf");
        foreach (var kind in PartKinds.All)
        {
            json.WriteStartObject();
            json.WriteStartObject("if");
            json.WriteStartObject("properties");
            json.WriteStartObject("kind");
            json.WriteString("const", kind.Word);
            json.WriteEndObject();
            json.WriteEndObject();
            Strings(json, "required", ["kind"]);
            json.WriteEndObject();
            json.WriteStartObject("then");
            SectionBody(json, kind.Section);
            json.WriteEndObject();
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Quantity(Utf8JsonWriter json, QuantityKind kind)
    {
        if (kind.Dimension == Dimension.None)
        {
            Strings(json, "type", ["string", "number"]);
            json.WriteStartArray("examples");
            json.WriteStringValue(kind.Example);
            json.WriteEndArray();
        }
        else Text(json, kind.Example);
    }

    private static void WholeNumber(Utf8JsonWriter json, WholeNumberForm form)
    {
        json.WriteString("type", "integer");
        json.WriteNumber("minimum", form.Lowest);
        json.WriteNumber("maximum", form.Highest);
        if (form.Step > 1 && form.Lowest % form.Step == 0) json.WriteNumber("multipleOf", form.Step);
    }

    private static void Efficiency(Utf8JsonWriter json)
    {
        Strings(json, "type", ["string", "number", "object"]);
        json.WriteStartObject("additionalProperties");
        Strings(json, "type", ["string", "number"]);
        json.WriteEndObject();
    }

    private static void Text(Utf8JsonWriter json, params IReadOnlyList<string> examples)
    {
        json.WriteString("type", "string");
        if (examples.Count > 0) Strings(json, "examples", examples);
    }

    private static void Strings(Utf8JsonWriter json, string name, IEnumerable<string> values)
    {
        json.WriteStartArray(name);
        foreach (var value in values) json.WriteStringValue(value);
        json.WriteEndArray();
    }
}
