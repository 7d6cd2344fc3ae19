using Coldwright.Fluids.EquationsOfState;
using Coldwright.Machine.Compression;
using Coldwright.Numerics;

namespace Coldwright.Machine.Precooling;

/// <summary>
/// A vapour-compression loop whose evaporator cools the mixture: evaporating and condensing temperature, flow and superheat
/// float until compressor, condenser, evaporator and expansion device agree. Theory, sources, checks: docs/theory/precooler.md.
/// Making one tabulates refrigerant and compressor; solving is then quick. Not thread-safe.
/// </summary>
public sealed class PrecoolerLoop
{
    private const int MostRounds = 25, MostDeviceRounds = 5;
    /// <summary>Change of flow, work and shell heat at which a working point is settled, relative.</summary>
    public const double Settled = 1e-10;

    // of that change: how finely the search's own roots are found
    private const double RootShare = 1e-3, CoarsestRoot = 1e-9;

    // ln of flow and work, share of the work
    private static readonly double[] MostCorrection = [4, 4, 1];

    private const double DeviceSettled = 1e-3, WarmestK = 305, NearbyTolerance = 1e-12;

    private readonly PrecoolerMachine _machine;
    private readonly double[] _z;
    private readonly LoopRefrigerant _fluid;
    private readonly CompressorTable _compressor;
    private readonly LoopCycle _cycle;
    private readonly LoopSearch _search;
    private readonly ExpansionTable? _device;
    private LoopCorrection _correction;
    private bool _cycled;
    private (LoopPoint Point, double RoomK)? _settled;

    /// <param name="machine">The loop as built.</param>
    /// <param name="model">Model of the refrigerant.</param>
    /// <param name="z">Its mole fractions, none 0.</param>
    /// <param name="cancel">Cancels the tabulation.</param>
    /// <exception cref="ArgumentException">A value is outside its range, or the substance is no refrigerant.</exception>
    public PrecoolerLoop(PrecoolerMachine machine, HelmholtzModel model, IReadOnlyList<double> z, CancellationToken cancel = default) : this(machine, model, z, null, cancel) { }

    private PrecoolerLoop(PrecoolerMachine machine, HelmholtzModel model, IReadOnlyList<double> z, PrecoolerLoop? like, CancellationToken cancel)
    {
        machine.Check();
        _machine = machine;
        _z = InputCheck.Fractions(z, model.Count, nameof(z));
        _fluid = like?._fluid ?? new LoopRefrigerant(model, _z, cancel);
        _compressor = like?._compressor.For(machine, _fluid, _z) ?? new CompressorTable(machine, _fluid, _z, WarmestK, cancel);
        double subcooling = machine.Condenser.SubcoolingK;
        if (machine.Expansion is not ThermostaticExpansion)
        {
            _device = new ExpansionTable(machine.Expansion, _fluid, _z, subcooling, cancel);
            subcooling = _device.SubcoolingK;
        }
        _cycle = new LoopCycle(_fluid, _compressor, subcooling, machine.SuctionLineGain);
        _search = new LoopSearch(_cycle, machine.Expansion, _device, machine.CutOutK);
    }

    /// <summary>With the refrigerant by name, in the reference model.</summary>
    /// <param name="machine">The loop as built.</param>
    /// <param name="refrigerant">A substance or named blend: R290, R134a, R407C, <c>propane 0.5, isobutane 0.5</c>.</param>
    /// <param name="cancel">Cancels the tabulation.</param>
    public static PrecoolerLoop Create(PrecoolerMachine machine, string refrigerant, CancellationToken cancel = default)
    {
        var named = new RatingCycle(refrigerant);
        return new PrecoolerLoop(machine, named.Model, named.Composition, cancel);
    }

    /// <summary>
    /// A machine little different from this one, on the same refrigerant: it takes over the refrigerant's tables and those that show the way to an answer, which is its own
    /// to the last digit all the same.
    /// </summary>
    /// <param name="machine">The other machine.</param>
    /// <param name="cancel">Cancels the tabulation.</param>
    public PrecoolerLoop For(PrecoolerMachine machine, CancellationToken cancel = default) => new(machine, _fluid.Model, _z, this, cancel);

    /// <summary>Pressures that the loop can work between, Pa absolute: below the critical point, above freezing.</summary>
    public (double LowestPa, double HighestPa) PressureRange => (Math.Exp(_fluid.LnLowest), Math.Exp(_fluid.LnHighest));

    /// <summary>Bubble and dew temperature, K.</summary>
    /// <param name="pressurePa">Pa absolute, within <see cref="PressureRange"/>.</param>
    public (double BubbleK, double DewK) Saturation(double pressurePa)
    {
        double ln = Math.Log(InputCheck.Within(pressurePa, PressureRange.LowestPa, PressureRange.HighestPa, "Pa", nameof(pressurePa)));
        return (_fluid.Bubble(ln), _fluid.Dew(ln));
    }

    /// <summary>The loop on a load.</summary>
    /// <param name="load">The mixture at the evaporator's inlet.</param>
    /// <param name="roomK">Room air, K, 230 to 340.</param>
    /// <param name="band">Also the band of the answer.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <param name="settled">Change at which it is settled; on the way to an answer more will do.</param>
    /// <exception cref="SolveException">No working point; the report says which part stands in the way.</exception>
    public PrecoolerResult Solve(MixtureLoad load, double roomK, bool band = true, CancellationToken cancel = default, double settled = Settled)
    {
        InputCheck.Within(roomK, 230, 340, "K", nameof(roomK));
        _search.ResetLeastDelivery();
        _search.Tolerance = Math.Min(CoarsestRoot, RootShare * settled);
        int runs = 0;
        double deviceError = 0, deviceUncertainty = 0;
        IReadOnlyList<string> deviceSaid = [];
        for (int pass = 0; ; pass++)
        {
            var (found, performance) = Settle(c => _search.Solve(Setting(load, roomK, c)), roomK, ref runs, cancel, settled);
            if (_search.CondenserLimited) throw CondenserTooSmall(found.Point, roomK);
            if (found.RunShare * found.Point.CoolingW > 0.99999 * load.MolarFlow * (load.InletEnthalpy - load.CoolestEnthalpy)) throw CurveTooShort(load, found.Point);
            if (_device is not null)
            {
                var at = found.Point;
                var (flow, uncertainty, said) = _device.Run(at.LnCondensing, at.Measure, at.EvaporatingPa, cancel);
                (deviceUncertainty, deviceSaid) = (uncertainty, said);
                deviceError = flow / performance.MolarFlow - 1;
                if (Math.Abs(deviceError) > DeviceSettled)
                {
                    if (pass >= MostDeviceRounds) throw new SolveException(new SolveReport(SolveStatus.NotConverged, pass, deviceError, FormattableString.Invariant(
                        $"the precooler's expansion device and compressor did not come to one flow: {flow:0.#####} and {performance.MolarFlow:0.#####} mol/s")));
                    _correction = _correction with { LnDevice = _correction.LnDevice + Math.Log(1 + deviceError) };
                    _search.CorrectDevice(_correction.LnDevice);
                    continue;
                }
            }
            _settled = (found.Point, roomK);
            return new PrecoolerReport(_machine, _cycle).Of(Setting(load, roomK, _correction), found, performance, runs, deviceError, deviceSaid, band ? Band(load, roomK, found, performance, deviceUncertainty) : null);
        }
    }

    /// <summary>
    /// Cooling and the compressor's power, W, by the tables alone, corrected as they were where the loop was last solved; null where that lies further away than the correction
    /// is good for, or nothing was solved yet. For a way to an answer, which itself is asked of <see cref="Solve"/>.
    /// </summary>
    /// <param name="load">The mixture at the evaporator's inlet.</param>
    /// <param name="roomK">Room air, K; that of the last answer, or there is none.</param>
    /// <param name="reach">Furthest that both pressures together may lie from there, as logarithms.</param>
    public (double CoolingW, double CompressorPowerW)? Nearby(MixtureLoad load, double roomK, double reach)
    {
        // where it cycles next to nothing is delivered, and the correction is another at every load
        if (_cycled || _settled is not { } settled || settled.RoomK != roomK) return null;
        _search.Tolerance = reach > 1e-3 ? 1e-9 : NearbyTolerance;
        LoopFound found;
        try
        {
            found = _search.Solve(Setting(load, roomK, _correction));
        }
        catch (SolveException)
        {
            return null;
        }
        var (at, last) = (found.Point, settled.Point);
        if (found.CutOut || _search.CondenserLimited || Math.Abs(at.LnEvaporating - last.LnEvaporating) + Math.Abs(at.LnCondensing - last.LnCondensing) > reach) return null;
        double heat = found.RunShare * at.CoolingW;
        if (heat > 0.99999 * load.MolarFlow * (load.InletEnthalpy - load.CoolestEnthalpy)) return null;
        return (heat, found.RunShare * at.Flow * at.Work);
    }

    /// <summary>Cooling against evaporating temperature with the condenser floating in its room: a curve to draw beside the working point.</summary>
    /// <param name="evaporatingK">Dew points, K; those at which nothing is delivered are left out.</param>
    /// <param name="roomK">K.</param>
    /// <param name="superheatK">K; null: that of the thermostatic valve, or 5.</param>
    /// <param name="cancel">Cancels the work.</param>
    public IReadOnlyList<PrecoolerRating> CapacityTable(IEnumerable<double> evaporatingK, double roomK, double? superheatK = null, CancellationToken cancel = default)
    {
        InputCheck.Within(roomK, 230, 340, "K", nameof(roomK));
        double superheat = superheatK ?? (_machine.Expansion is ThermostaticExpansion t ? t.SuperheatK : 5);
        _search.ResetLeastDelivery();
        _search.Tolerance = RootShare * Settled;
        var rows = new List<PrecoolerRating>();
        foreach (double k in evaporatingK)
        {
            double ln = _fluid.LnPressure(k);
            if (ln <= _fluid.LnLowest || ln > _compressor.LnWarmest) continue;
            if (_search.Starving(_search.Condense(ln, superheat, 1, Setting(null, roomK, _correction)))) continue;
            int runs = 0;
            try
            {
                var (found, p) = Settle(c => new LoopFound(_search.Condense(ln, superheat, 1, Setting(null, roomK, c)), 1, false), roomK, ref runs, cancel);
                if (!_search.CondenserLimited) rows.Add(Rating(found.Point, p));
            }
            catch (SolveException e) when (e.Report.Status == SolveStatus.NoSolution)
            {
                // the compressor's model delivers nothing where its table still did: such a point is left out, as promised
            }
        }
        return rows;
    }

    /// <summary>The cycle between two given dew points, both exchangers left out.</summary>
    /// <param name="evaporatingK">Dew point, K.</param>
    /// <param name="condensingK">Dew point, K.</param>
    /// <param name="superheatK">At the evaporator's outlet, K, 0 to 40.</param>
    /// <param name="roomK">K.</param>
    /// <param name="cancel">Cancels the work.</param>
    public PrecoolerRating Between(double evaporatingK, double condensingK, double superheatK, double roomK, CancellationToken cancel = default)
    {
        InputCheck.Within(roomK, 230, 340, "K", nameof(roomK));
        InputCheck.Within(superheatK, 0, 40, "K", nameof(superheatK));
        double low = _fluid.Dew(_fluid.LnLowest), high = _fluid.Dew(_fluid.LnHighest);
        InputCheck.Within(evaporatingK, low, high, "K", nameof(evaporatingK));
        InputCheck.Within(condensingK, evaporatingK, high, "K", nameof(condensingK));
        int runs = 0;
        var (found, p) = Settle(c => new LoopFound(_cycle.At(_fluid.LnPressure(evaporatingK), _fluid.LnPressure(condensingK), superheatK, 1, roomK, c), 1, false), roomK, ref runs, cancel);
        return Rating(found.Point, p);
    }

    private PrecoolerRating Rating(LoopPoint at, CompressorPerformance p)
    {
        double cooling = p.MolarFlow * at.Cooling;
        return new PrecoolerRating(_fluid.Dew(at.LnEvaporating), _fluid.Dew(at.LnCondensing), cooling, p.ElectricalPowerW, cooling / (p.ElectricalPowerW + _machine.Condenser.FanPowerW),
            p.MassFlow, p.Discharge.TemperatureK, p.MolarFlow * (p.Discharge.MolarEnthalpy - at.LiquidEnthalpy));
    }

    private LoopSetting Setting(MixtureLoad? load, double roomK, LoopCorrection c) => new(load!, roomK, _machine.Condenser, _machine.Evaporator, c);

    // the tables' answer, the compressor's own answer there, the tables corrected, until both are one
    private (LoopFound, CompressorPerformance) Settle(Func<LoopCorrection, LoopFound> search, double roomK, ref int runs, CancellationToken cancel, double settled = Settled)
    {
        _settled = null;
        // what holds where next to nothing is delivered is no start for another load
        if (_cycled) _correction = _correction with { LnFlow = 0, LnWork = 0, ShellShare = 0 };
        double[] x = [_correction.LnFlow, _correction.LnWork, _correction.ShellShare], g = new double[3];
        var mixing = new AndersonMixing(3);
        double change = double.NaN;
        for (int i = 0; i < MostRounds; i++)
        {
            cancel.ThrowIfCancellationRequested();
            _correction = _correction with { LnFlow = x[0], LnWork = x[1], ShellShare = x[2] };
            var found = search(_correction);
            var at = found.Point;
            runs++;
            if (Run(at, roomK, cancel) is not { } p)
            {
                mixing.Reset();
                Array.Clear(x);
                continue;
            }
            g[0] = x[0] + Math.Log(p.MolarFlow / at.Flow);
            g[1] = x[1] + Math.Log(p.ElectricalPowerW / (p.MolarFlow * at.Work));
            g[2] = x[2] + p.ShellHeatW / p.ElectricalPowerW - at.ShellShare;
            change = Math.Abs(g[0] - x[0]) + Math.Abs(g[1] - x[1]) + Math.Abs(g[2] - x[2]);
            if (change < settled)
            {
                _cycled = found.CutOut;
                return (found, p);
            }
            mixing.Next(x, g);
            // the tables are never so far from the model: what goes beyond is the acceleration's own leap
            for (int k = 0; k < x.Length; k++) x[k] = double.IsFinite(x[k]) ? Math.Clamp(x[k], -MostCorrection[k], MostCorrection[k]) : 0;
        }
        throw new SolveException(new SolveReport(SolveStatus.NotConverged, MostRounds, change, FormattableString.Invariant(
            $"the precooler's working point did not settle: the compressor's model and its table still differ by {change:E1}; the point is close to where the compressor delivers nothing")));
    }

    // null: the model has no answer so close to delivering nothing, and the search has been told to keep further away
    private CompressorPerformance? Run(LoopPoint at, double roomK, CancellationToken cancel)
    {
        try
        {
            return _compressor.Run(at.Suction.TemperatureK, at.EvaporatingPa, at.CondensingPa, roomK, cancel);
        }
        catch (SolveException e)
        {
            if (_search.RaiseLeastDelivery()) return null;
            throw new SolveException(e.Report with { Advice = $"precooler {e.Report.Advice}" });
        }
    }

    private PrecoolerBand Band(MixtureLoad load, double roomK, LoopFound found, CompressorPerformance p, double deviceUncertainty)
    {
        var (cooling, outlet, evaporating, power) = (0.0, 0.0, 0.0, 0.0);
        var basis = Key(found);
        void Try(LoopSetting setting)
        {
            var (c, o, e, w) = Key(_search.Solve(setting));
            cooling += Math.Pow(c - basis.Cooling, 2);
            outlet += Math.Pow(o - basis.Outlet, 2);
            evaporating += Math.Pow(e - basis.Evaporating, 2);
            power += Math.Pow(w - basis.Power, 2);
        }

        (double Cooling, double Outlet, double Evaporating, double Power) Key(LoopFound f)
        {
            double q = f.RunShare * f.Point.CoolingW;
            return (q, load.Temperature(load.InletEnthalpy - q / load.MolarFlow), _fluid.Dew(f.Point.LnEvaporating), f.RunShare * f.Point.Flow * f.Point.Work);
        }

        var at = Setting(load, roomK, _correction);
        var (condenser, evaporator) = (_machine.Condenser, _machine.Evaporator);
        // towards less of everything: each of these exists when the working point does, but for a condenser at its limit
        Try(at with { Correction = _correction with { LnFlow = _correction.LnFlow - p.FlowUncertainty } });
        Try(at with { Correction = _correction with { LnWork = _correction.LnWork - p.PowerUncertainty } });
        Try(at with { Condenser = condenser with { ConductanceWPerK = condenser.ConductanceWPerK * (1 + condenser.RelativeUncertainty) } });
        Try(at with { Evaporator = evaporator with { ConductanceWPerK = evaporator.ConductanceWPerK / (1 + evaporator.RelativeUncertainty) } });
        if (deviceUncertainty > 0)
        {
            _search.CorrectDevice(_correction.LnDevice - deviceUncertainty);
            Try(at);
            _search.CorrectDevice(_correction.LnDevice);
        }
        return new PrecoolerBand(Math.Sqrt(cooling), Math.Sqrt(outlet), Math.Sqrt(evaporating), Math.Sqrt(power));
    }

    private SolveException CurveTooShort(MixtureLoad load, LoopPoint at) => new(new SolveReport(SolveStatus.Outside, 0, double.NaN, FormattableString.Invariant(
        $"the precooler would cool the mixture below {load.ColdestK:0.#} K, where its curve ends; the refrigerant evaporates at {_fluid.Dew(at.LnEvaporating):0.#} K: give the curve a lower end (coldestK), or the loop a cut-out")));

    private SolveException CondenserTooSmall(LoopPoint at, double roomK) => new(new SolveReport(SolveStatus.NoSolution, 0, double.NaN, FormattableString.Invariant(
        $"the precooler's condenser does not get rid of {at.Flow * (at.DischargeEnthalpy - at.LiquidEnthalpy):0} W at {roomK:0.#} K room temperature even at {at.CondensingPa / 1e5:0.#} bar absolute ({_fluid.Dew(at.LnCondensing):0.#} K): give it more conductance or air, less subcooling, or a smaller compressor")));
}
