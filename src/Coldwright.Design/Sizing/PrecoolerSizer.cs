using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.Compression;
using Coldwright.Machine.Description;
using Coldwright.Machine.Precooling;
using Coldwright.Machine.Recuperation;
using Coldwright.Machine.Streams;
using Coldwright.Machine.Throttling;
using Coldwright.Numerics;
using Coldwright.Numerics.Roots;
using Coldwright.Quantities;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Parts.Compression;
using static Coldwright.Quantities.SpokenAmount;

namespace Coldwright.Design.Sizing;

/// <summary>
/// Evaporator of the precooling loop for the temperature at which the mixture is to leave: the conductance at which the loop as described brings it there, then the length of
/// each pair of tubes that has it, mixture inside, refrigerant boiling in the gap; the capillary that passes the loop's flow, and the charge.
/// </summary>
internal static class PrecoolerSizer
{
    // our assumptions: a gap that wires and solder leave open; a drop of the refrigerant worth its price; the condenser's bore for each W/K of it, and the share of it that liquid fills
    private const double LeastGapM = 1.2e-3, WidestGapM = 8e-3, DropShare = 0.15, CondenserM3PerWPerK = 1.7e-6, LiquidShare = 0.25, ChargeDoubt = 0.3;
    private const double ShortestM = 0.3, LongestM = 40, LeastWPerK = 0.5, MostWPerK = 3000, MarginK = 6, SettledK = 0.01;

    public static SizeResult Size(SizeContext c, PrecoolerPart part, SizeTarget? target)
    {
        var described = part.Loop ?? throw new MissingKeysException(part.Name, part.Name, [new(part.Name, "loop", "loop: {refrigerant: propane, ...}")]);
        double outlet = target?.Value ?? part.OutletTemperatureK;
        if (target is null) c.Said.Add("sized for the outlet temperature that the file gives; a target asks for another");
        var inlet = c.Loop.Loop.Points.FirstOrDefault(p => p.Name == "before the precooler") ?? c.At("after the aftercooler");
        if (!(outlet < inlet.TemperatureK - 1)) throw new ArgumentException(FormattableString.Invariant($"the mixture comes in at {inlet.TemperatureK - 273.15:0.#} °C; it cannot leave at {outlet - 273.15:0.#} °C"), nameof(target));
        var compressor = DescribedCompressor.Of(described, c.Cancel);
        c.Said.AddRange(Spoken.All(compressor.Warnings));
        var machine = PrecoolerRater.Machine(part, described, compressor);
        var flash = new Flash(c.Model);
        var load = MixtureLoad.Create(flash, c.Z, inlet.PressurePa, inlet.TemperatureK, c.Loop.Loop.MolarFlow, null, c.Cancel);
        c.Observer?.Invoke("tabulating the precooling loop");
        PrecoolerResult At(double conductance) => PrecoolerLoop.Create(machine with { Evaporator = machine.Evaporator with { ConductanceWPerK = conductance } }, described.Refrigerant, c.Cancel).Solve(load, c.RoomK, false, c.Cancel);
        var best = At(MostWPerK);
        if (best.MixtureOutletK > outlet - SettledK)
            throw new SolveException(SolveReport.Telling(SolveStatus.NoSolution, 1, best.MixtureOutletK - outlet, $"an endless evaporator brings the mixture to {SpokenAmount.Celsius(best.MixtureOutletK, "0.#")}: the precooler's compressor is too small for {SpokenAmount.Celsius(outlet, "0.#")}"));
        double Off(double ln) => At(Math.Exp(ln)).MixtureOutletK - outlet;
        double low = Math.Log(LeastWPerK), offLow = Off(low), conductance = offLow <= 0 ? LeastWPerK : Math.Exp(Brent.Solve(Off, low, offLow, Math.Log(MostWPerK), best.MixtureOutletK - outlet, 1e-4));
        var loop = At(conductance);

        var refrigerant = new RatingCycle(described.Refrigerant);
        var (boiling, boilingTransport) = (new Flash(refrigerant.Model), new TransportModel(refrigerant.Model));
        double[] pure = [.. refrigerant.Composition];
        var before = boiling.TemperaturePressure(loop.CondensingBubbleK - Math.Max(loop.SubcoolingK, 0.1), loop.CondensingPa, pure);
        var hotTable = StreamTable.Create(flash, new TransportModel(c.Model), c.Z, [inlet.PressurePa], outlet - 4 * MarginK, inlet.TemperatureK + MarginK, cancel: c.Cancel);
        var coldTable = StreamTable.Create(boiling, boilingTransport, pure, [0.75 * loop.EvaporatingPa, loop.EvaporatingPa, 1.05 * loop.EvaporatingPa], loop.EvaporatorInletK - 2 * MarginK, inlet.TemperatureK + MarginK, cancel: c.Cancel);
        var hot = new StreamInlet(hotTable, c.Loop.Loop.MolarFlow, inlet.MolarEnthalpy, inlet.PressurePa);
        var cold = new StreamInlet(coldTable, loop.MolarFlow, before.MolarEnthalpy, loop.EvaporatingPa);
        var capillary = Capillary(c, loop, refrigerant, before.MolarEnthalpy, before.TemperatureK, boilingTransport);
        double condenserKg = CondenserM3PerWPerK * described.CondenserConductanceWPerK * (LiquidShare * before.Phases[^1].MolarDensity + (1 - LiquidShare) * boiling.TemperatureVapourFraction(loop.CondensingK, 1, pure).Phases[0].MolarDensity) * refrigerant.Model.Substances.Zip(pure, (s, x) => s.MolarMass * x).Sum();
        var found = StockLoop.Each(c, Pairs(), p => $"{p.High.Text} in {p.Low.Text}", p => One(c, part, p, loop, conductance, hot, cold, capillary, condenserKg));
        return new SizeResult
        {
            Part = part.Name,
            Kind = Kinds.Of(part),
            Target = new("outlet_K", "Mixture leaves at", outlet, "K"),
            TargetRemark = Spoken.Of($"{loop.CoolingW:0.#} W from {Celsius(inlet.TemperatureK)} down; the refrigerant evaporates at {Celsius(loop.EvaporatingK)}"),
            Method = "the loop's own model for the conductance, local heat transfer along tube in tube for the length, homogeneous-equilibrium march for the capillary",
            Options = SizeContext.Sorted(found, "copper_kg"),
            Columns = ["length_m", "conductance_W_K", "refrigerant_drop_Pa", "charge_kg", "copper_kg"],
            Sources = ["docs/theory/precooler.md", "docs/theory/recuperator.md", "docs/theory/throttle.md", "docs/theory/size.md", "tube sizes: ASTM B280"],
            Warnings = [FormattableString.Invariant($"the charge is known within a third: {100 * LiquidShare:0} % of the condenser's bore counts as liquid and the bore as {1e6 * CondenserM3PerWPerK:0.#} mL for each W/K (our assumptions), what the oil dissolves not counted; weigh in two thirds, then add until the suction line is a few kelvin over the evaporating temperature"),
                "the feed gas that passes the precooler too is not counted"],
        };
    }

    private static IEnumerable<(Tube High, Tube Low)> Pairs() =>
        from high in SizeContext.Stock(0.25 * 0.0254, 0.5 * 0.0254, "ACR")
        from low in SizeContext.Stock(0.5 * 0.0254, 0.875 * 0.0254, "ACR")
        where low.InsideDiameterM - high.OutsideDiameterM is >= 2 * LeastGapM and < WidestGapM
        select (high, low);

    private static SizeOption One(SizeContext c, PrecoolerPart part, (Tube High, Tube Low) pair, PrecoolerResult loop, double conductance, StreamInlet hot, StreamInlet cold, (double BoreM, double LengthM)? capillary, double condenserKg)
    {
        RecuperatorResult? last = null;
        double Off(double ln)
        {
            var geometry = new TubeInTubeGeometry(pair.High.OutsideDiameterM, pair.High.WallM, 1, pair.Low.OutsideDiameterM, pair.Low.WallM, Math.Exp(ln));
            last = new DistributedRecuperator(geometry, null, null, new RecuperatorOptions { Band = false, GridError = false }).Solve(hot, cold, last, c.Cancel);
            return Math.Log(last.DutyW / loop.CoolingW);
        }
        double lnLow = Math.Log(ShortestM), lnHigh = Math.Log(LongestM), low = Off(lnLow), high = low < 0 ? Off(lnHigh) : 0;
        if (low < 0 && high < 0) throw new SolveException(new SolveReport(SolveStatus.NoSolution, 2, high, FormattableString.Invariant($"{LongestM} m of it take up {last!.DutyW:0.#} W of {loop.CoolingW:0.#} W")));
        double length = low >= 0 ? ShortestM : Math.Exp(Brent.Solve(Off, lnLow, low, lnHigh, high, 1e-4));
        Off(Math.Log(length));
        double drop = last!.Cold.PressureDropPa, kg = RecuperatorSizer.Copper(pair.High, length) + RecuperatorSizer.Copper(pair.Low, length), charge = last.Cold.ContentKg + condenserKg, highPa = part.MaximumPressurePa ?? c.Machine.Operation.HighPressurePa;
        var figures = new List<PartFigure>
        {
            new("length_m", "Length", length, "m"), new("duty_W", "Takes up", last.DutyW, "W"), new("outlet_K", "Mixture leaves at", last.Hot.OutletK, "K"), new("conductance_W_K", "Conductance UA of the loop's model", conductance, "W/K"),
            new("evaporating_K", "Refrigerant evaporates at", loop.EvaporatingK, "K"), new("refrigerant_kg_s", "Refrigerant flow", loop.MassFlow, "kg/s"), new("refrigerant_drop_Pa", "Refrigerant loses", drop, "Pa") { IsDifference = true }, new("mixture_drop_Pa", "Mixture loses", last.Hot.PressureDropPa, "Pa") { IsDifference = true },
            new("charge_kg", "Refrigerant to charge", charge, "kg", new((1 - ChargeDoubt) * charge, (1 + ChargeDoubt) * charge), FormattableString.Invariant($"{1e3 * last.Cold.ContentKg:0} g of it in the evaporator")),
            new("copper_kg", "Copper", kg, "kg"), new("allowed_Pa", "Inner tube allowed", c.AllowedPa(pair.High), "Pa"),
        };
        var cut = new List<CutItem> { new(pair.High.Text, length, "m", c.PerMetre(pair.High.OutsideDiameterM, pair.High.WallM)), new(pair.Low.Text, length, "m", c.PerMetre(pair.Low.OutsideDiameterM, pair.Low.WallM)) };
        var keys = new List<(string, string)> { ("outlet-temperature", FormattableString.Invariant($"{last.Hot.OutletK - 273.15:0.#} °C")), ("loop", FormattableString.Invariant($"{{evaporator-conductance: {conductance:0.##} W/K}}")) };
        if (capillary is { } tube)
        {
            figures.Insert(9, new("capillary_m", "Capillary of the precooling loop", tube.LengthM, "m", null, FormattableString.Invariant($"{1e3 * tube.BoreM:0.0} mm bore; where no valve holds the superheat")));
            cut.Add(new(FormattableString.Invariant($"capillary, {1e3 * tube.BoreM:0.0} mm bore"), tube.LengthM, "m"));
        }
        return new SizeOption
        {
            Stock = $"{pair.High.Text} in {pair.Low.Text}",
            Figures = figures,
            Cut = cut,
            Keys = keys,
            WhyNot = drop > DropShare * loop.EvaporatingPa ? Spoken.Of($"the refrigerant loses {PressureDifference(drop)} of {Pressure(loop.EvaporatingPa, "0.##")}: too narrow")
                : c.AllowedPa(pair.High) < highPa ? Spoken.Of($"the inner tube is allowed {Pressure(c.AllowedPa(pair.High), "0.#")}, {Pressure(highPa, "0.#")} stand in it") : "",
        };
    }

    // the bore whose length comes nearest to two metres
    private static (double BoreM, double LengthM)? Capillary(SizeContext c, PrecoolerResult loop, RatingCycle refrigerant, double enthalpy, double liquidK, TransportModel transport)
    {
        (double, double)? best = null;
        double nearest = double.PositiveInfinity;
        foreach (double mm in ThrottleSizer.BoresMm)
            try
            {
                var tube = new CapillaryTube { BoreM = 1e-3 * mm };
                double length = new CapillaryModel(new Flash(refrigerant.Model), transport).Length(tube, new ThrottleInlet(loop.CondensingPa, enthalpy, liquidK, [.. refrigerant.Composition]), loop.EvaporatingPa, loop.MassFlow, c.Cancel).LengthM, off = Math.Abs(Math.Log(length / 2));
                if (off < nearest) (nearest, best) = (off, (1e-3 * mm, length));
            }
            catch (Exception e) when (e is SolveException or ArgumentException)
            {
                // so narrow that it chokes below the flow: a wider one follows
                continue;
            }
        return best;
    }
}
