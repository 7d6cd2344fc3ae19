using Coldwright.Machine.Description;

namespace Coldwright.Safety.Rules;

/// <summary>Insulation that burns.</summary>
internal static class OrganicInsulation
{
    private static readonly string[] Families = ["polyurethane", "polystyrene", "pvc", "balsa", "nylon"];

    /// <summary>The first material in a box's wall that burns; null when none does.</summary>
    public static string? In(ColdBoxPart box) =>
        box.Layers.Select(l => l.Material).Append(box.GivenInsulation).OfType<string>().FirstOrDefault(m => Families.Any(f => m.StartsWith(f, StringComparison.Ordinal)));
}
