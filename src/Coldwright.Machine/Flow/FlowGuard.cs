namespace Coldwright.Machine.Flow;

/// <summary>Refuses arguments that no correlation can use, with name, value, limit and unit.</summary>
internal static class FlowGuard
{
    public static void Positive(double value, string name, string unit)
    {
        if (!(value > 0 && double.IsFinite(value)))
        {
            throw new ArgumentException($"{name} is {value} {unit}; it must be finite and above 0 {unit}", name);
        }
    }

    public static void NotNegative(double value, string name, string unit)
    {
        if (!(value >= 0 && double.IsFinite(value)))
        {
            throw new ArgumentException($"{name} is {value} {unit}; it must be finite and at least 0 {unit}", name);
        }
    }

    public static void Fraction(double value, string name)
    {
        if (!(value is >= 0 and <= 1))
        {
            throw new ArgumentException($"{name} is {value}; it must lie between 0 and 1 (dimensionless)", name);
        }
    }

    /// <summary>Tube diameter over coil diameter: a coil tighter than 1/2 would cut its own axis.</summary>
    public static void Curvature(double value, string name)
    {
        if (!(value is >= 0 and <= 0.5))
        {
            throw new ArgumentException($"{name} is {value}; it must lie between 0 (straight) and 0.5 (dimensionless)", name);
        }
    }
}
