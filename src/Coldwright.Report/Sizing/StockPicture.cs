using Coldwright.Report.Charts;
using Coldwright.Report.Html;
using Coldwright.Report.Parts;

namespace Coldwright.Report.Sizing;

/// <summary>The first figure of every stock that has one, so that the eye compares.</summary>
internal sealed class StockPicture(SizeReport report, PartUnits units)
{
    private const int Most = 14, MostRows = 12, MostColumns = 4;

    private Design.Sizing.SizeOption[] Shown => [.. report.Result.Options.Where(o => o.Figures.Count > 0 && o.Figures[0].Value is not null).Take(Most)];

    public bool HasBars => Shown.Length > 1;

    public string Caption => $"{SizeWords.Heading(report.Result, report.Result.Columns[0])} of each stock. What meets target and limits is drawn in the colour of cooling, the rest in grey; the table says why.";

    public string Draw(ChartSize size)
    {
        var shown = Shown;
        var first = shown[0].Figures[0];
        var scale = units.Scale(first.Unit, shown.Max(o => Math.Abs(o.Figures[0].Value!.Value)), first.IsDifference);
        return new BarChart
        {
            Description = $"{first.Name} of {shown.Length} stocks.", AxisLabel = scale.Label.Length > 0 ? $"{first.Name.ToLowerInvariant()}, {scale.Label}" : first.Name.ToLowerInvariant(),
            Bars = [.. shown.Select(o => new Bar(o.Stock, 0, scale.FromSi(o.Figures[0].Value!.Value), o.Fits ? Ink.Cooling : Ink.Loss, units.Short(o.Figures[0])))],
        }.Draw(size);
    }

    /// <summary>What fits, and the first of what does not, with the reason.</summary>
    public void Table(HtmlText html)
    {
        var fits = report.Result.Options.Where(o => o.Fits).ToArray();
        var shown = fits.Concat(report.Result.Options.Where(o => !o.Fits).Take(Math.Max(4, MostRows - fits.Length))).ToArray();
        bool priced = shown.Any(o => o.Cost is > 0), refused = shown.Any(o => !o.Fits);
        var columns = report.Result.Columns.Take(MostColumns).ToArray();
        html.Table(["stock", .. columns.Select(id => ">" + Broken(SizeWords.Heading(report.Result, id))), .. priced ? [">cost"] : Array.Empty<string>(), .. refused ? ["why not"] : Array.Empty<string>()],
            shown.Select(o => (string[])[o.Stock.Replace(' ', '\u00a0').Replace('-', '\u2011'), .. columns.Select(id => SizeWords.Cell(o, id, units)), .. priced ? [report.Cost(o, units.Readout)] : Array.Empty<string>(), .. refused ? [units.Readout.Say(o.WhyNot)] : Array.Empty<string>()]));
        if (shown.Length < report.Result.Options.Count) html.Element("p", $"{report.Result.Options.Count - shown.Length} more that will not do are left out here; the command size lists them all with --json.");
    }

    // a long heading on two lines
    private static string Broken(string heading)
    {
        int at = heading.Length < 16 ? -1 : heading.IndexOf(' ', heading.Length / 2 - 3);
        return at < 0 ? heading : heading[..at] + "\n" + heading[(at + 1)..];
    }
}
