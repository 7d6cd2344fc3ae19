using Coldwright.Numerics;

namespace Coldwright.Machine.Description;

/// <summary>
/// The refusal to hand out a value that the file may leave out because another description stands in its place
/// (a tube's size instead of a conductance): a calculation that needs the plain value ends with the key to add.
/// </summary>
internal static class NotGiven
{
    // what a closed loop works out of the sizes instead
    private static readonly Dictionary<string, string> _fromSizes = new(StringComparer.Ordinal) { ["difference"] = "tube and length", ["conductance"] = "both tubes and the length" };

    /// <param name="part">The part.</param>
    /// <param name="key">The key that would give the value.</param>
    public static SolveException For(Part part, string key) => new(new SolveReport(SolveStatus.Outside, 0, 0,
        $"part '{part.Name}'{(part.FileLine > 0 ? $" (line {part.FileLine})" : "")} does not give '{key}', which this calculation takes as given; add the key{(_fromSizes.TryGetValue(key, out var sizes) ? $", or let it follow from {sizes} by closing the loop ('hold: neither' under 'operation')" : "")}"));
}
