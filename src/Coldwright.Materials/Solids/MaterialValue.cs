namespace Coldwright.Materials.Solids;

/// <summary>A figure of a material, with a warning where it was asked outside its range.</summary>
/// <param name="Value">The figure, in the unit named by the method that gave it.</param>
/// <param name="Warning">Null inside the range; else a sentence with value, limit and unit.</param>
public readonly record struct MaterialValue(double Value, string? Warning);
