using Coldwright.Numerics;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>
/// Closes the loop at one load temperature. Inside, at a composition whose tables are made once: pressures and heats by Newton's method
/// with Broyden's corrections, on an estimate of the throttle that its own model confirms. Outside: the composition that circulates, so that
/// every substance's amount in the loop is what was charged, by Broyden's method from the Jacobian of a loop that is all gas.
/// Not thread-safe.
/// </summary>
internal sealed class LoopCloser(LoopEvaluator evaluator, LoopTarget target)
{
    private const int MostRounds = 40, MostEstimates = 12;
    // largest change of ln of a fraction in one round
    private const double MostLnFraction = 0.4;
    private const double DeltaColdestK = 14, PrecoolerColdestK = 185;
    // isobars of a tight answer lie this little beyond its pressures
    private const double Near = 1.04;

    private readonly InnerLoop _inner = new(evaluator, target);

    public LoopEvaluator Evaluator => evaluator;
    public LoopTarget Target => target;

    /// <summary>A closed pass with what a neighbour starts from.</summary>
    /// <param name="Pass">The pass.</param>
    /// <param name="Residual">Largest scaled balance left.</param>
    /// <param name="Rounds">Compositions tried.</param>
    /// <param name="Inner">Jacobian of pressures and heats.</param>
    /// <param name="Outer">Jacobian of the amounts by the composition.</param>
    /// <param name="Throttle">The throttle near it.</param>
    public sealed record Closed(LoopPass Pass, double Residual, int Rounds, double[]? Inner, BroydenMatrix Outer, ThrottleEstimate Throttle);

    /// <summary>Closes from a guess.</summary>
    /// <param name="guess">State to start from.</param>
    /// <param name="loadK">K.</param>
    /// <param name="tolerance">Largest scaled balance left.</param>
    /// <param name="near">A closed neighbour; null: none.</param>
    /// <exception cref="SolveException">It does not close; the report says which balance is worst.</exception>
    public Closed Close(LoopState guess, double loadK, double tolerance, Closed? near)
    {
        int first = LoopState.FirstFraction, free = guess.Count - first;
        var outer = near?.Outer.Copy() ?? BroydenMatrix.Identity(free);
        var throttle = near?.Throttle ?? new ThrottleEstimate(evaluator.ThrottleFlow);
        double[]? jacobian = near?.Inner;
        var state = guess;
        LoopPass? pass = near?.Pass, best = null;
        double bestNorm = double.PositiveInfinity, damping = 1;
        double[] step = [], before = [];
        for (int round = 1; round <= MostRounds; round++)
        {
            var tables = Tables(state, loadK, pass);
            if (pass is not null && !ReferenceEquals(pass.Tables, tables)) state = Carried(pass, state, tables);
            // inside no tighter than the round deserves, at the end as tight as asked
            double inside = round == 1 || bestNorm > 30 * tolerance ? Math.Max(tolerance, Math.Min(1e-4, 0.02 * bestNorm)) : 0.3 * tolerance;
            (pass, jacobian) = Confirmed(state, loadK, tables, pass, throttle, jacobian, inside);
            if (!Good(pass))
            {
                state = pass.State;
                continue;
            }
            double[] r = pass.Residuals[first..];
            double norm = LoopBalances.Norm(r);
            if (step.Length > 0) outer.Correct(step, before, r);
            if (Math.Max(norm, LoopBalances.Norm(pass.Residuals)) <= tolerance) return new Closed(pass, LoopBalances.Norm(pass.Residuals), round, jacobian, outer, throttle);
            if (norm < bestNorm) (best, bestNorm, damping) = (pass, norm, Math.Min(1, 1.6 * damping));
            else if (norm > 2 * bestNorm && best is not null)
            {
                // too far: back to the best with a shorter step; what was learnt stays
                damping *= 0.4;
                if (damping < 0.02) break;
                pass = best;
                r = best.Residuals[first..];
            }
            if (free == 0) continue;
            double[] next = outer.Step(r, damping, MostLnFraction);
            var moved = new double[pass.State.Count];
            next.CopyTo(moved, first);
            (step, before, state) = (next, r, pass.State.Moved(moved, 1));
        }
        var last = best ?? pass!;
        int worst = LoopBalances.Worst(last.Residuals);
        throw new SolveException(new SolveReport(SolveStatus.NotConverged, MostRounds, LoopBalances.Norm(last.Residuals), FormattableString.Invariant(
            $"the loop does not close with the load at {loadK:0.#} K: the balance of {LoopBalances.Name(worst)} is left {Math.Abs(last.Residuals[worst]):0.0e+0} open at {last.AftercooledPa / 1e5:0.##} and {last.State.SuctionPa / 1e5:0.##} bar absolute, {last.Flow:0.####} mol/s")));
    }

    // the loop settled on the throttle's estimate, the throttle asked there, until they agree
    private (LoopPass, double[]) Confirmed(LoopState state, double loadK, LoopTables tables, LoopPass? near, ThrottleEstimate throttle, double[]? jacobian, double tolerance)
    {
        LoopPass pass;
        if (throttle.Known && near is not null && !ReferenceEquals(near.Tables, tables))
        {
            // another composition passes another flow: asked where the neighbour stood
            var (inlet, back) = LoopEvaluator.ThrottleQuestion(near);
            throttle.Ask(inlet with { Composition = tables.Z }, back);
        }
        for (int i = 0; ; i++)
        {
            (pass, jacobian) = _inner.Settle(state, loadK, tables, near?.Recuperator, throttle, jacobian, tolerance);
            var (inlet, back) = LoopEvaluator.ThrottleQuestion(pass);
            double off = throttle.Ask(inlet, back);
            if (target.ThrottleIsFree || Math.Abs(off) <= tolerance)
                return (pass with { ThrottleFlow = throttle.Flow(inlet.PressurePa, inlet.MolarEnthalpy, back), ThrottleChoked = throttle.Choked, ThrottleUncertainty = throttle.Uncertainty }, jacobian);
            if (i >= MostEstimates)
                throw new SolveException(new SolveReport(SolveStatus.NotConverged, i, off, FormattableString.Invariant(
                    $"throttle and loop did not come to one flow at a load of {loadK:0.#} K: {100 * (Math.Exp(off) - 1):0.####} % apart at {inlet.PressurePa / 1e5:0.##} bar absolute")));
            (state, near) = (pass.State, pass);
        }
    }

    // another composition has another enthalpy at the same temperature: what is carried over is the temperature
    private static LoopState Carried(LoopPass from, LoopState to, LoopTables tables)
    {
        double Held(Machine.Streams.StreamTable old, Machine.Streams.StreamTable now, double h, double pa)
        {
            double k = old.Temperature(h, pa, out _);
            return now.Enthalpy(Math.Clamp(k, now.ColdestK, now.WarmestK), pa);
        }

        double highOut = from.Recuperator.Hot.OutletPressurePa, suction = from.State.SuctionPa;
        double shift = Held(from.Tables.Low, tables.Low, from.State.SuctionEnthalpy, suction) - from.State.SuctionEnthalpy;
        double low = Held(from.Tables.Low, tables.Low, from.State.LowOutletEnthalpy, suction) - from.State.LowOutletEnthalpy;
        double throttle = Held(from.Tables.High, tables.High, from.State.ThrottleEnthalpy, highOut) - from.State.ThrottleEnthalpy;
        var dx = new double[to.Count];
        (dx[LoopState.Suction], dx[LoopState.LowOutlet], dx[LoopState.Throttle]) = (shift / LoopState.EnthalpyScale, low / LoopState.EnthalpyScale, throttle / LoopState.EnthalpyScale);
        return to.Moved(dx, 1);
    }

    /// <summary>A closed pass with tables whose isobars lie at its own pressures, for a tight answer.</summary>
    public Closed Centred(Closed near, double loadK)
    {
        var p = near.Pass;
        var frame = new TableFrame(p.Recuperator.Hot.OutletPressurePa / Near, p.AftercooledPa * Near, p.State.SuctionPa / Near, p.State.CoilPa * Near, Coldest(loadK), evaluator.Hardware.AftercooledK + 3);
        return near with { Pass = p with { Tables = evaluator.Tables.Make(p.Tables.Z, frame) } };
    }

    /// <summary>Tables for a state: those at hand where composition and frame still suit.</summary>
    private LoopTables Tables(LoopState s, double loadK, LoopPass? near)
    {
        double[] z = s.Z();
        double high = evaluator.RoughHighPa(s);
        if (near is not null)
        {
            var f = near.Tables.Frame;
            double drop = near.Recuperator.Hot.PressureDropPa;
            bool holds = f.Holds(high - drop, high, s.SuctionPa, s.CoilPa) && f.ColdestK <= Math.Max(60, loadK - 0.4 * DeltaColdestK);
            if (holds && z.AsSpan().SequenceEqual(near.Tables.Z)) return near.Tables;
            if (holds) return evaluator.Tables.Make(z, f);
        }
        return evaluator.Tables.Make(z, TableFrame.Around(high, s.SuctionPa, s.CoilPa, Coldest(loadK), evaluator.Hardware.AftercooledK + 3));
    }

    // a precooler may be far colder than a load that is still warm
    private double Coldest(double loadK)
    {
        double cold = Math.Max(60, loadK - Math.Max(DeltaColdestK, 0.12 * loadK));
        return evaluator.Hardware.Layout.Precooler is null ? cold : Math.Min(cold, PrecoolerColdestK);
    }

    private static bool Good(LoopPass p) => p.Tables.Frame.Holds(p.Recuperator.Hot.OutletPressurePa, p.AftercooledPa, p.State.SuctionPa, p.State.CoilPa);
}
