using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Coldwright.Machine.Files.Keys;
using Coldwright.Machine.Files.Tree;
using Coldwright.Quantities;

namespace Coldwright.Machine.Files;

/// <summary>
/// Reads one group of keys by its key table. A missing or wrong value is reported once and read on as a stand-in
/// (NaN, an empty text), so that everything else in the file is still looked at; a description made with
/// stand-ins is never handed out.
/// </summary>
public sealed class SectionReader
{
    private readonly Dictionary<string, FileNode> _values;
    private readonly MapNode _map;
    private readonly FileSection _section;
    private readonly string _where;
    private readonly IReadOnlySet<string> _meant;

    /// <param name="context">Where problems go.</param>
    /// <param name="map">The group as it stands in the file.</param>
    /// <param name="section">Its key table.</param>
    /// <param name="where">What the group is, for messages: <c>the room</c>, <c>part 'coil'</c>.</param>
    public SectionReader(ReadingContext context, MapNode map, FileSection section, string where)
    {
        (Context, _map, _section, _where, _values) = (context, map, section, where, new(StringComparer.Ordinal));
        // A misspelt key is one mistake: the key it was meant to be is not called missing as well.
        var meant = new HashSet<string>(StringComparer.Ordinal);
        _meant = meant;
        foreach (var (key, value) in map.Entries)
        {
            if (section.Keys.Any(k => k.Name == key.Text)) _values[key.Text] = value;
            else context.Problems.Add(key, UnknownKey(key.Text, meant));
        }
        foreach (var key in section.Keys.Where(k => k.IsRequired && !_values.ContainsKey(k.Name) && !meant.Contains(k.Name)))
            context.Problems.Add(map, $"{where} needs the key '{key.Name}': {key.Meaning}");
        foreach (var need in section.Needs.Where(n => !n.Ways.Any(w => w.All(_values.ContainsKey)) && !n.Ways.Any(w => w.Any(meant.Contains))))
            context.Problems.Add(map, $"{where} needs {need.Text}");
    }

    private SectionReader(SectionReader other, ReadingContext context) =>
        (Context, _map, _section, _where, _values, _meant) = (context, other._map, other._section, other._where, other._values, other._meant);

    /// <summary>Where problems go.</summary>
    public ReadingContext Context { get; }

    /// <summary>The same group, read on with another context (after the room's barometer is known).</summary>
    public SectionReader With(ReadingContext context) => new(this, context);

    /// <summary>True when the key is there.</summary>
    public bool Has(string key) => _values.ContainsKey(_section[key].Name);

    /// <summary>Line and column of a key's value, or of the group when the key is not there.</summary>
    public (int Line, int Column) PlaceOf(string key) => _values.TryGetValue(key, out var node) ? (node.Line, node.Column) : (_map.Line, _map.Column);

    /// <summary>Reports a problem at a key, or at the group when the key is not there.</summary>
    public void Complain(string key, string message) => Context.Problems.Add(_values.TryGetValue(key, out var node) ? node : _map, message);

    /// <summary>Reports the later ones of several keys that say the same thing in different ways.</summary>
    public void OnlyOneOf(params IReadOnlyList<string> keys)
    {
        var given = keys.Where(Has).ToArray();
        foreach (var key in given.Skip(1)) Complain(key, $"{_where} gives both '{given[0]}' and '{key}'; keep one of the two");
    }

    /// <summary>Reports a key whose companions are missing.</summary>
    public void Together(string key, params IReadOnlyList<string> companions)
    {
        if (!Has(key)) return;
        var missing = companions.Where(k => !Has(k) && !_meant.Contains(k)).ToArray();
        if (missing.Length > 0) Complain(key, $"{_where} has the key '{key}', which needs {string.Join(", ", missing)} as well");
    }

    /// <summary>A quantity in SI; NaN when it is missing or wrong.</summary>
    public double Quantity(string key) => OptionalQuantity(key) ?? double.NaN;

    /// <summary>A quantity in SI, or the value that holds when the key is left out.</summary>
    public double Quantity(string key, double whenLeftOut) => OptionalQuantity(key) ?? whenLeftOut;

    /// <summary>A quantity in SI; null when the key is left out, NaN when it is wrong.</summary>
    public double? OptionalQuantity(string key)
    {
        if (Scalar(key) is not { } node) return Has(key) ? double.NaN : null;
        return ValueText.Quantity(Context, node, ((QuantityForm)_section[key].Form).Kind, key);
    }

    /// <summary>A whole number; null when it is missing or wrong.</summary>
    public int? WholeNumber(string key) => Scalar(key) is { } node ? ValueText.WholeNumber(Context, node, (WholeNumberForm)_section[key].Form, key) : null;

    /// <summary>Plain numbers; empty when they are missing or wrong.</summary>
    public IReadOnlyList<double> Numbers(string key) =>
        _values.TryGetValue(_section[key].Name, out var node) ? ListText.Numbers(Context, node, ((NumberListForm)_section[key].Form).Count, key) : [];

    /// <summary>A refrigerant's name or mixture as written; empty when it is missing or wrong.</summary>
    public string Refrigerant(string key) => Scalar(key) is { } node ? ValueText.Refrigerant(Context, node, key) : "";

    /// <summary>A text; empty when it is missing.</summary>
    public string Text(string key) => Scalar(key)?.Text ?? "";

    /// <summary>One of the key's words; null when it is missing or wrong.</summary>
    public string? Choice(string key)
    {
        if (Scalar(key) is not { } node) return null;
        var choices = ((ChoiceForm)_section[key].Form).Choices;
        if (choices.Contains(node.Text)) return node.Text;
        if (SubstanceNames.TryFind(node.Text, out var substance) && choices.Contains(substance)) return substance;
        var near = NearestWord.Find(node.Text, choices).FirstOrDefault();
        Context.Problems.Add(node, $"{key}: '{FileTree.Shorten(node.Text)}' is none of {string.Join(", ", choices)}" + (near is null ? "" : $"; the nearest is '{near}'"));
        return null;
    }

    /// <summary>A tube; null when it is missing or wrong.</summary>
    public Tube? Tube(string key) => Scalar(key) is { } node ? ValueText.Tube(Context, node, key) : null;

    /// <summary>A solid's name; empty when it is missing or wrong.</summary>
    public string Material(string key) => Scalar(key) is { } node ? ValueText.Material(Context, node, key) : "";

    /// <summary>A mixture; pure nitrogen stands in when it is missing or wrong.</summary>
    public Composition Mixture(string key, bool byMass) =>
        (Scalar(key) is { } node ? ValueText.Mixture(Context, node, byMass) : null) ?? new Composition(["nitrogen"], [1]);

    /// <summary>Efficiency against pressure ratio, ascending; empty when it is missing or wrong.</summary>
    public IReadOnlyList<(double Ratio, double Efficiency)> Efficiencies(string key) =>
        _values.TryGetValue(key, out var node) ? ValueText.Efficiencies(Context, node, key) : [];

    /// <summary>Three inside lengths, m; NaN when missing or wrong.</summary>
    public (double LengthM, double WidthM, double HeightM) Box(string key) =>
        Scalar(key) is { } node ? ValueText.Box(Context, node, key) : (double.NaN, double.NaN, double.NaN);

    /// <summary>The group behind a key, read with the table that the key's form names; null when it is missing or no group.</summary>
    public SectionReader? Section(string key, string where) =>
        Map(key) is { } map ? new SectionReader(Context, map, ((SectionForm)_section[key].Form).Section, where) : null;

    /// <summary>The groups of the list behind a key; empty when it is missing.</summary>
    public IEnumerable<(SectionReader Reader, FileNode Node)> Sections(string key, string where)
    {
        if (!_values.TryGetValue(key, out var node)) yield break;
        if (node is not ListNode list)
        {
            Context.Problems.Add(node, $"'{key}' must be a list, each item starting with '- '; here is {node.What}");
            yield break;
        }
        foreach (var item in list.Items)
        {
            if (item is MapNode map) yield return (new SectionReader(Context, map, ((SectionListForm)_section[key].Form).Section, where), item);
            else Context.Problems.Add(item, $"{where} must be a group of keys; here is {item.What}");
        }
    }

    /// <summary>The keys and values behind a key; null when it is missing or no group.</summary>
    public MapNode? Map(string key)
    {
        if (!_values.TryGetValue(key, out var node)) return null;
        if (node is MapNode map) return map;
        Context.Problems.Add(node, $"'{key}' must be a group of keys; here is {node.What}");
        return null;
    }

    private ScalarNode? Scalar(string key)
    {
        if (!_values.TryGetValue(_section[key].Name, out var node)) return null;
        if (node is ScalarNode { Text.Length: > 0 } scalar) return scalar;
        Context.Problems.Add(node, $"'{key}' must be a single value; here is {node.What}");
        return null;
    }

    private string UnknownKey(string word, HashSet<string> meant)
    {
        var known = _section.Keys.Select(k => k.Name).ToArray();
        var near = NearestWord.Find(word, known).FirstOrDefault();
        if (near is not null) meant.Add(near);
        var hint = near is null ? $"known are {string.Join(", ", known)}" : $"the nearest is '{near}'";
        return $"{_where} has no key '{FileTree.Shorten(word)}'; {hint}";
    }
}
