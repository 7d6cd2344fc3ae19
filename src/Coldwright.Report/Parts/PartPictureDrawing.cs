using Coldwright.Report.Charts;
using Coldwright.Report.Html;
using Coldwright.Report.Rating;
using Coldwright.Simulation.Parts.Pictures;

namespace Coldwright.Report.Parts;

/// <summary>Draws the line pictures of a part in the reader's units.</summary>
/// <param name="picture">Data in SI.</param>
/// <param name="units">Units.</param>
internal sealed class PartPictureDrawing(LinePicture picture, PartUnits units)
{
    private const int MostRows = 40;

    private readonly PartScale _x = units.Scale(picture.X.Unit, picture.Lines.SelectMany(l => l.Points).Max(p => Math.Abs(p.X)), picture.X.IsDifference);
    private readonly PartScale _y = units.Scale(picture.Y.Unit, picture.Lines.SelectMany(l => l.Points).Max(p => Math.Abs(p.Y)), picture.Y.IsDifference);

    /// <summary>The picture as an SVG element.</summary>
    public string Draw(ChartSize size) => Chart(size).Draw(size);

    /// <summary>The numbers: a row for each point of the first line, a column for each line with the same places.</summary>
    public void Table(HtmlText html)
    {
        var first = picture.Lines[0].Points;
        var columns = picture.Lines.Where(l => l.Points.Count == first.Count && l.Points.Zip(first).All(p => p.First.X == p.Second.X)).ToArray();
        var strips = new[] { picture.Above, picture.Below }.OfType<PictureRanges>().Where(r => r.Places.Count == first.Count).ToArray();
        var every = (first.Count + MostRows - 1) / MostRows;
        var rows = Enumerable.Range(0, first.Count).Where(i => i % every == 0 || i == first.Count - 1).Select(i => (IReadOnlyList<string>)
        [
            Number(_x, first[i].X), .. columns.Select(c => Number(_y, c.Points[i].Y)), .. strips.Select(s => RecuperatorPicture.Phases(s.Places[i].Name)),
        ]);
        html.Table([$">{Label(picture.X, _x)}", .. columns.Select(c => $">{(c.Name == "" ? picture.Y.Name : c.Name)}{(_y.Label == "" ? "" : $", {_y.Label}")}"), .. strips.Select(s => $"{s.Name}")], rows);
    }

    private LineChart Chart(ChartSize size)
    {
        var areas = picture.Lines.Where(l => l.RelativeBand is not null).Select(l => new Area(Ink(l.Role), [.. l.Points.Select(p => Band(p, l.RelativeBand!.Value))])).ToArray();
        var values = picture.Lines.SelectMany(l => l.Points).Select(p => _y.FromSi(p.Y)).Concat(areas.SelectMany(a => a.Points).SelectMany(p => new[] { p.Low, p.High }))
            .Concat(picture.Marks.Select(m => _y.FromSi(m.Y))).ToArray();
        var places = picture.Lines.SelectMany(l => l.Points).Select(p => _x.FromSi(p.X)).Concat(picture.Marks.Select(m => _x.FromSi(m.X))).ToArray();
        return new()
        {
            Description = $"{picture.Title}: {picture.Y.Name} against {picture.X.Name}.",
            X = new(Label(picture.X, _x), places.Min(), places.Max(), true),
            Y = picture.FromZero ? new(Label(picture.Y, _y), Math.Min(0, values.Min()), Math.Max(values.Max() * 1.05, 1e-9)) : Axis.Around(Label(picture.Y, _y), values, 0.06),
            Areas = areas,
            Curves = [.. picture.Lines.Select(Curve)],
            Marks = [.. picture.Marks.Select(m => new Mark(_x.FromSi(m.X), _y.FromSi(m.Y), Ink(m.Role), [m.Name, Beside(m)]))],
            Uprights = [.. picture.Uprights.Select(u => new Upright(_x.FromSi(u.X), Ink(u.Role), [.. Lines(u.Name), Number(_x, u.X) + (_x.Label == "" ? "" : $" {_x.Label}")]))],
            Above = Strip(picture.Above),
            Below = Strip(picture.Below),
        };
    }

    private string Beside(PictureMark mark) => mark.Shown is { } shown ? units.Text(shown.Value, shown.Of.Unit, shown.Of.IsDifference) : Number(_y, mark.Y) + (_y.Label == "" ? "" : $" {_y.Label}");

    private Curve Curve(PictureLine line) => new(line.Name, Ink(line.Role), [.. line.Points.Select(p => (_x.FromSi(p.X), _y.FromSi(p.Y)))],
        [.. line.Points.Select(p => $"{(line.Name == "" ? picture.Y.Name : line.Name)}: {Number(_y, p.Y)} {_y.Label} at {Number(_x, p.X)} {_x.Label}".TrimEnd())], line.Thin);

    private (double, double, double) Band((double X, double Y) p, double share)
    {
        double a = _y.FromSi(p.Y * (1 - share)), b = _y.FromSi(p.Y * (1 + share));
        return (_x.FromSi(p.X), Math.Min(a, b), Math.Max(a, b));
    }

    // neighbouring stations with the same name make one range; the border lies midway
    private Strip? Strip(PictureRanges? ranges)
    {
        if (ranges is null || ranges.Places.Count == 0) return null;
        var (found, places) = (new List<(double, double, string, string)>(), ranges.Places);
        double from = places[0].X;
        for (var i = 0; i < places.Count; i++)
        {
            var last = i + 1 == places.Count;
            if (!last && places[i + 1].Name == places[i].Name) continue;
            var to = last ? places[i].X : (places[i].X + places[i + 1].X) / 2;
            var text = RecuperatorPicture.Phases(places[i].Name);
            if (to > from) found.Add((_x.FromSi(from), _x.FromSi(to), text, Short(text)));
            from = to;
        }
        return new(ranges.Name, Ink(ranges.Role), found);
    }

    private static string Short(string phases) => phases.Contains("second liquid", StringComparison.Ordinal) ? "2 liquids" : phases == "vapour + liquid" ? "both" : phases;

    // a long label of an upright line stands on two rows
    private static IEnumerable<string> Lines(string name)
    {
        if (name.Length <= 14 || name.IndexOf(' ', name.Length / 3) is not (> 0 and var at)) return [name];
        return [name[..at], name[(at + 1)..]];
    }

    private static string Label(PictureAxis axis, PartScale scale) => scale.Label == "" ? axis.Name : $"{axis.Name}, {scale.Label}";

    private string Number(PartScale scale, double si)
    {
        var v = scale.FromSi(si);
        return scale.Label is "K" or "°F" && Math.Abs(v) >= 10 ? units.Readout.Fixed(v, 1) : units.Readout.Figures(v, Math.Abs(v) >= 1000 ? 4 : 3);
    }

    internal static Ink Ink(PictureRole role) => role switch
    {
        PictureRole.HighSide => Charts.Ink.High,
        PictureRole.LowSide => Charts.Ink.Low,
        PictureRole.Cooling => Charts.Ink.Cooling,
        PictureRole.Leak => Charts.Ink.Leak,
        PictureRole.Other => Charts.Ink.Second,
        PictureRole.Loss => Charts.Ink.Loss,
        _ => Charts.Ink.Plain,
    };
}
