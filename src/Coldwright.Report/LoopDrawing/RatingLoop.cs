using Coldwright.Machine.Layout;
using Coldwright.Report.Html;
using Coldwright.Report.Rating;

namespace Coldwright.Report.Loops;

/// <summary>The drawing of the loop in the report of a rating, with the figures of its operating point.</summary>
internal static class RatingLoop
{
    public static void Write(HtmlText html, RatingReport report, Readout readout)
    {
        if (!LoopLayout.TryFind(report.Machine, out var layout, out _)) return;
        var figures = LoopFigures.From(report.Main, layout).With(report.Findings);
        html.Section("The loop", h => Page.Figure(h,
            size => LoopDrawing.Svg(report.Machine, layout, figures, report.Units, size.IsPhone),
            $"The cooler as its file describes it, warm at the top and cold at the bottom, with the figures of the operating point at {readout.TemperatureFull(report.Main.OperatingTemperatureK)}. " +
            "The mixture goes down in the solid line at high pressure and comes back up in the hollow line at low pressure; the broken line is the product on its way through the vessel. " +
            "A figure stands beside the line or part that it belongs to.",
            t => t.Table(["place", "what", "figure"], LoopDrawing.Rows(report.Machine, layout, figures, report.Units))));
    }
}
