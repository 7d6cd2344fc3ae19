using Coldwright.Numerics;
using Coldwright.Numerics.Integration;
using Coldwright.Quantities;
using static Coldwright.Simulation.Batch.BatchSlots;

namespace Coldwright.Simulation.Batch;

/// <summary>Runs a schedule: feed with rests, wait, discharge, stand.</summary>
internal sealed class BatchRunner
{
    // Our assumptions: the machine starts again when its shell is this much below its limit; the drain is shut when mostly vapour comes, or at this much over the room.
    private const double RestBelowK = 25, LeastRestK = 2, DrainedPa = 2000, DrainedShare = 2e-3, SpentW = 0.2;
    private const int MostMoments = 480;

    private readonly BatchCooler _cooler;
    private readonly BatchPlan _plan;
    private readonly BatchOptions _options;
    private readonly BatchEquations _equations;
    private readonly InitialValueProblem _problem;
    private readonly CancellationToken _cancel;
    private readonly bool _keepSeries;
    private readonly List<ScheduleStep> _schedule = [];
    private readonly List<BatchMoment> _series = [];
    private readonly List<Spoken> _said = [];
    private double[] _y;
    private double _time, _runS, _mostLiquid, _hottestShell, _hottestDischarge;
    private readonly double[] _sample = new double[Count];

    /// <param name="cooler">The cooler.</param>
    /// <param name="plan">Schedule.</param>
    /// <param name="options">Batches, flask, tolerance.</param>
    /// <param name="keepSeries">False inside an optimiser: the course is not kept.</param>
    /// <param name="cancel">Ends it early; what was done stands.</param>
    public BatchRunner(BatchCooler cooler, BatchPlan plan, BatchOptions options, bool keepSeries, CancellationToken cancel)
    {
        (_cooler, _plan, _options, _keepSeries, _cancel) = (cooler, plan, options, keepSeries, cancel);
        _equations = new BatchEquations(cooler, options.FlaskCold);
        _problem = _equations.Problem();
        _y = _equations.Start();
        _equations.KeepPa = plan.FeedPressurePa;
        _hottestShell = cooler.RoomK;
    }

    /// <summary>The batch; when cancelled as far as it came.</summary>
    /// <exception cref="SolveException">The integration failed; the report says where.</exception>
    public BatchRun Run()
    {
        var start = (double[])_y.Clone();
        bool stopped = false;
        try
        {
            for (int i = 0; i < _options.Batches; i++)
            {
                Feed();
                Wait();
                Discharge();
            }
            Stand();
        }
        catch (OperationCanceledException)
        {
            stopped = true;
        }
        return Result(start, stopped);
    }

    private void Feed()
    {
        double target = _plan.FillShare * _cooler.BrimfulKg(_plan.FeedPressurePa), end = _time + _plan.LongestFeedS;
        double lowest = _cooler.Receiver is { } receiver ? _equations.ReceiverKgAt(Math.Max(receiver.LowestPressurePa ?? _cooler.RoomPa, _cooler.RoomPa)) : 0;
        while (_time < end)
        {
            if (_y[VesselKg] >= target || _cooler.Receiver is not null && _y[ReceiverKg] <= lowest * (1 + 1e-9)) return;
            (_equations.FillOpen, _equations.CompressorRuns, _equations.DrainOpen) = (true, true, false);
            var events = new List<IntegrationEvent> { Stop("full", (y) => y[VesselKg] - target), Freezing() };
            if (_cooler.Receiver is not null) events.Add(Stop("supply at its lowest pressure", y => lowest - y[ReceiverKg]));
            if (_equations.Compressor is { } machine)
            {
                double limit = machine.HeatCapacityJPerK * (machine.MaximumShellK - _cooler.RoomK);
                events.Add(Stop("shell too hot", y => y[ShellJ] - limit));
                events.Add(Stop("discharge too hot", y => _equations.Flows(y, out var f) ? f.DischargeK - machine.MaximumDischargeK : -1));
            }
            double began = _time;
            string ended = Step("feed", end, events);
            (_equations.FillOpen, _equations.CompressorRuns) = (false, false);
            if (ended is not ("shell too hot" or "discharge too hot")) return;
            if (_time <= began || ShellNow() < _cooler.RoomK + LeastRestK)
            {
                // a cool shell and still too hot a discharge: no rest mends a pressure ratio
                _said.Add(Spoken.Of($"the feed compressor's discharge passes {SpokenAmount.Celsius(_equations.Compressor!.MaximumDischargeK, "0")} from {SpokenAmount.Pressure(Supply(), "0.##")} to the vessel even with a cool shell: the feed ended there"));
                return;
            }
            double cool = _equations.Compressor!.HeatCapacityJPerK * Math.Max(1, ShellNow() - _cooler.RoomK - RestBelowK);
            if (Step("rest", Math.Min(end, _time + 3600), [Stop("shell cooled", y => cool - y[ShellJ]), Freezing()]) != "shell cooled") return;
        }
    }

    private double ShellNow() => _cooler.RoomK + _y[ShellJ] / _equations.Compressor!.HeatCapacityJPerK;

    private double Supply() => _equations.Flows(_y, out var f) ? f.SupplyPa : _cooler.FeedPa;

    private void Wait()
    {
        (_equations.FillOpen, _equations.CompressorRuns, _equations.DrainOpen) = (false, false, false);
        if (Pressure(_y) <= _plan.OpeningPressurePa) return;
        string ended = Step("wait", _time + _plan.LongestWaitS, [Stop("opening pressure", y => _plan.OpeningPressurePa - Pressure(y)), Stop("cold end spent", y => SpentW - Cooling(y)), Freezing()]);
        if (ended is "cold end spent" && _plan.OpeningPressurePa > 0)
            _said.Add(Spoken.Of($"the pressure did not fall to {SpokenAmount.Pressure(_plan.OpeningPressurePa, "0.##")}: at {SpokenAmount.Temperature(_equations.Vessel(_y[VesselKg], _y[VesselJ]).TemperatureK, "0.#")} the cold end has nothing left; it was opened then"));
    }

    private void Discharge()
    {
        _equations.DrainOpen = true;
        double left = DrainedShare * _cooler.VesselM3;
        double Liquid(ReadOnlySpan<double> y) => _equations.Vessel(y[VesselKg], y[VesselJ]) is var v ? y[VesselKg] * v.LiquidShare / v.LiquidDensity : 0;
        if (Liquid(_y) > left && Pressure(_y) > _cooler.RoomPa + DrainedPa)
            Step("discharge", _time + _plan.LongestDischargeS, [Stop("liquid gone", y => left - Liquid(y)), Stop("pressure gone", y => _cooler.RoomPa + DrainedPa - Pressure(y))]);
        else _said.Add("there was no liquid to discharge, or no pressure to push it");
        _equations.DrainOpen = false;
    }

    private void Stand()
    {
        if (_plan.StandS > 0) Step("stand", _time + _plan.StandS, []);
    }

    private double Cooling(ReadOnlySpan<double> y) => _cooler.CoolingW(_equations.Vessel(y[VesselKg], y[VesselJ]), y[VesselKg]);

    private double Pressure(ReadOnlySpan<double> y) => _equations.Vessel(y[VesselKg], y[VesselJ]).PressurePa;

    private IntegrationEvent Freezing() => Stop("freezing", y => _cooler.FreezingK + 0.3 - _equations.Vessel(y[VesselKg], y[VesselJ]).TemperatureK);

    private delegate double Measure(ReadOnlySpan<double> y);

    private static IntegrationEvent Stop(string name, Measure value) =>
        IntegrationEvent.WhenZero(name, (_, y, _) => value(y)) with { Direction = EventDirection.Rising, Effect = EventEffect.Stop };

    // One action; what ended it, in words.
    private string Step(string action, double end, IReadOnlyList<IntegrationEvent> events)
    {
        double from = _time, length = end - from;
        _runS = 0;
        _y.CopyTo(_sample, 0);
        // what is already so does not happen again
        foreach (var e in events)
            if (e.Value!(from, _y, []) > 0) return Done(action, from, e.Name);
        var options = new IntegrationOptions
        {
            RelativeTolerance = _options.RelativeTolerance,
            AbsoluteTolerances = Enumerable.Range(0, Count).Select(i => Size(i) * _options.RelativeTolerance).ToArray(),
            WithoutErrorControl = [.. Enumerable.Range(Steering, Count - Steering)],
            RelativeNoise = 1e-12, InitialStep = 1e-3, MaximumStep = Math.Max(length / 12, 1e-2), MaximumSteps = 20_000, EventSamples = 4,
        };
        Keep(from, _y);
        IntegrationResult result;
        try
        {
            result = StiffIntegrator.Integrate(_problem, from, _y, end, options, events, Observe, _cancel);
        }
        catch (OperationCanceledException)
        {
            // what was shown last stands
            (_time, _y) = (from + _runS, [.. _sample]);
            Done(action, from, "stopped");
            throw;
        }
        if (!result.Solved)
            throw new SolveException(result.Report.Telling($"batch, {action} at {result.Time:0.#} s: {result.Report.Told}"));
        (_time, _y) = (result.Time, [.. result.State]);
        return Done(action, from, result.StoppedBy ?? (action == "stand" ? "weighed" : "the longest time"));
    }

    private string Done(string action, double from, string until)
    {
        Keep(_time, _y);
        if (_time > from) _schedule.Add(new(from, action, until, _time));
        if (until == "freezing") _said.Add(Spoken.Of($"the vessel came to {SpokenAmount.Temperature(_cooler.FreezingK, "0.#")}, where the product freezes; the {action} was ended there"));
        return until;
    }

    private void Observe(AcceptedStep step)
    {
        double from = _time;
        step.Evaluate(step.End, _sample);
        _runS = step.End - from;
        if (!_keepSeries)
        {
            Extremes(step.End, _sample);
            return;
        }
        var inner = new double[Count];
        for (int k = 1; k <= 3; k++)
        {
            double t = step.Start + k / 3.0 * (step.End - step.Start);
            step.Evaluate(t, inner);
            Keep(t, inner);
        }
    }

    private void Keep(double time, ReadOnlySpan<double> y)
    {
        if (Extremes(time, y) is { } moment && _keepSeries && (_series.Count == 0 || time > _series[^1].TimeS)) _series.Add(moment);
    }

    private BatchMoment? Extremes(double time, ReadOnlySpan<double> y)
    {
        if (!_equations.Flows(y, out var f)) return null;
        double liquid = y[VesselKg] * f.Vessel.LiquidShare;
        (_mostLiquid, _hottestShell, _hottestDischarge) = (Math.Max(_mostLiquid, liquid), Math.Max(_hottestShell, f.ShellK), Math.Max(_hottestDischarge, f.DischargeK));
        return new(time, f.Vessel.PressurePa, f.Vessel.TemperatureK, Math.Clamp(liquid / f.Vessel.LiquidDensity / _cooler.VesselM3, 0, 1), y[VesselKg], f.SupplyPa, f.ShellK, f.LineK, y[FlaskKg], f.CoolingW);
    }

    private BatchRun Result(double[] start, bool stopped)
    {
        var grams = BatchAccount.Grams(start, _y);
        double litres = Math.Max(0, grams.CollectedKg) / _equations.LiquidDensity * 1e3, hours = _time / 3600, loop = _cooler.LoopPowerW * _time, feed = _y[FeedWorkJ];
        _equations.Flows(_y, out var last);
        double liquidLeft = _y[VesselKg] * last.Vessel.LiquidShare;
        return new BatchRun
        {
            Plan = _plan,
            Grams = grams,
            Details = new(_y[Blown], liquidLeft, _y[SeatLeak], _y[Drained], _mostLiquid),
            Joules = BatchAccount.Joules(_equations, start, _y),
            Schedule = _schedule,
            Series = Thinned(),
            DurationS = _time,
            CollectedLPerH = hours > 0 ? litres / hours : 0,
            EnergyKWhPerL = litres > 1e-6 ? (loop + feed) / 3.6e6 / litres : null,
            LoopJ = loop,
            FeedJ = feed,
            HottestShellK = _hottestShell,
            HottestDischargeK = _equations.Compressor is null ? null : _hottestDischarge,
            FlaskLossKgPerS = last.FlaskBoil,
            Stopped = stopped,
            Said = _said.Distinct().ToArray(),
        };
    }

    private BatchMoment[] Thinned()
    {
        if (_series.Count <= MostMoments) return [.. _series];
        // the ends of steps of the schedule stay
        var edges = _schedule.SelectMany(s => new[] { s.StartS, s.EndS }).ToHashSet();
        int every = (_series.Count + MostMoments - 1) / MostMoments;
        return [.. _series.Where((m, i) => i % every == 0 || edges.Contains(m.TimeS) || i == _series.Count - 1)];
    }
}
