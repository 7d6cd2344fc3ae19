using Coldwright.Design.Blending;
using Coldwright.Report.Charts;
using Coldwright.Report.Html;

namespace Coldwright.Report.Blending;

/// <summary>What is given up with each gas less.</summary>
internal sealed class FewerPicture(BlendReport report, Readout readout)
{
    private BlendChoice[] Shown => [.. report.Result.Near.Prepend(report.Result.Best).Concat(report.Result.KnowsNow ? [report.Result.Now] : Array.Empty<BlendChoice>()).Where(c => c.Main.IsGood)];

    public string Caption => $"What the best mixture of each number of gases gives{(report.Result.KnowsNow ? ", and at the end what the file's gives" : "")}. A gas that brings little is a bottle less to buy, and a fraction less to get wrong.";

    public string Draw(ChartSize size)
    {
        bool lowest = report.Result.Goal == BlendGoal.Lowest;
        double Value(double merit) => lowest ? readout.TemperatureValue(-merit) : merit;
        string unit = report.Result.Goal switch { BlendGoal.Cooling => "net cooling, W", BlendGoal.Litres => "collected, L/h", BlendGoal.Lowest => $"without load, {readout.TemperatureSymbol}", _ => "least isothermal difference, J/mol" };
        return new BarChart
        {
            Description = "Merit of mixtures of fewer gases.", AxisLabel = unit,
            Bars = [.. Shown.Select(c => new Bar(IsNow(c) ? "now" : $"{c.Mixture.Names.Count} gases", Math.Min(0, Value(c.Main.Merit)), Math.Max(0, Value(c.Main.Merit)), IsNow(c) ? Ink.Loss : Ink.Cooling, BlendWords.Merit(report.Result, c.Main.Merit, readout), ReferenceEquals(c, report.Result.Best)))],
        }.Draw(size);
    }

    private bool IsNow(BlendChoice choice) => report.Result.KnowsNow && ReferenceEquals(choice, report.Result.Now);

    public void Table(HtmlText html) => html.Table([">gases", "mixture", ">gives", ">at worst", ">burns"],
        Shown.Select(c => new[] { $"{c.Mixture.Names.Count}", BlendWords.Mixture(c, readout), BlendWords.Merit(report.Result, c.Main.Merit, readout), BlendWords.Merit(report.Result, c.WorstMerit, readout), readout.Percent(c.Flammable) }));
}
