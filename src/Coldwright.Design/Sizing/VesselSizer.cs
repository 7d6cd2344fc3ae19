using Coldwright.Machine.Description;
using Coldwright.Materials.Tubes;
using Coldwright.Quantities;
using Coldwright.Safety.Pressure;
using Coldwright.Simulation.Parts;
using static Coldwright.Quantities.SpokenAmount;

namespace Coldwright.Design.Sizing;

/// <summary>Pipe, wall, caps and length of the cold vessel for a volume at its pressure.</summary>
internal static class VesselSizer
{
    // our assumptions: slimmer than this the coil does not go in, stouter the caps are heavier than the pipe
    private const double LeastSlender = 1.5, MostSlender = 14;

    public static SizeResult Size(SizeContext c, VesselPart part, SizeTarget? target)
    {
        double volume = target?.Value ?? part.VolumeM3;
        if (target is null) c.Said.Add("sized for the volume that the file describes; a target asks for another");
        double working = c.Layout.Feed?.PressurePa ?? c.RoomPa, set = c.Machine.Lines.Where(l => l.From == part.Name).Select(l => c.Machine.Parts.FirstOrDefault(p => p.Name == l.To)).OfType<ReliefPart>().Select(r => r.SetPressurePa).DefaultIfEmpty(working).Min();
        double design = Math.Max(working, set);
        if (set <= working) c.Said.Add($"no relief device of a higher set pressure hangs on {part.Name}: it is sized for the feed's pressure alone");
        var found = StockLoop.Each(c, SizeContext.Stock(0.6 * 0.0254, 3.2 * 0.0254), t => t.Text, t => One(c, t, volume, design, CoilM(c)));
        return new SizeResult
        {
            Part = part.Name,
            Kind = Kinds.Of(part),
            Target = new("volume_m3", "Volume of the body", volume, "m3"),
            TargetRemark = Spoken.Of($"at {Pressure(design, "0.##")}, the relief's set pressure where there is one"),
            Method = "annealed copper by the pressure rating of its handbook, ends by ASME VIII-1",
            Options = SizeContext.Sorted(found, "copper_kg"),
            Columns = ["length_m", "allowed_Pa", "domed_cap_m", "flat_cap_m", "water_test_Pa", "copper_kg"],
            Sources = [TubeRating.Source, CylinderWall.Source, DomedCap.Source, FlatCap.Source, ProofTest.Source, "tube sizes: ASTM B280, ASTM B88"],
            Warnings = ["a vessel that holds liquid under pressure is designed, brazed and tested by people licensed for it; these figures are where they begin"],
        };
    }

    // outside of a coil that has to go in, m
    private static double CoilM(SizeContext c) => c.Layout.Coil is { Place: not CoilPlace.Around, CoilDiameterM: { } d, Tube: { } tube } ? d + tube.OutsideDiameterM : 0;

    private static SizeOption One(SizeContext c, Tube tube, double volume, double design, double coilM)
    {
        double bore = tube.InsideDiameterM, length = volume / tube.BoreAreaM2, gauge = Math.Max(design - c.RoomPa, 1), allowed = c.AllowedPa(tube), stress = TubeRating.AnnealedStressPa(c.RoomK);
        var caps = PressureItems.CapThicknessM(new VesselPart { Name = "", Tube = tube, LengthM = length }, gauge, c.RoomK);
        double slender = length / bore, kg = RecuperatorSizer.Copper(tube, length);
        var why = allowed < design ? Spoken.Of($"allowed {Pressure(allowed, "0.#")}, {Pressure(design, "0.#")} needed")
            : bore < coilM ? FormattableString.Invariant($"a bore of {1e3 * bore:0.#} mm; the coil is {1e3 * coilM:0.#} mm wide")
            : slender < LeastSlender ? FormattableString.Invariant($"only {slender:0.#} bores long") : slender > MostSlender ? FormattableString.Invariant($"{slender:0} bores long: the coil does not go in") : "";
        return new SizeOption
        {
            Stock = tube.Text,
            Figures =
            [
                new("length_m", "Length between the caps", length, "m"), new("allowed_Pa", "Pipe allowed", allowed, "Pa"), new("wall_needed_m", "Wall needed, no tolerance", CylinderWall.ThicknessM(gauge, bore, stress), "m", null, FormattableString.Invariant($"it has {1e3 * tube.WallM:0.##} mm")),
                caps.DomedM is { } domed ? new("domed_cap_m", "Dished cap, knuckle 6 %", domed, "m") : PartFigure.Word("domed_cap_m", "Dished cap, knuckle 6 %", "beyond its formula"), new("hemisphere_m", "Half a sphere", DomedCap.ThicknessM(DomeForm.Hemispherical, gauge, bore, stress), "m"), new("ellipsoid_m", "2:1 ellipsoid", DomedCap.ThicknessM(DomeForm.Ellipsoidal, gauge, bore, stress), "m"),
                new("flat_cap_m", "Flat cap, brazed corner", caps.FlatM, "m", null, "flat soldered discs are what fails first"), new("water_test_Pa", "Water test", c.RoomPa + ProofTest.WaterGaugePa(gauge), "Pa"), new("copper_kg", "Copper of the pipe", kg, "kg"),
            ],
            Cut = [new(tube.Text, length, "m", c.PerMetre(tube.OutsideDiameterM, tube.WallM))],
            Keys = [("tube", tube.Text), ("length", FormattableString.Invariant($"{1e3 * length:0} mm")), ("caps", "domed"), ("cap-thickness", FormattableString.Invariant($"{Math.Ceiling(1e4 * (caps.DomedM ?? caps.FlatM)) / 10:0.0} mm"))],
            WhyNot = why,
        };
    }
}
