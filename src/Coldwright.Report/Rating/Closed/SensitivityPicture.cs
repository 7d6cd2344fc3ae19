using Coldwright.Report.Charts;
using Coldwright.Report.Html;
using Coldwright.Simulation.Rating;

namespace Coldwright.Report.Rating.Closed;

/// <summary>What a step of each input changes of the leading figure, and what its doubts do.</summary>
internal sealed class SensitivityPicture(SensitivityRanking ranking, SensitivityWords words)
{
    private HeadlineFigure Figure => ranking.Figure;

    public string ChoicesCaption
    {
        get
        {
            var first = ranking.Choices[0];
            return $"What one step of each thing that a builder can choose does to the {Lower(Figure.Name)} ({words.Value(Figure)}), the ten that do most. " +
                $"The largest is the {first.Name}: {words.Step(first)} on {words.Value(first)} changes it by {words.ChangeFull(Figure, Change(first), Change(first) ?? 0)}. " +
                "A step the other way does the opposite. Everything else stays as described, and the whole loop settles anew: pressures, flow, the mixture that circulates. " +
                "The effects are slopes, so a step several times as large will not be exactly so many times as good.";
        }
    }

    public string DoubtsCaption => ranking.Doubts.Count == 0 ? "" :
        $"How far the figure would move if a correlation or a part were off by one standard deviation of its stated uncertainty, to either side. Together, as independent errors, they put a band of {words.Deviation(Figure)} on the {Lower(Figure.Name)}. " +
        $"The {ranking.Doubts[0].Name} counts most. The fluid properties are not in this band: the second opinion stands for them.";

    public string DrawChoices(ChartSize size)
    {
        // Colder is better, everything else ranked by is better when there is more of it.
        var better = Figure.Unit == "K" ? -1 : 1;
        return Chart($"Change of {Lower(Figure.Name)}", ranking.Choices, [("better", Ink.Cooling), ("worse", Ink.Leak)], i =>
        {
            var change = Change(i) ?? 0;
            var largest = SensitivityRanking.Largest(ranking.Choices, ranking.Leading);
            return new([new(0, words.Number(Figure, change), change * better >= 0 ? Ink.Cooling : Ink.Leak, words.ChangeFull(Figure, change, largest))], words.Change(Figure, change, largest));
        }, size);
    }

    public string DrawDoubts(ChartSize size) => Chart($"Doubt of {Lower(Figure.Name)}", ranking.Felt, [], i =>
    {
        var change = Math.Abs(Change(i) ?? 0);
        var text = $"±{words.Change(Figure, change, SensitivityRanking.Largest(ranking.Doubts, ranking.Leading)).TrimStart('+')}";
        return new([new(-words.Number(Figure, change), words.Number(Figure, change), Ink.Second, text)], text);
    }, size);

    public void ChoicesTable(HtmlText html) => Table(html, [.. ranking.Result.Inputs.Where(i => !i.IsDoubt)], "input", "now", "step");

    public void DoubtsTable(HtmlText html)
    {
        Table(html, ranking.Doubts, "doubt", "", "one standard deviation");
        html.Table(["figure", ">value", ">one standard deviation"], ranking.Result.Figures.Select(f => new[] { f.Name, words.Value(f), words.Deviation(f) }));
    }

    private double? Change(InputSensitivity i) => SensitivityRanking.Change(i, ranking.Leading);

    private string Chart(string what, IEnumerable<InputSensitivity> inputs, IReadOnlyList<(string, Ink)> key, Func<InputSensitivity, PieceLane> lane, ChartSize size)
    {
        var rows = inputs.Select(i => new PieceRow($"{i.Name} {words.Step(i)}", [lane(i)])).ToArray();
        return new PieceChart
        {
            Description = $"{what}: {string.Join(", ", rows.Select(r => $"{r.Name} {r.Lanes[0].Text}"))}.",
            AxisLabel = $"change of {Lower(Figure.Name)}, {words.Unit(Figure)}",
            Key = key,
            Rows = rows,
        }.Draw(size);
    }

    private void Table(HtmlText html, IReadOnlyList<InputSensitivity> inputs, string what, string value, string step)
    {
        var figures = ranking.Result.Figures;
        html.Table([what, $">{value}", $">{step}", .. figures.Select(f => $">{f.Name}\n{words.Unit(f)}")],
            inputs.Select(i => (IReadOnlyList<string>)[i.Name, words.Value(i), words.Step(i), .. figures.Select((f, k) => words.Change(f, SensitivityRanking.Change(i, k), SensitivityRanking.Largest(inputs, k)))]));
    }

    private static string Lower(string text) => char.ToLowerInvariant(text[0]) + text[1..];
}
