using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.ColdVessel;
using Coldwright.Machine.Description;
using Coldwright.Machine.Recuperation;
using Coldwright.Machine.Streams;
using Coldwright.Numerics;
using Coldwright.Numerics.Roots;
using Coldwright.Quantities;
using Coldwright.Simulation.Parts;
using static Coldwright.Quantities.SpokenAmount;

namespace Coldwright.Design.Sizing;

/// <summary>Tube and length of the coil that takes up the rating's heat with the vessel half full and the difference asked for.</summary>
internal static class CoilSizer
{
    private const double HalfFull = 0.5, MarginK = 6, UsualDifferenceK = 2.5, ShortestM = 0.3, LongestM = 25;

    public static SizeResult Size(SizeContext c, CoilPart part, SizeTarget? target)
    {
        if (c.Layout.Vessel is not { } vessel || c.Layout.Feed is not { } feed)
            throw new ArgumentException($"'{part.Name}' cools no vessel with a product: its size hangs on how it is soldered to the block, which has no model", nameof(part));
        double difference = target?.Value ?? part.GivenDifferenceK ?? UsualDifferenceK;
        if (target is null) c.Said.Add(part.GivenDifferenceK is null ? Spoken.Of($"sized for a difference of {Difference(UsualDifferenceK, "0.#")} (our assumption); a target asks for another") : "sized for the difference that the file gives; --target asks for another");
        var shape = ColdEndRater.Vessel(vessel);
        // the loop as it is with that difference: the mixture leaves the coil colder than the load by it
        var changed = part with { DifferenceK = difference };
        var machine = c.Machine with { Parts = [.. c.Machine.Parts.Select(p => p is CoilPart ? changed : p)] };
        c.Observer?.Invoke("finding the operating point");
        var (loop, warnings) = OperatingLoop.Find(machine, c.Layout with { Coil = changed }, c.Shop, c.Model, c.Options, c.Cancel);
        c.Said.AddRange(warnings);
        var (inlet, outlet) = (loop.Loop.Points.Single(p => p.Name == "throttle outlet"), loop.Loop.Points.Single(p => p.Name == "coil outlet"));
        double heat = loop.Loop.MolarFlow * (outlet.MolarEnthalpy - inlet.MolarEnthalpy), feedK = Math.Max(c.Layout.FeedPrecooled && c.Layout.Precooler is { } pc ? pc.OutletTemperatureK : c.RoomK, loop.OperatingTemperatureK + 1);
        var gas = ReferenceModel.Create([feed.Gas]);
        var product = VesselProduct.Create(new Flash(gas), new TransportModel(gas), [1.0], feed.PressurePa, inlet.TemperatureK - MarginK, feedK, c.Cancel);
        var table = StreamTable.Create(new Flash(c.Model), new TransportModel(c.Model), c.Z, [0.8 * inlet.PressurePa, inlet.PressurePa], inlet.TemperatureK - MarginK, (product.BubbleK ?? loop.OperatingTemperatureK) + MarginK, cancel: c.Cancel);
        var mixture = new StreamInlet(table, loop.Loop.MolarFlow, inlet.MolarEnthalpy, inlet.PressurePa);
        var found = StockLoop.Each(c, SizeContext.Stock(3.0 / 16 * 0.0254, 0.5 * 0.0254, "ACR"), t => t.Text, t => One(c, part, vessel, shape, t, product, mixture, feedK, heat, loop.OperatingTemperatureK));
        return new SizeResult
        {
            Part = part.Name,
            Kind = Kinds.Of(part),
            Target = new("difference_K", "Load warmer than the mixture leaving", difference, "K") { IsDifference = true },
            TargetRemark = FormattableString.Invariant($"while the coil takes up {heat:0.#} W"),
            Method = "boiling mixture in the coil, condensing and subcooled content around it, the vessel half full",
            Options = SizeContext.Sorted(found, "copper_kg"),
            Columns = ["length_m", "turns", "coil_height_m", "pressure_drop_Pa", "conductance_W_K", "copper_kg"],
            Sources = ["docs/theory/coil-and-vessel.md", "docs/theory/size.md", "tube sizes: ASTM B280"],
            Warnings = [],
        };
    }

    private static SizeOption One(SizeContext c, CoilPart part, VesselPart vessel, VesselGeometry shape, Tube tube, VesselProduct product, StreamInlet mixture, double feedK, double heat, double loadK)
    {
        ColdCoilGeometry Coil(double length) => CoilShape.Of(part with { Tube = tube, LengthM = length, Turns = null }, shape).Coil;
        ColdVesselResult Solve(double length) => ColdVesselModel.Solve(new ColdVesselInput
        {
            Coil = Coil(length),
            Vessel = shape,
            Product = product,
            Mixture = mixture,
            LevelM = HalfFull * shape.HeightM,
            FeedK = feedK,
            LiquidK = product.IsDense ? loadK : null,
            Options = new ColdVesselOptions { Band = false },
        }, c.Cancel);
        // the longest that winds into the vessel, or that keeps its pressure
        double longest = LongestM;
        ColdVesselResult? most = null;
        for (; longest > ShortestM && most is null; longest *= 0.8)
            try
            {
                most = Solve(longest);
                break;
            }
            catch (Exception e) when (e is ArgumentException or SolveException)
            {
                most = null;
            }
        if (most is null) throw new SolveException(new SolveReport(SolveStatus.NoSolution, 0, 0, "no coil of it goes into this vessel"));
        double Off(double length) => Solve(length).HeatW / heat - 1;
        double high = most.HeatW / heat - 1, low = Off(ShortestM);
        if (high < 0) throw new SolveException(new SolveReport(SolveStatus.NoSolution, 0, high, FormattableString.Invariant($"the longest that goes in, {longest:0.#} m, takes up {most.HeatW:0.#} W of {heat:0.#} W")));
        double length = low > 0 ? ShortestM : Brent.Solve(Off, ShortestM, low, longest, high, 1e-4);
        var (r, coil) = (Solve(length), Coil(length));
        return new SizeOption
        {
            Stock = tube.Text,
            Figures =
            [
                new("length_m", "Length", length, "m"), new("turns", "Turns", coil.Turns, "1"), new("coil_height_m", "Height of the coil", coil.HeightM, "m"), new("heat_W", "Takes up", r.HeatW, "W"), new("conductance_W_K", "Conductance UA", r.ConductanceWPerK, "W/K"),
                new("pressure_drop_Pa", "Mixture loses", r.PressureDropPa, "Pa") { IsDifference = true }, new("copper_kg", "Copper", RecuperatorSizer.Copper(tube, length), "kg"), new("allowed_Pa", "Tube allowed", c.AllowedPa(tube), "Pa"),
            ],
            Cut = [new(tube.Text, length, "m", c.PerMetre(tube.OutsideDiameterM, tube.WallM))],
            Keys = [("tube", tube.Text), ("length", FormattableString.Invariant($"{length:0.00} m")), ("turns", FormattableString.Invariant($"{coil.Turns:0}"))],
            WhyNot = r.PressureDropPa > 0.2 * mixture.PressurePa ? Spoken.Of($"the mixture loses {PressureDifference(r.PressureDropPa)} of {Pressure(mixture.PressurePa, "0.##")} in it") : "",
        };
    }
}
