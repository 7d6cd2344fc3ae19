using Coldwright.Report.Charts;
using Coldwright.Report.Html;
using Coldwright.Simulation.Rating;

namespace Coldwright.Report.Rating;

/// <summary>Where the watts go: work put in, each loss taken off in order of size, the work that ends in the product.</summary>
internal sealed class ExergyPicture
{
    private readonly ExergyAccount _account;
    private readonly bool _makesLiquid;
    private readonly Readout _readout;

    public ExergyPicture(RatingReport report, Readout readout) => (_account, _makesLiquid, _readout) = (report.Main.Exergy, report.MakesLiquid, readout);

    /// <summary>Losses, largest first.</summary>
    public static IReadOnlyList<(string Name, double Watts)> Sorted(ExergyAccount account) => [.. account.LossesW.OrderByDescending(l => l.Watts)];

    public string Caption
    {
        get
        {
            var largest = Sorted(_account).Take(2).Select(l => $"{l.Name} ({_readout.Percent(Share(l.Watts))})");
            return "Every watt is counted here as the work it is worth (exergy), so that a watt of cold and a watt of electricity can be compared. " +
                $"The top bar is what goes in; each loss takes its piece off, largest first; the last bar is what is left in {Product}. " +
                (_account.LossesW.Count == 0 ? "" : $"The largest losses are {string.Join(" and ", largest)}: that is where a change can gain most.");
        }
    }

    public string Draw(ChartSize size) => Chart().Draw(size);

    public void Table(HtmlText html) => html.Table(["what", ">work", ">share of input"], Rows());

    private double InW => _account.TotalW;

    private string Product => _makesLiquid ? "the liquid" : "the cooling";

    private double Share(double watts) => InW > 0 ? watts / InW : 0;

    private IEnumerable<string[]> Rows()
    {
        yield return ["in: electricity", _readout.Watts(_account.InputW), _readout.Percent(Share(_account.InputW))];
        yield return ["in: pressure of the feed gas", _readout.Watts(_account.FeedW), _readout.Percent(Share(_account.FeedW))];
        foreach (var (name, watts) in Sorted(_account)) yield return [$"lost: {name}", _readout.Watts(watts), _readout.Percent(Share(watts))];
        yield return [$"out: in {Product}", _readout.Watts(_account.ProductW), _readout.Percent(Share(_account.ProductW))];
    }

    private BarChart Chart()
    {
        var bars = new List<Bar> { new("electricity in", 0, _account.InputW, Ink.Plain, _readout.Watts(_account.InputW), true) };
        // A feed too small to see would only add a row without a bar.
        if (_account.FeedW > 0.002 * _account.InputW) bars.Add(new("feed gas in", _account.InputW, InW, Ink.Plain, _readout.Watts(_account.FeedW), true));
        var left = InW;
        foreach (var (name, watts) in Sorted(_account))
        {
            bars.Add(new(name, left - watts, left, Ink.Loss, $"{_readout.Watts(watts)} · {_readout.Percent(Share(watts))}"));
            left -= watts;
        }
        bars.Add(new($"left in {Product}", 0, _account.ProductW, Ink.Cooling, $"{_readout.Watts(_account.ProductW)} · {_readout.Percent(Share(_account.ProductW))}", true));
        return new()
        {
            Description = $"Exergy: {_readout.Watts(InW)} in, {_readout.Watts(_account.ProductW)} left in {Product}; losses by name.",
            AxisLabel = "work (exergy), W",
            Bars = bars,
        };
    }
}
