using Coldwright.Machine.Recuperation;
using Coldwright.Simulation.Parts.Pictures;

namespace Coldwright.Simulation.Parts;

/// <summary>The exchanger along its length: temperatures and phases, conductance, films, pressure.</summary>
internal static class RecuperatorPictures
{
    private static readonly PictureAxis Length = new("from the warm end (left) to the cold end", "m");

    public static IEnumerable<PartPicture> All(RecuperatorResult r)
    {
        var p = r.Profile;
        PictureLine Line(string id, string name, PictureRole role, Func<RecuperatorStation, double> value, bool thin = false) => new(id, name, role, [.. p.Select(s => (s.PositionM, value(s)))], thin);
        yield return new LinePicture("temperatures", "Temperatures and phases along the exchanger",
            "The high-pressure stream (warm colour) flows from left to right and is cooled; the low-pressure stream (cold colour) returns from right to left; the thin line is the wall between them. The bars name what each stream is made of along the way. Heat passes slowly where the lines come close: the closest place, the pinch, is marked.")
        {
            X = Length, Y = new("temperature", "K"),
            Lines = [Line("high", "high-pressure stream →", PictureRole.HighSide, s => s.HotK), Line("low", "← low-pressure stream", PictureRole.LowSide, s => s.ColdK), Line("wall", "", PictureRole.Plain, s => s.WallK, true)],
            Marks = [new("pinch", PictureRole.Plain, Math.Clamp(r.Pinch.PositionM, p[0].PositionM, p[^1].PositionM), (r.Pinch.HotK + r.Pinch.ColdK) / 2) { Shown = (r.Pinch.DifferenceK, new("streams apart", "K", true)) }],
            Above = new("high", PictureRole.HighSide, [.. p.Select(s => (s.PositionM, s.HotPhases))]),
            Below = new("low", PictureRole.LowSide, [.. p.Select(s => (s.PositionM, s.ColdPhases))]),
        };
        yield return new LinePicture("differences", "How far apart the streams are", "The difference between the two streams along the length. Where it is small the exchanger does little; a pinch inside cannot be cured by more length at the ends, only by another mixture or other pressures.")
        {
            X = Length, Y = new("streams apart", "K", true), FromZero = true, Lines = [Line("difference", "", PictureRole.Plain, s => s.HotK - s.ColdK)],
            Marks = [new("pinch", PictureRole.Plain, Math.Clamp(r.Pinch.PositionM, p[0].PositionM, p[^1].PositionM), r.Pinch.DifferenceK)],
        };
        yield return new LinePicture("conductance", "Heat conductance per metre", "How well heat passes from stream to stream at each place, wall included. It is low where a stream is all vapour and high where it condenses or boils, though a mixture's vapour has to be cooled along with it, which costs much of that.")
        {
            X = Length, Y = new("conductance", "W/(m K)"), FromZero = true, Lines = [Line("conductance", "", PictureRole.Cooling, s => s.ConductancePerLength)],
        };
        yield return new LinePicture("films", "Film coefficients of both streams", "What the conductance is made of: how well each stream gives heat to its wall. The lower of the two decides.")
        {
            X = Length, Y = new("film coefficient", "W/(m2 K)"), FromZero = true, Lines = [Line("high", "high-pressure stream", PictureRole.HighSide, s => s.HotFilm), Line("low", "low-pressure stream", PictureRole.LowSide, s => s.ColdFilm)],
        };
        yield return new LinePicture("pressure", "Pressure lost on the way", "How much pressure each stream has lost since it entered: the high-pressure stream enters left, the low-pressure stream right. Loss on the low side weighs most: the compressor then draws in thinner gas.")
        {
            X = Length, Y = new("pressure lost", "Pa", true), FromZero = true,
            Lines = [Line("high", "high-pressure stream", PictureRole.HighSide, s => r.Hot.InletPressurePa - s.HotPressurePa), Line("low", "low-pressure stream", PictureRole.LowSide, s => r.Cold.InletPressurePa - s.ColdPressurePa)],
        };
    }
}
