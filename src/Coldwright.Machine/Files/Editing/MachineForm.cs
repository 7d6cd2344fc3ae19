using Coldwright.Machine.Files.Keys;

namespace Coldwright.Machine.Files.Editing;

/// <summary>The machine file as groups of fields, made from the same key tables that read it.</summary>
public static class MachineForm
{
    /// <summary>Room, charge, operation, every part, every line, in the file's order; empty when the text cannot be read.</summary>
    /// <param name="text">Text of <c>machine.yaml</c>.</param>
    public static IReadOnlyList<FormSection> Of(string text)
    {
        if (PlacedTree.Read(text) is not PlacedMap root) return [];
        var sections = new List<FormSection>();
        foreach (var (key, value) in root.Entries)
            switch (MachineKeys.Root.Keys.FirstOrDefault(k => k.Name == key.Text)?.Form)
            {
                case SectionForm section when value is PlacedMap map:
                    sections.Add(new(key.Text, key.Text, "", Sorted(Fields(section.Section, map, key.Text))));
                    break;
                case PartsForm when value is PlacedMap parts:
                    sections.AddRange(parts.Entries.Select(p => Part(p.Key.Text, p.Value)));
                    break;
                case SectionListForm list when value is PlacedList lines:
                    sections.AddRange(lines.Items.OfType<PlacedMap>().Select((map, i) => new FormSection($"{key.Text}/{i}", LineName(map), "", Sorted(Fields(list.Section, map, $"{key.Text}/{i}")))));
                    break;
            }
        return sections;
    }

    private static FormSection Part(string name, PlacedNode node)
    {
        var kind = (node as PlacedMap)?["kind"] is PlacedScalar { Text: var word } ? word : "";
        var fields = node is PlacedMap map && PartKinds.Find(kind) is { } known ? Fields(known.Section, map, $"parts/{name}").Where(f => f.Label != "kind") : [];
        return new($"parts/{name}", name, kind, Sorted(fields));
    }

    private static string LineName(PlacedMap map) => $"{Text(map["from"])} to {Text(map["to"])}";

    private static string Text(PlacedNode? node) => node is PlacedScalar { Text: var text } ? text : "";

    private static IReadOnlyList<FormField> Sorted(IEnumerable<FormField> fields) => [.. fields.OrderBy(f => f.Value is null)];

    private static IEnumerable<FormField> Fields(FileSection section, PlacedMap? map, string place, string prefix = "")
    {
        foreach (var key in section.Keys)
        {
            var (node, at, label) = (map?[key.Name], $"{place}/{key.Name}", prefix + key.Name);
            switch (key.Form)
            {
                case SectionForm inner when node is null or PlacedMap:
                    // A group that is not there would need several keys at once: it is begun in the file.
                    if (node is PlacedMap group)
                        foreach (var field in Fields(inner.Section, group, at, $"{label}, ")) yield return field;
                    break;
                case SectionListForm inner when node is PlacedList list:
                    for (var i = 0; i < list.Items.Count; i++)
                        foreach (var field in Fields(inner.Section, list.Items[i] as PlacedMap, $"{at}/{i}", $"{label} {i + 1}, ").Where(f => f.Value is not null)) yield return field;
                    break;
                default:
                    if (node is null or PlacedScalar) yield return Field(key, at, label, (node as PlacedScalar)?.Text);
                    else yield return new(at, label, key.Meaning, "as in the file", "", [], false, key.IsRequired, false);
                    break;
            }
        }
    }

    private static FormField Field(FileKey key, string place, string label, string? value) => key.Form switch
    {
        QuantityForm quantity => new(place, label, key.Meaning, value, quantity.Kind.Example, [], true, key.IsRequired, true),
        ChoiceForm choice => new(place, label, key.Meaning, value, "", choice.Choices, false, key.IsRequired, true),
        TubeForm => new(place, label, key.Meaning, value, "3/8 in ACR", [], false, key.IsRequired, true),
        MixtureForm => new(place, label, key.Meaning, value, "nitrogen 0.35, methane 0.65", [], false, key.IsRequired, true),
        BoxForm => new(place, label, key.Meaning, value, "0.5 x 0.4 x 0.4 m", [], false, key.IsRequired, true),
        PortForm or SectionListForm or NumberListForm or BySubstanceForm => new(place, label, key.Meaning, value, "", [], false, key.IsRequired, false),
        _ => new(place, label, key.Meaning, value, "", [], false, key.IsRequired, true),
    };
}
