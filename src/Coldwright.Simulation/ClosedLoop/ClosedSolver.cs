using Coldwright.Fluids.EquationsOfState;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Numerics;
using Coldwright.Quantities;
using Coldwright.Simulation.Rating;
using static Coldwright.Quantities.SpokenAmount;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>
/// Finds the closed loop's cooling curve, its no-load temperature and its operating point: a march from the warm end to both, the coil's
/// outside film brought into line with the vessel's model on the way, and both points closed tightly at the end. Not thread-safe.
/// </summary>
internal sealed class ClosedSolver
{
    private const double Beyond = 6, TemperatureTolerance = 2e-3, BracketSlackK = 0.5, LeastLeftW = 1e-3, Fair = 1e-6, Closes = 1e-8;
    private const int FilmRounds = 4;
    // K: so near the no-load temperature it is found without closing the loop beyond it
    private const double Grasp = 5, Short = 1.5, Alike = 3;
    // a load so much warmer than the wanted one hardly feels the film: its own heat is small beside what the coil could carry
    private const double FilmSettled = 4e-3, Middling = 1e-5, FeelsFilm = 1.35;
    // relative; three times what the throttle's march resolves
    private const double ThrottleSettled = 1e-3;

    private readonly HelmholtzModel _model;
    private readonly LoopTarget _target;
    private readonly LoopAccuracy _accuracy;
    private readonly CancellationToken _cancel;
    private readonly RatingOptions _options;
    private ClosedSolver? _seed;
    private SolveReport? _stopped;
    private LoopCloser.Closed? _noLoad, _fitted;

    public ClosedSolver(Hardware hardware, HelmholtzModel model, LoopTarget target, RatingOptions options, CancellationToken cancel, LoopAccuracy? accuracy = null)
    {
        (Hardware, _model, _target, _options, _cancel, _accuracy) = (hardware, model, target, options, cancel, accuracy ?? new LoopAccuracy());
        if (hardware.Layout.Feed is { } feed) Product = new ProductSolver(feed, hardware.Machine.Room);
        Closer = new LoopCloser(new LoopEvaluator(hardware, model, _accuracy, cancel), target);
    }

    public Hardware Hardware { get; private set; }
    public ProductSolver? Product { get; }
    public LoopCloser Closer { get; private set; }
    /// <summary>Curve, coldest first.</summary>
    public IReadOnlyList<LoopCloser.Closed> Curve { get; private set; } = [];
    /// <summary>Closed tightly; null when the loop cools at no temperature, or still cools where the march ended.</summary>
    public LoopCloser.Closed? NoLoad { get; private set; }
    /// <summary>Closed tightly.</summary>
    public LoopCloser.Closed Operating { get; private set; } = null!;
    /// <summary>At the wanted temperature, when nothing is left there.</summary>
    public LoopPass Target { get; private set; } = null!;
    public double TargetK { get; private set; }
    public List<Spoken> Warnings { get; } = [];
    /// <summary>The start from rest, where it was worked out beside.</summary>
    public Task<StartUpResult>? StartUp { get; set; }

    /// <param name="seed">The same machine closed with another fluid model, to start from; null: from nothing.</param>
    /// <exception cref="SolveException">The loop does not close: the report says which balance and which part.</exception>
    public void Solve(ClosedSolver? seed = null)
    {
        _seed = seed;
        TargetK = WantedK();
        var points = (seed is null ? null : Seeded(seed)) ?? Marched();
        points.Sort((a, b) => a.Pass.LoadK.CompareTo(b.Pass.LoadK));
        Curve = points;
        if (double.IsNaN(TargetK)) TargetK = Best(points);
        var wanted = points[Nearest(points, TargetK)];
        Target = wanted.Pass;
        bool works = wanted.Pass.NetCoolingW > 0 || _options.OperatingTemperatureK is not null;
        NoLoad = FindNoLoad(points, NoLoadTolerance(wanted.Pass));
        if (works) Operating = Tight(wanted, Math.Abs(wanted.Pass.LoadK - TargetK) < 20 ? TargetK : wanted.Pass.LoadK);
        else Operating = NoLoad ?? Tight(points.Where(p => p.Pass.NetCoolingW > 0).DefaultIfEmpty(points[^1]).First(), double.NaN);
        if (works) Target = Operating.Pass;
        if (!_target.ThrottleIsFree && Math.Abs(Operating.Pass.ThrottleOff) > ThrottleSettled) Warnings.Add(FormattableString.Invariant(
            $"the throttle's own model passes {100 * (Math.Exp(Operating.Pass.ThrottleOff) - 1):+0.##;-0.##} % of the flow that the loop is closed with: its march has a step there, and pressures are as much in doubt"));
    }

    private List<LoopCloser.Closed> Marched()
    {
        var march = new LoadMarch(Closer);
        try
        {
            march.Start();
        }
        catch (SolveException e)
        {
            throw new SolveException(e.Report with { Advice = WhyNot.Closed(Hardware, _model, _target, e.Report, _cancel) });
        }
        bool reached = Down(march, TargetK);
        _stopped = march.Stopped;
        if (!reached && march.Stopped is { } stopped) Warnings.Add(Spoken.Of($"the loop was not followed below {Temperature(march.Points[^1].Pass.LoadK, "0.#")}: {stopped.Advice}"));
        if (march.LeftOut.Count > 0) Warnings.Add(Spoken.Of($"the cooling curve is left out at {Spoken.Join(", ", march.LeftOut.Select(k => Spoken.Of($"{Temperature(k, "0.#")}")))}: with the coil's film fitted to the vessel the loop did not close there"));
        return [.. march.Points];
    }

    // Closed at the other model's loads: the first from its state, the others along the difference found so far. Null: it did not work.
    private List<LoopCloser.Closed>? Seeded(ClosedSolver seed)
    {
        var order = Thinned(seed);
        // the other's coil is fitted to its vessel already
        if (seed.Hardware.Coil is { } coil && Hardware.Coil is { } own)
        {
            Hardware = Hardware with { Coil = own with { OutsideConductancePerLength = coil.OutsideConductancePerLength } };
            Closer = new LoopCloser(new LoopEvaluator(Hardware, _model, _accuracy, _cancel, Closer.Evaluator.Precooler), _target);
        }
        var found = new List<LoopCloser.Closed>();
        // the no-load temperature is sought beside the curve, by parts of its own, with the other model's film
        double film = Hardware.Coil?.OutsideConductancePerLength ?? 0;
        var end = seed.NoLoad is { } rest && order.Contains(rest) ? NoLoadBeside(rest) : null;
        try
        {
            foreach (var twin in order)
            {
                if (end is not null && ReferenceEquals(twin, seed.NoLoad)) continue;
                var closed = Closer.Close(Translated(twin, order, found), twin.Pass.LoadK, _accuracy.Rough, null, twin);
                found.Add(found.Count == 0 && !double.IsNaN(TargetK) && Math.Abs(closed.Pass.LoadK - TargetK) < 1e-6 ? Film(closed) : closed);
            }
            if (end is not null && Outcome(end) is { } beside)
            {
                (var near, _noLoad) = beside;
                bool same = (Hardware.Coil?.OutsideConductancePerLength ?? 0) == film;
                double tolerance = NoLoadTolerance(found[0].Pass);
                if (_noLoad is not null && !(same && tolerance >= Fair)) _noLoad = Closer.Finish(_noLoad, double.NaN, tolerance);
                found.Add(same ? near : Closer.Close(near.Pass.State, near.Pass.LoadK, _accuracy.Rough, near));
            }
            // the march went on until nothing was left; this model may have some left there
            var coldest = found.MinBy(f => f.Pass.LoadK)!;
            for (int i = 0; i < 4 && _noLoad is null && coldest.Pass.NetCoolingW > 0 && coldest.Pass.LoadK > _options.ColdestK + 1; i++)
            {
                if (found.Where(f => f.Pass.LoadK > coldest.Pass.LoadK).MinBy(f => f.Pass.LoadK) is { } warmer && Grasped(coldest, ToNoLoad(coldest.Pass, warmer.Pass))) break;
                coldest = Closer.Close(coldest.Pass.State, Math.Max(_options.ColdestK, coldest.Pass.LoadK - Beyond), _accuracy.Rough, coldest);
                found.Add(coldest);
            }
            return found;
        }
        catch (SolveException)
        {
            _noLoad = null;
            return null;
        }
        finally
        {
            if (end is not null) ((IAsyncResult)end).AsyncWaitHandle.WaitOne();
        }
    }

    // the other model's state as a guess for this one, as far from it as the nearest load found so far
    private LoopState Translated(LoopCloser.Closed twin, List<LoopCloser.Closed> order, List<LoopCloser.Closed> found)
    {
        var guess = Closer.Translated(twin.Pass);
        if (found.Count == 0) return guess;
        var near = found.MinBy(f => Math.Abs(f.Pass.LoadK - twin.Pass.LoadK))!;
        double[] there = Closer.Translated(order.First(o => o.Pass.LoadK == near.Pass.LoadK).Pass).X, dx = new double[guess.Count];
        for (int i = 0; i < dx.Length; i++) dx[i] = near.Pass.State.X[i] - there[i];
        return guess.Moved(dx, 1);
    }

    // closed at the other model's no-load temperature, and from there at this one's; null where that leads nowhere
    private Task<(LoopCloser.Closed, LoopCloser.Closed?)> NoLoadBeside(LoopCloser.Closed twin)
    {
        var hardware = Hardware;
        return Task.Run<(LoopCloser.Closed, LoopCloser.Closed?)>(() =>
        {
            var closer = new LoopCloser(new LoopEvaluator(hardware, _model, _accuracy, _cancel), _target);
            var near = closer.Close(closer.Translated(twin.Pass), twin.Pass.LoadK, _accuracy.Rough, null, twin);
            try
            {
                return (near, closer.Finish(near, double.NaN, Fair, null, twin) is { } found && Math.Abs(found.Pass.LoadK - near.Pass.LoadK) < 2 * Grasp ? found : null);
            }
            catch (SolveException)
            {
                return (near, null);
            }
        }, _cancel);
    }

    // null: it did not close there, and is sought from the curve instead
    private static (LoopCloser.Closed Near, LoopCloser.Closed? NoLoad)? Outcome(Task<(LoopCloser.Closed, LoopCloser.Closed?)> work)
    {
        try
        {
            return work.GetAwaiter().GetResult();
        }
        catch (SolveException)
        {
            return null;
        }
    }

    // where the cooler stands at its no-load temperature that is the operating point, and as tight
    private double NoLoadTolerance(LoopPass wanted) => wanted.NetCoolingW > 0 || _options.OperatingTemperatureK is not null ? Fair : _accuracy.Tight;

    // the wanted load first, then outward; at most so many
    private List<LoopCloser.Closed> Thinned(ClosedSolver seed)
    {
        const int most = 6;
        var all = seed.Curve.OrderBy(p => p.Pass.LoadK).ToList();
        double centre = double.IsNaN(TargetK) ? seed.TargetK : TargetK;
        var wanted = all.MinBy(p => Math.Abs(p.Pass.LoadK - centre))!;
        // where nothing is left with the other, next to nothing will be left with this one
        if (seed.NoLoad is { } rest && all.TrueForAll(p => Math.Abs(p.Pass.LoadK - rest.Pass.LoadK) > 0.5)) all = [.. all.Append(rest).OrderBy(p => p.Pass.LoadK)];
        if (seed.NoLoad is { } end) all.RemoveAll(p => p.Pass.LoadK < end.Pass.LoadK - 0.5);
        while (all.Count > most)
        {
            // the one whose neighbours are nearest to each other, ends and wanted kept
            int drop = Enumerable.Range(1, all.Count - 2).Where(i => all[i] != wanted && all[i] != seed.NoLoad).MinBy(i => all[i + 1].Pass.LoadK / all[i - 1].Pass.LoadK);
            all.RemoveAt(drop);
        }
        return [.. all.OrderBy(p => Math.Abs(p.Pass.LoadK - wanted.Pass.LoadK))];
    }

    // the condensing temperature, the one asked for, or not known yet
    private double WantedK()
    {
        double warm = Hardware.RoomK - 10;
        if (_options.OperatingTemperatureK is { } asked) return Math.Clamp(asked, _options.ColdestK, warm);
        return Product?.CondensingK is { } t ? Math.Clamp(t, _options.ColdestK, warm) : double.NaN;
    }

    // to the wanted temperature, and on to where nothing is left
    private bool Down(LoadMarch march, double wantedK)
    {
        bool ok = true;
        if (!double.IsNaN(wantedK)) ok = march.To(wantedK);
        if (ok && !double.IsNaN(wantedK)) march.GoOn(Closer, Film(march.Points[^1]), FeelsFilm * wantedK);
        while (ok && !(march.Points[^1].Pass.NetCoolingW < 0))
        {
            var last = march.Points[^1];
            double left = march.Points.Count > 1 ? ToNoLoad(last.Pass, march.Points[^2].Pass) : double.PositiveInfinity;
            if (Grasped(last, left)) break;
            double step = Math.Min(Beyond + Math.Min(14, 0.3 * Math.Max(0, last.Pass.NetCoolingW)), LoadMarch.FirstStep * last.Pass.LoadK);
            // a little short of it, where that is foreseen
            if (left > Grasp && left < step + Short) step = left - Short;
            double next = Math.Max(_options.ColdestK, last.Pass.LoadK - step);
            if (next >= last.Pass.LoadK - 0.01 || !march.To(next)) break;
        }
        return ok;
    }

    // K from a point to where nothing is left, along the line through it and a warmer one
    private static double ToNoLoad(LoopPass last, LoopPass warmer)
    {
        double slope = (warmer.NetCoolingW - last.NetCoolingW) / (warmer.LoadK - last.LoadK);
        return slope > 0.05 ? last.NetCoolingW / slope : double.PositiveInfinity;
    }

    // so near a load its Jacobian is worth more than a new one
    private LoopCloser.Closed? Fitted(double k) => _fitted is { } f && Math.Abs(f.Pass.LoadK - k) < Alike ? f : null;

    // the load itself as an unknown, from just warmer
    private bool Grasped(LoopCloser.Closed last, double leftK)
    {
        if (!(leftK < Grasp)) return false;
        try
        {
            var found = Closer.Finish(last, double.NaN, Fair, null, _seed?.NoLoad ?? Fitted(last.Pass.LoadK));
            if (found is null || found.Pass.LoadK > last.Pass.LoadK || found.Pass.LoadK < Math.Max(_options.ColdestK, last.Pass.LoadK - 2 * Grasp)) return false;
            _noLoad = found;
            return true;
        }
        catch (SolveException)
        {
            return false;
        }
    }

    private static int Nearest(List<LoopCloser.Closed> points, double k)
    {
        int best = 0;
        for (int i = 1; i < points.Count; i++)
            if (Math.Abs(points[i].Pass.LoadK - k) < Math.Abs(points[best].Pass.LoadK - k)) best = i;
        return best;
    }

    // The coil's outside film by the vessel's model at the wanted temperature; hardware and closer become those with it. What comes back is the
    // point closed with it.
    private LoopCloser.Closed Film(LoopCloser.Closed at)
    {
        try
        {
            double before = 0;
            for (int round = 0; round < FilmRounds; round++)
            {
                if (ColdEndFilm.Fitted(Hardware, at.Pass, _cancel) is not { } fitted) break;
                double change = Math.Abs(fitted.Coil!.OutsideConductancePerLength / Hardware.Coil!.OutsideConductancePerLength - 1);
                if (change < FilmSettled) break;
                var closer = new LoopCloser(new LoopEvaluator(fitted, _model, _accuracy, _cancel, Closer.Evaluator.Precooler), _target);
                at = closer.Finish(at, at.Pass.LoadK, Middling, null, _seed?.Operating) ?? closer.Close(at.Pass.State, at.Pass.LoadK, _accuracy.Rough, at);
                (Hardware, Closer, _fitted) = (fitted, closer, at);
                // changes shrink in proportion: where the next would be too small it need not be asked for
                if (before > change && change * change / before < FilmSettled) break;
                before = change;
            }
        }
        catch (SolveException e)
        {
            Warnings.Add($"the coil's outside film is not fitted to the vessel: {e.Report.Advice}");
        }
        return at;
    }

    private double Best(List<LoopCloser.Closed> points)
    {
        double room = Hardware.RoomK;
        double Merit(LoopPass p)
        {
            if (Product is null) return p.NetCoolingW * (room / p.LoadK - 1);
            double heat = ProductMade.HeatPerMole(Hardware, Product, p.LoadK, p.RecuperatorInletK);
            return heat > 0 ? p.NetCoolingW / heat * (1 - Product.LetDown(Product.Leaving(p.LoadK).Enthalpy).VapourFraction) : 0;
        }

        return points.MaxBy(p => Merit(p.Pass))!.Pass.LoadK;
    }

    // from the warm side the first load at which nothing is left: secant steps held in the bracket
    private LoopCloser.Closed? FindNoLoad(List<LoopCloser.Closed> points, double tolerance)
    {
        if (points[^1].Pass.NetCoolingW <= 0) return null;
        // the first from the warm side is meant
        if (_noLoad is not null && points.TrueForAll(p => p.Pass.LoadK < _noLoad.Pass.LoadK || p.Pass.NetCoolingW > -LeastLeftW))
            return _noLoad.Residual <= Math.Max(tolerance, Closes) ? _noLoad : Tight(_noLoad, double.NaN, tolerance);
        int i = points.Count - 2;
        while (i >= 0 && points[i].Pass.NetCoolingW > 0) i--;
        if (i < 0)
        {
            Warnings.Add(Spoken.Of($"cooling is left at {Temperature(points[0].Pass.LoadK, "0.#")}, the coldest load looked at: the no-load temperature lies below it{(_stopped is { } s ? $" (colder the loop did not close: {s.Advice})" : "")}"));
            return null;
        }
        LoopCloser.Closed cold = points[i], warm = points[i + 1], last = -cold.Pass.NetCoolingW < warm.Pass.NetCoolingW ? cold : warm;
        for (int round = 0; round < 8; round++)
        {
            if (Straight(cold, warm, tolerance) is { } straight) return straight;
            double tc = cold.Pass.LoadK, tw = warm.Pass.LoadK, qc = cold.Pass.NetCoolingW, qw = warm.Pass.NetCoolingW;
            double next = tc - qc * (tw - tc) / (qw - qc);
            // not stuck at one end
            next = Math.Clamp(next, tc + 0.02 * (tw - tc), tw - 0.02 * (tw - tc));
            try
            {
                last = Closer.Close(last.Pass.State, next, _accuracy.Rough, last);
            }
            catch (SolveException)
            {
                Warnings.Add(Spoken.Of($"the no-load temperature lies between {Temperature(tc, "0.#")} and {Temperature(tw, "0.#")}: the loop was not closed in between, and the nearer of the two stands for it"));
                return -qc < qw ? cold : warm;
            }
            if (last.Pass.NetCoolingW > 0) warm = last; else cold = last;
            if (Math.Abs(last.Pass.NetCoolingW) < 0.02 || warm.Pass.LoadK - cold.Pass.LoadK < TemperatureTolerance) break;
        }
        // what the first tight answer still leaves over moves the second there
        var found = Tight(last, double.NaN, tolerance);
        double slope = Slope(last);
        for (int round = 0; round < 4 && Math.Abs(found.Pass.NetCoolingW) > LeastLeftW; round++)
        {
            double step = Math.Clamp(-found.Pass.NetCoolingW / slope, -1, 1), before = found.Pass.NetCoolingW;
            try
            {
                found = Closer.Close(found.Pass.State, found.Pass.LoadK + step, Math.Max(tolerance, found.Residual), found);
            }
            catch (SolveException)
            {
                // a step of a part's law so near: what is left over stays as it is, and is shown
                break;
            }
            double measured = (found.Pass.NetCoolingW - before) / step;
            if (measured > 0.05) slope = measured;
        }
        return found;
    }

    // the load itself as an unknown; null when that leads nowhere, or out of the bracket
    private LoopCloser.Closed? Straight(LoopCloser.Closed cold, LoopCloser.Closed warm, double tolerance)
    {
        bool coldNear = -cold.Pass.NetCoolingW < warm.Pass.NetCoolingW;
        try
        {
            return Closer.Finish(coldNear ? cold : warm, double.NaN, tolerance, coldNear ? warm : cold, _seed?.NoLoad ?? Fitted(warm.Pass.LoadK)) is { } found && found.Pass.LoadK > cold.Pass.LoadK - BracketSlackK && found.Pass.LoadK < warm.Pass.LoadK + BracketSlackK ? found : null;
        }
        catch (SolveException)
        {
            return null;
        }
    }

    private double Slope(LoopCloser.Closed near)
    {
        var other = Curve.Where(c => Math.Abs(c.Pass.LoadK - near.Pass.LoadK) > 0.5).MinBy(c => Math.Abs(c.Pass.LoadK - near.Pass.LoadK));
        double slope = other is null ? 1 : (other.Pass.NetCoolingW - near.Pass.NetCoolingW) / (other.Pass.LoadK - near.Pass.LoadK);
        return slope > 0.05 ? slope : 0.5;
    }

    /// <summary>Closed to rounding, isobars at the pressures found.</summary>
    private LoopCloser.Closed Tight(LoopCloser.Closed near, double loadK, double? tolerance = null)
    {
        double k = double.IsNaN(loadK) ? near.Pass.LoadK : loadK;
        try
        {
            if (Closer.Finish(near, k, tolerance ?? _accuracy.Tight, null, _seed?.Operating) is { } finished) return finished;
        }
        catch (SolveException)
        {
            // in rounds, then, and as near as it goes
        }
        SolveException? refused = null;
        var centred = Closer.Centred(near, k);
        // where a part's law has a step of its own right there, as near as it lets the balances come
        foreach (double t in new[] { tolerance ?? _accuracy.Tight, 1e-6, 1e-5, 1e-4, _accuracy.Rough })
        {
            try
            {
                var found = Closer.Close(near.Pass.State, k, t, centred);
                if (found.Residual > Math.Max(Closes, tolerance ?? 0)) Warnings.Add(Spoken.Of($"at a load of {Temperature(k, "0.#")} the loop's balances close to {found.Residual:0.0e+0} only: a part's model has a step there"));
                return found;
            }
            catch (SolveException e)
            {
                refused = e;
            }
        }
        throw refused!;
    }
}
