using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.Description;
using Coldwright.Machine.Throttling;
using Coldwright.Simulation.Parts;

namespace Coldwright.Design.Sizing;

/// <summary>Length of capillary of each bore for a flow, or the flow coefficient of a valve.</summary>
internal static class ThrottleSizer
{
    // bores in steps of a tenth of a millimetre, and lengths that can be wound and cut to within a centimetre (our assumptions)
    private const double ShortestM = 0.3, LongestM = 6, Longer = 1.1;
    internal static readonly double[] BoresMm = [0.5, 0.6, 0.7, 0.8, 0.9, 1.0, 1.1, 1.2, 1.3, 1.4, 1.6, 1.8, 2.0];

    public static SizeResult Size(SizeContext c, ThrottlePart part, SizeTarget? target)
    {
        var (before, behind) = (c.At("throttle inlet"), c.At("throttle outlet"));
        double flow = target?.Value ?? c.Loop.Loop.MassFlow;
        if (target is null) c.Said.Add("sized for the flow of the rating between the file's two pressures; a target asks for something else");
        var inlet = new ThrottleInlet(before.PressurePa, before.MolarEnthalpy, before.TemperatureK, c.Z);
        var (flash, transport) = (new Flash(c.Model), new TransportModel(c.Model));
        List<SizeOption> found = part.Valve is { } valve ? [Valve(c, valve, inlet, behind.PressurePa, flow, flash, transport)]
            : StockLoop.Each(c, BoresMm, mm => FormattableString.Invariant($"{mm:0.0} mm bore"), mm => Capillary(c, part, 1e-3 * mm, inlet, behind.PressurePa, flow, new CapillaryModel(flash, transport)));
        return new SizeResult
        {
            Part = part.Name,
            Kind = Kinds.Of(part),
            Target = new("mass_flow_kg_s", "Flow", flow, "kg/s"),
            Method = part.Valve is null ? "homogeneous-equilibrium march along the capillary" : "frictionless flow through the jet of a valve",
            // two metres are wound easily and forgive a centimetre of error
            Options = [.. found.OrderBy(o => !o.Fits).ThenBy(o => o.Figures.Count == 0 ? 99 : Math.Abs(Math.Log(Math.Max(o.Figures[0].Value!.Value, 1e-3) / 2)))],
            Columns = part.Valve is null ? ["length_m", "flow_kg_s", "longer_flow_kg_s", "exit_pressure_Pa", "uncertainty"] : ["kv_m3_h", "flow_kg_s"],
            Sources = ["docs/theory/throttle.md", "docs/theory/size.md"],
            Warnings = [],
        };
    }

    private static SizeOption? Capillary(SizeContext c, ThrottlePart part, double bore, ThrottleInlet inlet, double back, double flow, CapillaryModel model)
    {
        var tube = new CapillaryTube { BoreM = bore, CoilDiameterM = part.Capillary?.CoilDiameterM };
        if (part.Capillary?.RoughnessM is { } roughness) tube = tube with { RoughnessM = roughness };
        var r = model.Length(tube, inlet, back, flow, c.Cancel);
        double length = r.LengthM;
        string why = length < ShortestM ? FormattableString.Invariant($"{length:0.##} m: so short that a centimetre and the entrance decide") : length > LongestM ? FormattableString.Invariant($"{length:0.#} m are wound and kept clean with trouble") : "";
        if (length > 200) return null;
        double longer = model.Flow(tube with { LengthM = Longer * length }, inlet, back, c.Cancel).MassFlowKgPerS;
        return new SizeOption
        {
            Stock = FormattableString.Invariant($"{1e3 * bore:0.0} mm bore"),
            Figures =
            [
                new("length_m", "Length", length, "m"), new("flow_kg_s", "Passes", flow, "kg/s", null, r.Choked ? "choked" : "not choked"), new("longer_flow_kg_s", "A tenth longer passes", longer, "kg/s"),
                new("exit_pressure_Pa", "Pressure inside the exit", r.ExitPressurePa, "Pa"), new("uncertainty", "Flow is good to", r.RelativeUncertainty, "1", null, "cut it a tenth too long, measure, and shorten it"),
            ],
            Cut = [new(FormattableString.Invariant($"capillary, {1e3 * bore:0.0} mm bore"), length, "m")],
            Keys = [("capillary", FormattableString.Invariant($"{{bore: {1e3 * bore:0.0} mm, length: {length:0.00} m{(part.Capillary?.CoilDiameterM is { } d ? FormattableString.Invariant($", coil-diameter: {1e3 * d:0} mm") : "")}}}"))],
            WhyNot = why,
        };
    }

    private static SizeOption Valve(SizeContext c, ValveDescription valve, ThrottleInlet inlet, double back, double flow, Flash flash, TransportModel transport)
    {
        var r = new ValveModel(flash, transport).Flow(new ControlValve { Kv = valve.FlowCoefficientKv, Opening = valve.Opening }, inlet, back, c.Cancel);
        double kv = valve.FlowCoefficientKv * valve.Opening * flow / r.MassFlowKgPerS;
        return new SizeOption { Stock = "valve", Figures = [new("kv_m3_h", "Kv at the opening it works at", kv, "m3/h"), new("flow_kg_s", "Passes", flow, "kg/s", null, r.Choked ? "choked" : "not choked")], Cut = [], Keys = [("valve", FormattableString.Invariant($"{{kv: {kv:0.#####}}}"))] };
    }
}
