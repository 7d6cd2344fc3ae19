using System.Text.Json;
using Coldwright.Fluids.Substances;
using Coldwright.Quantities;

namespace Coldwright.Web.Orders;

/// <summary>Reads what a person filled in beside a button: texts with units, choices, ticks. What is wrong is collected and said all at once.</summary>
/// <param name="filledIn">The object with the fields; anything else means that nothing was filled in.</param>
/// <param name="roomPressurePa">Barometric pressure, to which gauge pressures add, Pa absolute.</param>
internal sealed class OrderReader(JsonElement filledIn, double roomPressurePa)
{
    private readonly List<string> _problems = [];

    /// <summary>A text without blanks around it; null when the field is empty.</summary>
    public string? Text(string field) =>
        filledIn.ValueKind == JsonValueKind.Object && filledIn.TryGetProperty(field, out var value) && value.ValueKind == JsonValueKind.String && value.GetString()!.Trim() is { Length: > 0 } text ? text : null;

    /// <summary>True when it is ticked.</summary>
    public bool Tick(string field) => filledIn.ValueKind == JsonValueKind.Object && filledIn.TryGetProperty(field, out var value) && value.ValueKind == JsonValueKind.True;

    /// <summary>A quantity in SI; null when the field is empty or wrong.</summary>
    /// <param name="field">Its key.</param>
    /// <param name="label">Its name for a person.</param>
    /// <param name="kind">What is expected.</param>
    public double? Value(string field, string label, QuantityKind kind)
    {
        if (Text(field) is not { } text) return null;
        if (Quantity.TryParse(text, kind, roomPressurePa, out var value, out var problem)) return value;
        _problems.Add($"{label}: {problem.Message}");
        return null;
    }

    /// <summary>A number without unit or fraction; null when the field is empty or wrong.</summary>
    public int? Count(string field, string label, int low, int high)
    {
        if (Text(field) is not { } text) return null;
        if (int.TryParse(text, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var number) && number >= low && number <= high) return number;
        _problems.Add($"{label}: '{Shorten(text)}'; a whole number from {low} to {high} is expected");
        return null;
    }

    /// <summary>Gases by canonical name; empty when the field is.</summary>
    public IReadOnlyList<string> Gases(string field, string label)
    {
        var names = new List<string>();
        foreach (var word in (Text(field) ?? "").Split([',', ';'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
            if (SubstanceNames.TryFind(word, out var name)) names.Add(name);
            else _problems.Add($"{label}: {SubstanceNames.UnknownMessage(Shorten(word))}");
        return [.. names.Distinct()];
    }

    /// <summary>A mixture by mole fractions; null when the field is empty or wrong.</summary>
    public Composition? Mixture(string field, string label)
    {
        if (Text(field) is not { } text) return null;
        if (MixtureText.TryParse(text, false, name => SubstanceCatalog.Get(name).MolarMass, out var mixture, out var problems, out _)) return mixture;
        _problems.AddRange(problems.Select(p => $"{label}: {p}"));
        return null;
    }

    /// <summary>Adds something that is wrong.</summary>
    public void Refuse(string problem) => _problems.Add(problem);

    /// <summary>Ends the reading.</summary>
    /// <exception cref="ArgumentException">Something was wrong; the message names all of it.</exception>
    public void Close()
    {
        if (_problems.Count > 0) throw new ArgumentException(string.Join("; ", _problems));
    }

    private static string Shorten(string text) => text.Length > 60 ? text[..60] + "…" : text;
}
