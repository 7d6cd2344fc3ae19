using System.Diagnostics.CodeAnalysis;

namespace Coldwright.Materials.Solids;

/// <summary>All solids that came with the program, by name or alias.</summary>
public sealed class SolidLibrary
{
    private static readonly Lazy<SolidLibrary> BuiltIn = new(() => new SolidLibrary(SolidFiles.Read()));

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
}
