using Coldwright.Machine.Description;
using Coldwright.Materials.Tubes;
using Coldwright.Safety.Layout;

namespace Coldwright.Safety.Rules;

/// <summary>Every tube and every part with a stamped limit against its own pressure; vessel ends without a stamp.</summary>
internal static class PressureRatingRule
{
    public static IEnumerable<Finding> Apply(MachineLayout layout, CautionInputs inputs)
    {
        var machine = layout.Machine;
        foreach (var line in machine.Lines)
            if (line.Tube is { } tube)
                foreach (var finding in Tube($"{line.From} to {line.To}", tube, layout.PressurePa(layout.ZoneOf(line)), TemperatureK(line, layout, inputs), machine.Room.PressurePa))
                    yield return finding;

        foreach (var part in machine.Parts)
        {
            if (part.MaximumPressurePa is { } stamped)
            {
                var zone = layout.ZoneOf(part);
                var pressure = part is FlaskPart or BlockPart or ColdBoxPart ? machine.Room.PressurePa : layout.PressurePa(zone);
                if (pressure > stamped)
                    yield return new("part-over-pressure", Grade.Stop, part.Name, pressure, stamped, "Pa",
                        "working pressure at or below the pressure allowed by the maker", "the maker's rating as given in the machine file",
                        "the part can burst", "lower the pressure or take a part made for it");
                continue;
            }
            foreach (var (name, tube, zone) in TubeLimits.Of(part))
                foreach (var finding in Tube(name, tube, layout.PressurePa(zone), machine.Room.TemperatureK, machine.Room.PressurePa))
                    yield return finding;
            if (part is VesselPart)
                yield return new("vessel-ends-not-rated", Grade.Caution, part.Name, layout.PressurePa(Zone.Feed), null, "Pa",
                    "the tube was rated, its end caps and joints were not; a flat end needs about five times the thickness of the tube or a domed end",
                    "form of ASME VIII-1 UG-34 (flat ends) and UG-32 (domed ends), coefficients from memory",
                    "a flat soldered end is the first to fail", "have the vessel designed and tested by someone licensed, and enter its allowed pressure");
        }
    }

    private static IEnumerable<Finding> Tube(string name, Tube tube, double pressurePa, double temperatureK, double roomPressurePa)
    {
        var limit = TubeLimits.OfTube(tube, temperatureK, roomPressurePa);
        if (limit is null)
            yield return new("tube-too-hot", Grade.Stop, name, temperatureK, TubeRating.MaximumTemperatureK, "K",
                "copper tube has no allowable stress above 400 °F", TubeRating.Source,
                "hot copper creeps and bursts", "lower the discharge temperature or use steel tube");
        else if (pressurePa > limit)
            yield return new("tube-over-pressure", Grade.Stop, name, pressurePa, limit, "Pa",
                $"annealed copper tube {tube.Text}: gauge pressure at or below 2 S tmin / (Dmax - 0.8 tmin); brazing anneals drawn tube", TubeRating.Source,
                "the tube can burst", "take a smaller tube or a thicker wall, or lower the pressure");
    }

    /// <summary>The line out of the compressor runs at discharge temperature, every other at that of the room at most.</summary>
    private static double TemperatureK(Line line, MachineLayout layout, CautionInputs inputs) => layout.PartAt(line.From) is CompressorPart compressor
        ? Math.Max(inputs.DischargeTemperatureK ?? compressor.MaximumDischargeTemperatureK, layout.Machine.Room.TemperatureK)
        : layout.Machine.Room.TemperatureK;
}
