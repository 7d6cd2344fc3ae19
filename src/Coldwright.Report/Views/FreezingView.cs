using Coldwright.Report.Html;
using Coldwright.Simulation.Freezing;

namespace Coldwright.Report.Views;

/// <summary>How far the mixture is from freezing on its way round, in a sentence and a table.</summary>
public static class FreezingView
{
    // Nearer than this a filling error of some per cent decides; our assumption.
    private const double Close = 1.3;

    /// <summary>As HTML.</summary>
    /// <param name="freezing">Margins along both streams.</param>
    /// <param name="units">Units a person reads first.</param>
    /// <param name="roomPressurePa">Barometric pressure, Pa absolute.</param>
    public static string Write(StreamFreezing freezing, UnitSystem units, double roomPressurePa)
    {
        var readout = new Readout(units, roomPressurePa, typographic: true);
        var html = new HtmlText();
        html.Element("p", Sentence(freezing, readout), freezing.Least is { Margin: < Close } ? "verdict short" : "verdict");
        html.Table(["stream", "nearest to freezing", ">at", ">margin"], new[] { ("high pressure", freezing.High), ("low pressure", freezing.Low) }.Select(s => s.Item2.Least is { } p
            ? new[] { s.Item1, p.Component, readout.TemperatureFull(p.TemperatureK), $"{readout.Figures(p.Margin, 3)}" }
            : [s.Item1, "nothing is below its triple point", "", ""]));
        var said = freezing.High.Warnings.Concat(freezing.Low.Warnings).Distinct().ToArray();
        if (said.Length > 0) html.Folded("What this could not check", h => h.List(said));
        return html.ToString();
    }

    private static string Sentence(StreamFreezing freezing, Readout readout)
    {
        if (freezing.Least is not { } p) return "Nothing can freeze: every gas of the mixture stays above its triple point.";
        var where = $"at {readout.TemperatureFull(p.TemperatureK)} on the {(freezing.IsLow ? "low" : "high")} side";
        if (p.Margin < 1) return $"{p.Component} freezes {where}: more of it is there than the liquid can dissolve.";
        return $"Nothing freezes. Nearest to it is {p.Component} {where}: the liquid could dissolve {readout.Figures(p.Margin, 3)} times as much{(p.Margin < Close ? ", which is close" : "")}.";
    }
}
