using Coldwright.Report.Charts;
using Coldwright.Report.Html;
using Coldwright.Simulation.Parts.Pictures;

namespace Coldwright.Report.Parts;

/// <summary>Draws the bar pictures of a part in the reader's units.</summary>
/// <param name="picture">Data in SI.</param>
/// <param name="units">Units.</param>
internal sealed class PartBars(BarPicture picture, PartUnits units)
{
    private readonly PartScale _scale = units.Scale(picture.Axis.Unit, picture.Bars.Max(b => Math.Abs(b.Value)), picture.Axis.IsDifference);

    /// <summary>The picture as an SVG element.</summary>
    public string Draw(ChartSize size) => new BarChart
    {
        Description = $"{picture.Title}: {string.Join(", ", picture.Bars.Select(b => $"{b.Name} {Value(b)}"))}.",
        AxisLabel = $"{picture.Axis.Name}, {_scale.Label}",
        Bars = [.. picture.Bars.Select(b => new Bar(b.Name, 0, _scale.FromSi(b.Value), PartPictureDrawing.Ink(b.Role), Value(b)))],
    }.Draw(size);

    /// <summary>The numbers.</summary>
    public void Table(HtmlText html) => html.Table([picture.Title, $">{picture.Axis.Name}", ">one standard deviation"],
        picture.Bars.Select(b => new[] { b.Name, units.Text(b.Value, picture.Axis.Unit), b.Deviation is { } d ? units.Text(d, picture.Axis.Unit) : "" }));

    private string Value(PictureBar b) => b.Deviation is > 0 and var d
        ? $"{units.Readout.Figures(_scale.FromSi(b.Value), 3)} ± {units.Readout.Figures(_scale.FromSi(d), 2)} {_scale.Label}" : units.Text(b.Value, picture.Axis.Unit);
}
