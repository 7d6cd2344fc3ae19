using System.Globalization;

namespace Coldwright.Machine.Compression;

/// <summary>Refuses bad input by name, value, limit and unit.</summary>
internal static class InputCheck
{
    /// <summary>The value, when it is a number from low to high (both allowed).</summary>
    public static double Within(double value, double low, double high, string unit, string name)
    {
        if (value >= low && value <= high) return value;
        string space = unit.Length > 0 ? " " : "";
        throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
            $"{name} is {value:R}{space}{unit}; it must be from {low:R} to {high:R}{space}{unit}"), name);
    }

    /// <summary>The value, when it is null or within.</summary>
    public static void Optional(double? value, double low, double high, string unit, string name)
    {
        if (value is { } given) Within(given, low, high, unit, name);
    }

    /// <summary>Mole fractions as an own array: one per component, none negative, sum 1.</summary>
    public static double[] Fractions(IReadOnlyList<double> z, int count, string name)
    {
        if (z.Count != count) throw new ArgumentException($"{name} has {z.Count} mole fractions; the fluid model has {count} components", name);
        double sum = 0;
        foreach (double x in z) sum += Within(x, 0, 1, "mol/mol", name);
        Within(sum, 1 - 1e-6, 1 + 1e-6, "mol/mol", $"the sum of {name}");
        return [.. z];
    }

    /// <summary>Refuses a low value that is not below the high one.</summary>
    public static void Order(double low, string lowName, double high, string highName, string unit)
    {
        if (!(low < high)) throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
            $"{lowName} is {low:R} {unit}; it must be below {highName}, {high:R} {unit}"), lowName);
    }
}
