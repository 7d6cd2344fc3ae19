namespace Coldwright.Machine.Recuperation;

/// <summary>Refusals with name, value, limit and unit.</summary>
internal static class GeometryGuard
{
    public static void Positive(double value, string name, string unit)
    {
        if (!(value > 0) || !double.IsFinite(value)) throw new ArgumentException($"{name} must be above 0 {unit}, got {value} {unit}");
    }

    public static void Wall(double wallM, double outsideM, string tube)
    {
        Positive(outsideM, $"outside diameter of the {tube}", "m");
        Positive(wallM, $"wall of the {tube}", "m");
        if (!(2 * wallM < outsideM)) throw new ArgumentException($"wall of the {tube} must be below half its outside diameter {outsideM} m, got {wallM} m");
    }
}
