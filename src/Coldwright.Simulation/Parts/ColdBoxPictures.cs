using Coldwright.Machine.Insulation;
using Coldwright.Simulation.Parts.Pictures;

namespace Coldwright.Simulation.Parts;

/// <summary>The cold box: leak by path, leak against temperature, temperature through the wall.</summary>
internal static class ColdBoxPictures
{
    private const int Steps = 12;
    private const double ColdestK = 70;

    public static IEnumerable<PartPicture> All(PartContext c, InsulatedEnclosure box, EnclosureLeak r)
    {
        yield return new BarPicture("paths", "The leak by path", "Each way for heat into the box, with its own uncertainty from the materials. Tubes are counted straight through the wall: a longer way through the insulation leaks less.")
        {
            Axis = new("heat flow", "W"), Bars = [.. r.Paths.OrderByDescending(p => p.PowerW).Select(p => new PictureBar(p.Name, p.PowerW, p.DeviationW, PictureRole.Leak))],
        };
        var curve = Curve(c, box);
        yield return new LinePicture("leak", "The leak against the temperature inside", "The whole leak and what comes through the wall alone, for other temperatures inside; the dot is this cooler. Insulation conducts less when cold, so the line is not straight.")
        {
            X = new("temperature inside", "K"), Y = new("heat leak", "W"), FromZero = true,
            Lines = [new("total", "whole leak", PictureRole.Leak, [.. curve.Select(p => (p.InsideK, p.TotalW))], false, r.DeviationW / r.TotalW), new("wall", "through the wall", PictureRole.Loss, [.. curve.Select(p => (p.InsideK, p.WallW))])],
            Marks = [new("this cooler", PictureRole.Plain, r.InsideK, r.TotalW)],
        };
        yield return new LinePicture("profile", "Temperature through the wall", "From the inside surface (left) to the outside (right). Where the line is steep the layer holds back much of the heat.")
        {
            X = new("depth in the wall", "m"), Y = new("temperature", "K"), Lines = [new("wall", "", PictureRole.Cooling, [.. r.Profile.Select(p => (p.DepthM, p.TemperatureK))])],
            Uprights = [.. r.Layers.Skip(1).Select(l => new PictureUpright(l.Name, PictureRole.Plain, l.InnerDepthM))],
            Marks = [new("outside", PictureRole.Plain, r.Profile[^1].DepthM, r.Profile[^1].TemperatureK)],
        };
    }

    private static List<EnclosureLeak> Curve(PartContext c, InsulatedEnclosure box)
    {
        var curve = new List<EnclosureLeak>();
        double warm = c.RoomK - 5;
        for (int i = 0; i <= Steps; i++)
        {
            c.Cancel.ThrowIfCancellationRequested();
            curve.Add(EnclosureSolver.Solve(box, ColdestK + (warm - ColdestK) * i / Steps));
        }
        return curve;
    }
}
