namespace Coldwright.Quantities;

/// <summary>Reads compound units: <c>W/K</c>, <c>J/(mol K)</c>, <c>m2</c>, <c>1/h</c>, <c>per kWh</c>, <c>W/m2/K</c>.</summary>
public static class UnitExpression
{
    private const int LongestUnitText = 60;

    /// <summary>Finds the unit a text names; false when a word is unknown or the text is ambiguous (<c>W/m K</c> without parentheses).</summary>
    public static bool TryParse(string text, out Unit unit)
    {
        unit = new Unit("", Dimension.None, 1);
        if (text.Length > LongestUnitText) return false;
        if (text.Length == 0) return true;
        if (UnitTable.TryFindWord(text, out var word))
        {
            unit = word;
            return true;
        }

        var source = text.StartsWith("per ", StringComparison.Ordinal) ? "1/" + text[4..] : text.Replace(" per ", "/", StringComparison.Ordinal);
        if (source.StartsWith('/')) source = "1" + source;
        var groups = source.Split('/');
        var dimension = Dimension.None;
        var factor = 1.0;
        for (int i = 0; i < groups.Length; i++)
        {
            if (!TryParseGroup(groups[i].Trim(), isDenominator: i > 0, out var group)) return false;
            dimension = i == 0 ? group.Dimension : dimension / group.Dimension;
            factor = i == 0 ? group.Factor : factor / group.Factor;
        }
        unit = new Unit(text, dimension, factor);
        return double.IsFinite(factor) && factor > 0;
    }

    private static bool TryParseGroup(string text, bool isDenominator, out Unit unit)
    {
        unit = new Unit("1", Dimension.None, 1);
        var parenthesised = text.Length > 2 && text[0] == '(' && text[^1] == ')';
        if (parenthesised) text = text[1..^1].Trim();
        if (text.Length == 0) return false;
        if (text == "1") return true;
        var words = text.Split([' ', '·', '*'], StringSplitOptions.RemoveEmptyEntries);
        // "W/m K" could be W K/m or W/(m K): it is refused, not guessed.
        if (isDenominator && words.Length > 1 && !parenthesised) return false;

        foreach (var word in words)
        {
            if (!TryParsePower(word, out var factor)) return false;
            unit = new Unit(text, unit.Dimension * factor.Dimension, unit.Factor * factor.Factor);
        }
        return words.Length > 0;
    }

    private static bool TryParsePower(string word, out Unit unit)
    {
        var exponent = 1;
        if (!UnitTable.TryFindWord(word, out unit!))
        {
            if (word.Length < 2 || word[^1] is not ('2' or '3')) return false;
            exponent = word[^1] - '0';
            var stem = word[..^1].TrimEnd('^');
            if (!UnitTable.TryFindWord(stem, out unit!)) return false;
        }
        // Inside a compound a degree is a difference (W/°C is W/K); a gauge pressure has no meaning there.
        if (unit.Reference is UnitReference.Gauge or UnitReference.Absolute) return false;
        unit = new Unit(word, unit.Dimension.Power(exponent), Math.Pow(unit.Factor, exponent));
        return true;
    }
}
