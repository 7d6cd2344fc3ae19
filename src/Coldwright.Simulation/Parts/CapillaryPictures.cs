using Coldwright.Machine.Throttling;
using Coldwright.Simulation.Parts.Pictures;

namespace Coldwright.Simulation.Parts;

/// <summary>The capillary's march: pressure, temperature and vapour along its length.</summary>
internal static class CapillaryPictures
{
    private static readonly PictureAxis Length = new("from the entrance (left) to the exit", "m");

    public static IEnumerable<PartPicture> All(CapillaryResult r)
    {
        // the march may end in a kink of many points at one place
        var p = Thinned(r.Profile);
        PictureLine Line(string id, PictureRole role, Func<CapillaryPoint, double> value) => new(id, "", role, [.. p.Select(s => (s.PositionM, value(s)))]);
        var phases = new PictureRanges("phases", PictureRole.HighSide, [.. p.Select(s => (s.PositionM, s.Phases))]);
        PictureMark[] marks = r.Choked ? [new("choked exit", PictureRole.Leak, p[^1].PositionM, p[^1].PressurePa)] : [new("exit", PictureRole.Plain, p[^1].PositionM, p[^1].PressurePa)];
        PictureUpright[] flash = r.FlashPositionM is { } at && at > 0.02 * p[^1].PositionM ? [new("vapour appears", PictureRole.Plain, at)] : [];
        yield return new LinePicture("pressure", "Pressure along the capillary",
            "Pressure from entrance to exit. In liquid it falls evenly; once vapour forms the flow gets faster and faster and the pressure falls ever more steeply. A choked exit has the speed of sound there: the flow does not depend on what lies behind, and the last of the pressure is lost outside the tube.")
        {
            X = Length, Y = new("pressure", "Pa"), FromZero = true, Lines = [Line("pressure", PictureRole.HighSide, s => s.PressurePa), new("back", "behind the tube", PictureRole.LowSide, [(p[0].PositionM, r.BackPressurePa), (p[^1].PositionM, r.BackPressurePa)], true)],
            Marks = marks, Uprights = flash, Above = phases,
        };
        yield return new LinePicture("temperature", "Temperature along the capillary", "Temperature of the mixture on the way. It hardly changes while all is liquid; where vapour forms, its heat is taken from the mixture itself. A little of the cooling is spent as speed and comes back behind the exit.")
        {
            X = Length, Y = new("temperature", "K"), Lines = [Line("temperature", PictureRole.LowSide, s => s.TemperatureK)], Above = phases,
        };
        yield return new LinePicture("quality", "Vapour along the capillary", "Mass of vapour over mass of the mixture at each place, vapour and liquid taken as of one temperature and one speed.")
        {
            X = Length, Y = new("vapour, share by mass", "1"), FromZero = true, Lines = [Line("quality", PictureRole.Cooling, s => s.Quality)], Above = phases,
        };
    }

    private static CapillaryPoint[] Thinned(IReadOnlyList<CapillaryPoint> profile)
    {
        const int most = 160;
        if (profile.Count <= most) return [.. profile];
        // even steps in the length as far as the points allow, all of the last stretch, where everything happens
        double end = profile[^1].PositionM, start = profile[0].PositionM;
        var kept = new List<CapillaryPoint> { profile[0] };
        for (int i = 1; i < profile.Count - 1; i++)
        {
            bool fall = kept[^1].PressurePa - profile[i].PressurePa > (profile[0].PressurePa - profile[^1].PressurePa) / most;
            if (fall || profile[i].PositionM - kept[^1].PositionM > (end - start) / most || profile[i].Phases != kept[^1].Phases) kept.Add(profile[i]);
        }
        kept.Add(profile[^1]);
        return [.. kept];
    }
}
