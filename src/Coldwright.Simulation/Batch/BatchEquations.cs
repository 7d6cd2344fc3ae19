using Coldwright.Machine.Feed;
using Coldwright.Numerics.Integration;
using static Coldwright.Simulation.Batch.BatchSlots;

namespace Coldwright.Simulation.Batch;

/// <summary>The balances of grams and joules of a batch (docs/theory/batch.md). One object a run; what is open and what runs is set between integrations.</summary>
internal sealed class BatchEquations
{
    // Our assumptions: a regulator that passes this much and droops by some 10 kPa, drops that float on a warm flask, a wide line into the vessel.
    private const double MostSource = 5e-3, RegulatorGain = 2e-7, FlaskFilm = 150, SplashM = 5e-3, FillConductance = 1e-7;
    // liquid left, over the vessel's volume, at which vapour begins to be drawn through the drain
    private const double DrawnThrough = 5e-3;
    // a film of liquid in the flask below which it boils no faster than it arrives
    private const double FilmKg = 2e-4;

    private readonly BatchCooler _c;
    private readonly ProductMap _map;
    private readonly GasPhase _gas;
    private readonly FeedCompressor? _compressor;
    private readonly double _flaskDiameter, _flaskArea, _flaskHeat;
    private double _lastK, _lastSlope = 500;

    public BatchEquations(BatchCooler cooler, bool flaskCold)
    {
        (_c, _map) = (cooler, cooler.Product.Fork());
        _gas = _map.Phase;
        _compressor = cooler.Compressor is { } machine ? new FeedCompressor(machine, _gas, cooler.RoomK) : null;
        _flaskDiameter = Math.Cbrt(2 * cooler.FlaskM3 / Math.PI);
        _flaskArea = Math.PI * _flaskDiameter * _flaskDiameter * 2.25;
        FlaskCold = flaskCold || cooler.FlaskMetal is null;
        _flaskHeat = cooler.FlaskMetal?.Energy(cooler.RoomK) ?? 0;
        (BoilingK, LiquidH, VapourH, LiquidDensity) = cooler.AtRoom;
        ZeroH = _gas.At(cooler.RoomK, cooler.RoomPa).Enthalpy;
        _lastK = cooler.StartK;
    }

    public bool FlaskCold { get; }
    /// <summary>The feed pressure that is kept, Pa.</summary>
    public double KeepPa { get; set; }
    public bool FillOpen { get; set; }
    public bool CompressorRuns { get; set; }
    public bool DrainOpen { get; set; }
    public FeedCompressor? Compressor => _compressor;
    public double BoilingK { get; }
    public double LiquidH { get; }
    public double VapourH { get; }
    public double LiquidDensity { get; }
    public double ZeroH { get; }
    private double Latent => VapourH - LiquidH;

    public InitialValueProblem Problem() => new(Count, Slope) { Pattern = Pattern };

    /// <summary>A vessel of cold gas at the room's pressure, warm lines, an empty flask.</summary>
    public double[] Start()
    {
        var y = new double[Count];
        var gas = _gas.At(_c.StartK, _c.RoomPa);
        y[VesselKg] = gas.Density * _c.VesselM3;
        y[VesselJ] = y[VesselKg] * gas.InternalEnergy + (_c.VesselMetal?.Energy(_c.StartK) ?? 0);
        y[SupplyLineKg] = _gas.At(_c.RoomK, _c.RoomPa).Density * _c.SupplyLineM3;
        y[FillLineKg] = _gas.At(_c.ArrivingK, _c.RoomPa).Density * _c.FillLineM3;
        if (_c.Receiver is { } receiver) y[ReceiverKg] = ReceiverKgAt(receiver.PressurePa);
        y[LineJ] = _c.LineMetal?.Energy(_c.RoomK) ?? 0;
        return y;
    }

    /// <summary>Gas in the receiver at a pressure (Pa) and the room's temperature, kg.</summary>
    public double ReceiverKgAt(double pressurePa) => _gas.At(_c.RoomK, pressurePa).Density * _c.Receiver!.VolumeM3;

    /// <summary>The vessel's content from its mass and the energy of content and metal.</summary>
    public ContentState Vessel(double massKg, double energyJ)
    {
        double density = massKg / _c.VesselM3, low = 0.6 * _map.ColdestK, high = 400;
        ContentState state = default;
        double Excess(double t)
        {
            state = _map.At(t, density);
            return massKg * state.InternalEnergy + (_c.VesselMetal?.Energy(t) ?? 0) - energyJ;
        }
        double at = _lastK, f = Excess(at), slope = _lastSlope;
        for (int i = 0; i < 80; i++)
        {
            if (f > 0) high = at; else low = at;
            double next = at - Math.Clamp(f / slope, -25, 25);
            if (!(next > low && next < high)) next = 0.5 * (low + high);
            if (Math.Abs(next - at) <= 1e-13 * at || f == 0) break;
            double g = Excess(next), rise = (g - f) / (next - at);
            if (rise > 0 && Math.Abs(next - at) > 1e-8) slope = rise;
            (at, f) = (next, g);
        }
        (_lastK, _lastSlope) = (at, slope);
        return state;
    }

    /// <summary>Everything that flows at a state; false where it means nothing.</summary>
    public bool Flows(ReadOnlySpan<double> y, out BatchFlows f)
    {
        f = default;
        if (!(y[VesselKg] > 0) || !(y[SupplyLineKg] > 0) || !(y[FillLineKg] > 0) || _c.Receiver is not null && !(y[ReceiverKg] > 0)) return false;
        f.Vessel = Vessel(y[VesselKg], y[VesselJ]);
        if (!(f.Vessel.PressurePa > 0)) return false;
        Feed(y, ref f);
        Drain(y, ref f);
        Flask(y, ref f);
        f.CoolingW = _c.CoolingW(f.Vessel, y[VesselKg]);
        return true;
    }

    private void Feed(ReadOnlySpan<double> y, ref BatchFlows f)
    {
        var supply = _gas.AtDensity(_c.RoomK, y[SupplyLineKg] / _c.SupplyLineM3);
        var fill = _gas.AtDensity(_c.ArrivingK, y[FillLineKg] / _c.FillLineM3);
        (f.LinePa, f.FillPa) = (supply.PressurePa, fill.PressurePa);
        f.SupplyPa = _c.Receiver is { } receiver ? _gas.AtDensity(_c.RoomK, y[ReceiverKg] / receiver.VolumeM3).PressurePa : _c.SuctionPa ?? _c.FeedPa;
        f.ShellK = _c.RoomK + (_compressor is null ? 0 : y[ShellJ] / _compressor.HeatCapacityJPerK);
        if (_c.SuctionPa is null)
            f.Source = MostSource * (1 - Math.Exp(-RegulatorGain / MostSource * Positive(Math.Min(KeepPa, f.SupplyPa) - f.LinePa, 200)));
        else if (_compressor is not null)
        {
            f.ShellLossW = _compressor.Loss(f.ShellK);
            if (CompressorRuns)
            {
                // a pressure switch, as its mean over many strokes of its band
                double share = 0.5 * (1 + Math.Tanh(4 * ((KeepPa - f.LinePa) / (0.02 * KeepPa) - 0.5)));
                var p = _compressor.At(_c.RoomK, f.SupplyPa, f.LinePa, f.ShellK);
                (f.Source, f.FeedWorkW, f.ShellGainW, f.DischargeK) = (share * p.FlowKgPerS, share * p.ElectricalW, share * p.ShellGainW, p.DischargeK);
            }
        }
        else if (CompressorRuns)
        {
            f.Source = MostSource * (1 - Math.Exp(-RegulatorGain / MostSource * Positive(KeepPa - f.LinePa, 200)));
            var suction = _gas.At(_c.RoomK, f.SupplyPa);
            double end = Math.Max(f.LinePa, 1.001 * f.SupplyPa);
            f.FeedWorkW = f.Source * (_gas.AtEntropy(end, suction.Entropy, _c.RoomK * Math.Pow(end / f.SupplyPa, 0.25)).Enthalpy - suction.Enthalpy) / _c.FeedEfficiency;
        }
        if (FillOpen)
        {
            double over = Positive(f.LinePa - f.FillPa, 200);
            f.Fill = _c.FillAreaM2 * Math.Sqrt(2 * supply.Density) * over / Math.Sqrt(Math.Max(over, 2 * over - 0.5 * f.LinePa) + 500);
        }
        // both ways: what little goes back into the line while the vessel warms counts at the line's temperature
        f.In = FillConductance * (f.FillPa - f.Vessel.PressurePa);
        f.InEnthalpy = fill.Enthalpy;
    }

    private void Drain(ReadOnlySpan<double> y, ref BatchFlows f)
    {
        f.LineK = _c.LineMetal?.Temperature(y[LineJ]) ?? BoilingK;
        f.RoomToLineW = _c.LineMetal is null ? 0 : _c.Line.RoomConductanceWPerK * (_c.RoomK - f.LineK);
        double area = (DrainOpen ? _c.DrainAreaM2 : 0) + _c.SeatAreaM2;
        if (area <= 0) return;
        var v = f.Vessel;
        double liquid = y[VesselKg] * v.LiquidShare / v.LiquidDensity / _c.VesselM3, s = Math.Min(1, liquid / DrawnThrough);
        // dense and warm, it would all be gas in the room
        double vapour = v.LiquidEnthalpy >= VapourH ? 1 : 1 - s * s * (3 - 2 * s);
        double flow = _c.Outlet.KgPerS(area, v, vapour);
        (f.Liquid, f.Vapour) = ((1 - vapour) * flow, vapour * flow);
        f.Flash = f.Liquid * (v.LiquidEnthalpy - LiquidH) / Latent;
        double arriving = f.Liquid - f.Flash;
        if (_c.LineMetal is null || arriving <= 0 || f.LineK <= BoilingK) return;
        double heat = _c.Line.StreamConductanceWPerK(f.Liquid, f.Flash / f.Liquid) * (f.LineK - BoilingK);
        f.LineBoil = arriving * (1 - Math.Exp(-heat / (arriving * Latent)));
        f.LineWallW = f.LineBoil * Latent;
    }

    private void Flask(ReadOnlySpan<double> y, ref BatchFlows f)
    {
        double liquid = Math.Max(y[FlaskKg], 0), wet = liquid / (liquid + FilmKg);
        f.RoomToFlaskW = _c.FlaskConductanceWPerK * (_c.RoomK - BoilingK) * wet;
        f.FlaskWallK = BoilingK;
        if (!FlaskCold)
        {
            double level = liquid / LiquidDensity / (Math.PI / 4 * _flaskDiameter * _flaskDiameter);
            double share = Math.Min(1, (_flaskDiameter / 4 + level + SplashM) / (2.25 * _flaskDiameter));
            // the wetted part of the wall gave all the heat so far
            f.FlaskWallK = _c.FlaskMetal!.Temperature(Math.Max(0, _flaskHeat - y[FlaskWallJ] / share));
            f.FlaskWallW = FlaskFilm * _flaskArea * share * Positive(f.FlaskWallK - BoilingK, 0.1) * wet;
        }
        f.FlaskBoil = (f.RoomToFlaskW + f.FlaskWallW) / Latent;
    }

    private bool Slope(double time, ReadOnlySpan<double> y, ReadOnlySpan<double> parameters, Span<double> d)
    {
        if (!Flows(y, out var f)) return false;
        var v = f.Vessel;
        d[VesselKg] = f.In - f.Liquid - f.Vapour;
        d[VesselJ] = f.In * f.InEnthalpy - f.CoolingW - f.Liquid * v.LiquidEnthalpy - f.Vapour * v.VapourEnthalpy;
        d[SupplyLineKg] = f.Source - f.Fill;
        d[FillLineKg] = f.Fill - f.In;
        d[ReceiverKg] = _c.Receiver is null ? 0 : -f.Source;
        d[ShellJ] = f.ShellGainW - f.ShellLossW;
        d[LineJ] = f.RoomToLineW - f.LineWallW;
        d[FlaskWallJ] = f.FlaskWallW;
        d[FlaskKg] = f.Liquid - f.Flash - f.LineBoil - f.FlaskBoil;
        (d[Fed], d[Flashed], d[LineBoil], d[FlaskBoil], d[Blown], d[Drained]) = (f.Source, f.Flash, f.LineBoil, f.FlaskBoil, f.Vapour, f.Liquid);
        d[SeatLeak] = DrainOpen ? 0 : f.Liquid + f.Vapour;
        (d[CoilJ], d[FeedEnthalpyJ], d[BlownJ]) = (f.CoolingW, f.In * (f.InEnthalpy - ZeroH), f.Vapour * (v.VapourEnthalpy - ZeroH));
        (d[RoomToLineJ], d[RoomToFlaskJ], d[FeedWorkJ], d[LineWallJ]) = (f.RoomToLineW, f.RoomToFlaskW, f.FeedWorkW, f.LineWallW);
        return true;
    }

    // 0 below, the value above, rounded over a width
    private static double Positive(double value, double width) => 0.5 * (value + Math.Sqrt(value * value + width * width)) * (value < 0 ? width / (width - value) : 1);
}
