namespace Coldwright.Report.Charts;

/// <summary>How wide a text will be without asking a font: a cautious estimate, so that labels placed with it do not touch.</summary>
/// <remarks>Widths in em by class of letter, ours, rounded up; compared in a browser with DejaVu Sans, which is wider than most screen fonts.</remarks>
public static class TextWidth
{
    /// <summary>Width of one line, in the unit of the font size.</summary>
    /// <param name="text">Text.</param>
    /// <param name="fontSize">Font size, px.</param>
    /// <param name="bold">True for bold text.</param>
    public static double Of(string text, double fontSize, bool bold = false)
    {
        double em = 0;
        foreach (var c in text) em += Em(c);
        return em * fontSize * (bold ? 1.1 : 1);
    }

    private static double Em(char c) => c switch
    {
        'i' or 'j' or 'l' or '.' or ',' or '\'' or ':' or ';' or '|' => 0.33,
        ' ' or '\u00a0' or 'f' or 't' or 'r' or '(' or ')' or '-' or '/' or 'I' => 0.42,
        'm' or 'w' or 'M' or 'W' or '%' or '@' or '\u2212' or '=' or '+' or '…' => 1.0,
        >= 'A' and <= 'Z' => 0.75,
        _ => 0.64,
    };
}
