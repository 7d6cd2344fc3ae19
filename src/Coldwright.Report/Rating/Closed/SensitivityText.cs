using Coldwright.Report.Terminal;
using Coldwright.Simulation.Rating;

namespace Coldwright.Report.Rating.Closed;

/// <summary>Sensitivities as two tables for the terminal: what a builder can choose, and what is in doubt with the band that follows.</summary>
internal sealed class SensitivityText(SensitivityRanking ranking, SensitivityWords words, TerminalStyle style, int columns)
{
    private static readonly string[]
        WithLiquid = ["collected_L_h", "no_load_temperature_K", "power_W", "energy_kWh_L"],
        WithoutLiquid = ["no_load_temperature_K", "net_cooling_W", "power_W", "discharge_temperature_K"];
    private const int FigureWidth = 8, ValueWidth = 13, StepWidth = 10;

    private readonly int[] _figures = [.. (ranking.Figure.Id == WithLiquid[0] ? WithLiquid : WithoutLiquid).Select(ranking.Index).Where(i => i >= 0)];

    public IEnumerable<string> Lines()
    {
        var name = columns - 2 - ValueWidth - StepWidth - FigureWidth * _figures.Length;
        yield return style.Bold($"What matters most for the {Short(ranking.Figure)}");
        yield return style.Quiet(Header("a step more of", "now", "step", name));
        foreach (var line in ranking.Choices.SelectMany(i => Row(i, name, ranking.Choices))) yield return line;
        if (ranking.Doubts.Count == 0) yield break;
        yield return "";
        yield return style.Bold("What is in doubt: one standard deviation of each");
        yield return style.Quiet(Header("", "", "doubt", name));
        foreach (var line in ranking.Felt.SelectMany(i => Row(i, name, ranking.Doubts))) yield return line;
        if (ranking.Doubts.Count - ranking.Felt.Count is > 0 and var left) yield return style.Quiet($"  and {left} that {(left == 1 ? "is" : "are")} hardly felt");
        yield return style.Bold("  " + "all doubts together".PadRight(name + ValueWidth + StepWidth) + string.Concat(_figures.Select(f => Band(ranking.Result.Figures[f]).PadLeft(FigureWidth))));
    }

    private string Header(string what, string value, string step, int name) =>
        "  " + what.PadRight(name) + value.PadLeft(ValueWidth) + step.PadLeft(StepWidth) + string.Concat(_figures.Select(f => Unit(ranking.Result.Figures[f]).PadLeft(FigureWidth)));

    private IEnumerable<string> Row(InputSensitivity input, int width, IReadOnlyList<InputSensitivity> among)
    {
        var name = Wrapping.Wrap(input.Name, width - 1, 2);
        for (var i = 0; i < name.Count; i++)
            yield return i > 0 ? $"    {name[i]}" : ("  " + name[i].PadRight(width) + words.Value(input).PadLeft(ValueWidth) + words.Step(input).PadLeft(StepWidth)
                + string.Concat(_figures.Select(f => words.Change(ranking.Result.Figures[f], SensitivityRanking.Change(input, f), SensitivityRanking.Largest(among, f)).PadLeft(FigureWidth)))).TrimEnd();
    }

    // The deviation without its unit, which stands above.
    private string Band(HeadlineFigure figure) => words.Deviation(figure)[..^(words.Unit(figure).Length + 1)];

    // Two figures in watts or kelvins are told apart by their first word.
    private string Unit(HeadlineFigure figure) => figure.Id switch
    {
        "net_cooling_W" => "left W",
        "power_W" => "power W",
        "discharge_temperature_K" => $"hot {words.Unit(figure)}",
        "no_load_temperature_K" => $"cold {words.Unit(figure)}",
        _ => words.Unit(figure),
    };

    private static string Short(HeadlineFigure figure) => figure.Id == "collected_L_h" ? "litres per hour" : char.ToLowerInvariant(figure.Name[0]) + figure.Name[1..];
}
