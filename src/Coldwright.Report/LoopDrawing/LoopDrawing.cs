using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Report.Parts;

namespace Coldwright.Report.Loops;

/// <summary>The loop as a drawing made from the machine file, with figures on it; <see cref="LoopStyle.Css"/> must be on the page.</summary>
/// <remarks>
/// Every part is a group with <c>data-part</c>, every line one with <c>data-line</c> (<see cref="LoopFigures.PlaceOf"/>), every figure a text with
/// <c>data-figure</c> inside the group of its place.
/// </remarks>
public static class LoopDrawing
{
    /// <summary>The drawing as SVG text, for a page or for a telephone.</summary>
    /// <param name="machine">Machine.</param>
    /// <param name="layout">Its layout (<see cref="LoopLayout.TryFind"/>).</param>
    /// <param name="figures">What is written at parts and lines.</param>
    /// <param name="units">Units that come first.</param>
    /// <param name="isPhone">True for the narrow drawing.</param>
    /// <param name="hasLegend">True to explain the signs below the drawing.</param>
    /// <param name="isClickable">True when parts and lines can be reached by keyboard and answer as buttons.</param>
    public static string Svg(MachineDescription machine, LoopLayout layout, LoopFigures figures, UnitSystem units, bool isPhone, bool hasLegend = true, bool isClickable = false)
    {
        var picture = Picture(machine, layout, figures, units, isPhone);
        return new LoopPainter(picture, figures, new(figures, Units(machine, units)), isClickable)
            .Write(hasLegend ? new LoopLegend(layout, picture, figures) : null, Description(machine, layout));
    }

    /// <summary>The same as rows of a table, in the direction of flow: place, what is measured, figure. Findings come first.</summary>
    /// <param name="machine">Machine.</param>
    /// <param name="layout">Its layout.</param>
    /// <param name="figures">What is written at parts and lines.</param>
    /// <param name="units">Units that come first.</param>
    public static IReadOnlyList<IReadOnlyList<string>> Rows(MachineDescription machine, LoopLayout layout, LoopFigures figures, UnitSystem units)
    {
        var readout = new Readout(units, machine.Room.PressurePa, typographic: true);
        var rows = figures.Marks.Select(m => (IReadOnlyList<string>)[m.Place, m.Word, m.Why]).ToList();
        foreach (var place in Places(machine, layout))
            rows.AddRange(figures.At(place).Select(f => (IReadOnlyList<string>)[place, FigureText.KindName(f.Kind), FigureText.Of(f, readout)]));
        return rows;
    }

    /// <summary>The picture with every place in it, for tests of what overlaps.</summary>
    internal static LoopPicture Picture(MachineDescription machine, LoopLayout layout, LoopFigures figures, UnitSystem units, bool isPhone) =>
        new LoopPlan(machine, layout, figures, units, isPhone).Make();

    private static PartUnits Units(MachineDescription machine, UnitSystem units) => new(new Readout(units, machine.Room.PressurePa, typographic: true), machine.Room.PressurePa);

    private static string Description(MachineDescription machine, LoopLayout layout)
    {
        var way = string.Join(", ", layout.LoopPath.Select(s => s.Port));
        var product = layout.ProductPath.Count == 0 ? "" : $" The product passes {string.Join(", ", layout.ProductPath.Select(s => s.Port))}.";
        return $"The loop of {machine.Name}, warm above and cold below. The mixture passes {way}.{product} The table behind the drawing has every figure.";
    }

    // Each part and the line that leads to it, round the loop and along the product's way, then the rest in file order.
    private static IEnumerable<string> Places(MachineDescription machine, LoopLayout layout)
    {
        var way = layout.LoopPath.Concat(layout.ProductPath).SelectMany(s => s.Line is { } l ? new[] { LoopFigures.PlaceOf(l), s.Part.Name } : [s.Part.Name]);
        return way.Concat(machine.Parts.Select(p => p.Name)).Concat(machine.Lines.Select(LoopFigures.PlaceOf)).Distinct();
    }
}
