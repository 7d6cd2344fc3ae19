using System.Text;

namespace Coldwright.Report.Html;

/// <summary>Builds the body of a page from the few elements that reports use; every text is escaped.</summary>
internal sealed class HtmlText
{
    private readonly StringBuilder _text = new();

    /// <summary>Appends markup that is already safe.</summary>
    public HtmlText Raw(string markup)
    {
        _text.Append(markup);
        return this;
    }

    /// <summary>An element with text inside.</summary>
    public HtmlText Element(string tag, string text, string cssClass = "") =>
        Raw($"<{tag}{Class(cssClass)}>{Markup.Escape(text)}</{tag}>{(tag is "span" or "strong" ? "" : "\n")}");

    /// <summary>An element with others inside.</summary>
    public HtmlText Inside(string tag, string cssClass, Action<HtmlText> content)
    {
        Raw($"<{tag}{Class(cssClass)}>\n");
        content(this);
        return Raw($"</{tag}>\n");
    }

    /// <summary>A section with its heading.</summary>
    public HtmlText Section(string heading, Action<HtmlText> content) => Inside("section", "", h =>
    {
        h.Element("h2", heading);
        content(h);
    });

    /// <summary>A part that opens on request.</summary>
    public HtmlText Folded(string summary, Action<HtmlText> content) => Inside("details", "", h =>
    {
        h.Element("summary", summary);
        content(h);
    });

    /// <summary>A list of sentences.</summary>
    public HtmlText List(IEnumerable<string> items) => Inside("ul", "", h =>
    {
        foreach (var item in items) h.Element("li", item);
    });

    /// <summary>A table; columns whose heading starts with <c>&gt;</c> hold numbers and are set to the right; a line end inside a cell breaks the line.</summary>
    public HtmlText Table(IReadOnlyList<string> headings, IEnumerable<IReadOnlyList<string>> rows) => Inside("div", "scroll", h =>
    {
        var right = headings.Select(t => t.StartsWith('>')).ToArray();
        h.Raw("<table><thead><tr>");
        for (var i = 0; i < headings.Count; i++) h.Raw($"<th{Class(right[i] ? "number" : "")}>{Markup.Escape(headings[i].TrimStart('>')).Replace("\n", "<br>")}</th>");
        h.Raw("</tr></thead><tbody>\n");
        foreach (var row in rows)
        {
            h.Raw("<tr>");
            for (var i = 0; i < row.Count; i++) h.Raw($"<td{Class(right[i] ? "number" : "")}>{Markup.Escape(row[i]).Replace("\n", "<br>")}</td>");
            h.Raw("</tr>\n");
        }
        h.Raw("</tbody></table>\n");
    });

    /// <inheritdoc/>
    public override string ToString() => _text.ToString();

    private static string Class(string cssClass) => cssClass == "" ? "" : $" class=\"{cssClass}\"";
}
