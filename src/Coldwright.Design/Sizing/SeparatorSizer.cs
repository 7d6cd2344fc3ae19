using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Machine.Description;
using Coldwright.Quantities;
using Coldwright.Safety.Pressure;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Rating;
using static Coldwright.Quantities.SpokenAmount;

namespace Coldwright.Design.Sizing;

/// <summary>Oil separator behind the compressor: a sump that fills in the time asked for, by the oil's own model, in an upright pipe wide enough that the gas lets the drops fall.</summary>
internal static class SeparatorSizer
{
    // M. Souders, G. G. Brown, Ind. Eng. Chem. 26 (1934) 98: v = K sqrt((rho_l - rho_g)/rho_g); K of an upright pipe without a mesh, from memory
    private const double SoudersBrownMPerS = 0.05, UsualOilKgPerM3 = 900;
    // our assumptions: drops settle over two bores, not less than 80 mm; the sump lies below; longer than twenty bores it no longer stands
    private const double SettlingBores = 2, LeastSettlingM = 0.08, MostSlender = 20;

    public static SizeResult Size(SizeContext c, CompressorPart part, SizeTarget? target)
    {
        if (part.Oil is not { } oil) throw new MissingKeysException(part.Name, part.Name, [new(part.Name, "oil", "oil: {sump-volume: 120 mL, return-bore: 1.2 mm, return-length: 0.5 m}")]);
        var rated = PartRater.Rate(c.Machine, c.Layout, c.Shop, part.Name, c.Options, null, c.Cancel);
        double Figure(string id) => rated.Sections.Single(s => s.Id == "oil").Figures.Single(f => f.Id == id).Value!.Value;
        double now = Figure("interval_s"), interval = target?.Value ?? now, sump = oil.SumpVolumeM3 * interval / now, oilDensity = oil.DensityKgPerM3 ?? UsualOilKgPerM3;
        if (target is null) c.Said.Add("sized for the interval between openings that the file's sump allows; a target asks for another");
        var gas = new Flash(c.Model).TemperaturePressure(c.Loop.Loop.DischargeTemperatureK, c.Loop.Loop.HighPressurePa, c.Z).Phases[0];
        double density = gas.MolarDensity * gas.MolarMass, flow = c.Loop.Loop.MassFlow / density, speed = SoudersBrownMPerS * Math.Sqrt((oilDensity - density) / density), hotK = c.Loop.Loop.DischargeTemperatureK;
        double design = part.MaximumPressurePa ?? c.Loop.Loop.HighPressurePa;
        var found = StockLoop.Each(c, SizeContext.Stock(0.85 * 0.0254, 3.2 * 0.0254), t => t.Text, t => One(c, t, sump, flow, speed, hotK, design));
        return new SizeResult
        {
            Part = part.Name,
            Kind = Kinds.Of(part),
            Target = new("interval_s", "Time between openings of the oil return", interval, "s"),
            TargetRemark = FormattableString.Invariant($"oil separator: a sump of {1e6 * sump:0} mL; the return stays open {Figure("open_time_s") * interval / now:0.#} s"),
            Method = "the oil circuit's own model for the sump, falling drops for the bore, annealed copper at discharge temperature for the wall",
            Options = SizeContext.Sorted(found, "copper_kg"),
            Columns = ["length_m", "gas_speed_m_s", "allowed_Pa", "copper_kg"],
            Sources = ["docs/theory/oil.md", "docs/theory/size.md", "M. Souders, G. G. Brown, Ind. Eng. Chem. 26 (1934) 98; K = 0.05 m/s from memory", Materials.Tubes.TubeRating.Source, "tube sizes: ASTM B280, ASTM B88"],
            Warnings = ["gas enters at the side, above the sump, and leaves at the top; the return leaves at the bottom", "how much of the oil such a pipe catches is the file's separator-efficiency: falling drops say nothing of mist"],
        };
    }

    private static SizeOption One(SizeContext c, Tube tube, double sump, double flow, double speed, double hotK, double design)
    {
        double bore = tube.InsideDiameterM, here = flow / tube.BoreAreaM2, length = sump / tube.BoreAreaM2 + Math.Max(SettlingBores * bore, LeastSettlingM), gauge = Math.Max(design - c.RoomPa, 1);
        double allowed = c.RoomPa + Materials.Tubes.TubeRating.AllowableGaugePressurePa(tube.OutsideDiameterM, tube.WallM, hotK), kg = RecuperatorSizer.Copper(tube, length);
        var caps = PressureItems.CapThicknessM(new VesselPart { Name = "", Tube = tube, LengthM = length }, gauge, hotK);
        return new SizeOption
        {
            Stock = tube.Text,
            Figures =
            [
                new("length_m", "Length between the caps", length, "m", null, FormattableString.Invariant($"{1e3 * sump / tube.BoreAreaM2:0} mm of it sump")), new("sump_m3", "Sump", sump, "m3"), new("gas_speed_m_s", "Gas rises at", here, "m/s"), new("speed_allowed_m_s", "Drops fall against", speed, "m/s"),
                new("allowed_Pa", "Pipe allowed, hot", allowed, "Pa"), caps.DomedM is { } domed ? new("domed_cap_m", "Dished cap, knuckle 6 %", domed, "m") : PartFigure.Word("domed_cap_m", "Dished cap, knuckle 6 %", "beyond its formula"), new("flat_cap_m", "Flat cap, brazed corner", caps.FlatM, "m"), new("copper_kg", "Copper of the pipe", kg, "kg"),
            ],
            Cut = [new(tube.Text, length, "m", c.PerMetre(tube.OutsideDiameterM, tube.WallM))],
            Keys = [("oil", FormattableString.Invariant($"{{sump-volume: {1e6 * sump:0} mL}}"))],
            WhyNot = here > speed ? FormattableString.Invariant($"the gas rises at {here:0.##} m/s, drops fall against {speed:0.##} m/s: too narrow")
                : allowed < design ? Spoken.Of($"allowed {Pressure(allowed, "0.#")} when hot, {Pressure(design, "0.#")} needed") : length > MostSlender * bore ? FormattableString.Invariant($"{length / bore:0} bores long: it does not stand") : "",
        };
    }
}
