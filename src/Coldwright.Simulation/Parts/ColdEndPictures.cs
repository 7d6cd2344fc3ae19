using Coldwright.Machine.ColdVessel;
using Coldwright.Numerics;
using Coldwright.Simulation.Parts.Pictures;

namespace Coldwright.Simulation.Parts;

/// <summary>The coil along its tube, and its heat against the level.</summary>
internal static class ColdEndPictures
{
    private const int Levels = 8;

    public static IEnumerable<PartPicture> All(PartContext c, ColdVesselInput input, ColdVesselResult r)
    {
        var p = r.Profile;
        PictureLine Line(string id, string name, PictureRole role, Func<CoilStation, double> value, bool thin = false) => new(id, name, role, [.. p.Select(s => (s.PositionM, value(s)))], thin);
        var along = new PictureAxis("along the tube from where the mixture enters", "m");
        var phases = new PictureRanges("mixture", PictureRole.LowSide, [.. p.Select(s => (s.PositionM, s.Phases))]);
        var zones = new PictureRanges("content", PictureRole.HighSide, [.. p.Select(s => (s.PositionM, Zone(s.Zone)))]);
        yield return new LinePicture("temperatures", "Temperatures along the coil", "The mixture (cold colour) boils on its way through the tube and gets warmer; the content of the vessel (warm colour) is liquid below the level and condensing gas above it; the thin line is the outer surface of the coil. The bars name what the mixture is made of and what the content does.")
        {
            X = along, Y = new("temperature", "K"), Lines = [Line("mixture", "mixture", PictureRole.LowSide, s => s.MixtureK), Line("content", "content", PictureRole.HighSide, s => s.ContentK), Line("wall", "", PictureRole.Plain, s => s.WallK, true)],
            Above = zones, Below = phases,
        };
        yield return new LinePicture("heat", "Heat taken up per metre", "How much heat each metre of the coil takes out of the content. Condensing gas gives far more than liquid that is only cooled.")
        {
            X = along, Y = new("heat", "W/m"), FromZero = true, Lines = [Line("heat", "", PictureRole.Cooling, s => s.HeatPerLength)], Above = zones,
        };
        yield return new LinePicture("films", "Film coefficients inside and outside", "How well the mixture inside and the content outside give heat to the tube. The lower of the two decides.")
        {
            X = along, Y = new("film coefficient", "W/(m2 K)"), FromZero = true, Lines = [Line("inside", "mixture inside", PictureRole.LowSide, s => s.InsideFilm), Line("outside", "content outside", PictureRole.HighSide, s => s.OutsideFilm)], Above = zones,
        };
        if (!input.Product.IsDense && LevelCurve(c, input) is { Count: > 1 } curve)
            yield return new LinePicture("level", "Heat against the level", "What the coil takes up while the vessel fills: the higher the liquid stands, the less coil is left in the gas. The dot is the level taken here.")
            {
                X = new("height of the liquid", "m"), Y = new("heat", "W"), FromZero = true, Lines = [new("heat", "", PictureRole.Cooling, curve, false, r.Band is { } band && r.HeatW > 0 ? band.HeatW / r.HeatW : null)],
                Marks = [new("taken here", PictureRole.Plain, input.LevelM, r.HeatW)],
            };
    }

    // at some level the last gas may be gone: the curve then ends
    private static List<(double, double)> LevelCurve(PartContext c, ColdVesselInput input)
    {
        var curve = new List<(double, double)>();
        var quick = input with { Options = input.Options with { Band = false } };
        for (int i = 0; i <= Levels; i++)
        {
            double level = input.Vessel.HeightM * i / Levels;
            try
            {
                curve.Add((level, ColdVesselModel.Solve(quick with { LevelM = level }, c.Cancel).HeatW));
            }
            catch (SolveException) when (i > Levels / 2)
            {
                break;
            }
        }
        return curve;
    }

    private static string Zone(CoilZone zone) => zone switch { CoilZone.Condensing => "gas condenses", CoilZone.Submerged => "liquid", _ => "dense fluid" };
}
