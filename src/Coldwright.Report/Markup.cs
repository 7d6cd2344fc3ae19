using System.Text;

namespace Coldwright.Report;

/// <summary>Text made safe inside HTML and SVG.</summary>
internal static class Markup
{
    /// <summary>Escapes the five markup characters and drops control characters that XML forbids.</summary>
    public static string Escape(string text)
    {
        var safe = new StringBuilder(text.Length + 8);
        foreach (var c in text)
        {
            switch (c)
            {
                case '&': safe.Append("&amp;"); break;
                case '<': safe.Append("&lt;"); break;
                case '>': safe.Append("&gt;"); break;
                case '"': safe.Append("&quot;"); break;
                case '\'': safe.Append("&#39;"); break;
                case < ' ' when c is not ('\n' or '\t'): break;
                default: safe.Append(c); break;
            }
        }
        return safe.ToString();
    }
}
