using Coldwright.Fluids.Substances;

namespace Coldwright.Safety.Rules;

/// <summary>What kind of refrigerant a name stands for.</summary>
internal static class Refrigerants
{
    private static readonly HashSet<string> Fluorinated = new(["R14", "R23", "R22", "R32", "R125", "R134a", "R1234yf"], StringComparer.Ordinal);

    /// <summary>True for a fluorinated substance or a blend that holds one.</summary>
    public static bool IsFluorinated(string name) => Members(name).Any(Fluorinated.Contains);

    // Blends of class A1 (no flame in air), ASHRAE Standard 34.
    private static readonly HashSet<string> NotFlammable = new(["R410A", "R407C"], StringComparer.Ordinal);

    /// <summary>True for a substance that burns in air, or a blend that holds one and is not classed as one that does not burn.</summary>
    public static bool Burns(string name) => !NotFlammable.Contains(name) && Members(name).Any(FlammabilityLimits.Burns);

    private static IEnumerable<string> Members(string name) => Blend.TryFind(name, out var blend) ? blend.Parts.Select(p => p.Substance) : [name];
}
