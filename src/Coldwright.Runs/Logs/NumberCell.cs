using System.Globalization;

namespace Coldwright.Runs.Logs;

/// <summary>What a cell holds.</summary>
internal enum CellContent
{
    /// <summary>A number.</summary>
    Number,
    /// <summary>Nothing, or a word that says so (NaN, --, n/a).</summary>
    Nothing,
    /// <summary>A word for a reading beyond the range (OL, OPEN, OVER).</summary>
    Beyond,
    /// <summary>Something else.</summary>
    Text,
}

/// <summary>Reads the number in a cell: point or comma, exponent, grouping signs between thousands, a real minus sign, a unit behind it.</summary>
internal static class NumberCell
{
    private static readonly double[] _powers = [1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22];
    private static readonly string[] _nothing = ["nan", "-nan", "n/a", "#n/a", "na", "null", "none", "-", "--", "---", "----", "*", "**", "***", "?", "--.-", "---.-"];
    private static readonly string[] _beyond = ["ol", "-ol", "o.l", "open", "over", "under", "ovr", "overload", "overrange", "overflow", "inf", "-inf", "+inf", "infinity", "-infinity", "burnout", "short", "err", "error", "fault", "#####"];

    /// <summary>Reads a cell.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="decimalComma">True when a comma is the decimal sign.</param>
    /// <param name="value">The number; 0 when there is none.</param>
    /// <param name="decimals">Digits behind the decimal sign; with an exponent, as if it were written out.</param>
    /// <param name="rest">What stands behind the number, such as a unit.</param>
    public static CellContent Read(ReadOnlySpan<byte> cell, bool decimalComma, out double value, out int decimals, out ReadOnlySpan<byte> rest)
    {
        (value, decimals) = (0, 0);
        rest = default;
        if (cell.IsEmpty) return CellContent.Nothing;
        var i = 0;
        var negative = false;
        if (cell[0] is (byte)'-' or (byte)'+')
        {
            negative = cell[0] == '-';
            i = 1;
        }
        // the real minus sign in UTF-8
        else if (cell.Length > 3 && cell[0] == 0xE2 && cell[1] == 0x88 && cell[2] == 0x92) (negative, i) = (true, 3);
        var sign = decimalComma ? (byte)',' : (byte)'.';
        var group = decimalComma ? (byte)'.' : (byte)',';
        ulong mantissa = 0;
        int digits = 0, dropped = 0, point = -1, start = i;
        for (; i < cell.Length; i++)
        {
            var c = cell[i];
            if ((uint)(c - '0') <= 9)
            {
                digits++;
                if (mantissa < 100_000_000_000_000_000UL) mantissa = mantissa * 10 + (ulong)(c - '0');
                else dropped++;
                if (point >= 0) decimals++;
            }
            else if (c == sign && point < 0) point = i;
            else if ((c == group || c == (byte)'\'') && point < 0 && digits > 0 && IsGroup(cell[(i + 1)..])) continue;
            else break;
        }
        if (digits == 0) return Word(cell);
        var exponent = dropped - decimals;
        if (i < cell.Length && cell[i] is (byte)'e' or (byte)'E') SkipExponent(cell, ref i, ref exponent, ref decimals);
        value = Scale(mantissa, exponent, cell[start..i]);
        if (negative) value = -value;
        rest = cell[i..];
        while (rest.Length > 0 && rest[0] == ' ') rest = rest[1..];
        return double.IsFinite(value) ? CellContent.Number : CellContent.Beyond;
    }

    private static double Scale(ulong mantissa, int exponent, ReadOnlySpan<byte> text)
    {
        // Both factors are exact here, so one rounding gives the nearest double.
        if (mantissa < 1UL << 53 && exponent is >= -22 and <= 22)
            return exponent < 0 ? mantissa / _powers[-exponent] : mantissa * _powers[exponent];
        return text.Length < 400 && double.TryParse($"{mantissa}E{exponent}", NumberStyles.Float, CultureInfo.InvariantCulture, out var value) ? value : double.NaN;
    }

    private static void SkipExponent(ReadOnlySpan<byte> cell, ref int i, ref int exponent, ref int decimals)
    {
        var j = i + 1;
        var minus = false;
        if (j < cell.Length && cell[j] is (byte)'+' or (byte)'-') minus = cell[j++] == '-';
        int power = 0, from = j;
        for (; j < cell.Length && (uint)(cell[j] - '0') <= 9; j++) power = Math.Min(power * 10 + (cell[j] - '0'), 9999);
        if (j == from) return;
        i = j;
        if (minus) power = -power;
        exponent += power;
        decimals = Math.Max(0, decimals - power);
    }

    // Exactly three digits, then no digit: 1,234 but not 12,34.
    private static bool IsGroup(ReadOnlySpan<byte> rest)
    {
        var n = 0;
        while (n < rest.Length && (uint)(rest[n] - '0') <= 9) n++;
        return n == 3;
    }

    private static CellContent Word(ReadOnlySpan<byte> cell)
    {
        if (cell.Length > 12) return CellContent.Text;
        var word = LogBytes.Text(cell).ToLowerInvariant();
        if (word.Length == 0 || _nothing.Contains(word) || word.All(c => c is '-' or '.' or '*' or '?')) return CellContent.Nothing;
        return _beyond.Contains(word) || word.All(c => c == '#') ? CellContent.Beyond : CellContent.Text;
    }
}
