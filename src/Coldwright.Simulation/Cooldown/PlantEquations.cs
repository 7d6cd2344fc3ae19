using Coldwright.Machine.ColdVessel;
using Coldwright.Machine.Compression;
using Coldwright.Machine.Oil;
using Coldwright.Machine.Recuperation;
using Coldwright.Numerics;
using Coldwright.Simulation.ClosedLoop;
using P = Coldwright.Simulation.Cooldown.PlantParameters;

namespace Coldwright.Simulation.Cooldown;

/// <summary>
/// Slopes of all unknowns (docs/theory/cooldown.md). Streams are quasi-steady: the high stream is marched down the wall's temperatures, through
/// throttle and coil, the low one back up, without iteration between them. Pressures, flow, returning gas, charge and what circulates relax to the loop's balances
/// within seconds, so that at rest they are those of the closed rating. Not thread-safe.
/// </summary>
internal sealed class PlantEquations
{
    // our assumption: a precooler that is described by its outlet alone pulls down like this
    private const double GivenPrecoolerS = 240;
    private const int CoilCells = 10;
    private const double LeastFlow = 1e-5, CoilSettled = 1e-6;

    private readonly Plant _plant;
    private readonly PlantMaps _maps;
    private readonly WallMarch _hot, _cold;
    private readonly double[] _wallK, _foamK, _foamW;
    private readonly IsothermalCoil? _coil;
    private readonly PlantCharge _charge;
    private readonly DirectStreams? _direct;
    private readonly LoopContent _content;
    private PlantPoint _at;
    private LoopMap _loop = null!;
    private Circulating _streams = null!;
    // of the state last evaluated
    private double _lnThrottleOffset;

    /// <param name="plant">The machine.</param>
    /// <param name="maps">Maps of its parts.</param>
    /// <param name="charge">What was filled in.</param>
    /// <param name="direct">Properties by flashes of the model and every correlation at every place; null: by tables.</param>
    public PlantEquations(Plant plant, PlantMaps maps, PlantCharge charge, DirectStreams? direct = null)
    {
        (_plant, _maps, _charge, _direct) = (plant, maps, charge, direct);
        (_content, Relaxation) = (new LoopContent(plant.Layout.Ratios + 1), new LoopRelaxation(plant.Layout.Balances));
        var h = plant.Hardware;
        _hot = new WallMarch(h.Recuperator, true, plant.Layout.Cells, plant.Conductivity);
        _cold = new WallMarch(h.Recuperator, false, plant.Layout.Cells, plant.Conductivity);
        (_wallK, _foamK, _foamW) = (new double[plant.Layout.Cells], new double[plant.Layout.Insulation], new double[plant.Layout.Insulation + 1]);
        _coil = h.Coil is { } coil ? coil with { Cells = CoilCells, Settled = CoilSettled } : null;
    }

    public Plant Plant => _plant;
    public PlantMaps Maps => _maps;
    /// <summary>Tables and maps about what circulates.</summary>
    public LoopMap Loop
    {
        get => _loop;
        set => (_loop, _streams) = (value, new Circulating(value, _direct));
    }
    /// <summary>What circulates in the last state evaluated.</summary>
    public Circulating Streams => _streams;
    /// <summary>What the charge sets.</summary>
    public PlantCharge Charge => _charge;
    /// <summary>mol of each substance in the loop in the last state evaluated.</summary>
    public ReadOnlySpan<double> SpeciesMoles => _content.Moles;
    /// <summary>Takes over from other maps without a jump; null: nothing to take over.</summary>
    public LoopHandover? Handover { get; set; }
    /// <summary>What flashes make of the slopes over the tables; null: nothing is mended.</summary>
    public DirectCorrection? Correction { get; set; }
    private PlantPassages Passages => _direct is null ? Loop.Passages : PlantPassages.None;
    /// <summary>Moment of the states that are evaluated, s.</summary>
    public double NowS { get; set; }
    /// <summary>Conductance of the precooler's evaporator, W/K.</summary>
    public double PrecoolerWPerK => Loop.PrecoolerWPerK * (Handover?.Precooler(NowS) ?? 1);
    /// <summary>False: the compressor stands still.</summary>
    public bool Running { get; set; } = true;
    /// <summary>The last state evaluated.</summary>
    public PlantPoint At => _at;
    public WallMarch Hot => _hot;
    public WallMarch Cold => _cold;
    public ReadOnlySpan<double> WallK => _wallK;
    public ReadOnlySpan<double> FoamK => _foamK;
    /// <summary>Heat flows through the insulation, W, inwards; first into the inside.</summary>
    public ReadOnlySpan<double> FoamW => _foamW;
    public long Evaluations { get; private set; }
    public LoopRelaxation Relaxation { get; }

    /// <summary>Right-hand side; false where a part has no answer.</summary>
    public bool Slope(double time, ReadOnlySpan<double> y, ReadOnlySpan<double> p, Span<double> dy)
    {
        NowS = time;
        if (!Evaluate(y, p, dy, slopes: false)) return false;
        if (!Running) return true;
        Correction?.Add(time, dy);
        var balances = dy.Slice(_plant.Layout.High, _plant.Layout.Balances);
        Handover?.Take(time, balances);
        Relaxation.Slopes(balances);
        return true;
    }

    /// <summary>Slopes, but for the loop's unknowns: their balances.</summary>
    public bool Evaluate(ReadOnlySpan<double> y, ReadOnlySpan<double> p, Span<double> dy, bool slopes)
    {
        Evaluations++;
        dy.Clear();
        var l = _plant.Layout;
        _at = new PlantPoint { LoadK = _plant.Load.Temperature(y[l.Load]), LoadW = _plant.LoadW };
        for (int i = 0; i < l.Cells; i++) _wallK[i] = _plant.Metal.Temperature(y[i]);
        for (int i = 0; i < l.Insulation; i++) _foamK[i] = _plant.Insulation!.Heat[i].Temperature(y[l.FirstInsulation + i]);
        Walls(y, p, dy);
        try
        {
            if (Running)
            {
                if (!Run(y, p, dy, slopes)) return false;
            }
            else _at.PrecoolerK = PlantLayout.PrecoolerScale * y[l.Precooler];
        }
        catch (SolveException)
        {
            return false;
        }
        Ledger(p, dy);
        return true;
    }

    // conduction and leak alone, W in dy
    private void Walls(ReadOnlySpan<double> y, ReadOnlySpan<double> p, Span<double> dy)
    {
        var (l, h) = (_plant.Layout, _plant.Hardware);
        for (int i = 1; i < l.Cells; i++)
        {
            double flow = Axial(i) * (_wallK[i - 1] - _wallK[i]);
            dy[i - 1] -= flow;
            dy[i] += flow;
        }
        if (_plant.Insulation is { } foam)
        {
            foam.Flows(_at.LoadK, _foamK, p[P.Leak], _foamW);
            for (int i = 0; i < l.Insulation; i++) dy[l.FirstInsulation + i] = _foamW[i + 1] - _foamW[i];
            dy[l.Load] += _foamW[0];
            _at.WallLeakW = _foamW[^1];
        }
        foreach (var path in _plant.Penetrations)
            if (!path.EndsWarm) _at.PenetrationLeakW += p[P.Leak] * path.AreaOverLengthM * path.Material.Integral(_at.LoadK, h.RoomK).Value;
        dy[l.Load] += _at.PenetrationLeakW + _plant.LoadW;
        if (h.RecuperatorLeak is { } leak && (!Running || h.Recuperator.LeakReceiver == LeakReceiver.Wall))
            for (int i = 0; i < l.Cells; i++)
            {
                double into = p[P.Leak] * leak.ConductancePerLength * h.Recuperator.LengthM / l.Cells * (leak.EnvironmentK - _wallK[i]);
                dy[i] += into;
                _at.AlongLeakW += into;
            }
    }

    /// <summary>Conductance of the metal between cell i - 1 and i, W/K.</summary>
    public double Axial(int i)
    {
        var h = _plant.Hardware;
        return h.Recuperator.MetalAreaM2 * _plant.Layout.Cells / h.Recuperator.LengthM * _plant.Conductivity(0.5 * (_wallK[i] + _wallK[i - 1]));
    }

    private bool Run(ReadOnlySpan<double> y, ReadOnlySpan<double> p, Span<double> dy, bool slopes)
    {
        var (l, h, k, t) = (_plant.Layout, _plant.Hardware, _plant.Hardware.Knobs, _streams);
        t.Take(y.Slice(l.FirstRatio, l.Ratios));
        double suction = Math.Exp(y[l.LnSuction]), coilPa = Math.Exp(y[l.LnCoil]), n = Math.Exp(y[l.LnFlow]), drop = h.Layout.Aftercooler.PressureDropPa;
        Machine.Charge.BufferState? buffer = Loop.Tables.Buffer?.At(y[l.High], suction);
        double high = buffer?.HighPa ?? Math.Exp(y[l.High]) - drop;
        if (!(high > 1.01 * coilPa) || !(high > 1.01 * suction) || !(n > LeastFlow) || !(n < 10)) return false;
        double returned = y[l.Return] * PlantLayout.EnthalpyScale;
        var (bypass, buffered) = t.InBuffer(buffer?.BypassFlow ?? 0, buffer?.Content ?? 0, buffer?.PressurePa ?? 0);
        var offsets = t.Offsets(high + drop, suction);
        _at = _at with { HighPa = high, DischargePa = high + drop, SuctionPa = suction, CoilPa = coilPa, Flow = n, Bypass = bypass, BufferPa = buffer?.PressurePa ?? 0, BufferContent = buffered };

        // warm end
        double aftercooled = t.AftercooledEnthalpy(high), before = aftercooled, warmHeat = 0;
        if (h.Layout.WarmExchanger is { } wx)
        {
            warmHeat = Loop.WarmExchanger * WarmEnd.Heat(t.High, aftercooled, high, t.Low, returned, suction, wx.ConductanceWPerK / n);
            before -= warmHeat;
        }
        double inlet = Precool(y, p, dy, before, high, n);
        _at = _at with { BeforePrecooler = before, RecuperatorInlet = inlet, RecuperatorInletK = t.High.Temperature(inlet, high, out _), ReturnEnthalpy = returned };

        // down to the throttle
        double leakPerCell = h.RecuperatorLeak is { } along && h.Recuperator.LeakReceiver != LeakReceiver.Wall ? p[P.Leak] * along.ConductancePerLength * h.Recuperator.LengthM / l.Cells : 0;
        bool intoHot = h.Recuperator.LeakReceiver == LeakReceiver.Hot;
        _hot.Run(new StreamInlet(t.High, n, inlet, high), _wallK, intoHot ? leakPerCell : 0, h.RoomK, new MarchScales(k.HighFilm * p[P.HighFilm], k.HighFriction, k.LiquidHoldUp), slopes, Passages.High);
        double throttled = _hot.OutletEnthalpy, throttlePa = _hot.OutletPressurePa;
        if (!(throttlePa > 1.01 * coilPa)) return false;
        double throttleK = t.High.Temperature(throttled, throttlePa, out _);
        _lnThrottleOffset = offsets.LnThrottle;
        double lnThrottle = LnThrottle(throttleK, throttlePa, coilPa, p);

        // through the coil
        var (coilOut, coilOutPa) = Coil(throttled, coilPa, n, _at.LoadK, p);
        double coilW = n * (coilOut - throttled);

        // back up
        _cold.Run(new StreamInlet(t.Low, n, coilOut, coilOutPa), _wallK, intoHot ? 0 : leakPerCell, h.RoomK, new MarchScales(k.LowFilm * p[P.LowFilm], k.LowFriction, k.LiquidHoldUp), slopes, Passages.Low);
        for (int i = 0; i < l.Cells; i++)
        {
            dy[i] -= _hot.HeatW[i] + _cold.HeatW[i];
            if (leakPerCell > 0) _at.AlongLeakW += leakPerCell * (h.RoomK - (intoHot ? _hot.Temperature[i] : _cold.Temperature[i]));
        }
        dy[l.Load] -= coilW;
        double low = _cold.OutletEnthalpy;
        foreach (var path in _plant.Penetrations)
            if (path.EndsWarm) _at.WarmEndLeakW += p[P.Leak] * path.AreaOverLengthM * path.Material.Integral(Math.Max(_at.RecuperatorInletK, 20), h.RoomK).Value;
        double gas = low + _at.WarmEndLeakW / n;

        // suction and compressor
        double mixed = (n * (returned + warmHeat) + bypass * t.RoomWarmEnthalpy(suction)) / (n + bypass);
        var at = t.Low.At(mixed, suction);
        var map = _maps.Compressor.At(at.TemperatureK, suction, high + drop);
        double compressed = map.VolumeFlow * at.Density / at.MolarMass * Math.Exp(offsets.LnFlow) * k.CompressorFlow * p[P.CompressorFlow];
        Content(throttled, throttlePa, coilOut, coilOutPa, at.Density / at.MolarMass, aftercooled, inlet, high, map.DischargeK + offsets.DischargeK, n);
        double moles = _content.Total, charged = _charge.Mol(p);

        dy[l.LnFlow] = lnThrottle - y[l.LnFlow];
        dy[l.High] = (compressed - bypass - n) / n;
        dy[l.LnSuction] = Math.Log(_cold.OutletPressurePa) - y[l.LnSuction];
        dy[l.LnCoil] = 1 - moles / charged;
        if (!Loop.IsHeld)
            for (int i = 0; i < l.Ratios; i++) dy[l.FirstRatio + i] = _charge.LnRatio(i + 1, p) - Math.Log(_content.Moles[i + 1] / _content.Moles[0]);
        dy[l.Return] = gas / PlantLayout.EnthalpyScale - y[l.Return];
        double compressorW = compressed * map.Work * Math.Exp(offsets.LnWork) * GasConstant * at.TemperatureK * k.CompressorPower;
        _at = _at with
        {
            SuctionK = at.TemperatureK, CompressorFlow = compressed, ThrottleFlow = Math.Exp(lnThrottle), ThrottleK = throttleK, ThrottlePa = throttlePa, ThrottleEnthalpy = throttled, CoilOutEnthalpy = coilOut, CoilOutPa = coilOutPa,
            ReturnGas = gas, DischargeK = map.DischargeK + offsets.DischargeK, Moles = moles, ChargeError = moles / charged - 1, CompressorW = compressorW,
            PowerW = compressorW + h.Layout.Aftercooler.FanPowerW + PrecoolerPowerW(), CoolingW = n * (low - inlet), CoilW = coilW,
        };
        return true;
    }

    private const double GasConstant = 8.314462618;

    /// <summary>ln of the throttle's flow, mol/s.</summary>
    public double LnThrottle(double throttleK, double throttlePa, double coilPa, ReadOnlySpan<double> p) =>
        _maps.Throttle.LnFlow(_streams.High, _streams.Z, throttleK, throttlePa, coilPa, Loop.Throttle, _lnThrottleOffset) + _lnThrottleOffset + Loop.ThrottleAt(throttleK) + Math.Log(_plant.Hardware.Knobs.ThrottleFlow * p[P.ThrottleFlow]);

    /// <summary>Coil outlet, J/mol and Pa.</summary>
    public (double Enthalpy, double PressurePa) Coil(double enthalpy, double coilPa, double n, double loadK, ReadOnlySpan<double> p)
    {
        var table = _streams.Low;
        if (_coil is null) return (table.Enthalpy(Math.Clamp(loadK - _plant.Hardware.Layout.Coil.DifferenceK, table.ColdestK, table.WarmestK), coilPa), coilPa);
        var r = (_coil with { FilmScale = _coil.FilmScale * _plant.Hardware.Knobs.CoilFilm * p[P.CoilFilm] }).Solve(new StreamInlet(table, n, enthalpy, coilPa), loadK, Passages.Coil);
        return (r.OutletEnthalpy, r.OutletPressurePa);
    }

    private double Precool(ReadOnlySpan<double> y, ReadOnlySpan<double> p, Span<double> dy, double before, double high, double n)
    {
        var (l, h, t) = (_plant.Layout, _plant.Hardware, _streams);
        if (h.Layout.Precooler is not { } part) return before;
        double k = PlantLayout.PrecoolerScale * y[l.Precooler];
        _at.PrecoolerK = k;
        if (_maps.Precooler is { } map)
        {
            double q = PrecoolerMap.HeatPerMole(t.High, before, high, k, PrecoolerWPerK * h.Knobs.PrecoolerConductance * p[P.Precooler] / n);
            _at.PrecoolingW = n * q;
            dy[l.Precooler] = (n * q - map.CoolingW(k)) / (map.MetalJPerK * PlantLayout.PrecoolerScale);
            return before - q;
        }
        dy[l.Precooler] = (part.OutletTemperatureK - k) / (GivenPrecoolerS * PlantLayout.PrecoolerScale);
        double outlet = Math.Min(before, t.High.Enthalpy(Math.Clamp(k, t.High.ColdestK, t.High.WarmestK), high));
        _at.PrecoolingW = n * (before - outlet);
        return outlet;
    }

    private double PrecoolerPowerW()
    {
        if (_plant.Hardware.Layout.Precooler is not { } part) return 0;
        return _maps.Precooler is { } map ? map.PowerW(_at.PrecoolerK) + part.FanPowerW : Rating.ModelRatingSolver.PrecoolerPowerW(part, _plant.Hardware.RoomK, _at.PrecoolingW) + part.FanPowerW;
    }

    // what the loop holds of every substance
    private void Content(double throttled, double throttlePa, double coilOut, double coilOutPa, double suctionDensity, double aftercooled, double inlet, double high, double dischargeK, double n)
    {
        var (h, t, c) = (_plant.Hardware, _streams, _content);
        double mass = n * t.High.MolarMass, scale = h.Knobs.LiquidHoldUp;
        Array.Clear(c.Moles);
        c.AddGas(t.Z, _at.BufferContent);
        // the sump stands in what fills the shell
        if (Loop.OilK > 0) DissolvedGas.Add(_charge.Substances, [.. t.Z], h.Compressor.Machine.Traits.Kind == CompressorKind.Rotary ? _at.DischargePa : _at.SuctionPa, Loop.OilK, h.OilMol, c.Moles);
        c.AddCells(_hot.SpeciesMoles);
        c.AddCells(_cold.SpeciesMoles);
        if (h.Coil is { } coil)
        {
            // Simpson's rule
            double flux = mass / (Math.PI / 4 * coil.BoreM * coil.BoreM), part = coil.VolumeM3 / 6;
            c.Add(t.Low, throttled, _at.CoilPa, part, flux, scale);
            c.Add(t.Low, 0.5 * (throttled + coilOut), 0.5 * (_at.CoilPa + coilOutPa), 4 * part, flux, scale);
            c.Add(t.Low, coilOut, coilOutPa, part, flux, scale);
        }
        double warmDensity = t.High.At(aftercooled, high) is var w ? w.Density / w.MolarMass : 0;
        foreach (var v in h.Volumes)
        {
            double flux = v.AreaM2 > 0 ? mass / v.AreaM2 : 0;
            switch (v.State)
            {
                // perfect gas between aftercooler and discharge: a small volume, hot
                case VolumeState.Discharge: c.AddGas(t.Z, v.VolumeM3 * Loop.HotGas * warmDensity * h.AftercooledK / dischargeK * _at.DischargePa / high); break;
                case VolumeState.Suction: c.AddGas(t.Z, v.VolumeM3 * suctionDensity); break;
                case VolumeState.Aftercooled: c.Add(t.High, aftercooled, high, v.VolumeM3, flux, scale); break;
                case VolumeState.Precooled: c.Add(t.High, inlet, high, v.VolumeM3, flux, scale); break;
                case VolumeState.ColdHigh: c.Add(t.High, throttled, throttlePa, v.VolumeM3, flux, scale); break;
                case VolumeState.Throttled: c.Add(t.Low, throttled, _at.CoilPa, v.VolumeM3, flux, scale); break;
                case VolumeState.ColdLow: c.Add(t.Low, coilOut, coilOutPa, v.VolumeM3, flux, scale); break;
                default:
                    c.Add(t.High, throttled, throttlePa, 0.5 * v.VolumeM3, 0, scale);
                    c.Add(t.Low, throttled, _at.CoilPa, 0.5 * v.VolumeM3, 0, scale);
                    break;
            }
        }
    }

    // W to slopes of the heats, and the sums
    private void Ledger(ReadOnlySpan<double> p, Span<double> dy)
    {
        var l = _plant.Layout;
        for (int i = 0; i < l.Cells; i++) _at.RecuperatorStoredW -= dy[i];
        _at.LoadStoredW = -dy[l.Load];
        for (int i = 0; i < l.Insulation; i++) _at.InsulationStoredW -= dy[l.FirstInsulation + i];
        dy[l.Cooled] = _at.CoolingW / PlantLayout.LedgerJ;
        dy[l.Leaked] = _at.LeakW / PlantLayout.LedgerJ;
        dy[l.Electrical] = _at.PowerW / PlantLayout.LedgerJ;
        for (int i = 0; i < l.High; i++) dy[i] /= _plant.CapacityOf(i, p);
    }
}
