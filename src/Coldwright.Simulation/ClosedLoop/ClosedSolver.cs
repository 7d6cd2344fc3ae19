using Coldwright.Fluids.EquationsOfState;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Numerics;
using Coldwright.Simulation.Rating;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>
/// Finds the closed loop's cooling curve, its no-load temperature and its operating point: a march from the warm end to both, the coil's
/// outside film brought into line with the vessel's model on the way, and both points closed tightly at the end. Not thread-safe.
/// </summary>
internal sealed class ClosedSolver
{
    private const double Beyond = 6, TemperatureTolerance = 2e-3;
    private const int FilmRounds = 6;
    private const double FilmSettled = 1e-3;

    private readonly HelmholtzModel _model;
    private readonly LoopTarget _target;
    private readonly LoopAccuracy _accuracy;
    private readonly CancellationToken _cancel;
    private readonly RatingOptions _options;

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
    public List<string> Warnings { get; } = [];

    /// <exception cref="SolveException">The loop does not close: the report says which balance and which part.</exception>
    public void Solve()
    {
        var march = new LoadMarch(Closer);
        try
        {
            march.Start();
        }
        catch (SolveException e)
        {
            throw new SolveException(e.Report with { Advice = WhyNot.Closed(Hardware, _model, e.Report) });
        }
        TargetK = WantedK();
        bool reached = Down(march, TargetK);
        if (!reached && march.Stopped is { } stopped) Warnings.Add($"the loop was not followed below {FormattableString.Invariant($"{march.Points[^1].Pass.LoadK:0.#}")} K: {stopped.Advice}");
        var points = march.Points.ToList();
        int at = Nearest(points, TargetK);
        if (reached && Film(points[at]) is { } film) points = Again(points, film);
        points.Sort((a, b) => a.Pass.LoadK.CompareTo(b.Pass.LoadK));
        Curve = points;
        if (double.IsNaN(TargetK)) TargetK = Best(points);
        NoLoad = FindNoLoad(points);
        var wanted = points[Nearest(points, TargetK)];
        Target = wanted.Pass;
        bool works = wanted.Pass.NetCoolingW > 0 || _options.OperatingTemperatureK is not null;
        if (works) Operating = Target.LoadK == TargetK ? Tight(wanted, TargetK) : Tight(Closer.Close(wanted.Pass.State, TargetK, _accuracy.Rough, wanted), TargetK);
        else Operating = NoLoad ?? Tight(points.Where(p => p.Pass.NetCoolingW > 0).DefaultIfEmpty(points[^1]).First(), double.NaN);
        if (works) Target = Operating.Pass;
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
        while (ok && !(march.Points[^1].Pass.NetCoolingW < 0))
        {
            double next = Math.Max(_options.ColdestK, march.Points[^1].Pass.LoadK - Beyond - Math.Min(14, 0.3 * Math.Max(0, march.Points[^1].Pass.NetCoolingW)));
            if (next >= march.Points[^1].Pass.LoadK - 0.01 || !march.To(next)) break;
        }
        return ok;
    }

    private static int Nearest(List<LoopCloser.Closed> points, double k)
    {
        int best = 0;
        for (int i = 1; i < points.Count; i++)
            if (Math.Abs(points[i].Pass.LoadK - k) < Math.Abs(points[best].Pass.LoadK - k)) best = i;
        return best;
    }

    // the coil's outside film by the vessel's model at the wanted temperature
    private (LoopCloser Closer, LoopCloser.Closed At)? Film(LoopCloser.Closed at)
    {
        (LoopCloser, LoopCloser.Closed)? found = null;
        var closer = Closer;
        for (int round = 0; round < FilmRounds; round++)
        {
            if (ColdEndFilm.Fitted(Hardware, at.Pass, _cancel) is not { } fitted) break;
            double change = fitted.Coil!.OutsideConductancePerLength / Hardware.Coil!.OutsideConductancePerLength - 1;
            if (Math.Abs(change) < FilmSettled && found is not null) break;
            Hardware = fitted;
            closer = new LoopCloser(new LoopEvaluator(fitted, _model, _accuracy, _cancel, closer.Evaluator.Precooler), _target);
            at = closer.Close(at.Pass.State, at.Pass.LoadK, _accuracy.Rough, at);
            found = (closer, at);
        }
        return found;
    }

    private List<LoopCloser.Closed> Again(List<LoopCloser.Closed> points, (LoopCloser Closer, LoopCloser.Closed At) film)
    {
        Closer = film.Closer;
        // a warm load hardly feels the film: its own heat is small beside what the coil could carry
        return [.. points.Select(p => p.Pass.LoadK == film.At.Pass.LoadK ? film.At : p.Pass.LoadK > 1.35 * film.At.Pass.LoadK ? p : Closer.Close(p.Pass.State, p.Pass.LoadK, _accuracy.Rough, p))];
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
    private LoopCloser.Closed? FindNoLoad(List<LoopCloser.Closed> points)
    {
        if (points[^1].Pass.NetCoolingW <= 0) return null;
        int i = points.Count - 2;
        while (i >= 0 && points[i].Pass.NetCoolingW > 0) i--;
        if (i < 0)
        {
            Warnings.Add(FormattableString.Invariant($"cooling is left at {points[0].Pass.LoadK:0.#} K, the coldest load looked at: the no-load temperature lies below it"));
            return null;
        }
        LoopCloser.Closed cold = points[i], warm = points[i + 1], last = -cold.Pass.NetCoolingW < warm.Pass.NetCoolingW ? cold : warm;
        for (int round = 0; round < 12; round++)
        {
            double tc = cold.Pass.LoadK, tw = warm.Pass.LoadK, qc = cold.Pass.NetCoolingW, qw = warm.Pass.NetCoolingW;
            double next = tc - qc * (tw - tc) / (qw - qc);
            // not stuck at one end
            next = Math.Clamp(next, tc + 0.02 * (tw - tc), tw - 0.02 * (tw - tc));
            last = Closer.Close(last.Pass.State, next, _accuracy.Rough, last);
            if (last.Pass.NetCoolingW > 0) warm = last; else cold = last;
            if (Math.Abs(last.Pass.NetCoolingW) < 1e-2 || warm.Pass.LoadK - cold.Pass.LoadK < TemperatureTolerance) break;
        }
        return TightNoLoad(last);
    }

    private LoopCloser.Closed TightNoLoad(LoopCloser.Closed near)
    {
        double slope = Slope(near), k = near.Pass.LoadK;
        var found = Tight(near, double.NaN);
        for (int round = 0; round < 8 && Math.Abs(found.Pass.NetCoolingW) > 1e-7; round++)
        {
            double step = Math.Clamp(-found.Pass.NetCoolingW / slope, -2, 2);
            var next = Closer.Close(found.Pass.State, k + step, _accuracy.Tight, found);
            double measured = (next.Pass.NetCoolingW - found.Pass.NetCoolingW) / step;
            if (measured > 0 && Math.Abs(step) > 1e-6) slope = measured;
            (found, k) = (next, k + step);
        }
        return found;
    }

    private double Slope(LoopCloser.Closed near)
    {
        var other = Curve.Where(c => Math.Abs(c.Pass.LoadK - near.Pass.LoadK) > 0.5).MinBy(c => Math.Abs(c.Pass.LoadK - near.Pass.LoadK));
        double slope = other is null ? 1 : (other.Pass.NetCoolingW - near.Pass.NetCoolingW) / (other.Pass.LoadK - near.Pass.LoadK);
        return slope > 0.05 ? slope : 0.5;
    }

    /// <summary>Closed to rounding, isobars at the pressures found.</summary>
    private LoopCloser.Closed Tight(LoopCloser.Closed near, double loadK)
    {
        double k = double.IsNaN(loadK) ? near.Pass.LoadK : loadK;
        return Closer.Close(near.Pass.State, k, _accuracy.Tight, Closer.Centred(near, k));
    }
}
