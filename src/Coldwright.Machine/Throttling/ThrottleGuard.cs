namespace Coldwright.Machine.Throttling;

/// <summary>Refuses inputs with name, value, limit and unit.</summary>
internal static class ThrottleGuard
{
    public static double Within(double value, double lowest, double highest, string name, string unit)
    {
        if (!(value >= lowest && value <= highest))
            throw new ArgumentException(FormattableString.Invariant($"{name} is {value} {unit}; it must lie between {lowest} and {highest} {unit}"), name);
        return value;
    }

    public static double Positive(double value, string name, string unit)
    {
        if (!(value > 0 && double.IsFinite(value)))
            throw new ArgumentException(FormattableString.Invariant($"{name} is {value} {unit}; it must be finite and above 0 {unit}"), name);
        return value;
    }
}
