using System.Globalization;

namespace Coldwright.Quantities;

/// <summary>Says what is wrong with a unit and what to write instead.</summary>
internal static class UnitAdvice
{
    /// <summary>The unit words are not known.</summary>
    public static QuantityProblem UnknownUnit(string source, string unitText, QuantityKind kind, double value)
    {
        if (char.IsAsciiDigit(unitText[0]))
            return new QuantityProblem(source, $"'{source}' has a gap inside the number or no unit; {kind.Name} is expected, e.g. {kind.Example}") { Value = value };
        var shown = unitText.Length > 30 ? unitText[..30] + "…" : unitText;
        var near = NearestWord.Find(unitText, Accepted(kind)).FirstOrDefault();
        var hint = near is null ? $"{kind.Name} is written like {kind.Example}" : $"the nearest is '{near}'";
        return new QuantityProblem(source, $"'{shown}' in '{source}' is no known unit; {hint}") { Value = value, Unit = unitText, NearestUnit = near };
    }

    /// <summary>The unit is known but not right for the kind; null when it is right.</summary>
    public static QuantityProblem? WrongUnit(string source, string unitText, Unit unit, QuantityKind kind, double value, bool plainPascalIsAbsolute)
    {
        if (unitText.Length == 0 && kind.Dimension != Dimension.None)
            return Problem($"'{source}' has no unit; {kind.Name} is written like {kind.Example}", null);
        if (unit.Dimension != kind.Dimension)
            return Problem($"'{source}' is not {kind.Name}: '{unitText}' does not measure one; write it like {kind.Example}", null);

        switch (kind.Scale, unit.Reference)
        {
            case (QuantityScale.Pressure, UnitReference.None):
            case (QuantityScale.AbsolutePressure, UnitReference.None):
                if (plainPascalIsAbsolute && unitText is "Pa" or "hPa" or "kPa" or "MPa") return null;
                if (!UnitTable.TryFindWord(unitText + "g", out _))
                    return Problem($"'{source}' does not say gauge or absolute; {kind.Name} is written like {kind.Example}", null);
                return kind.Scale == QuantityScale.AbsolutePressure
                    ? Problem($"'{source}' does not say that it is absolute; write '{Show(value)} {unitText}a'", unitText + "a")
                    : Problem($"'{source}' does not say gauge or absolute; write '{Show(value)} {unitText}g' (above room air, what a gauge shows) or '{Show(value)} {unitText}a' (above vacuum)", unitText + "g");
            case (QuantityScale.AbsolutePressure, UnitReference.Gauge):
                return Problem($"'{source}' is a gauge pressure; here an absolute one is needed, e.g. {kind.Example}", unit.Symbol[..^1] + "a");
            case (QuantityScale.PressureDifference, UnitReference.Gauge or UnitReference.Absolute):
                return Problem($"'{source}' is a pressure, and a pressure difference is neither gauge nor absolute; write '{Show(value)} {unit.Symbol[..^1]}'", unit.Symbol[..^1]);
            case (QuantityScale.TemperatureDifference, UnitReference.TemperaturePoint):
                return Problem($"'{source}' is a temperature, and a temperature difference is needed; write '{Show(value * unit.Factor)} K' for a difference of {source}", "K");
            case (QuantityScale.TemperaturePoint, UnitReference.TemperatureDifference):
                return Problem($"'{source}' is a temperature difference, and a temperature is needed, e.g. {kind.Example}", "K");
            default:
                return null;
        }

        QuantityProblem Problem(string message, string? nearest) =>
            new(source, message) { Value = value, Unit = unitText.Length == 0 ? null : unitText, NearestUnit = nearest };
    }

    private static IEnumerable<string> Accepted(QuantityKind kind)
    {
        var words = UnitTable.Words.Where(w => w.Unit.Dimension == kind.Dimension && IsRight(w.Unit.Reference, kind.Scale)).Select(w => w.Word);
        return words.Append(kind.SiUnit).Append(kind.Example[(kind.Example.IndexOf(' ', StringComparison.Ordinal) + 1)..]);
    }

    private static bool IsRight(UnitReference reference, QuantityScale scale) => scale switch
    {
        QuantityScale.Pressure => reference is UnitReference.Gauge or UnitReference.Absolute,
        QuantityScale.AbsolutePressure => reference == UnitReference.Absolute,
        QuantityScale.TemperaturePoint => reference is UnitReference.None or UnitReference.TemperaturePoint,
        QuantityScale.TemperatureDifference => reference is UnitReference.None or UnitReference.TemperatureDifference,
        _ => reference == UnitReference.None,
    };

    private static string Show(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);
}
