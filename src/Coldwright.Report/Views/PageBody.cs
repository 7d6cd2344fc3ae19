namespace Coldwright.Report.Views;

/// <summary>The middle of a report page, for a page that has a head and a foot of its own.</summary>
internal static class PageBody
{
    private const string HeadEnd = "</header>", FootStart = "<footer", TitleEnd = "</h1>";

    /// <summary>What stands between head and foot.</summary>
    /// <param name="page">A whole report page.</param>
    public static string Of(string page)
    {
        var from = page.IndexOf(HeadEnd, StringComparison.Ordinal) + HeadEnd.Length;
        var to = page.LastIndexOf(FootStart, StringComparison.Ordinal);
        return page[from..(to < from ? page.LastIndexOf("</main>", StringComparison.Ordinal) : to)];
    }

    /// <summary>The same with what the head says below its title: what was asked, and under which conditions.</summary>
    /// <param name="page">A whole report page.</param>
    public static string WithLead(string page)
    {
        var from = page.IndexOf(TitleEnd, StringComparison.Ordinal) + TitleEnd.Length;
        return page[from..page.IndexOf(HeadEnd, StringComparison.Ordinal)] + Of(page);
    }
}
