using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Machine.Recuperation;
using Coldwright.Numerics;
using Coldwright.Numerics.Roots;
using Coldwright.Quantities;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Rating;
using static Coldwright.Quantities.SpokenAmount;

namespace Coldwright.Design.Sizing;

/// <summary>
/// Length of tube in tube for a cooling or a conductance. First the conductance with which the loop's rating gives the cooling asked for, then the length of each pair
/// of tubes that has it there, then what the pair's own pressure drop takes away again.
/// </summary>
internal static class RecuperatorSizer
{
    // our assumptions: what is worth having of an endless exchanger; a gap that centring wires and solder leave open; drop of the low side worth its price
    private const double OfEndless = 0.95, LeastGapM = 1.2e-3, DropShare = 0.12, Endless = 1e5, Missed = 0.985;
    private const double ShortestM = 0.3, LongestM = 120;

    public static SizeResult Size(SizeContext c, RecuperatorPart part, SizeTarget? target)
    {
        double loadK = c.Loop.OperatingTemperatureK, endless = Cooling(c, Endless, null, loadK).Watts, asked = target is { Id: "cooling_W" } t ? t.Value : OfEndless * endless;
        if (target is null) c.Said.Add(Spoken.Of($"sized for {100 * OfEndless:0} % of what an endless exchanger would give, {endless:0.###} W at {Temperature(loadK, "0.#")}; a target asks for something else"));
        double conductance;
        if (target is { Id: "conductance_W_K" } given) (conductance, asked) = (given.Value, Cooling(c, given.Value, null, loadK).Watts);
        else
        {
            if (asked >= endless * 0.9999)
                throw new SolveException(SolveReport.Telling(SolveStatus.NoSolution, 1, asked - endless,
                    $"{asked:0.###} W at {SpokenAmount.Temperature(loadK, "0.#")} are asked for; an endless exchanger gives {endless:0.###} W with this mixture and these pressures"));
            double Off(double ln) => Cooling(c, Math.Exp(ln), null, loadK).Watts - asked;
            double low = Math.Log(0.5), offLow = Off(low);
            conductance = offLow > 0 ? 0.5 : Math.Exp(Brent.Solve(Off, low, offLow, Math.Log(Endless), endless - asked, 1e-5));
        }
        var at = Cooling(c, conductance, null, loadK).Rating!;
        // what a hundredth more conductance brings, to make up for what the low side's own drop takes away
        double slope = (Cooling(c, 1.05 * conductance, null, loadK).Watts - Cooling(c, conductance, null, loadK).Watts) / Math.Log(1.05);
        bool cooling = target is not { Id: "conductance_W_K" };
        var found = StockLoop.Each(c, Pairs(part), p => $"{p.High.Text} in {p.Low.Text}", p => Corrected(c, part, p, conductance, at, loadK, asked, cooling ? slope : 0));
        return new SizeResult
        {
            Part = part.Name,
            Kind = Kinds.Of(part),
            Target = target is { Id: "conductance_W_K" } ? new("conductance_W_K", "Conductance UA", conductance, "W/K") : new("cooling_W", "Heat that the coil takes up", asked, "W"),
            TargetRemark = target is { Id: "conductance_W_K" } ? "" : Spoken.Of($"with the load at {Temperature(loadK, "0.#")}"),
            Method = "local heat transfer and friction along tube in tube, at the inlets of the rating between the file's two pressures",
            Options = SizeContext.Sorted(found, "copper_kg"),
            Columns = ["length_m", "conductance_W_K", "low_drop_Pa", "high_drop_Pa", "cooling_left_W", "copper_kg"],
            Sources = ["docs/theory/recuperator.md", "docs/theory/size.md", "tube sizes: ASTM B280"],
            Warnings = [],
        };
    }

    /// <summary>Heat that the coil takes up at a load temperature with a conductance, and with another drop on the low side.</summary>
    internal static (double Watts, ModelRating? Rating) Cooling(SizeContext c, double conductance, double? lowDropPa, double loadK)
    {
        var (machine, layout) = StandIns.With(c.Plain, c.PlainLayout, conductance);
        if (lowDropPa is { } drop) (machine, layout) = Dropped(machine, layout, drop);
        try
        {
            var r = CoolerRating.Rate(machine, layout, c.Shop, c.Options with { OperatingTemperatureK = loadK }, null, c.Cancel).Main;
            double h(string name) => r.Loop.Points.Single(p => p.Name == name).MolarEnthalpy;
            return (r.Loop.MolarFlow * (h("coil outlet") - h("throttle outlet")), r);
        }
        catch (SolveException)
        {
            // so little exchanger that the loop does not come down to that temperature
            return (0, null);
        }
    }

    private static (MachineDescription, LoopLayout) Dropped(MachineDescription machine, LoopLayout layout, double drop)
    {
        var changed = layout.Recuperator with { LowSidePressureDropPa = drop };
        return (machine with { Parts = [.. machine.Parts.Select(p => p is RecuperatorPart ? changed : p)] }, layout with { Recuperator = changed });
    }

    private static IEnumerable<(Tube High, Tube Low)> Pairs(RecuperatorPart part)
    {
        var pairs = new List<(Tube, Tube)>();
        if (part is { Arrangement: RecuperatorArrangement.TubeInTube, HighTube: { } h, LowTube: { } l, HighSide: HighSide.Inner }) pairs.Add((h, l));
        foreach (var high in SizeContext.Stock(0.25 * 0.0254, 0.5 * 0.0254, "ACR"))
            foreach (var low in SizeContext.Stock(0.5 * 0.0254, 0.875 * 0.0254, "ACR"))
                if (low.InsideDiameterM - high.OutsideDiameterM >= 2 * LeastGapM && low.InsideDiameterM - high.OutsideDiameterM < 0.0095 && !pairs.Any(p => p.Item1.Text == high.Text && p.Item2.Text == low.Text)) pairs.Add((high, low));
        return pairs;
    }

    // longer by as much as its own drop costs; so the tubes as cut give what is asked
    private static SizeOption Corrected(SizeContext c, RecuperatorPart part, (Tube High, Tube Low) pair, double conductance, ModelRating at, double loadK, double asked, double slope)
    {
        var one = One(c, part, pair, conductance, at, loadK);
        double missing = asked - one.Figure("cooling_left_W");
        if (slope > 0 && one.Fits && missing > 1e-3 * asked) one = One(c, part, pair, conductance * Math.Exp(Math.Min(missing / slope, 1)), at, loadK);
        double left = one.Figure("cooling_left_W");
        return slope > 0 && one.Fits && left < Missed * asked ? one with { WhyNot = Spoken.Of($"its low side takes {PressureDifference(one.Figure("low_drop_Pa"))}: {left:0.#} W are left, and more length brings no more") } : one;
    }

    private static SizeOption One(SizeContext c, RecuperatorPart part, (Tube High, Tube Low) pair, double conductance, ModelRating at, double loadK)
    {
        var flash = new Flash(c.Model);
        var transport = new TransportModel(c.Model);
        LoopPoint hotIn = at.Loop.Points.Single(p => p.Name == "into the recuperator"), coldIn = at.Loop.Points.Single(p => p.Name == "coil outlet");
        StreamCondition hot = StreamCondition.AtEnthalpy(c.Z, at.Loop.MolarFlow, hotIn.PressurePa, hotIn.MolarEnthalpy), cold = StreamCondition.AtEnthalpy(c.Z, at.Loop.MolarFlow, coldIn.PressurePa, coldIn.MolarEnthalpy);
        RecuperatorResult? last = null;
        double Off(double ln)
        {
            var geometry = new TubeInTubeGeometry(pair.High.OutsideDiameterM, pair.High.WallM, 1, pair.Low.OutsideDiameterM, pair.Low.WallM, Math.Exp(ln), part.CoilDiameterM, true, part.RoughnessM ?? RecuperatorGeometry.DrawnTubeRoughnessM);
            last = RecuperatorStudy.Solve(new DistributedRecuperator(geometry, null, null, new RecuperatorOptions { Band = false, GridError = false }), flash, transport, hot, cold, c.Cancel);
            return Math.Log(last.ConductanceWPerK / conductance);
        }
        // conductance goes nearly with the length: a few steps along that line
        double at0 = Math.Log(Math.Clamp(conductance / 5, ShortestM, LongestM)), f0 = Off(at0), at1 = Math.Clamp(at0 - f0, Math.Log(ShortestM), Math.Log(LongestM)), f1 = Off(at1);
        for (int i = 0; i < 12 && Math.Abs(f1) > 1e-4 && at1 != at0 && f1 != f0; i++)
        {
            double next = Math.Clamp(at1 - f1 * (at1 - at0) / (f1 - f0), Math.Log(ShortestM), Math.Log(LongestM));
            (at0, f0) = (at1, f1);
            at1 = next;
            f1 = Off(at1);
        }
        if (Math.Abs(f1) > 1e-2)
            throw new SolveException(new SolveReport(SolveStatus.NoSolution, 12, f1, FormattableString.Invariant($"no length between {ShortestM} and {LongestM} m has {conductance:0.#} W/K")));
        double length = Math.Exp(at1), low = last!.Cold.PressureDropPa, left = Cooling(c, conductance, low, loadK).Watts;
        double high = part.MaximumPressurePa ?? c.Machine.Operation.HighPressurePa, kg = Copper(pair.High, length) + Copper(pair.Low, length);
        var why = low > DropShare * c.Machine.Operation.LowPressurePa ? Spoken.Of($"the low side loses {PressureDifference(low)} of {Pressure(c.Machine.Operation.LowPressurePa, "0.##")}: too narrow")
            : c.AllowedPa(pair.High) < high ? Spoken.Of($"the inner tube is allowed {Pressure(c.AllowedPa(pair.High), "0.#")}, {Pressure(high, "0.#")} stand in it") : "";
        return new SizeOption
        {
            Stock = $"{pair.High.Text} in {pair.Low.Text}",
            Figures =
            [
                new("length_m", "Length", length, "m"), new("conductance_W_K", "Conductance UA", last.ConductanceWPerK, "W/K"), new("low_drop_Pa", "Low side loses", low, "Pa") { IsDifference = true }, new("high_drop_Pa", "High side loses", last.Hot.PressureDropPa, "Pa") { IsDifference = true },
                new("cooling_left_W", "Cooling with that loss", left, "W", null, "the same conductance, the low pressure at the cold end higher by it"), new("pinch_K", "Streams closest", last.Pinch.DifferenceK, "K") { IsDifference = true }, new("copper_kg", "Copper", kg, "kg"),
                new("allowed_Pa", "Inner tube allowed", c.AllowedPa(pair.High), "Pa"),
            ],
            Cut = [new(pair.High.Text, length, "m", c.PerMetre(pair.High.OutsideDiameterM, pair.High.WallM)), new(pair.Low.Text, length, "m", c.PerMetre(pair.Low.OutsideDiameterM, pair.Low.WallM))],
            Keys = [("arrangement", "tube-in-tube"), ("high-side", "inner"), ("high-tube", pair.High.Text), ("low-tube", pair.Low.Text), ("length", FormattableString.Invariant($"{length:0.##} m")), ("low-side-pressure-drop", FormattableString.Invariant($"{low / 1e5:0.###} bar"))],
            WhyNot = why,
        };
    }

    internal static double Copper(Tube tube, double lengthM) => tube.MetalAreaM2 * lengthM * Materials.Solids.SolidLibrary.Default.Find("copper-dhp").Density!.KgPerM3;
}
