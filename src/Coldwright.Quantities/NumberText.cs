using System.Globalization;

namespace Coldwright.Quantities;

/// <summary>Reads the number at the start of a quantity: <c>1.2</c>, <c>-19</c>, <c>1e5</c>, <c>1/4</c>, <c>2-1/8</c>, <c>2 1/8</c>.</summary>
public static class NumberText
{
    /// <summary>Brings the look-alike characters people type or paste (real minus, no-break space, raised 2, ordinal mark for a degree) to one form.</summary>
    public static string Normalise(string text)
    {
        var buffer = new char[text.Length * 2];
        var length = 0;
        foreach (var c in text)
        {
            switch (c)
            {
                case '\u2212' or '\u2013' or '\u2011' or '\uFE63' or '\uFF0D': buffer[length++] = '-'; break;
                case '\u00A0' or '\u2007' or '\u2009' or '\u202F' or '\t' or '\r' or '\n': buffer[length++] = ' '; break;
                case '\u00BA' or '\u02DA': buffer[length++] = '°'; break;
                case '\u2103': buffer[length++] = '°'; buffer[length++] = 'C'; break;
                case '\u2109': buffer[length++] = '°'; buffer[length++] = 'F'; break;
                case '\u03BC': buffer[length++] = 'µ'; break;
                case '\u2206': buffer[length++] = 'Δ'; break;
                case '²': buffer[length++] = '2'; break;
                case '³': buffer[length++] = '3'; break;
                default: buffer[length++] = c; break;
            }
        }
        var parts = new string(buffer, 0, length).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return string.Join(' ', parts);
    }

    /// <summary>Reads the number a normalised text starts with.</summary>
    /// <param name="text">Text from <see cref="Normalise"/>.</param>
    /// <param name="value">The number; always finite when the method returns true.</param>
    /// <param name="rest">What follows the number, trimmed.</param>
    /// <param name="complaint">What is wrong, as a clause, when the method returns false.</param>
    public static bool TryRead(string text, out double value, out string rest, out string complaint)
    {
        value = 0;
        rest = text;
        complaint = "";
        var i = text.Length > 0 && text[0] is '-' or '+' ? 1 : 0;
        var sign = i == 1 && text[0] == '-' ? -1 : 1;
        if (i == 1 && i < text.Length && text[i] == ' ') i++;
        var start = i;
        var whole = SkipDigits(text, ref i);
        var isInteger = whole > 0;
        if (i < text.Length && text[i] == '.')
        {
            i++;
            isInteger = false;
            whole += SkipDigits(text, ref i);
        }
        if (whole == 0)
        {
            complaint = "does not start with a number";
            return false;
        }
        if (i + 1 < text.Length && text[i] == ',' && char.IsAsciiDigit(text[i + 1]))
        {
            complaint = "has a comma inside the number; decimals are written with a point and thousands without a separator, e.g. 12.4 or 1013";
            return false;
        }
        if (SkipExponent(text, ref i)) isInteger = false;
        value = double.Parse(text.AsSpan(start, i - start), NumberStyles.Float, CultureInfo.InvariantCulture);

        if (isInteger && !TryReadFraction(text, ref i, ref value, out complaint)) return false;
        value *= sign;
        rest = text[i..].Trim();
        if (double.IsFinite(value)) return true;
        complaint = $"is a number too large to mean anything (the limit is {double.MaxValue.ToString("0.#E+0", CultureInfo.InvariantCulture)})";
        return false;
    }

    private static int SkipDigits(string text, ref int i)
    {
        var start = i;
        while (i < text.Length && char.IsAsciiDigit(text[i])) i++;
        return i - start;
    }

    private static bool SkipExponent(string text, ref int i)
    {
        if (i >= text.Length || text[i] is not ('e' or 'E')) return false;
        var j = i + 1;
        if (j < text.Length && (text[j] is '+' or '-')) j++;
        if (SkipDigits(text, ref j) == 0) return false;
        i = j;
        return true;
    }

    // Trade sizes: "1/4" right away, "2-1/8" or "2 1/8" after a whole number. "1/h" is a number and a unit: the denominator has no digit.
    private static bool TryReadFraction(string text, ref int i, ref double value, out string complaint)
    {
        complaint = "";
        var j = i;
        var numerator = value;
        var mixed = false;
        if (j < text.Length && text[j] is '-' or ' ')
        {
            mixed = true;
            j++;
            var numeratorStart = j;
            if (SkipDigits(text, ref j) == 0) return true;
            numerator = double.Parse(text.AsSpan(numeratorStart, j - numeratorStart), CultureInfo.InvariantCulture);
        }
        if (j >= text.Length || text[j] != '/') return true;
        j++;
        var denominatorStart = j;
        if (SkipDigits(text, ref j) == 0) return true;
        var denominator = double.Parse(text.AsSpan(denominatorStart, j - denominatorStart), CultureInfo.InvariantCulture);
        if (denominator == 0)
        {
            complaint = "divides by zero";
            return false;
        }
        value = mixed ? value + numerator / denominator : numerator / denominator;
        i = j;
        return true;
    }
}
