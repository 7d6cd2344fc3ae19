using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.Precooling;
using Coldwright.Machine.Streams;
using Coldwright.Machine.Throttling;
using Coldwright.Numerics;
using Coldwright.Simulation.ClosedLoop;
using Coldwright.Machine.Description;

namespace Coldwright.Simulation.Cooldown;

/// <summary>Makes the maps of the parts and, for every composition on the way, tables and offsets. Maps made are kept and taken again where they suit. Not thread-safe.</summary>
internal sealed class LoopMapMaker
{
    private const double DeltaK = 14, DeltaShare = 0.12, PrecoolerColdestK = 185, ColdestK = 60, AboveK = 3;

    private readonly Hardware _hardware;
    private readonly CancellationToken _cancel;
    private readonly bool _direct;
    private readonly LoopTablesMaker _tables;
    private readonly Flash _flash;
    private readonly CapillaryModel _capillary;
    private readonly ValveModel _valve;
    private readonly List<(LoopMap Map, PlantPoint At)> _kept = [];
    private readonly Lazy<LoopState> _guess;
    private (double Throttle, double Coil, double? Flow)? _guessedFlow;

    /// <param name="hardware">The machine.</param>
    /// <param name="model">Fluid model.</param>
    /// <param name="options">Of the property tables.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <param name="direct">True: no property tables and no tabulated films, every answer a flash and every correlation asked.</param>
    public LoopMapMaker(Hardware hardware, HelmholtzModel model, StreamTableOptions options, CancellationToken cancel, bool direct = false)
    {
        (_hardware, _cancel, _direct) = (hardware, cancel, direct);
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

    /// <summary>Frame of tables around a moment, for loads down to a temperature (K): isobars so far from its pressures, as a factor.</summary>
    public TableFrame Frame(in PlantPoint at, double loadK, double reach)
    {
        double cold = Math.Max(ColdestK, loadK - Math.Max(DeltaK, DeltaShare * loadK));
        if (_hardware.Layout.Precooler is not null) cold = Math.Min(cold, PrecoolerColdestK);
        return new TableFrame(at.ThrottlePa / reach, at.HighPa * reach, Math.Min(at.SuctionPa, at.CoilPa) / reach, Math.Max(at.SuctionPa, at.CoilPa) * reach, Math.Floor(cold), _hardware.AftercooledK + AboveK);
    }

    /// <summary>Maps of a composition around a moment.</summary>
    /// <param name="z">Mole fractions.</param>
    /// <param name="at">Temperatures, pressures and flow to bring the maps into line at; enthalpies in it are those of <paramref name="before"/>.</param>
    /// <param name="before">The maps until now; null at the start.</param>
    /// <param name="loadK">Coldest load the tables are to serve, K.</param>
    /// <param name="near">Maps kept from before are taken when ln of no fraction is further off than this; 0: none.</param>
    /// <param name="reach">How far the tables' isobars lie from the moment's pressures, as a factor.</param>
    public LoopMap Make(double[] z, in PlantPoint at, LoopMap? before, double loadK, double near, double reach)
    {
        var frame = Frame(at, loadK, reach);
        var kept = Kept(z, at, frame, near);
        if (kept is { } whole && Alike(whole.At, at)) return whole.Map;
        var tables = kept?.Map.Tables ?? Tables(z, frame);
        var map = Aligned(tables, kept?.Map.Passages ?? (_direct ? PlantPassages.None : PlantPassages.Of(_hardware, tables)), at, before);
        _kept.Add((map, at));
        return map;
    }

    private LoopTables Tables(double[] z, TableFrame frame)
    {
        var made = _tables.Make(z, frame);
        return _direct ? made with { High = StreamTable.Direct(Model, z, frame.ColdestK, frame.WarmestK), Low = StreamTable.Direct(Model, z, frame.ColdestK, frame.WarmestK) } : made;
    }

    /// <summary>The parts' maps on given tables, brought into line with the parts' own models at a moment.</summary>
    /// <param name="tables">Tables.</param>
    /// <param name="passages">What the passages do on them.</param>
    /// <param name="at">The moment; its enthalpies are those of <paramref name="before"/>.</param>
    /// <param name="before">The maps until now; null at the start.</param>
    public LoopMap Aligned(LoopTables tables, PlantPassages passages, in PlantPoint at, LoopMap? before)
    {
        double[] z = tables.Z;
        var h = _hardware;
        if (Maps is null)
            Maps = new PlantMaps(new CompressorMap(tables.Compressor, at.SuctionPa, h.RoomK), new ThrottleMap(Throttle),
                h.Precooler is { } pc ? new PrecoolerMap(PrecoolerLoop.Create(pc, h.Layout.Precooler!.Loop!.Refrigerant, _cancel), pc, pc.Evaporator.ConductanceWPerK, h.RoomK, _cancel) : null);
        var (aftercooled, lnHigh) = LoopMap.Fit(tables.High, h.AftercooledK, tables.Frame.HighFromPa, tables.Frame.HighToPa);
        var (warm, lnLow) = LoopMap.Fit(tables.Low, h.RoomK, tables.Frame.LowFromPa, tables.Frame.LowToPa);
        var map = new LoopMap { Tables = tables, Passages = passages, Aftercooled = aftercooled, LnHigh = lnHigh, RoomWarm = warm, LnLow = lnLow, PrecoolerWPerK = before?.PrecoolerWPerK ?? Maps.Precooler?.ConductanceWPerK ?? 0 };
        double returned = Carried(before?.Tables.Low, tables.Low, at.ReturnEnthalpy, at.SuctionPa), afterK = tables.High.Temperature(map.AftercooledEnthalpy(at.HighPa), at.HighPa, out _), beforePrecooler = map.AftercooledEnthalpy(at.HighPa);
        if (h.Layout.WarmExchanger is { } wx)
        {
            double exact = WarmExchange.Heat(tables.High, beforePrecooler, at.HighPa, tables.Low, returned, at.SuctionPa, wx.ConductanceWPerK / at.Flow);
            double simple = PlantEquations.WarmExchangerHeat(tables, beforePrecooler, at.HighPa, returned, at.SuctionPa, wx.ConductanceWPerK / at.Flow);
            if (simple > 1 && exact > 0) map = map with { WarmExchanger = exact / simple };
            beforePrecooler -= exact;
        }
        if (Maps.Precooler is { } precooler && precooler.Fitted(tables.High, beforePrecooler, at.HighPa, at.Flow, _cancel) is { } fit) map = map with { PrecoolerWPerK = fit.ConductanceWPerK };
        double throttleK = Math.Clamp(at.ThrottleK, tables.High.ColdestK, tables.High.WarmestK);
        double dischargeK = at.DischargeK > 0 ? at.DischargeK : 340;
        return map with
        {
            Compressor = Maps.Compressor.Offset(tables.Compressor, at.SuctionK, at.SuctionPa, at.DischargePa, h.RoomK),
            LnThrottle = Maps.Throttle.Offset(tables.High, z, throttleK, tables.High.Enthalpy(throttleK, at.ThrottlePa), at.ThrottlePa, at.CoilPa),
            HotGas = _flash.TemperaturePressure(dischargeK, at.DischargePa, z).MolarDensity / (Density(tables.High, map.AftercooledEnthalpy(at.HighPa), at.HighPa) * afterK / dischargeK * at.DischargePa / at.HighPa),
        };
    }

    // offsets hardly change over so much
    private static bool Alike(in PlantPoint a, in PlantPoint b) =>
        Math.Abs(a.ThrottleK - b.ThrottleK) < 0.02 * b.ThrottleK && Math.Abs(Math.Log(a.HighPa / b.HighPa)) < 0.03 && Math.Abs(Math.Log(a.SuctionPa / b.SuctionPa)) < 0.05 && Math.Abs(a.SuctionK - b.SuctionK) < 5;

    /// <summary>An enthalpy of another composition's table at the same temperature, J/mol.</summary>
    public static double Carried(StreamTable? from, StreamTable to, double enthalpy, double pressurePa)
    {
        if (from is null || ReferenceEquals(from, to)) return enthalpy;
        return to.Enthalpy(Math.Clamp(from.Temperature(enthalpy, pressurePa, out _), to.ColdestK, to.WarmestK), pressurePa);
    }

    private static double Density(StreamTable table, double enthalpy, double pressurePa) => table.At(enthalpy, pressurePa) is var p ? p.Density / p.MolarMass : 0;

    // Maps made on another way down, where composition, pressures and cold end suit: of those tables that were made first, so that the same run comes to the same answer
    // whatever was made after it, the map brought into line nearest by.
    private (LoopMap Map, PlantPoint At)? Kept(double[] z, PlantPoint at, TableFrame frame, double near)
    {
        (LoopMap Map, PlantPoint At)? best = null;
        foreach (var kept in _kept)
        {
            var t = kept.Map.Tables;
            if (best is { } b)
            {
                if (ReferenceEquals(b.Map.Tables, t) && Math.Abs(kept.At.ThrottleK - at.ThrottleK) < Math.Abs(b.At.ThrottleK - at.ThrottleK)) best = kept;
                continue;
            }
            if (t.Frame.ColdestK > frame.ColdestK + 10 || !t.Frame.Holds(at.ThrottlePa, at.HighPa, at.SuctionPa, at.CoilPa)) continue;
            double off = 0;
            for (int i = 0; i < z.Length; i++) off = Math.Max(off, Math.Abs(Math.Log(t.Z[i] / z[i])));
            if (off < near) best = kept;
        }
        return best;
    }
}
