using System.Diagnostics.CodeAnalysis;
using System.Text.Json;

namespace Coldwright.Materials.Solids;

/// <summary>All solids that came with the program, by name or alias.</summary>
public sealed class SolidLibrary
{
    private static readonly Lazy<SolidLibrary> BuiltIn = new(() => new SolidLibrary(ReadAll()));

    private readonly Dictionary<string, SolidMaterial> _byName = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>The solids of <c>data/materials</c>.</summary>
    public static SolidLibrary Default => BuiltIn.Value;

    /// <summary>All solids, in name order.</summary>
    public IReadOnlyList<SolidMaterial> Materials { get; }

    /// <param name="materials">Solids with distinct names and aliases.</param>
    public SolidLibrary(IEnumerable<SolidMaterial> materials)
    {
        Materials = materials.OrderBy(m => m.Name, StringComparer.Ordinal).ToArray();
        foreach (var material in Materials)
            foreach (var key in material.Aliases.Prepend(material.Name))
                if (!_byName.TryAdd(key, material))
                    throw new ArgumentException($"the material name {key} is given twice");
    }

    /// <summary>Finds a solid by name or alias, upper or lower case.</summary>
    public bool TryFind(string name, [NotNullWhen(true)] out SolidMaterial? material) => _byName.TryGetValue(name.Trim(), out material);

    /// <summary>The solid of that name or alias; throws with the known names when there is none.</summary>
    public SolidMaterial Find(string name) => TryFind(name, out var material)
        ? material
        : throw new ArgumentException($"no material is called '{name}'; known: {string.Join(", ", Materials.Select(m => m.Name))}", nameof(name));

    private static IEnumerable<SolidMaterial> ReadAll()
    {
        foreach (var (file, document) in EmbeddedData.Read("materials"))
            using (document)
            {
                var source = document.RootElement.GetProperty("source");
                var citation = EmbeddedData.Text(source, "citation", file);
                var mark = Mark(EmbeddedData.Text(source, "mark", file), file);
                foreach (var entry in document.RootElement.GetProperty("materials").EnumerateArray())
                    yield return Material(entry, citation, mark, file);
            }
    }

    private static SolidMaterial Material(JsonElement entry, string citation, Provenance mark, string file)
    {
        var curves = new List<ConductivityCurve>();
        var notes = new List<string>();
        foreach (var piece in entry.GetProperty("pieces").EnumerateArray())
        {
            curves.Add(Curve(piece, file));
            if (piece.TryGetProperty("note", out _)) notes.Add(EmbeddedData.Text(piece, "note", file));
            if (piece.TryGetProperty("mark", out _) && Mark(EmbeddedData.Text(piece, "mark", file), file) == Provenance.FromMemory) mark = Provenance.FromMemory;
        }
        var aliases = entry.GetProperty("aliases").EnumerateArray().Select(a => a.GetString() ?? "").ToArray();
        return new SolidMaterial(EmbeddedData.Text(entry, "name", file), EmbeddedData.Text(entry, "title", file), aliases, citation, mark, string.Join("; ", notes), curves);
    }

    private static ConductivityCurve Curve(JsonElement piece, string file)
    {
        var range = EmbeddedData.Numbers(piece, "range_K");
        return EmbeddedData.Text(piece, "form", file) switch
        {
            "log-polynomial" => new LogPolynomialCurve(range[0], range[1], EmbeddedData.Numbers(piece, "coefficients")),
            "half-power-rational" => new HalfPowerRationalCurve(range[0], range[1], EmbeddedData.Numbers(piece, "coefficients")),
            "points" => new PointsCurve(EmbeddedData.Numbers(piece, "temperature_K"), EmbeddedData.Numbers(piece, "conductivity")),
            "mean" => new PointsCurve(range, [piece.GetProperty("conductivity").GetDouble(), piece.GetProperty("conductivity").GetDouble()]),
            var form => throw new InvalidDataException($"{file}: unknown conductivity form '{form}'"),
        };
    }

    private static Provenance Mark(string mark, string file) => mark switch
    {
        "published" => Provenance.Published,
        "from memory" => Provenance.FromMemory,
        _ => throw new InvalidDataException($"{file}: a mark is 'published' or 'from memory', not '{mark}'"),
    };
}
