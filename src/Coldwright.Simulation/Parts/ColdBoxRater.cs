using Coldwright.Machine.Description;
using Coldwright.Machine.Insulation;
using Coldwright.Materials.Solids;
using Coldwright.Simulation.Parts.Pictures;

namespace Coldwright.Simulation.Parts;

/// <summary>Rates the cold box: leak by path with its band, temperatures through the wall, sweating, stored heat.</summary>
internal static class ColdBoxRater
{
    public static PartRating Rate(PartContext c, ColdBoxPart part)
    {
        double insideK = c.Point.LoadTemperatureK, inletK = c.At("into the recuperator").TemperatureK, humidity = c.Machine.Room.RelativeHumidity ?? BoxEnclosure.UsualHumidity;
        var warnings = new List<string>();
        var box = BoxEnclosure.Of(c.Machine, part, inletK, warnings);
        var r = EnclosureSolver.Solve(box, insideK);
        if (c.Machine.Room.RelativeHumidity is null) warnings.Add(FormattableString.Invariant($"the humidity of the room is not given: {100 * BoxEnclosure.UsualHumidity:0} % was taken for the dew point; add 'humidity' to room (humidity: 45 %)"));
        double rating = c.Loop.HeatLeakW.Values.Sum();
        return new PartRating
        {
            Part = part.Name,
            Kind = Kinds.Of(part),
            Method = "conduction through the layers of the wall, along tubes and wires, with free convection and radiation outside",
            FluidModel = c.Loop.Model,
            Point = c.Point,
            Verdict = Verdict(r),
            Sections =
            [
                new("inlet", "Between what temperatures", new PartFigure("inside_temperature_K", "Everything in the box", insideK, "K", null, "taken as all at the load's temperature"),
                    new("warm_end_temperature_K", "Warm end of the recuperator", inletK, "K", null, "where its tubes end"), new("room_temperature_K", "Room", c.RoomK, "K"), new("humidity", "Relative humidity", humidity, "1")),
                new("figures", "The box at work",
                    PartFigure.PlusMinus("leak_W", "Heat leak", r.TotalW, "W", r.DeviationW), PartFigure.PlusMinus("wall_W", "Of it through the wall", r.WallW, "W", r.Paths[0].DeviationW),
                    new("rating_leak_W", "In the rating of the whole cooler", rating, "W", null, rating > 0 ? "one layer, fixed outside film" : "found without the leak"),
                    new("outside_surface_K", "Outside of the wall", r.OutsideSurfaceK, "K"), new("dew_point_K", "Dew point of the room", r.DewPointK, "K"),
                    new("stored_heat_J", "Heat to be taken out of the wall in a cooldown", r.StoredHeatJ, "J", null, r.StoredHeatComplete ? "" : "a layer of unknown density or specific heat is left out")),
                new("paths", "By path", [.. r.Paths.Select((p, i) => PartFigure.PlusMinus(FormattableString.Invariant($"path_{i + 1}_W"), p.Name, p.PowerW, "W", p.DeviationW))]),
                new("layers", "Layers", [.. r.Layers.SelectMany((l, i) => new PartFigure[]
                {
                    new(FormattableString.Invariant($"layer_{i + 1}_inner_K"), $"{l.Name}, inner surface", l.InnerK, "K"),
                    new(FormattableString.Invariant($"layer_{i + 1}_share"), $"{l.Name}, share of the difference", l.ShareOfResistance, "1"),
                })]),
            ],
            Balances = [("flows through neighbouring layers", r.EnergyError)],
            Pictures = [.. ColdBoxPictures.All(c, box, r)],
            Sources = ["docs/theory/insulation.md", .. Materials(part, c)],
            Warnings = c.Told([.. warnings, .. r.Warnings]),
        };
    }

    private static string Verdict(EnclosureLeak r)
    {
        var most = r.Paths.MaxBy(p => p.PowerW)!;
        string sweat = r.OutsideSurfaceK < r.DewPointK ? " The outside is below the room's dew point: it sweats." : " The outside stays above the room's dew point.";
        return FormattableString.Invariant($"Most of the leak, {100 * most.PowerW / r.TotalW:0} %, comes through {(most.Name == "insulation" ? "the insulation" : $"the {most.Name}")}.{sweat}");
    }

    private static IEnumerable<string> Materials(ColdBoxPart part, PartContext c) => BoxLayers.Names(part).Concat(part.Penetrations.Select(p => p.Material)).Append(BoxEnclosure.TubeMetal).Distinct()
        .Select(name => SolidLibrary.Default.Find(name)).Select(m => FormattableString.Invariant($"{m.Name}: {m.ConductivityCurve.Source}"));
}
