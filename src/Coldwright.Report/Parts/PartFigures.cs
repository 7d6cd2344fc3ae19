using Coldwright.Simulation.Parts;

namespace Coldwright.Report.Parts;

/// <summary>A figure as a row of words.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Value">With its unit.</param>
/// <param name="Band">From and to in the same unit; may be empty.</param>
/// <param name="Note">A remark; may be empty.</param>
internal sealed record FigureRow(string Name, string Value, string Band, string Note);

/// <summary>Figures and limits as rows of words, the same on the page and in the terminal.</summary>
internal static class PartFigures
{
    public static IReadOnlyList<FigureRow> Rows(PartSection section, PartUnits units) =>
        [.. section.Figures.Select(f => new FigureRow(f.Name, units.Text(f), units.Band(f), f.Note))];

    /// <summary>The point as one sentence.</summary>
    public static string Point(PartPoint point, PartUnits units) =>
        $"Rated at {point.Text}, {units.Readout.TemperatureFull(point.LoadTemperatureK)}; {units.Readout.Pressure(point.HighPressurePa)} against {units.Readout.Pressure(point.LowPressurePa)}, {units.Text(point.MassFlow, "kg/s")}.";

    /// <summary>The few figures that matter first: those of the second group.</summary>
    public static IEnumerable<PartFigure> Headline(PartRating rating) => rating.Sections.Skip(1).Take(1).SelectMany(s => s.Figures).Take(6);
}
