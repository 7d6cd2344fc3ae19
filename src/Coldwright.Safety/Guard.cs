using System.Globalization;

namespace Coldwright.Safety;

/// <summary>Refuses arguments that no rule can use, with name, value, limit and unit.</summary>
internal static class Guard
{
    public static void Positive(double value, string name, string unit)
    {
        if (!(value > 0 && double.IsFinite(value)))
            throw new ArgumentException(Text($"{name} is {value} {unit}; it must be finite and above 0 {unit}"), name);
    }

    public static void NotNegative(double value, string name, string unit)
    {
        if (!(value >= 0 && double.IsFinite(value)))
            throw new ArgumentException(Text($"{name} is {value} {unit}; it must be finite and at least 0 {unit}"), name);
    }

    public static void Within(double value, double lowest, double highest, string name, string unit)
    {
        if (!(value >= lowest && value <= highest))
            throw new ArgumentException(Text($"{name} is {value} {unit}; it must lie between {lowest} and {highest} {unit}"), name);
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
