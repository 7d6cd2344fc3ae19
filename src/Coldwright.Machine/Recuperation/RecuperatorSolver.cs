using Coldwright.Numerics;

namespace Coldwright.Machine.Recuperation;

/// <summary>
/// Damped Newton on the balances with conductances and pressures brought up to date between steps. From a cold start the films
/// grow from a hundredth of their value to all of it, so that the streams approach each other from afar and a pinch is met
/// from its open side; a stage that does not settle is taken in smaller steps.
/// </summary>
internal sealed class RecuperatorSolver(RecuperatorCase question, int cells, CancellationToken cancel, double tolerance = RecuperatorSolver.Tolerance)
{
    /// <summary>Largest balance left, relative to <see cref="RecuperatorEquations.Scale"/>, of the answer itself.</summary>
    public const double Tolerance = 2e-12;
    /// <summary>As above, where only a difference between two solves is wanted: to estimate the grid's error and the band.</summary>
    public const double Rough = 1e-8, Roughest = 1e-6;

    /// <summary>Accepted when it gets no smaller: the balances close to rounding at given conductances; these then change by no more than this from one step to the next (a cell in whose middle a correlation changes its law).</summary>
    public const double Acceptable = 1e-7;

    private const int MostIterations = 500;
    private const double FirstShare = 0.02, Growth = 5;

    private readonly BlockTridiagonal _system = new(cells);
    private readonly RecuperatorState _trial = new(cells);
    private double _reached = double.NaN;

    public RecuperatorEquations Equations { get; } = new(question, cells);
    public int Iterations { get; private set; }

    /// <summary>Solves, from a given state if there is one.</summary>
    /// <exception cref="SolveException">No answer.</exception>
    public RecuperatorState Solve(RecuperatorState? warm)
    {
        if (warm is not null)
        {
            var start = Boundary(warm.On(cells));
            Equations.Seed(start);
            if (Settle(start, 1, tolerance, 60)) return Finished(start);
        }
        return Finished(FromCold());
    }

    // inlet values are the question's, whatever the start came from
    private RecuperatorState Boundary(RecuperatorState s)
    {
        (s.HotH[0], s.ColdH[cells], s.HotP[0], s.ColdP[cells]) = (question.Hot.MolarEnthalpy, question.Cold.MolarEnthalpy, question.Hot.PressurePa, question.Cold.PressurePa);
        return s;
    }

    private RecuperatorState FromCold()
    {
        var s = new RecuperatorState(cells);
        Array.Fill(s.HotH, question.Hot.MolarEnthalpy);
        Array.Fill(s.ColdH, question.Cold.MolarEnthalpy);
        Array.Fill(s.HotP, question.Hot.PressurePa);
        Array.Fill(s.ColdP, question.Cold.PressurePa);
        Array.Fill(s.Wall, 0.5 * (question.Hot.TemperatureK + question.Cold.TemperatureK));
        double share = FirstShare, done = 0, growth = Growth;
        var good = s.Copy();
        for (int stage = 0; stage < 200 && Iterations < MostIterations; stage++)
        {
            bool last = share >= 1;
            if (Settle(s, share, last ? tolerance : 1e-3, last ? 150 : 80))
            {
                if (last) return s;
                (good, done) = (s.Copy(), share);
                share = Math.Min(1, share * growth);
                continue;
            }
            s.CopyFrom(good);
            growth = Math.Max(1.02, Math.Sqrt(growth));
            share = done > 0 ? Math.Min(1, done * growth) : 0.2 * share;
            if (share < 1e-8) break;
        }
        throw new SolveException(new SolveReport(SolveStatus.NotConverged, Iterations, _reached,
            FormattableString.Invariant($"the recuperator's balances did not close: {_reached:0.0e+0} of the heat flow left after {Iterations} iterations, films at {done:0.###} of their value; more cells, or flows nearer to each other, may help")));
    }

    private bool Settle(RecuperatorState s, double share, double enough, int most)
    {
        var e = Equations;
        double relaxation = 1, before = double.PositiveInfinity;
        double least = double.PositiveInfinity;
        int rising = 0, falling = 0, idle = 0;
        for (int i = 0; i < most; i++, Iterations++)
        {
            cancel.ThrowIfCancellationRequested();
            e.Update(s, share, relaxation);
            _reached = e.Balance(s) / e.Scale;
            if (_reached < enough) return true;
            if (!double.IsFinite(_reached)) return false;
            // conductances that chase their own shadow are brought in more gently, and less so again while that goes well
            rising = _reached > 0.9 * before ? rising + 1 : 0;
            falling = _reached < 0.9 * before ? falling + 1 : 0;
            if (rising >= 2) (relaxation, rising) = (Math.Max(0.1, 0.5 * relaxation), 0);
            if (falling >= 3) (relaxation, falling) = (Math.Min(1, 1.6 * relaxation), 0);
            before = _reached;
            idle = _reached < 0.7 * least ? 0 : idle + 1;
            least = Math.Min(least, _reached);
            bool enoughTried = idle > 12 && _reached < Acceptable;
            double norm = e.Norm();
            e.Linearise(s, _system);
            if (!_system.TrySolve()) return false;
            _trial.CopyFrom(s);
            double step = 1;
            for (int halving = 0; ; halving++, step *= 0.5)
            {
                if (halving == 12) return false;
                RecuperatorEquations.Advance(_trial, s, _system, step);
                e.Balance(_trial);
                if (e.Norm() <= (1 - 1e-3 * step) * norm || norm < 1e-9 * e.Scale) break;
            }
            s.CopyFrom(_trial);
            if (enoughTried) return true;
        }
        return _reached < Acceptable;
    }

    private RecuperatorState Finished(RecuperatorState s)
    {
        var e = Equations;
        if (e.Starved)
            throw new SolveException(new SolveReport(SolveStatus.NoSolution, Iterations, _reached,
                FormattableString.Invariant($"a stream would lose more than 70 % of its pressure in the recuperator (in: {question.Hot.PressurePa / 1e5:0.###} and {question.Cold.PressurePa / 1e5:0.###} bar absolute); less flow, a wider bore or a shorter tube is needed")));
        for (int i = 0; i < cells; i++)
        {
            if (!e.HotPoint[i].Outside && !e.ColdPoint[i].Outside) continue;
            var (name, point) = e.HotPoint[i].Outside ? ("warm", e.HotPoint[i]) : ("cold", e.ColdPoint[i]);
            throw new SolveException(new SolveReport(SolveStatus.Outside, Iterations, _reached,
                FormattableString.Invariant($"the {name} stream leaves its property table at {point.TemperatureK:0.##} K and {point.PressurePa / 1e5:0.###} bar absolute; make the table wider")));
        }
        e.Keep(s);
        return s;
    }
}
