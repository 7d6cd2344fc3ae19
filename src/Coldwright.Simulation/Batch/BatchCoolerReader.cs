using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Machine.ColdVessel;
using Coldwright.Machine.Description;
using Coldwright.Machine.Feed;
using Coldwright.Machine.Layout;
using Coldwright.Machine.Throttling;
using Coldwright.Materials.Solids;
using Coldwright.Numerics;
using Coldwright.Numerics.Interpolation;
using Coldwright.Quantities;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Rating;

namespace Coldwright.Simulation.Batch;

/// <summary>Makes a <see cref="BatchCooler"/> from the machine file and a rating.</summary>
public static class BatchCoolerReader
{
    // Our assumptions where the file is silent; each is said.
    private const double UsualKv = 0.005, UsualFlaskBoilOff = 0.3e-3 / 86400, FlaskWallM = 0.5e-3, SteelDensity = 7900, ColdMarginK = 2, FreezingMarginK = 1;
    private const string CopperTube = "copper-dhp", Steel = "stainless-304";

    // a litre an hour of nitrogen for each watt, section 2 of docs/theory/batch.md: latent heat times density at the normal boiling point
    private const double NitrogenHeatPerM3 = 199.18e3 * 806.08, NitrogenBoilingK = 77.355;

    /// <summary>The cooler for batches, with what had to be assumed.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="layout">Its layout, with feed and vessel.</param>
    /// <param name="purity">The feed gas.</param>
    /// <param name="rating">Its rating.</param>
    /// <param name="startK">Vessel at the start, K; null: as cold as the empty cooler gets.</param>
    /// <param name="said">What had to be assumed.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="SolveException">There is no feed or no vessel, or the product has no answer.</exception>
    public static BatchCooler Read(MachineDescription machine, LoopLayout layout, ProductPurity purity, ModelRating rating, double? startK, List<Spoken> said, CancellationToken cancel = default)
    {
        if (layout.Feed is not { } feed || layout.Vessel is not { } vessel)
            throw new SolveException(new SolveReport(SolveStatus.Outside, 0, 0, "a batch needs a part of kind feed and one of kind vessel; this machine makes no liquid"));
        var (roomK, roomPa) = (machine.Room.TemperatureK, machine.Room.PressurePa);
        var fluid = new ProductFluid(feed.Gas);
        var model = purity.Mixture.Names.Count == 1 ? fluid.Model : ReferenceModel.Create(purity.Mixture.Names);
        var map = ProductMap.Create(model, purity.Mixture.MoleFractions, cancel);
        double boiling = map.BubbleTemperature(roomPa) ?? throw new SolveException(new SolveReport(SolveStatus.Outside, 0, roomPa, $"{feed.Gas} has no boiling point at the room's pressure"));
        double freezing = fluid.Model.Substances[0].TripleTemperatureK + FreezingMarginK;
        double noLoad = rating.NoLoadTemperatureK ?? throw new SolveException(new SolveReport(SolveStatus.NoSolution, 0, 0, "the cooler does not cool: there is nothing to condense against. 'rate' says why"));
        double start = startK ?? Math.Max(noLoad, boiling + ColdMarginK);
        if (!(start > boiling && start < 330)) throw new ArgumentException(FormattableString.Invariant($"the vessel's start temperature is {start:0.##} K; it must be above the boiling point at the room's pressure, {boiling:0.##} K, and below 330 K"), nameof(startK));

        var shape = ColdEndRater.Vessel(vessel);
        var (volume, metal) = Vessel(layout, shape, said);
        var steps = layout.ProductPath;
        int at = steps.ToList().FindIndex(s => s.Part is VesselPart);
        var (fill, drain) = (steps.Take(at).Select(s => s.Part).OfType<ValvePart>().LastOrDefault(), steps.Skip(at + 1).Select(s => s.Part).OfType<ValvePart>().FirstOrDefault());
        var (before, behind) = FeedLines(steps, at, fill);
        var (line, lineMetal) = DrainLine(steps, at, drain, fluid, roomPa, said);
        var outlet = OutletFlow.Create(fluid, roomPa, feed.PressurePa, cancel);
        double drainArea = Area(drain, "the drain valve", said), arriving = layout.FeedPrecooled && layout.Precooler is { } p ? Math.Min(roomK, p.OutletTemperatureK) : roomK;
        var (conductance, wall) = Flask(layout.Flask, said);
        var net = Curve(rating, p => p.NetCoolingW);
        if (feed.SupplyPressurePa is not null && feed.Compressor is null)
            said.Add($"the feed compressor of '{feed.Name}' is not described: it delivers whatever is asked and never gets hot; add 'compressor' to {feed.Name} (type, displacement, speed)");
        if (feed.Receiver is null) said.Add($"no receiver is described: the supply of '{feed.Name}' does not fall; add 'receiver' to {feed.Name} (volume, pressure)");
        return new BatchCooler
        {
            Product = map, Fluid = fluid, Outlet = outlet, Line = line, LineMetal = lineMetal, VesselMetal = metal, VesselM3 = volume,
            FlaskMetal = wall, FlaskM3 = layout.Flask?.VolumeM3 ?? 1e-3, FlaskConductanceWPerK = conductance,
            NetCoolingW = net, Coil = CoilByLevelMaker.Of(layout, rating, shape, net, Curve(rating, p => p.GrossCoolingW), Math.Max(arriving, rating.OperatingTemperatureK + 1), said, cancel), LoopPowerW = rating.Power.MainW + rating.Power.PrecoolW + rating.Power.FansW,
            RoomK = roomK, RoomPa = roomPa, ArrivingK = arriving, SupplyLineM3 = before, FillLineM3 = behind,
            FillAreaM2 = Area(fill, "the fill valve", said), DrainAreaM2 = drainArea, SeatAreaM2 = Seat(drain, outlet, map, feed.PressurePa, roomPa),
            FeedPa = feed.PressurePa, Receiver = feed.Receiver, SuctionPa = feed.SupplyPressurePa, Compressor = feed.Compressor, FeedEfficiency = feed.FeedCompressorEfficiency,
            StartK = start, FreezingK = freezing,
        };
    }

    private static MonotoneCubic Curve(ModelRating rating, Func<CoolingPoint, double> watts)
    {
        var curve = rating.CoolingCurve;
        return new([.. curve.Select(p => p.TemperatureK)], [.. curve.Select(watts)], new bool[curve.Count]);
    }

    private static (double VolumeM3, MetalStore? Metal) Vessel(LoopLayout layout, VesselGeometry shape, List<Spoken> said)
    {
        if (layout.Vessel!.CapThicknessM is { } cap) shape = shape with { CapWallM = cap };
        double volume = shape.VolumeBelow(shape.HeightM), mass = shape.WallMassKg();
        if (layout.Coil.Tube is { } tube && layout.Coil.LengthM is { } length)
        {
            if (layout.Coil.Place != CoilPlace.Around) volume -= Math.PI / 4 * tube.OutsideDiameterM * tube.OutsideDiameterM * length;
            mass += tube.MetalAreaM2 * length * SolidLibrary.Default.Find(CopperTube).Density!.KgPerM3;
        }
        else said.Add($"tube and length of '{layout.Coil.Name}' are not given: the room it takes in the vessel and its metal are not counted");
        return (volume, new MetalStore(shape.Material, mass));
    }

    private static (double BeforeM3, double BehindM3) FeedLines(IReadOnlyList<PathStep> steps, int vessel, ValvePart? fill)
    {
        double before = 2e-6, behind = 2e-6;
        bool passed = fill is null;
        for (int i = 1; i <= vessel; i++)
        {
            double volume = (steps[i].Line?.Tube?.BoreAreaM2 ?? 0) * (steps[i].Line?.LengthM ?? 0);
            if (passed) behind += volume; else before += volume;
            passed |= ReferenceEquals(steps[i].Part, fill);
        }
        return (before, behind);
    }

    private static (DrainLine, MetalStore?) DrainLine(IReadOnlyList<PathStep> steps, int vessel, ValvePart? drain, ProductFluid fluid, double roomPa, List<Spoken> said)
    {
        var warm = steps.Skip(vessel + 1).Where(s => s.Line?.Tube is not null && s.Line.Place == Place.Room).ToArray();
        double length = warm.Sum(s => s.Line!.LengthM), mass = (drain?.BodyMassKg ?? 0) + warm.Sum(s => s.Line!.LengthM * s.Line.Tube!.MetalAreaM2) * SolidLibrary.Default.Find(CopperTube).Density!.KgPerM3;
        if (drain is { BodyMassKg: 0 }) said.Add($"the body of '{drain.Name}' is not counted among the metal that the liquid cools; weigh it and add 'body-mass'");
        if (drain is null) said.Add("there is no valve between vessel and flask: the batch takes one with the usual opening at the vessel's outlet");
        var tube = warm.Select(s => s.Line!.Tube!).LastOrDefault();
        var line = new DrainLine(tube?.InsideDiameterM ?? 4e-3, tube?.OutsideDiameterM ?? 6e-3, length, mass, fluid, roomPa);
        return (line, mass > 0 ? new MetalStore(CopperTube, mass) : null);
    }

    private static double Area(ValvePart? valve, string what, List<Spoken> said)
    {
        if (valve?.FlowCoefficientKv is { } kv) return new ControlValve { Kv = kv }.EffectiveAreaM2;
        said.Add(FormattableString.Invariant($"how far {(valve is null ? what : $"'{valve.Name}'")} is opened is not given: a flow coefficient Kv of {UsualKv} was taken (our assumption); add 'kv'"));
        return new ControlValve { Kv = UsualKv }.EffectiveAreaM2;
    }

    private static double Seat(ValvePart? drain, OutletFlow outlet, ProductMap map, double pressurePa, double roomPa)
    {
        if (drain is not { SeatLeakKgPerS: > 0 } || pressurePa <= roomPa) return 0;
        double k = map.BubbleTemperature(pressurePa) ?? 0.99 * map.TwoPhaseEndK;
        return drain.SeatLeakKgPerS / outlet.KgPerS(1, map.Bubble(k)!.Value, 0);
    }

    private static (double ConductanceWPerK, MetalStore? Wall) Flask(FlaskPart? flask, List<Spoken> said)
    {
        if (flask is null) return (0, null);
        if (flask.BoilOffM3PerS is null) said.Add(FormattableString.Invariant($"what the standing flask loses is not given: {UsualFlaskBoilOff * 86400e3:0.#} L of nitrogen a day were taken (our assumption); weigh it twice and add 'boil-off' to {flask.Name}"));
        double watts = (flask.BoilOffM3PerS ?? UsualFlaskBoilOff) * NitrogenHeatPerM3, diameter = Math.Cbrt(2 * flask.VolumeM3 / Math.PI);
        double mass = flask.WallMassKg ?? 2.25 * Math.PI * diameter * diameter * FlaskWallM * SteelDensity;
        if (flask.WallMassKg is null) said.Add(FormattableString.Invariant($"the flask's inner wall was taken as {1e3 * mass:0} g of steel, half a millimetre thick (our assumption); add 'wall-mass' to {flask.Name}"));
        return (watts / (293.15 - NitrogenBoilingK), mass > 0 ? new MetalStore(flask.WallMaterial ?? Steel, mass) : null);
    }
}
