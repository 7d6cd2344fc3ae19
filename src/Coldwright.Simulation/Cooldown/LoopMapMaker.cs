using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.Compression;
using Coldwright.Machine.Precooling;
using Coldwright.Machine.Streams;
using Coldwright.Machine.Throttling;
using Coldwright.Numerics;
using Coldwright.Simulation.ClosedLoop;
using Coldwright.Machine.Description;

namespace Coldwright.Simulation.Cooldown;

/// <summary>Makes the maps of the parts and, about compositions on the way, tables with their slopes and offsets. Maps made are kept and taken again where they suit. Not thread-safe.</summary>
internal sealed class LoopMapMaker
{
    private const double DeltaK = 14, DeltaShare = 0.12, PrecoolerColdestK = 185, ColdestK = 60, AboveK = 3, LeastFallK = 2.5, LnPressureStep = 0.02, KelvinStep = 0.5, MostLnPrecooler = 0.5, GainAtRest = 0.28, LeastW = 1, PrecoolerShare = 2e-3;

    private readonly Hardware _hardware;
    private readonly CancellationToken _cancel;
    private readonly LoopTablesMaker _tables;
    private readonly Flash _flash;
    private readonly CapillaryModel _capillary;
    private readonly ValveModel _valve;
    private readonly List<(LoopMap Map, PlantPoint At)> _kept = [];
    private double _fallK = double.PositiveInfinity;
    // found at the first start; 0: not yet
    private double _precoolerWPerK;
    private readonly Lazy<LoopState> _guess;
    private (double Throttle, double Coil, double? Flow)? _guessedFlow;

    /// <param name="hardware">The machine.</param>
    /// <param name="model">Fluid model.</param>
    /// <param name="options">Of the property tables.</param>
    /// <param name="cancel">Cancels the work.</param>
    public LoopMapMaker(Hardware hardware, HelmholtzModel model, StreamTableOptions options, CancellationToken cancel)
    {
        (_hardware, _cancel) = (hardware, cancel);
        _tables = new LoopTablesMaker(model, hardware, options, cancel);
        _flash = new Flash(model);
        var transport = new TransportModel(model);
        (_capillary, _valve) = (new CapillaryModel(_flash, transport), new ValveModel(_flash, transport));
        Model = model;
        _guess = new(() => WarmStart.Guess(hardware, model, new LoopTarget(HeldPressure.Neither, default, hardware.Machine.Operation.HighPressurePa, hardware.Machine.Operation.LowPressurePa, hardware.Layout.Aftercooler.PressureDropPa), cancel));
    }

    /// <summary>Where the loop is thought to stand at the start.</summary>
    public LoopState Guess => _guess.Value;

    /// <summary>Flow at the start by the throttle's own model, mol/s; null where it has no answer: any flow of the right size then does, it relaxes within seconds.</summary>
    public double? GuessedFlow(double throttlePa, double coilPa)
    {
        if (_guessedFlow is { } known && known.Throttle == throttlePa && known.Coil == coilPa) return known.Flow;
        double? flow = null;
        try
        {
            flow = Throttle(new ThrottleInlet(throttlePa, Guess.ThrottleEnthalpy, _hardware.RoomK, [.. _hardware.Machine.Charge.Mixture.MoleFractions]), coilPa).MolarFlow;
        }
        catch (SolveException)
        {
            // as said above
        }
        _guessedFlow = (throttlePa, coilPa, flow);
        return flow;
    }

    public HelmholtzModel Model { get; }
    public Hardware Hardware => _hardware;
    /// <summary>Times that a composition had to be held for want of slopes.</summary>
    public int WithoutSlopes { get; private set; }
    /// <summary>Tables made.</summary>
    public int Made => _tables.Made;
    /// <summary>The parts' maps, made with the first composition.</summary>
    public PlantMaps Maps { get; private set; } = null!;
    /// <summary>The throttle's own model: mol/s and choked.</summary>
    public (double MolarFlow, bool Choked) Throttle(ThrottleInlet inlet, double backPa)
    {
        if (_hardware.Capillary is { } tube)
        {
            var flow = _capillary.Flow(tube, inlet, backPa, _cancel);
            return (flow.MolarFlow, flow.Choked);
        }
        var valve = _valve.Flow(_hardware.Valve!, inlet, backPa, _cancel);
        return (valve.MolarFlow, valve.Choked);
    }

    /// <summary>Frame of tables around a moment, for a load that falls by so much (K): isobars so far from its pressures, as a factor.</summary>
    public TableFrame Frame(in PlantPoint at, double fallK, double reach)
    {
        double load = at.LoadK - fallK, cold = Math.Max(ColdestK, load - Math.Max(DeltaK, DeltaShare * load)), high = Math.Max(cold, at.ThrottleK - fallK - Math.Min(DeltaK, 0.5 * fallK));
        if (_hardware.Layout.Precooler is not null) (cold, high) = (Math.Min(cold, PrecoolerColdestK), Math.Min(high, PrecoolerColdestK));
        return new TableFrame(at.ThrottlePa / reach, at.HighPa * reach, Math.Min(at.SuctionPa, at.CoilPa) / reach, Math.Max(at.SuctionPa, at.CoilPa) * reach, Math.Floor(cold), _hardware.AftercooledK + AboveK) { HighColdestK = Math.Floor(high) };
    }

    /// <summary>Maps about a composition and a moment.</summary>
    /// <param name="middle">Mole fractions in the middle of the tables.</param>
    /// <param name="xi">What circulates at the moment, ln(z_i/z_1) from the second substance on.</param>
    /// <param name="at">Temperatures, pressures and flow to bring the maps into line at.</param>
    /// <param name="fallK">How far the load may fall before other tables are made, K.</param>
    /// <param name="near">Maps kept from before are taken when what circulates is no further from their middle than this.</param>
    /// <param name="reach">How far the tables' isobars lie from the moment's pressures, as a factor.</param>
    /// <param name="slow">True: near rest, where maps are always brought into line.</param>
    /// <param name="until">Maps until now; null at the start.</param>
    public LoopMap Make(double[] middle, double[] xi, in PlantPoint at, double fallK, double near, double reach, bool slow, LoopMap? until)
    {
        var kept = Kept(xi, at, fallK, near, reach);
        if (!slow && kept is { } whole && Apart(whole.At, at) < 1) return whole.Map;
        var map = Aligned(kept?.Map ?? About(middle, at, fallK, reach) with { Offsets = until?.OffsetsOf(xi, at) ?? default, PrecoolerWPerK = until?.PrecoolerWPerK ?? _precoolerWPerK }, xi, at, slow);
        _kept.Add((map, at));
        return map;
    }

    private LoopMap About(double[] z, in PlantPoint at, double fallK, double reach)
    {
        TableFrame frame = default;
        // where liquids mingle or part no slopes may be found: tables that end warmer do without that place
        for (_fallK = Math.Min(fallK, 2 * _fallK); _fallK >= LeastFallK; _fallK *= 0.4)
        {
            frame = Frame(at, _fallK, reach);
            if (_tables.WithSlopes(_tables.Make(z, frame)) is { Family: { } family } tables && StreamMover.Create(family.High) is { } high && StreamMover.Create(family.Low) is { } low)
                return Fitted(tables, (high, low), PlantPassages.Of(_hardware, high, low), false) with { LoadToK = at.LoadK - _fallK };
        }
        WithoutSlopes++;
        _fallK = Math.Max(_fallK, LeastFallK);
        var alone = _tables.Make(z, frame);
        return Fitted(alone, null, PlantPassages.Of(_hardware, alone), true) with { LoadToK = at.LoadK - LeastFallK };
    }

    private LoopMap Fitted(LoopTables tables, (StreamMover High, StreamMover Low)? movers, PlantPassages passages, bool held)
    {
        var (f, h) = (tables.Frame, _hardware);
        var (aftercooled, lnHigh) = LoopMap.Fit(tables.High, h.AftercooledK, f.HighFromPa, f.HighToPa);
        var (warm, lnLow) = LoopMap.Fit(tables.Low, h.RoomK, f.LowFromPa, f.LowToPa);
        return new LoopMap
        {
            Tables = tables, Movers = movers, Boiling = movers is { } moving ? new BoilingWatch(moving.High) : null, Passages = passages, IsHeld = held, Middle = LoopMap.Xi(tables.Z), Aftercooled = aftercooled, LnHigh = lnHigh, RoomWarm = warm, LnLow = lnLow,
            AftercooledSlopes = movers is { } m ? LoopMap.FitSlopes(m.High, h.AftercooledK, f.HighFromPa, f.HighToPa) : [],
            RoomWarmSlopes = movers is { } n ? LoopMap.FitSlopes(n.Low, h.RoomK, f.LowFromPa, f.LowToPa) : [],
        };
    }

    /// <summary>The same tables with the parts' maps brought into line with the parts' own models at a moment.</summary>
    /// <param name="map">Tables, and maps until now.</param>
    /// <param name="xi">What circulates at the moment.</param>
    /// <param name="at">The moment.</param>
    /// <param name="slow">True: near rest.</param>
    public LoopMap Aligned(LoopMap map, double[] xi, in PlantPoint at, bool slow)
    {
        var (h, tables, streams) = (_hardware, map.Tables, new Circulating(map));
        streams.Take(xi);
        Maps ??= new PlantMaps(new CompressorMap(tables.Compressor, at.SuctionPa, h.RoomK), new ThrottleMap(Throttle),
            h.Precooler is { } pc ? new PrecoolerMap(PrecoolerLoop.Create(pc, h.Layout.Precooler!.Loop!.Refrigerant, _cancel), pc, pc.Evaporator.ConductanceWPerK, h.RoomK, _cancel) : null);
        double[] z = [.. streams.Z];
        double beforePrecooler = streams.AftercooledEnthalpy(at.HighPa), afterK = streams.High.Temperature(beforePrecooler, at.HighPa, out _), share = 1;
        double hot = Density(streams.High, beforePrecooler, at.HighPa) * afterK;
        if (h.Layout.WarmExchanger is { } wx)
        {
            double exact = WarmExchange.Heat(streams.High, beforePrecooler, at.HighPa, streams.Low, at.ReturnEnthalpy, at.SuctionPa, wx.ConductanceWPerK / at.Flow);
            double simple = WarmEnd.Heat(streams.High, beforePrecooler, at.HighPa, streams.Low, at.ReturnEnthalpy, at.SuctionPa, wx.ConductanceWPerK / at.Flow);
            if (simple > 1 && exact > 0) share = exact / simple;
            beforePrecooler -= exact;
        }
        double conductance = Conductance(map, streams.High, beforePrecooler, at, slow);
        double throttleK = Math.Clamp(at.ThrottleK, streams.High.ColdestK, streams.High.WarmestK), dischargeK = at.DischargeK > 0 ? at.DischargeK : 340;
        map = map with
        {
            WarmExchanger = share,
            PrecoolerWPerK = conductance,
            HotGas = _flash.TemperaturePressure(dischargeK, at.DischargePa, z).MolarDensity / (hot / dischargeK * at.DischargePa / at.HighPa),
        };
        return WithSlopes(map, xi, streams, throttleK, at);
    }

    // Of the precooler's evaporator, W/K: what makes mixture and loop come to rest where the loop's own model has them. One that the mixture hardly answers to stays as it was.
    private double Conductance(LoopMap map, StreamTable high, double enthalpy, in PlantPoint at, bool slow)
    {
        if (Maps.Precooler is not { } precooler) return 0;
        double known = map.PrecoolerWPerK > 0 ? map.PrecoolerWPerK : precooler.ConductanceWPerK;
        if (precooler.Fitted(high, enthalpy, at.HighPa, at.Flow, _cancel) is not var (cooling, found, evaporatingK)) return known;
        if (_precoolerWPerK == 0 && found > 0) return _precoolerWPerK = found;
        if (!slow && found > 0)
        {
            double answer = PrecoolerMap.HeatPerMole(high, enthalpy, at.HighPa, evaporatingK, known / at.Flow) / PrecoolerMap.HeatPerMole(high, enthalpy, at.HighPa, evaporatingK, found / at.Flow) - 1;
            return Math.Abs(answer) < PrecoolerShare ? known : known * Math.Exp(Math.Clamp(Math.Log(found / known), -MostLnPrecooler, MostLnPrecooler));
        }
        // where none fits the loop delivers next to nothing: towards where it does. The mixture's warmth answers to the conductance, and the loop steeply to that: a share of the way is all of it.
        double ln = found > 0 ? Math.Log(found / known) : Math.Log(Math.Max(cooling, LeastW) / Math.Max(at.PrecoolingW, LeastW));
        return known * Math.Exp(Math.Clamp(GainAtRest * ln, -MostLnPrecooler, MostLnPrecooler));
    }

    // compressor and throttle asked at what circulates, and how their answers change with it
    private LoopMap WithSlopes(LoopMap map, double[] xi, Circulating streams, double throttleK, PlantPoint at)
    {
        Func<CompressorDuty, CompressorPerformance> Compressor() => map.Movers is null ? map.Tables.Compressor : _tables.Compressor([.. streams.Z]);
        LoopOffsets Compressed(Func<CompressorDuty, CompressorPerformance> model, double suctionPa, double dischargePa)
        {
            var (lnFlow, lnWork, dischargeK) = Maps.Compressor.Offset(model, at.SuctionK, suctionPa, dischargePa, _hardware.RoomK);
            return new(lnFlow, lnWork, dischargeK, 0);
        }

        double known = map.OffsetsOf(xi, at).LnThrottle;
        double Throttled(double k) => Maps.Throttle.Offset(streams.High, streams.Z, k, streams.High.Enthalpy(k, at.ThrottlePa), at.ThrottlePa, at.CoilPa, map.Throttle, known);
        LoopOffsets Of(double[] about)
        {
            streams.Take(about);
            return Compressed(Compressor(), at.SuctionPa, at.DischargePa) with { LnThrottle = Throttled(throttleK) };
        }

        var here = Of(xi);
        known = here.LnThrottle;
        var compressor = Compressor();
        LoopOffsets alone = here with { LnThrottle = 0 };
        bool bends = Maps.Throttle.IsNearBoiling(streams.High, throttleK, at.ThrottlePa, map.Throttle) && throttleK + KelvinStep < streams.High.WarmestK;
        map = map with
        {
            ThrottleByK = (bends ? (Throttled(throttleK + KelvinStep) - here.LnThrottle) / KelvinStep : 0, throttleK),
            OilK = _hardware.OilMol > 0 ? CompressorMap.ShellK(compressor, new CompressorDuty { SuctionTemperatureK = at.SuctionK, SuctionPressurePa = at.SuctionPa, DischargePressurePa = at.DischargePa, RoomTemperatureK = _hardware.RoomK }) ?? Math.Max(map.OilK, _hardware.RoomK) : 0,
            LnDischarge = Math.Log(at.DischargePa), LnSuction = Math.Log(at.SuctionPa),
            OffsetsByDischarge = (Compressed(compressor, at.SuctionPa, at.DischargePa * Math.Exp(LnPressureStep)) - alone).Times(1 / LnPressureStep),
            OffsetsBySuction = (Compressed(compressor, at.SuctionPa * Math.Exp(LnPressureStep), at.DischargePa) - alone).Times(1 / LnPressureStep),
        };
        if (map.Movers is null) return map with { Offsets = here, OffsetSlopes = [] };
        var slopes = map.OffsetSlopes;
        if (slopes.Length == 0)
        {
            slopes = new LoopOffsets[xi.Length];
            double[] about = [.. xi];
            for (int d = 0; d < xi.Length; d++)
            {
                about[d] += StreamMover.NeighbourStep;
                slopes[d] = (Of(about) - here).Times(1 / StreamMover.NeighbourStep);
                about[d] = xi[d];
            }
        }
        // in the middle what makes them right where it stands
        var middle = here;
        for (int d = 0; d < xi.Length; d++) middle -= slopes[d].Times(xi[d] - map.Middle[d]);
        return map with { Offsets = middle, OffsetSlopes = slopes, BufferSlopes = map.BufferSlopes.Length > 0 ? map.BufferSlopes : BufferSlopes(map.Middle, at) };
    }

    // ln of the molar density of the buffer's gas by the composition, over the pressure
    private double[] BufferSlopes(double[] middle, in PlantPoint at)
    {
        if (_hardware.Buffer is not { } buffer) return [];
        double pressurePa = Math.Max(at.SuctionPa, at.BufferPa);
        double Ln(double[] xi) => Math.Log(_flash.TemperaturePressure(buffer.TemperatureK, pressurePa, LoopMap.Fractions(xi)).MolarDensity);
        double here = Ln(middle);
        double[] slopes = new double[middle.Length], about = [.. middle];
        for (int d = 0; d < slopes.Length; d++)
        {
            about[d] += StreamMover.NeighbourStep;
            slopes[d] = (Ln(about) - here) / (StreamMover.NeighbourStep * pressurePa);
            about[d] = middle[d];
        }
        return slopes;
    }

    // how far apart two moments are, in what the parts' maps hardly change over: 1 is a little
    private static double Apart(in PlantPoint a, in PlantPoint b)
    {
        static double Ln(double x, double y) => x == y ? 0 : Math.Abs(Math.Log(x / y));
        double off = Math.Max(Math.Abs(a.ThrottleK - b.ThrottleK) / (0.02 * b.ThrottleK), Math.Max(Ln(a.HighPa, b.HighPa) / 0.03, Ln(a.SuctionPa, b.SuctionPa) / 0.05));
        return Math.Max(off, Math.Max(Math.Abs(a.SuctionK - b.SuctionK) / 4, Math.Max(Math.Abs(a.RecuperatorInletK - b.RecuperatorInletK) / 2, Math.Max(Math.Abs(a.PrecoolerK - b.PrecoolerK) / 2, Ln(a.Flow, b.Flow) / 0.05))));
    }

    private static double Density(StreamTable table, double enthalpy, double pressurePa) => table.At(enthalpy, pressurePa) is var p ? p.Density / p.MolarMass : 0;

    // Maps made on another way down, where composition, pressures and cold end suit: of those tables that were made first, so that the same run comes to the same answer
    // whatever was made after it, the map brought into line nearest by.
    private (LoopMap Map, PlantPoint At)? Kept(double[] xi, PlantPoint at, double fallK, double near, double reach)
    {
        var frame = Frame(at, 0, reach);
        (LoopMap Map, PlantPoint At)? best = null;
        foreach (var kept in _kept)
        {
            var t = kept.Map.Tables;
            if (best is { } b)
            {
                if (ReferenceEquals(b.Map.Tables, t) && Apart(kept.At, at) < Apart(b.At, at)) best = kept;
                continue;
            }
            if (kept.Map.IsHeld || t.Frame.ColdestK > frame.ColdestK || t.Frame.HighColdestK > frame.HighColdestK || kept.Map.LoadToK > at.LoadK - Math.Min(0.4 * fallK, LeastFallK) || t.Frame.HighToPa / t.Frame.HighFromPa > 1.1 * frame.HighToPa / frame.HighFromPa) continue;
            if (t.Frame.Holds(at.ThrottlePa, at.HighPa, at.SuctionPa, at.CoilPa) && kept.Map.Distance(xi) <= near && kept.Map.AstrayK(xi) < 0.5 * BoilingWatch.MostK) best = kept;
        }
        return best;
    }
}
