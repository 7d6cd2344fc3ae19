using Coldwright.Machine.Recuperation;
using Coldwright.Numerics;
using Coldwright.Numerics.LinearAlgebra;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>Pressures and heats of the loop at a given composition: Newton's method with step limits, Broyden's corrections between differenced Jacobians.</summary>
internal sealed class InnerLoop(LoopEvaluator evaluator, LoopTarget target)
{
    private const double RoughEnough = 1e-5;
    private const int Size = LoopState.FirstFraction, MostSteps = 60, MostHalvings = 8;
    private const double MostLnPressure = 0.2, MostEnthalpy = 2.5, PressureStep = 1e-4, EnthalpyStep = 2e-3;

    private LoopCare _care;

    /// <summary>Settles; returns the pass and the Jacobian (row-major).</summary>
    /// <exception cref="SolveException">It does not settle.</exception>
    public (LoopPass Pass, double[] Jacobian) Settle(LoopState start, double loadK, LoopTables tables, RecuperatorResult? warm, ThrottleEstimate throttle, double[]? jacobian, double tolerance)
    {
        _care = tolerance >= RoughEnough ? LoopCare.Rough : LoopCare.Exact;
        var pass = evaluator.Run(start, loadK, tables, warm, target, throttle, _care);
        double norm = Norm(pass);
        bool fresh = false;
        int slow = 0;
        SolveException? last = null;
        for (int step = 0; step < MostSteps && norm > tolerance; step++)
        {
            if (jacobian is null || (slow >= 2 && !fresh)) (jacobian, fresh, slow) = (Difference(pass, throttle), true, 0);
            double[] dx = pass.Residuals[..Size], spoilt = [.. jacobian];
            if (!Dense.TrySolve(spoilt, dx, Size))
            {
                if (fresh) break;
                jacobian = null;
                continue;
            }
            double share = 1;
            for (int i = 0; i < Size; i++)
            {
                dx[i] = -dx[i];
                share = Math.Min(share, (IsPressure(i) ? MostLnPressure : MostEnthalpy) / Math.Max(Math.Abs(dx[i]), 1e-300));
            }
            var next = Tried(pass, dx, share, norm, throttle, ref jacobian, ref last);
            if (next is null)
            {
                if (fresh) break;
                jacobian = null;
                continue;
            }
            double now = Norm(next);
            slow = now > 0.4 * norm ? slow + 1 : 0;
            (pass, norm, fresh) = (next, now, false);
        }
        if (norm <= Math.Max(tolerance, 1e-9)) return (pass, jacobian ?? Difference(pass, throttle));
        // a trial beyond the tables stopped it, and it has moved since they were made
        if (last?.Report.Status == SolveStatus.Outside && !ReferenceEquals(pass.State, start)) throw new LeftTablesException(pass, last.Report.Advice);
        throw new SolveException(new SolveReport(SolveStatus.NotConverged, MostSteps, norm, FormattableString.Invariant(
            $"pressures and heats do not settle with the load at {loadK:0.#} K: {OpenBalance.Of(pass, evaluator.Hardware, inside: true)}{(last is null ? "" : $"; {last.Report.Advice}")}")));
    }

    private LoopPass? Tried(LoopPass from, double[] dx, double share, double norm, ThrottleEstimate throttle, ref double[] jacobian, ref SolveException? last)
    {
        var matrix = new BroydenMatrix(Size, jacobian);
        var full = new double[from.State.Count];
        for (int halving = 0; halving < MostHalvings; halving++, share *= 0.4)
        {
            for (int i = 0; i < Size; i++) full[i] = share * dx[i];
            try
            {
                var trial = evaluator.Run(from.State.Moved(full, 1), from.LoadK, from.Tables, from.Recuperator, target, throttle, _care);
                matrix.Correct(full[..Size], from.Residuals[..Size], trial.Residuals[..Size]);
                double now = Norm(trial);
                // a first full step may rise a little: the Jacobian has just learnt from it
                if (now < (1 - 0.1 * share) * norm || (halving == 0 && now < 1.5 * norm && now < 1)) return trial;
            }
            catch (SolveException e) when (e.Report.Status is SolveStatus.Outside or SolveStatus.NoSolution or SolveStatus.NotConverged)
            {
                last = e;
            }
        }
        return null;
    }

    private double[] Difference(LoopPass at, ThrottleEstimate throttle)
    {
        var j = new double[Size * Size];
        for (int c = 0; c < Size; c++)
        {
            double h = IsPressure(c) ? PressureStep : EnthalpyStep;
            if (c == LoopState.LowOutlet && evaluator.Hardware.Layout.WarmExchanger is null)
            {
                // nothing else hears of it
                j[LoopBalances.LowOutlet * Size + c] = -1;
                continue;
            }
            double[] f = Shifted(at, c, h, throttle) ?? Shifted(at, c, h = -h, throttle) ?? throw new SolveException(new SolveReport(SolveStatus.NotConverged, 0, double.NaN, "a part of the loop has no answer next to one it has"));
            for (int r = 0; r < Size; r++) j[r * Size + c] = (f[r] - at.Residuals[r]) / h;
        }
        return j;
    }

    private double[]? Shifted(LoopPass at, int column, double h, ThrottleEstimate throttle)
    {
        var dx = new double[at.State.Count];
        dx[column] = h;
        try
        {
            return evaluator.Run(at.State.Moved(dx, 1), at.LoadK, at.Tables, at.Recuperator, target, throttle, _care).Residuals;
        }
        catch (SolveException)
        {
            return null;
        }
    }

    private static bool IsPressure(int i) => i is LoopState.High or LoopState.LnSuction or LoopState.LnCoil;

    private static double Norm(LoopPass p) => LoopBalances.Norm(p.Residuals.AsSpan(0, Size));
}
