using Coldwright.Numerics;

namespace Coldwright.Machine.Precooling;

/// <summary>Conductances and corrections with which a loop is searched.</summary>
internal readonly record struct LoopSetting(MixtureLoad Load, double RoomK, AirCondenser Condenser, MixtureEvaporator Evaporator, LoopCorrection Correction);

/// <summary>What a search found.</summary>
/// <param name="Point">State points.</param>
/// <param name="RunShare">Share of the time that the compressor runs.</param>
/// <param name="CutOut">True when the evaporating pressure stands at its lower limit and the loop cycles.</param>
internal readonly record struct LoopFound(LoopPoint Point, double RunShare, bool CutOut);

/// <summary>
/// Nested bracketed searches, each in a monotone function: condensing pressure (its conductance) inside evaporating pressure
/// (its conductance) inside superheat or liquid quality (the expansion device). Starts from the last answer.
/// </summary>
internal sealed class LoopSearch(LoopCycle cycle, ExpansionDevice device, ExpansionTable? table, double? cutOutK)
{
    private const double Finest = 1e-13, FirstLeastDelivery = 0.06, MostLeastDelivery = 0.4, KelvinPerUnit = 20, Cap = 10, LeastLnRatio = 0.02, LeastGap = 1e-12, NearStep = 2e-3;
    private readonly TwoRoots _together = new();
    private readonly OneRoot _alone = new();
    private double _lnPe = double.NaN, _lnPc = double.NaN, _match, _leastDelivery = FirstLeastDelivery, _lnDevice;
    private bool _cycles;

    /// <summary>Of the roots, in ln of a pressure; on the way to an answer more will do.</summary>
    public double Tolerance { get; set; } = Finest;

    /// <summary>Condenser ran to its highest pressure at the last point asked for.</summary>
    public bool CondenserLimited { get; private set; }

    /// <summary>Share of the greatest volume flow below which the compressor counts as delivering nothing; back to the usual.</summary>
    public void ResetLeastDelivery() => _leastDelivery = FirstLeastDelivery;

    /// <summary>The compressor's model delivers nothing where its table still does: keep further away from there. False when that was done enough.</summary>
    public bool RaiseLeastDelivery() => (_leastDelivery *= 1.4) < MostLeastDelivery;

    /// <summary>True when the condensing pressure is held just above the evaporating one: the room is too cold for it to be set by the condenser.</summary>
    public static bool HeldUp(LoopPoint at) => at.LnCondensing - at.LnEvaporating < 1.001 * LeastLnRatio;

    /// <summary>True when a point delivers too little to run there.</summary>
    public bool Starving(LoopPoint at) => at.TableVolumeFlow < _leastDelivery * cycle.Compressor.GreatestFlow;

    /// <summary>State points with the condensing pressure at which the condenser gives its heat to the room.</summary>
    public LoopPoint Condense(double lnPe, double superheatK, double measure, in LoopSetting setting)
    {
        var (s, point) = (setting, default(LoopPoint));
        double basis = Basis(lnPe, measure, s), highest = Math.Log(Math.Max(cycle.Fluid.LnHighest - basis, 2 * LeastGap));
        double Surplus(double lnGap)
        {
            point = cycle.At(lnPe, basis + Math.Exp(lnGap), superheatK, measure, s.RoomK, s.Correction);
            return CondenserSurplus(point, s);
        }

        double gap = RisingRoot.Find(Surplus, double.IsNaN(_lnPc) ? Math.Log(0.2) : Math.Log(Math.Max(_lnPc - basis, LeastGap)), NearStep, Math.Log(LeastGap), highest, 10 * Tolerance, out int side);
        CondenserLimited = side > 0;
        _lnPc = basis + Math.Exp(gap);
        if (point.LnCondensing != _lnPc) Surplus(gap);
        return point;
    }

    // measured from where the liquid would be at the room's temperature: the needed conductance grows without limit towards it
    private double Basis(double lnPe, double measure, in LoopSetting s) =>
        Math.Max(measure >= 0 ? cycle.Fluid.LnPressure(s.RoomK + measure * cycle.SubcoolingK, dew: false) : cycle.Fluid.LnPressure(s.RoomK), lnPe + LeastLnRatio);

    private double CondenserSurplus(in LoopPoint point, in LoopSetting s) =>
        -Math.Log(Math.Clamp(ConductanceNeed.Condenser(cycle.CondenserPath(point, s.Condenser.GasShare, s.Condenser.LiquidShare), point.Flow, s.Condenser, s.RoomK), 1e-12, 1e12));

    /// <summary>The whole loop.</summary>
    public LoopFound Solve(in LoopSetting setting)
    {
        var s = setting;
        double superheat = device is ThermostaticExpansion t ? t.SuperheatK : 0, measure = 1;
        double lowest = cutOutK is { } k ? cycle.Fluid.LnPressure(k) : cycle.Fluid.LnLowest;
        // cycling last time: where even the lowest pressure takes more heat than there is, no working point needs to be sought
        if (_cycles && table is null)
        {
            var coldest = Condense(lowest, superheat, measure, s);
            if (Missing(cycle.EvaporatorPath(coldest, s.Evaporator.DryShare), coldest.Flow, s) > 0) return Cycling(s, superheat, lowest);
        }
        if (table is not null)
        {
            double most = Math.Max(0.1, (s.Load.InletTemperatureK - cycle.Fluid.Dew(cycle.Fluid.LnLowest) - 2) / KelvinPerUnit);
            Match(v => Evaporate(Superheat(v), Measure(v), s), most);
            (superheat, measure) = (Superheat(_match), Measure(_match));
        }
        var point = Evaporate(superheat, measure, s);
        _cycles = false;
        if (point.LnEvaporating >= lowest && point.LnEvaporating > cycle.Fluid.LnLowest && !Starving(point)) return new LoopFound(point, 1, false);
        return Cycling(s, superheat, lowest);
    }

    // the evaporating pressure at its limit; the loop runs for a share of the time
    private LoopFound Cycling(LoopSetting s, double superheat, double lowest)
    {
        _cycles = true;
        double Delivered(double lnPe) => Condense(lnPe, superheat, 1, s).TableVolumeFlow / cycle.Compressor.GreatestFlow - _leastDelivery;
        double floor = Delivered(lowest) >= 0 ? lowest : RisingRoot.Find(Delivered, lowest, 0.2, lowest, cycle.Compressor.LnWarmest, 1e3 * Tolerance, out _);
        double measure = 1;
        if (table is not null)
        {
            Match(v => Condense(floor, Superheat(v), Measure(v), s), 1);
            (superheat, measure) = (Superheat(_match), Measure(_match));
        }
        var point = Condense(floor, superheat, measure, s);
        var path = cycle.EvaporatorPath(point, s.Evaporator.DryShare);
        double share = RisingRoot.Find(x => Missing(path, point.Flow * Math.Exp(x), s), -1, 0.5, -40, 0, Tolerance, out _);
        return new LoopFound(point, Math.Exp(share), true);
    }

    private LoopPoint Evaporate(double superheatK, double measure, LoopSetting s)
    {
        LoopPoint point = default;
        double high = cycle.Compressor.LnWarmest;
        if (!double.IsNaN(_lnPe) && !double.IsNaN(_lnPc))
        {
            // near the last answer both pressures at once
            double lnPe = _lnPe, lnGap = Math.Log(Math.Max(_lnPc - Basis(_lnPe, measure, s), LeastGap));
            // a condenser with more than it needs condenses where the liquid meets the room: only the evaporating pressure is sought then
            double least = Math.Log(LeastGap);
            bool pinched = lnGap < least + 0.01;
            (double, double) Both(double ln, double asked)
            {
                double gap = pinched ? least : asked;
                double lnPc = Basis(ln, measure, s) + Math.Exp(gap);
                if (!(ln > cycle.Fluid.LnLowest && ln < high && lnPc < cycle.Fluid.LnHighest && gap >= least)) return (double.NaN, double.NaN);
                // a trial may leave what the compressor's table and the gas know
                if (Tried(ln, lnPc, superheatK, measure, s) is not { } there) return (double.NaN, double.NaN);
                point = there;
                double missing = Missing(cycle.EvaporatorPath(point, s.Evaporator.DryShare), point.Flow, s), surplus = CondenserSurplus(point, s);
                return (missing, !pinched ? surplus : surplus >= 0 ? asked - least : double.NaN);
            }
            bool bracketed = false, found = pinched
                ? _alone.Find(ln => Both(ln, least) is (var missing, 0) ? missing : double.NaN, ref lnPe, Tolerance, out bracketed)
                : _together.Find(Both, ref lnPe, ref lnGap, Tolerance, Math.Exp(lnGap));
            if (found && (bracketed || !Crossing(point, s)))
            {
                (_lnPe, _lnPc, CondenserLimited) = (point.LnEvaporating, point.LnCondensing, false);
                return point;
            }
        }
        double Off(double lnPe)
        {
            point = Condense(lnPe, superheatK, measure, s);
            return Missing(cycle.EvaporatorPath(point, s.Evaporator.DryShare), point.Flow, s);
        }

        double guess = double.IsNaN(_lnPe) ? cycle.Fluid.LnPressure(s.Load.InletTemperatureK - superheatK - 15) : _lnPe;
        _lnPe = RisingRoot.Find(Off, guess, double.IsNaN(_lnPe) ? 0.05 : NearStep, cycle.Fluid.LnLowest, high, Tolerance, out int side);
        if (side > 0) throw new SolveException(new SolveReport(SolveStatus.NoSolution, 0, double.NaN, FormattableString.Invariant(
            $"the precooler would evaporate above {cycle.Fluid.Dew(high):0.#} K (dew point): the mixture enters at {s.Load.InletTemperatureK:0.#} K, too warm or too much of it for this compressor; cool it in the aftercooler first or take a smaller evaporator")));
        if (point.LnEvaporating != _lnPe) Off(_lnPe);
        return point;
    }

    private LoopPoint? Tried(double lnPe, double lnPc, double superheatK, double measure, in LoopSetting s)
    {
        try
        {
            var point = cycle.At(lnPe, lnPc, superheatK, measure, s.RoomK, s.Correction);
            return double.IsFinite(point.Flow) && double.IsFinite(point.DischargeEnthalpy) ? point : null;
        }
        catch (Exception e) when (e is SolveException or ArgumentException)
        {
            return null;
        }
    }

    // where streams all but touch, a step that is small beside the pressure leads from one side of the pinch to the other
    private bool Crossing(in LoopPoint point, in LoopSetting s)
    {
        ConductanceNeed.Evaporator(cycle.EvaporatorPath(point, s.Evaporator.DryShare), point.Flow, s.Load, out double closest);
        return closest <= 0;
    }

    /// <summary>Change of the mixture's temperature, K, within which the evaporator's needed conductance passes the given one: sound also where streams all but touch.</summary>
    public static double EvaporatorErrorK(HeatPath path, double flow, LoopSetting s)
    {
        double Need(double shiftK) => ConductanceNeed.Evaporator(path, flow, s.Load, out _, null, shiftK);
        for (double d = 1e-12; d < 1; d *= 10)
            if (Need(d) <= s.Evaporator.ConductanceWPerK && Need(-d) >= s.Evaporator.ConductanceWPerK) return d;
        return double.PositiveInfinity;
    }

    /// <summary>Change of the room's temperature, K, within which the condenser's needed conductance passes the given one.</summary>
    public static double CondenserErrorK(HeatPath path, double flow, LoopSetting s)
    {
        for (double d = 1e-12; d < 1; d *= 10)
            if (ConductanceNeed.Condenser(path, flow, s.Condenser, s.RoomK - d) <= 1 && ConductanceNeed.Condenser(path, flow, s.Condenser, s.RoomK + d) >= 1) return d;
        return double.PositiveInfinity;
    }

    private static double Missing(HeatPath path, double flow, in LoopSetting s) => ConductanceNeed.Overload(path, flow, s.Load, s.Evaporator.ConductanceWPerK);

    // one number for what the device settles: above 0 superheat, below 0 the liquid loses its subcooling, then takes vapour
    private static double Superheat(double match) => Math.Max(match, 0) * KelvinPerUnit;
    private static double Measure(double match) => match >= 0 ? 1 : 1 + 2 * match;

    private void Match(Func<double, LoopPoint> at, double most)
    {
        double Excess(double v)
        {
            var point = at(v);
            return Math.Clamp(Math.Log(table!.Flow(point.LnCondensing, point.Measure) / point.Flow) + _lnDevice, -Cap, Cap);
        }
        _match = RisingRoot.Find(Excess, _match, 0.05, -1, most, 10 * Tolerance, out int side);
        if (side < 0) throw Mismatch("passes more than the compressor takes even when more than half of what arrives has boiled already: it is too wide, or the compressor too small");
        if (side > 0) throw Mismatch("passes less than the compressor takes even with the evaporator almost dry: it is too narrow, or blocked");
    }

    /// <summary>Factor on the device's flow, as a logarithm, used from now on.</summary>
    public void CorrectDevice(double ln) => _lnDevice = ln;

    private static SolveException Mismatch(string why) => new(new SolveReport(SolveStatus.NoSolution, 0, double.NaN, $"the precooler's expansion device {why}"));
}
