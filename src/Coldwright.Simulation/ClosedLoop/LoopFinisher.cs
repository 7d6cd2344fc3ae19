using Coldwright.Numerics;
using Coldwright.Numerics.LinearAlgebra;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>
/// Closes a loop tightly from nearby: all unknowns at once by Newton's method with Broyden's corrections, on tables with slopes along the
/// composition, so that no flash of a table is needed on the way. The load's temperature may be one of the unknowns, with no cooling left over
/// as its balance. Tables are placed anew where the composition has moved far from their middle, the throttle's model is asked again where its
/// line is off. Not thread-safe.
/// </summary>
internal sealed class LoopFinisher(LoopCloser closer)
{
    private readonly LoopEvaluator _evaluator = closer.Evaluator;
    private readonly LoopTarget _target = closer.Target;

    // relative, of the throttle's own march
    private const double Resolution = 3e-4;
    private const double PressureStep = 1e-4, EnthalpyStep = 2e-3, FractionStep = 1e-3, LoadStep = 2e-3;
    private const double MostLnPressure = 0.2, MostEnthalpy = 2.5, MostLnFraction = 0.3, MostLoadK = 4;
    // W and K that make cooling left over and load of order one
    private const double CoolingScaleW = 30, LoadScaleK = 10;
    // ln of a fraction: tables err by its square
    private const double Reach = 0.03, Furthest = 0.25;
    // before the throttle is asked again the loop need not be closer
    private const double BeforeAsking = 2e-4, Middling = 1e-5, Rounding = 1e-9;
    private LoopCare _care;
    private const int MostSteps = 40, MostPlacings = 8, MostHalvings = 6, MostJacobians = 4;

    /// <summary>A closed pass with its whole Jacobian (row-major): of the balances and, last, of the cooling left over, by the unknowns and, last, by the load.</summary>
    public sealed record Finished(LoopPass Pass, double Residual, int Steps, double[] Jacobian);

    // where a search stands
    private sealed class Search(LoopPass pass, double[]? jacobian, bool loadIsFree)
    {
        public LoopPass Pass { get; set; } = pass;
        public double[]? Jacobian { get; set; } = jacobian;
        public bool LoadIsFree => loadIsFree;
        public int Steps { get; set; }
        public double Norm => Of(Pass);
        public int Size => Pass.State.Count + 1;

        public double Of(LoopPass p) => Math.Max(LoopBalances.Norm(p.Residuals), loadIsFree ? Math.Abs(p.NetCoolingW) / CoolingScaleW : 0);
    }

    /// <summary>Closes.</summary>
    /// <param name="near">A state nearby with its tables, which have slopes; its load is the one wanted, or the first guess.</param>
    /// <param name="throttle">The throttle near it.</param>
    /// <param name="loadIsFree">True: the load at which no cooling is left.</param>
    /// <param name="tolerance">Largest scaled balance left.</param>
    /// <param name="jacobian">One found nearby; null: differenced.</param>
    /// <exception cref="SolveException">It does not close.</exception>
    public Finished Close(LoopPass near, ThrottleEstimate throttle, bool loadIsFree, double tolerance, double[]? jacobian = null)
    {
        _care = LoopCare.Near;
        // a copy: it is corrected in place, and others start from the same
        var search = new Search(Run(near.State, near.LoadK, near, throttle), jacobian is null ? null : [.. jacobian], loadIsFree);
        if (throttle.IsRough && !_target.ThrottleIsFree)
        {
            var (inlet, back) = LoopEvaluator.ThrottleQuestion(search.Pass);
            throttle.Ask(inlet, back);
            search.Pass = Run(near.State, near.LoadK, search.Pass, throttle);
        }
        double enough = BeforeAsking;
        for (int placing = 0; ; placing++)
        {
            Settle(search, throttle, Math.Max(tolerance, enough));
            var p = search.Pass;
            if (placing < MostPlacings && (p.Tables.FromFamily(p.Tables.Z) > Reach || !LoopCloser.IsCentred(p)) && closer.WithSlopes(p, p.LoadK) is { } there)
            {
                search.Pass = Run(there.State, p.LoadK, there, throttle);
                continue;
            }
            var (inlet, back) = LoopEvaluator.ThrottleQuestion(p);
            double off = _target.ThrottleIsFree ? 0 : throttle.Check(inlet, back);
            if (Math.Abs(off) > Resolution && placing < MostPlacings)
            {
                throttle.Ask(inlet, back);
                enough = Math.Max(Middling, 0.1 * Math.Abs(off));
                search.Pass = Run(p.State, p.LoadK, p, throttle);
                continue;
            }
            _care = LoopCare.Exact;
            search.Pass = Run(p.State, p.LoadK, p, throttle);
            Settle(search, throttle, tolerance);
            return new Finished(search.Pass with { ThrottleOff = off }, search.Norm, search.Steps, search.Jacobian ?? Difference(search, throttle, rough: false));
        }
    }

    private void Settle(Search s, ThrottleEstimate throttle, double tolerance)
    {
        double norm = s.Norm;
        int slow = 0, jacobians = 0;
        for (int step = 0; step < MostSteps && norm > tolerance; step++)
        {
            if (s.Jacobian is null || slow >= 2)
            {
                if (jacobians++ == MostJacobians) break;
                (s.Jacobian, slow) = (Difference(s, throttle, rough: jacobians == 1), 0);
            }
            if (Step(s, norm, throttle) is { } next)
            {
                double now = s.Of(next);
                // a Jacobian of its own costs as much as so many more steps with this one
                slow = now > norm * Math.Clamp(Math.Pow(tolerance / norm, 1.0 / s.Size), 0.3, 0.8) ? slow + 1 : 0;
                (s.Pass, norm) = (next, now);
                s.Steps++;
            }
            // the Jacobian has learnt from the trials; when that was of no use, a new one
            else slow++;
        }
        if (norm <= Math.Max(tolerance, Rounding)) return;
        throw new SolveException(new SolveReport(SolveStatus.NotConverged, s.Steps, norm, FormattableString.Invariant(
            $"the loop does not close with the load at {s.Pass.LoadK:0.#} K: {OpenBalance.Of(s.Pass, _evaluator.Hardware)}")));
    }

    // a step that lowers the norm; null when none does
    private LoopPass? Step(Search s, double norm, ThrottleEstimate throttle)
    {
        int n = s.Pass.State.Count, size = s.Size, unknowns = s.LoadIsFree ? size : n;
        double[] f = Balances(s.Pass), dx = [.. f], spoilt = new double[unknowns * unknowns];
        for (int r = 0; r < unknowns; r++) s.Jacobian.AsSpan(r * size, unknowns).CopyTo(spoilt.AsSpan(r * unknowns));
        if (!Dense.TrySolve(spoilt, dx.AsSpan(0, unknowns), unknowns)) return null;
        if (!s.LoadIsFree) dx[n] = 0;
        double share = 1;
        for (int i = 0; i < size; i++)
        {
            dx[i] = -dx[i];
            share = Math.Min(share, Most(i, n) / Math.Max(Math.Abs(dx[i]), 1e-300));
        }
        var matrix = new BroydenMatrix(size, s.Jacobian!);
        for (int halving = 0; halving < MostHalvings; halving++, share *= 0.4)
        {
            double[] step = [.. dx.Select(v => share * v)];
            if (Moved(s, step, throttle, s.Pass, _care) is not { } trial) continue;
            matrix.Correct(step, f, Balances(trial));
            double now = s.Of(trial);
            // a first full step may rise a little: the Jacobian has just learnt from it
            if (now < (1 - 0.1 * share) * norm || (halving == 0 && now < 1.5 * norm && now < 1)) return trial;
        }
        return null;
    }

    private static double Most(int i, int n) => i == n ? MostLoadK / LoadScaleK : i >= LoopState.FirstFraction ? MostLnFraction : IsPressure(i) ? MostLnPressure : MostEnthalpy;

    private static bool IsPressure(int i) => i is LoopState.High or LoopState.LnSuction or LoopState.LnCoil;

    private LoopPass? Moved(Search s, double[] step, ThrottleEstimate throttle, LoopPass near, LoopCare care)
    {
        int n = s.Pass.State.Count;
        try
        {
            return Run(s.Pass.State.Moved(step[..n], 1), s.Pass.LoadK + step[n] * LoadScaleK, near, throttle, care);
        }
        catch (SolveException e) when (e.Report.Status is SolveStatus.Outside or SolveStatus.NoSolution or SolveStatus.NotConverged)
        {
            return null;
        }
    }

    private LoopPass Run(LoopState state, double loadK, LoopPass near, ThrottleEstimate throttle, LoopCare? care = null)
    {
        double[] z = state.Z();
        if (near.Tables.FromFamily(z) > Furthest) throw new SolveException(new SolveReport(SolveStatus.Outside, 0, near.Tables.FromFamily(z), "the tables' slopes do not reach as far as this composition"));
        var tables = z.AsSpan().SequenceEqual(near.Tables.Z) ? near.Tables : _evaluator.Tables.Along(near.Tables, z)!;
        return _evaluator.Run(state, loadK, tables, near.Recuperator, _target, throttle, care ?? _care);
    }

    // with the cooling left over as the last
    private static double[] Balances(LoopPass p) => [.. p.Residuals, p.NetCoolingW / CoolingScaleW];

    // the first by rough parts: it only shows the way
    private double[] Difference(Search s, ThrottleEstimate throttle, bool rough)
    {
        int n = s.Pass.State.Count, size = s.Size;
        var care = rough ? LoopCare.Rough : _care;
        var at = rough ? Run(s.Pass.State, s.Pass.LoadK, s.Pass, throttle, care) : s.Pass;
        double[] j = new double[size * size], f0 = Balances(at);
        for (int c = 0; c < size; c++)
        {
            double h = c == n ? LoadStep : c >= LoopState.FirstFraction ? FractionStep : IsPressure(c) ? PressureStep : EnthalpyStep;
            var step = new double[size];
            step[c] = h;
            var moved = Moved(s, step, throttle, at, care);
            if (moved is null)
            {
                step[c] = h = -h;
                moved = Moved(s, step, throttle, at, care) ?? throw new SolveException(new SolveReport(SolveStatus.NotConverged, 0, double.NaN, "a part of the loop has no answer next to one it has"));
            }
            double[] f = Balances(moved);
            for (int r = 0; r < size; r++) j[r * size + c] = (f[r] - f0[r]) / h;
        }
        return j;
    }
}
