using System.Globalization;

namespace Coldwright.Machine.ColdVessel;

/// <summary>Refuses bad input by name, value, limit and unit.</summary>
internal static class VesselGuard
{
    /// <summary>The value when it lies from low to high.</summary>
    public static double Within(double value, double low, double high, string unit, string name)
    {
        if (value >= low && value <= high) return value;
        throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{name} is {value:R} {unit}; it must be from {low:R} to {high:R} {unit}"), name);
    }
}
