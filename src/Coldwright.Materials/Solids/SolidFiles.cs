using System.Text.Json;

namespace Coldwright.Materials.Solids;

/// <summary>
/// Reads the files of <c>data/materials</c>. A file has one source and any of the lists <c>materials</c> (conductivity, and thereby the
/// existence of a solid), <c>specific_heats</c>, <c>densities</c>, <c>expansions</c>, <c>resistivities</c>; an entry of the latter four names
/// the solids it holds for.
/// </summary>
internal static class SolidFiles
{
    private readonly record struct Origin(string File, string Citation, Provenance Mark);

    public static IEnumerable<SolidMaterial> Read()
    {
        var conductivities = new List<(JsonElement Entry, Origin Origin)>();
        var heats = new Dictionary<string, MaterialProperty>();
        var resistivities = new Dictionary<string, MaterialProperty>();
        var densities = new Dictionary<string, SolidDensity>();
        var expansions = new Dictionary<string, ThermalExpansion>();
        foreach (var (file, document) in EmbeddedData.Read("materials"))
            using (document)
            {
                var source = document.RootElement.GetProperty("source");
                var origin = new Origin(file, EmbeddedData.Text(source, "citation", file), Mark(EmbeddedData.Text(source, "mark", file), file));
                foreach (var entry in List(document, "materials")) conductivities.Add((entry.Clone(), origin));
                foreach (var entry in List(document, "specific_heats")) Assign(heats, entry, origin, name => Property(entry, $"specific heat of {name}", origin));
                foreach (var entry in List(document, "resistivities")) Assign(resistivities, entry, origin, name => Property(entry, $"resistivity of {name}", origin));
                foreach (var entry in List(document, "densities")) Assign(densities, entry, origin, _ => Density(entry, origin));
                foreach (var entry in List(document, "expansions")) Assign(expansions, entry, origin, _ => Expansion(entry, origin));
            }
        var names = conductivities.Select(c => EmbeddedData.Text(c.Entry, "name", c.Origin.File)).ToHashSet();
        if (heats.Keys.Concat(resistivities.Keys).Concat(densities.Keys).Concat(expansions.Keys).FirstOrDefault(n => !names.Contains(n)) is { } stray)
            throw new InvalidDataException($"data/materials gives a figure of '{stray}', which has no conductivity");
        foreach (var (entry, origin) in conductivities)
        {
            var name = EmbeddedData.Text(entry, "name", origin.File);
            var aliases = entry.GetProperty("aliases").EnumerateArray().Select(a => a.GetString() ?? "").ToArray();
            yield return new SolidMaterial(name, EmbeddedData.Text(entry, "title", origin.File), aliases, Property(entry, $"conductivity of {name}", origin))
            {
                SpecificHeatCurve = heats.GetValueOrDefault(name),
                ResistivityCurve = resistivities.GetValueOrDefault(name),
                Density = densities.GetValueOrDefault(name),
                Expansion = expansions.GetValueOrDefault(name),
            };
        }
    }

    private static IEnumerable<JsonElement> List(JsonDocument document, string key) =>
        document.RootElement.TryGetProperty(key, out var list) ? list.EnumerateArray().ToArray() : [];

    private static void Assign<T>(Dictionary<string, T> target, JsonElement entry, Origin origin, Func<string, T> make)
    {
        foreach (var element in entry.GetProperty("of").EnumerateArray())
        {
            var name = element.GetString() ?? "";
            if (!target.TryAdd(name, make(name))) throw new InvalidDataException($"{origin.File}: a second figure of the same kind for '{name}'");
        }
    }

    private static MaterialProperty Property(JsonElement entry, string what, Origin origin)
    {
        var curves = new List<PropertyCurve>();
        var notes = new List<string>();
        var mark = origin.Mark;
        foreach (var piece in entry.GetProperty("pieces").EnumerateArray())
        {
            curves.Add(Curve(piece, origin.File));
            if (piece.TryGetProperty("note", out _)) notes.Add(EmbeddedData.Text(piece, "note", origin.File));
            if (piece.TryGetProperty("mark", out _) && Mark(EmbeddedData.Text(piece, "mark", origin.File), origin.File) == Provenance.FromMemory) mark = Provenance.FromMemory;
        }
        return new MaterialProperty(what, origin.Citation, mark, entry.GetProperty("relative_uncertainty").GetDouble(), string.Join("; ", notes), curves);
    }

    private static PropertyCurve Curve(JsonElement piece, string file)
    {
        var range = EmbeddedData.Numbers(piece, "range_K");
        return EmbeddedData.Text(piece, "form", file) switch
        {
            "log-polynomial" => new LogPolynomialCurve(range[0], range[1], EmbeddedData.Numbers(piece, "coefficients")),
            "half-power-rational" => new HalfPowerRationalCurve(range[0], range[1], EmbeddedData.Numbers(piece, "coefficients")),
            "impure-copper" => new ImpureCopperCurve(range[0], range[1], piece.GetProperty("residual_resistivity_ohm_m").GetDouble()),
            "points" => new PointsCurve(EmbeddedData.Numbers(piece, "temperature_K"), EmbeddedData.Numbers(piece, "value")),
            "mean" => new PointsCurve(range, [piece.GetProperty("value").GetDouble(), piece.GetProperty("value").GetDouble()]),
            var form => throw new InvalidDataException($"{file}: unknown form of curve '{form}'"),
        };
    }

    private static SolidDensity Density(JsonElement entry, Origin origin) =>
        new(entry.GetProperty("kg_m3").GetDouble(), entry.GetProperty("relative_uncertainty").GetDouble(), origin.Mark);

    private static ThermalExpansion Expansion(JsonElement entry, Origin origin)
    {
        var range = EmbeddedData.Numbers(entry, "range_K");
        var coefficients = EmbeddedData.Numbers(entry, "coefficients");
        return EmbeddedData.Text(entry, "form", origin.File) switch
        {
            "polynomial" => ThermalExpansion.Polynomial(range[0], range[1], origin.Citation, coefficients),
            "coefficient" => ThermalExpansion.Coefficient(range[0], range[1], origin.Citation, coefficients),
            var form => throw new InvalidDataException($"{origin.File}: unknown form of expansion '{form}'"),
        };
    }

    private static Provenance Mark(string mark, string file) => mark switch
    {
        "published" => Provenance.Published,
        "from memory" => Provenance.FromMemory,
        _ => throw new InvalidDataException($"{file}: a mark is 'published' or 'from memory', not '{mark}'"),
    };
}
