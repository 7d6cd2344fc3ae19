using System.Runtime.ExceptionServices;
using Coldwright.Numerics;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>
/// The closed loop from a cold start: closed first with a load as warm as the room, where all is gas and a guess from nothing is good
/// enough, then at colder and colder loads, each from an extrapolation of the ones before, with shorter steps where the way bends.
/// </summary>
internal sealed class LoadMarch(LoopCloser first)
{
    /// <summary>Share of a load's temperature that the next is colder, at first.</summary>
    public const double FirstStep = 0.08;
    private const double FirstDropK = 8, ColdestStart = 0.6, LargestStep = 0.25, SmallestK = 0.6;
    private readonly List<LoopCloser.Closed> _points = [];
    private LoopCloser _closer = first;

    /// <summary>Points closed so far, warmest first.</summary>
    public IReadOnlyList<LoopCloser.Closed> Points => _points;

    /// <summary>Loads, K, that did not close again after the hardware changed.</summary>
    public List<double> LeftOut { get; } = [];

    /// <summary>Why the march went no further; null while it can.</summary>
    public SolveReport? Stopped { get; private set; }

    /// <summary>Closes the warm end.</summary>
    /// <exception cref="SolveException">Not even there: the report says why.</exception>
    public void Start()
    {
        var h = _closer.Evaluator.Hardware;
        double warm = h.RoomK - FirstDropK;
        var guess = WarmStart.Guess(h, _closer.Evaluator.Model, _closer.Target, _closer.Evaluator.Cancel);
        double rough = _closer.Evaluator.Accuracy.Rough;
        try
        {
            _points.Add(_closer.Close(guess, warm, rough, null));
        }
        catch (SolveException first) when (h.Precooler is not null)
        {
            try
            {
                _points.Add(PrecooledLater(guess, warm));
            }
            catch (SolveException)
            {
                ExceptionDispatchInfo.Throw(first);
            }
        }
    }

    // A precooler far larger than the loop needs turns the recuperator's warm end round while the load is warm, and leads astray from so far:
    // without it first, and with it from the warmest load at which that closes.
    private LoopCloser.Closed PrecooledLater(LoopState guess, double warmK)
    {
        var (e, h) = (_closer.Evaluator, _closer.Evaluator.Hardware);
        var alone = new LoopCloser(new LoopEvaluator(h with { Precooler = null, Layout = h.Layout with { Precooler = null } }, e.Model, e.Accuracy, e.Cancel), _closer.Target);
        double loadK = warmK;
        var point = alone.Close(guess, loadK, e.Accuracy.Rough, null);
        while (true)
        {
            try
            {
                return _closer.Close(point.Pass.State, loadK, e.Accuracy.Rough, null);
            }
            catch (SolveException) when (loadK > ColdestStart * warmK)
            {
                loadK *= 1 - FirstStep;
                point = alone.Close(point.Pass.State, loadK, e.Accuracy.Rough, point);
            }
        }
    }

    /// <summary>Goes on to a colder load; false when it did not get there.</summary>
    public bool To(double loadK)
    {
        double step = FirstStep;
        while (_points[^1].Pass.LoadK > loadK + 1e-6)
        {
            double from = _points[^1].Pass.LoadK, next = Math.Max(loadK, from * (1 - step));
            // no crumb left before the goal
            if (next - loadK < 0.35 * (from - next)) next = loadK;
            try
            {
                var found = _closer.Close(Extrapolated(next), next, _closer.Evaluator.Accuracy.Rough, _points[^1]);
                _points.Add(found);                step = Math.Min(LargestStep, found.Rounds <= 4 ? 1.7 * step : step);
            }
            catch (SolveException e)
            {
                step *= 0.4;
                if (step * from >= SmallestK) continue;
                Stopped = e.Report;
                return false;
            }
        }
        return true;
    }

    /// <summary>Goes on with other hardware: the last point is replaced, and those before it that feel the change are closed again or left out.</summary>
    /// <param name="closer">Closer of the other hardware.</param>
    /// <param name="last">The last point closed with it.</param>
    /// <param name="untilK">Warmer loads do not feel it.</param>
    public void GoOn(LoopCloser closer, LoopCloser.Closed last, double untilK)
    {
        bool other = !ReferenceEquals(closer, _closer);
        (_closer, _points[^1]) = (closer, last);
        if (!other) return;
        for (int i = _points.Count - 2; i > 0 && _points[i].Pass.LoadK < untilK; i--)
            try
            {
                _points[i] = closer.Close(_points[i].Pass.State, _points[i].Pass.LoadK, closer.Evaluator.Accuracy.Rough, _points[i]);
            }
            catch (SolveException)
            {
                LeftOut.Add(_points[i].Pass.LoadK);
                _points.RemoveAt(i);
            }
    }

    // along the last two points, the shorter the further
    private LoopState Extrapolated(double loadK)
    {
        var last = _points[^1].Pass;
        if (_points.Count < 2) return last.State;
        var before = _points[^2].Pass;
        double share = Math.Min(1, (loadK - last.LoadK) / (last.LoadK - before.LoadK));
        var dx = new double[last.State.Count];
        for (int i = 0; i < dx.Length; i++) dx[i] = last.State.X[i] - before.State.X[i];
        return last.State.Moved(dx, share);
    }
}
