using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Coldwright.Quantities;

/// <summary>Text to SI: the one door through which numbers with units enter.</summary>
public static class Quantity
{
    private const int LongestText = 200;

    /// <summary>Reads a quantity such as <c>17 barg</c>, <c>-19 °C</c> or <c>2-1/8 in</c>.</summary>
    /// <param name="text">The text a person wrote.</param>
    /// <param name="kind">What it must be; its limits are checked.</param>
    /// <param name="roomPressurePa">Barometric pressure gauge readings are counted from, Pa absolute.</param>
    /// <param name="siValue">The value in <see cref="QuantityKind.SiUnit"/>; pressures absolute. Finite when the method returns true.</param>
    /// <param name="problem">What is wrong, when the method returns false.</param>
    /// <param name="plainPascalIsAbsolute">True where a bare Pa, kPa or MPa is agreed to be absolute (command-line options); never in files.</param>
    public static bool TryParse(string text, QuantityKind kind, double roomPressurePa, out double siValue, [NotNullWhen(false)] out QuantityProblem? problem, bool plainPascalIsAbsolute = false)
    {
        siValue = double.NaN;
        if (text.Length > LongestText)
        {
            problem = new QuantityProblem(text[..40] + "…", $"{kind.Name} is expected (e.g. {kind.Example}), got a text of {text.Length} characters; the limit is {LongestText}");
            return false;
        }
        var source = NumberText.Normalise(text);
        if (source.Length == 0)
        {
            problem = new QuantityProblem(text, $"{kind.Name} is expected (e.g. {kind.Example}), got nothing");
            return false;
        }
        if (!NumberText.TryRead(source, out var value, out var unitText, out var complaint))
        {
            problem = new QuantityProblem(text, $"'{source}' {complaint}; {kind.Name} is expected, e.g. {kind.Example}");
            return false;
        }
        if (!UnitExpression.TryParse(unitText, out var unit))
        {
            problem = UnitAdvice.UnknownUnit(source, unitText, kind, value);
            return false;
        }
        problem = UnitAdvice.WrongUnit(source, unitText, unit, kind, value, plainPascalIsAbsolute);
        if (problem is not null) return false;

        var result = unit.ToSi(value, roomPressurePa);
        problem = CheckLimits(source, value, result, unit, kind, roomPressurePa);
        if (problem is not null) return false;
        siValue = result;
        return true;
    }

    /// <summary>Checks an SI value against a kind's limits; null when it keeps them.</summary>
    private static QuantityProblem? CheckLimits(string source, double value, double siValue, Unit unit, QuantityKind kind, double roomPressurePa)
    {
        if (!double.IsFinite(siValue)) return new QuantityProblem(source, $"{source} is too large to mean anything") { Value = value, Unit = unit.Symbol };
        // Nature's limit comes first: -300 °C is not "too cold for a room", it does not exist.
        if (siValue <= 0 && kind.Scale is QuantityScale.TemperaturePoint) return Broken("is not above absolute zero; the limit is", unit.FromSi(0, roomPressurePa));
        if (siValue <= 0 && kind.Scale is (QuantityScale.Pressure or QuantityScale.AbsolutePressure)) return Broken("is not above full vacuum; the limit is", unit.FromSi(0, roomPressurePa));
        if (kind.Minimum is { } minimum && (siValue < minimum || (kind.AboveMinimum && siValue <= minimum)))
        {
            var bound = kind.AboveMinimum ? "more than" : "at least";
            return Broken($"is too small: {kind.Name} here must be {bound}", unit.FromSi(minimum, roomPressurePa));
        }
        if (kind.Maximum is { } maximum && siValue > maximum)
            return Broken($"is too large: {kind.Name} here must be at most", unit.FromSi(maximum, roomPressurePa));
        return null;

        QuantityProblem Broken(string what, double limit) =>
            new(source, $"{source} {what} {limit.ToString("0.######", CultureInfo.InvariantCulture)} {unit.Symbol}".TrimEnd())
            {
                Value = value,
                Limit = limit,
                Unit = unit.Symbol,
            };
    }
}
