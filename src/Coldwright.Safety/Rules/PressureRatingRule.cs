using System.Globalization;
using Coldwright.Machine.Description;
using Coldwright.Materials.Tubes;
using Coldwright.Safety.Layout;
using Coldwright.Safety.Pressure;

namespace Coldwright.Safety.Rules;

/// <summary>Every tube, every part with a stamped limit and every end of known thickness against its own pressure; and what could not be rated.</summary>
internal static class PressureRatingRule
{
    public static IEnumerable<Finding> Apply(MachineLayout layout, CautionInputs inputs)
    {
        foreach (var item in PressureItems.Of(layout, inputs))
            if (item.LimitPa is null) yield return TooHot(item);
            else if (item.WorkingPa > item.LimitPa) yield return Over(item);

        foreach (var vessel in layout.Machine.PartsOf<VesselPart>())
            if (vessel.MaximumPressurePa is null && (vessel.CapThicknessM is null || !PressureItems.IsCopper(vessel)))
                yield return Ends(vessel, layout);

        if (layout.Machine.Operation.StandstillPressurePa is null && layout.Machine.PartsOf<CompressorPart>().Any())
            yield return new("standstill-unknown", Grade.Note, "machine", null, null, "Pa",
                "the low side was rated for the low pressure only; when the machine stands warm the whole loop comes to one pressure between the two", "our assumption; a gas fills all of a loop that stands open inside",
                "a low side built for the low pressure can burst on the first warm morning", "read the standstill pressure with everything warm and enter it");
    }

    private static Finding TooHot(PressureItem item) => new("tube-too-hot", Grade.Stop, item.Name, item.TemperatureK, TubeRating.MaximumTemperatureK, "K",
        "copper tube has no allowable stress above 400 °F", TubeRating.Source,
        "hot copper creeps and bursts", "lower the discharge temperature or use steel tube");

    private static Finding Over(PressureItem item) => item switch
    {
        { Stamped: true } => new("stamp-above-formula", Grade.Serious, item.Name, item.WorkingPa, item.LimitPa, "Pa",
            "the pressure given for the part lies above what annealed copper of these dimensions carries by formula", item.Basis == PressureBasis.Cap ? CapSource : TubeRating.Source,
            "the part can burst although its entry says otherwise", "check the entry against the stamp and the dimensions; lower the pressure until they agree"),
        { Basis: PressureBasis.Stamp } => new("part-over-pressure", Grade.Stop, item.Name, item.WorkingPa, item.LimitPa, "Pa",
            "working pressure at or below the pressure allowed by the maker", "the maker's rating as given in the machine file",
            "the part can burst", "lower the pressure or take a part made for it"),
        { Basis: PressureBasis.Cap } => new("cap-over-pressure", Grade.Stop, item.Name, item.WorkingPa, item.LimitPa, "Pa",
            "ends of a vessel thick enough for its pressure; brazing anneals them", CapSource,
            "the end blows off", "take domed ends or thicker ones, or lower the pressure"),
        _ => new("tube-over-pressure", Grade.Stop, item.Name, item.WorkingPa, item.LimitPa, "Pa",
            $"annealed copper tube {item.Tube!.Text}: gauge pressure at or below 2 S tmin / (Dmax - 0.8 tmin); brazing anneals drawn tube", TubeRating.Source,
            "the tube can burst", "take a smaller tube or a thicker wall, or lower the pressure"),
    };

    private static Finding Ends(VesselPart vessel, MachineLayout layout)
    {
        var room = layout.Machine.Room;
        var working = layout.PressurePa(Zone.Feed);
        const string consequence = "a flat soldered end is the first to fail";
        if (!PressureItems.IsCopper(vessel))
            return new("vessel-ends-not-rated", Grade.Caution, vessel.Name, working, null, "Pa",
                $"the allowable stress of {vessel.WallMaterial} is not in this program; neither wall nor ends were rated for it", TubeRating.Source,
                consequence, "have the vessel designed and tested by someone licensed, and enter maximum-pressure");
        // An end as thick as the tube is what comes to hand first; for a flat one that is far too little.
        var limit = room.PressurePa + PressureItems.CapGaugePa(vessel, vessel.Tube.WallM, room.TemperatureK);
        var (flat, domed) = PressureItems.CapThicknessM(vessel, Math.Max(working - room.PressurePa, 0), room.TemperatureK);
        var rule = string.Create(CultureInfo.InvariantCulture,
            $"the tube was rated, its ends and joints were not; for this pressure a flat copper end needs {flat * 1e3:0.0} mm, a domed one {(domed is { } t ? $"{t * 1e3:0.0} mm" : "more than its formula covers")}; the limit is that of an end as thick as the tube");
        return new("vessel-ends-not-rated", limit < working ? Grade.Serious : Grade.Caution, vessel.Name, working, limit, "Pa", rule, CapSource,
            consequence, "measure the ends and enter cap-thickness, or have the vessel designed and tested by someone licensed and enter maximum-pressure");
    }

    private const string CapSource = FlatCap.Source + "; " + DomedCap.Source + "; stress of annealed copper: Copper Development Association";
}
