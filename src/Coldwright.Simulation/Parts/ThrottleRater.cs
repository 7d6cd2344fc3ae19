using Coldwright.Machine.Description;
using Coldwright.Machine.Throttling;
using Coldwright.Numerics;
using Coldwright.Simulation.Parts.Pictures;

namespace Coldwright.Simulation.Parts;

/// <summary>Rates the capillary or valve: the flow that it passes against the flow of the cooler, and where it chokes.</summary>
internal static class ThrottleRater
{
    public static PartRating Rate(PartContext c, ThrottlePart part)
    {
        var (before, behind) = (c.At("throttle inlet"), c.At("throttle outlet"));
        var inlet = new ThrottleInlet(before.PressurePa, before.MolarEnthalpy, before.TemperatureK, c.Z);
        var arriving = c.Inlet([.. PartContext.Arriving("inlet", "Before the throttle", before), new("back_pressure_Pa", "Pressure behind it", behind.PressurePa, "Pa")]);
        return part.Capillary is { } tube ? Capillary(c, part, Tube(tube), inlet, behind.PressurePa, arriving) : Valve(c, part, part.Valve!, inlet, behind.PressurePa, arriving);
    }

    /// <summary>A described capillary as the model's input.</summary>
    public static CapillaryTube Tube(CapillaryDescription d)
    {
        var tube = new CapillaryTube { BoreM = d.BoreM, LengthM = d.LengthM, CoilDiameterM = d.CoilDiameterM };
        return d.RoughnessM is { } roughness ? tube with { RoughnessM = roughness } : tube;
    }

    private static PartRating Capillary(PartContext c, ThrottlePart part, CapillaryTube tube, ThrottleInlet inlet, double backPa, PartSection arriving)
    {
        var model = new CapillaryModel(c.Flash, c.Transport);
        var r = model.Flow(tube, inlet, backPa, c.Cancel);
        var figures = new List<PartFigure>
        {
            PartFigure.PlusMinus("mass_flow_kg_s", "Passes", r.MassFlowKgPerS, "kg/s", r.RelativeUncertainty * r.MassFlowKgPerS),
            new("flow_over_rating", "Over the flow of the cooler's rating", r.MassFlowKgPerS / c.Point.MassFlow, "1", null, "1 when it suits"),
            PartFigure.Word("choked", "Choked at the exit", r.Choked ? "yes" : "no", r.Choked ? "its flow does not depend on the pressure behind it" : "its flow depends on the pressure behind it"),
            new("exit_pressure_Pa", "Pressure inside the exit", r.ExitPressurePa, "Pa"),
            new("mass_flux_kg_m2s", "Mass flux", r.MassFlux, "kg/(m2 s)"),
        };
        var notes = new List<string>();
        AddLength(c, model, tube, inlet, backPa, figures, notes);
        if (r.FlashPressurePa is { } flash) figures.Add(new("flash_pressure_Pa", "Vapour appears at", flash, "Pa"));
        if (r.FlashPositionM is { } at) figures.Add(new("flash_position_m", "Vapour appears after", at, "m"));
        figures.Add(new("underpressure_Pa", "Allowance for late flashing", r.UnderpressurePa, "Pa", null, "0: flashing begins at the bubble point") { IsDifference = true });
        return new PartRating
        {
            Part = part.Name,
            Kind = Kinds.Of(part),
            Method = "homogeneous-equilibrium march along the capillary",
            FluidModel = c.Loop.Model,
            Point = c.Point,
            Verdict = Verdict(r.MassFlowKgPerS, c.Point.MassFlow, r.RelativeUncertainty, "a longer or narrower capillary", "a shorter or wider one"),
            Sections = [arriving, new("figures", "The capillary at work", figures, notes)],
            Balances = [("energy at the exit, by a flash of its own", r.EnergyError)],
            Pictures = [.. CapillaryPictures.All(r)],
            Sources = ["docs/theory/throttle.md", .. Correlations.Lines(CapillaryModel.MarchCorrelation)],
            Warnings = c.Told([.. r.Warnings]),
        };
    }

    // the length that would pass the rating's flow; a bore too narrow for it has none
    private static void AddLength(PartContext c, CapillaryModel model, CapillaryTube tube, ThrottleInlet inlet, double backPa, List<PartFigure> figures, List<string> notes)
    {
        figures.Add(new("length_m", "Its length", tube.LengthM!.Value, "m"));
        try
        {
            figures.Add(new("length_for_rating_flow_m", "Length that would pass the rating's flow", model.Length(tube, inlet, backPa, c.Point.MassFlow, c.Cancel).LengthM, "m", null, "same bore and inlet"));
        }
        catch (SolveException e)
        {
            notes.Add($"no length of this bore passes the rating's flow: {e.Report.Advice}");
        }
    }

    private static PartRating Valve(PartContext c, ThrottlePart part, ValveDescription described, ThrottleInlet inlet, double backPa, PartSection arriving)
    {
        var valve = new ControlValve { Kv = described.FlowCoefficientKv, Opening = described.Opening };
        var model = new ValveModel(c.Flash, c.Transport);
        var r = model.Flow(valve, inlet, backPa, c.Cancel);
        var figures = new List<PartFigure>
        {
            PartFigure.PlusMinus("mass_flow_kg_s", "Passes", r.MassFlowKgPerS, "kg/s", r.RelativeUncertainty * r.MassFlowKgPerS),
            new("flow_over_rating", "Over the flow of the cooler's rating", r.MassFlowKgPerS / c.Point.MassFlow, "1", null, "1 when it suits"),
            PartFigure.Word("choked", "Choked", r.Choked ? "yes" : "no", r.Choked ? "its flow does not depend on the pressure behind it" : "its flow depends on the pressure behind it"),
            new("throat_pressure_Pa", "Pressure in the narrowest section", r.ThroatPressurePa, "Pa"),
            new("kv_m3_h", "Flow coefficient Kv at this opening", valve.Kv * valve.Opening, "m3/h"),
            new("kv_for_rating_flow_m3_h", "Kv that would pass the rating's flow", valve.Kv * valve.Opening * c.Point.MassFlow / r.MassFlowKgPerS, "m3/h"),
            new("equilibrium_mass_flow_kg_s", "With flashing not delayed at all", r.EquilibriumMassFlowKgPerS, "kg/s"),
            new("throat_quality", "Vapour by mass in the narrowest section", r.ThroatQuality, "1"),
        };
        if (r.StandardMassFlowKgPerS is { } standard) figures.Add(new("standard_mass_flow_kg_s", "By the standard's equation", standard, "kg/s"));
        return new PartRating
        {
            Part = part.Name,
            Kind = Kinds.Of(part),
            Method = "frictionless flow through the jet of a valve of given flow coefficient",
            FluidModel = c.Loop.Model,
            Point = c.Point,
            Verdict = Verdict(r.MassFlowKgPerS, c.Point.MassFlow, r.RelativeUncertainty, "another opening, further shut", "another opening, further open, or a larger valve"),
            Sections = [arriving, new("figures", "The valve at work", figures, [])],
            Balances = [],
            Pictures = [ValvePicture(c, model, valve, inlet, backPa, r)],
            Sources = ["docs/theory/throttle.md", .. Correlations.Lines(ControlValveEquations.Correlation)],
            Warnings = c.Told([.. r.Warnings]),
        };
    }

    private static LinePicture ValvePicture(PartContext c, ValveModel model, ControlValve valve, ThrottleInlet inlet, double backPa, ValveResult here)
    {
        var points = new List<(double, double)> { (backPa, here.MassFlowKgPerS) };
        double low = 0.5 * backPa, high = 0.97 * inlet.PressurePa;
        for (int i = 0; i <= 10; i++)
        {
            double p = low + (high - low) * i / 10;
            points.Add((p, model.Flow(valve, inlet, p, c.Cancel).MassFlowKgPerS));
        }
        return new LinePicture("flow", "Flow against the pressure behind the valve", "The line is the flow through the valve at its present opening while the pressure behind it changes, with the band of the model; the dot is this cooler, the dotted upright line the pressure before the valve. Where the line runs level the flow is choked.")
        {
            X = new("pressure behind the valve", "Pa"), Y = new("flow by mass", "kg/s"), FromZero = true,
            Lines = [new("flow", "flow", PictureRole.HighSide, [.. points.OrderBy(p => p.Item1)], false, here.RelativeUncertainty)],
            Marks = [new("this cooler", PictureRole.Plain, backPa, here.MassFlowKgPerS)],
        };
    }

    private static string Verdict(double passes, double wanted, double doubt, string less, string more)
    {
        double off = passes / wanted - 1;
        return Math.Abs(off) <= 2 * doubt
            ? FormattableString.Invariant($"It passes {100 * Math.Abs(off):0} % {(off >= 0 ? "more" : "less")} than the rating of the whole cooler circulates: it suits within the band of the model.")
            : FormattableString.Invariant($"It passes {100 * Math.Abs(off):0} % {(off > 0 ? "more" : "less")} than the rating of the whole cooler circulates: the pressures given in the file would not hold. To make them hold, take {(off > 0 ? less : more)}.");
    }
}
