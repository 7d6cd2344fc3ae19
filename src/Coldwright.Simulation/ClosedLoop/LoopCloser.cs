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
    // relative, of the throttle's own march
    private const double Resolution = 3e-4, MostThrottleOff = 2e-3, MostPassing = 0.02;
    private const double Rounding = 9e-9, FractionStep = 2e-3;
    private const int Patience = 6, MostFrames = 12;
    private const int MostRounds = 24, MostEstimates = 12;
    // largest change of ln of a fraction in one round
    private const double MostLnFraction = 0.4;
    private const double DeltaColdestK = 14, PrecoolerColdestK = 185;
    // isobars of a tight answer lie this little beyond its pressures
    private const double Near = 1.06, SameLoadK = 1, OffCentre = 0.1;

    // of ln of a fraction: on the way tables may err by its square
    private const double SlopesReach = 0.1;

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
    public sealed record Closed(LoopPass Pass, double Residual, int Rounds, double[]? Inner, BroydenMatrix Outer, ThrottleEstimate Throttle)
    {
        /// <summary>Jacobian of all balances, and of the cooling left over, where it was closed at once; null: it was not.</summary>
        public double[]? Whole { get; init; }
        /// <summary>True where it was closed tightly, on tables at its own pressures.</summary>
        public bool Tight { get; init; }
    }

    /// <summary>Closes from a guess.</summary>
    /// <param name="guess">State to start from.</param>
    /// <param name="loadK">K.</param>
    /// <param name="tolerance">Largest scaled balance left.</param>
    /// <param name="near">A closed neighbour; null: none.</param>
    /// <param name="like">The same load closed with another fluid model: its Jacobians are good enough to begin with.</param>
    /// <exception cref="SolveException">It does not close; the report says which balance is worst.</exception>
    public Closed Close(LoopState guess, double loadK, double tolerance, Closed? near, Closed? like = null)
    {
        int first = LoopState.FirstFraction, free = guess.Count - first;
        var outer = (like ?? near)?.Outer.Copy() ?? BroydenMatrix.Identity(free);
        var throttle = near?.Throttle.Copy() ?? like?.Throttle.Alike(evaluator.ThrottleFlow) ?? new ThrottleEstimate(evaluator.ThrottleFlow);
        // copies: they are corrected in place, and others start from the same
        double[]? jacobian = (like ?? near)?.Inner is { } inner ? [.. inner] : null;
        var state = guess;
        LoopPass? pass = near?.Pass, best = null;
        double bestNorm = double.PositiveInfinity, damping = 1, marked = 1;
        double[] step = [], before = [];
        int reframed = 0;
        bool moving = false;
        for (int round = 1; round <= MostRounds; round++)
        {
            var tables = Tables(state, loadK, pass, tolerance >= evaluator.Accuracy.Rough, moving);
            if (pass is not null && !ReferenceEquals(pass.Tables, tables)) state = Carried(pass, state, tables);
            // inside no tighter than the round deserves, at the end as tight as asked
            double inside = round == 1 || bestNorm > 30 * tolerance ? Math.Max(tolerance, Math.Min(1e-4, 0.02 * bestNorm)) : 0.3 * tolerance;
            try
            {
                (pass, jacobian) = Confirmed(state, loadK, tables, pass, throttle, jacobian, inside, Math.Max(inside, 0.5 * Math.Min(tolerance, MostThrottleOff)), tolerance);
            }
            catch (LeftTablesException e) when (reframed++ < MostFrames)
            {
                // tables around where it was heading, and on
                (pass, jacobian, state) = (e.Last, null, e.Last.State);
                moving = true;
                continue;
            }
            catch (LeftTablesException e)
            {
                throw new SolveException(new SolveReport(SolveStatus.NotConverged, round, LoopBalances.Norm(e.Last.Residuals), FormattableString.Invariant(
                    $"pressures run away with the load at {loadK:0.#} K: {OpenBalance.Of(e.Last, evaluator.Hardware)}; {e.Message}")));
            }
            moving = false;
            if (!IsHeld(pass))
            {
                state = pass.State;
                continue;
            }
            double[] r = pass.Residuals[first..];
            double norm = LoopBalances.Norm(r), whole = LoopBalances.Norm(pass.Residuals);
            if (step.Length > 0) outer.Correct(step, before, r);
            // the flashes' own rounding lets it come no nearer than some parts in a thousand million
            if (whole <= tolerance || (whole <= Rounding && round >= Patience)) return new Closed(pass, whole, round, jacobian, outer, throttle);
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
            // a tight answer begins with a Jacobian of its own; corrections alone may also have lost their way
            if (round == 1 && tolerance < Resolution || round % Patience == 0 && bestNorm > 0.03 * marked)
            {
                pass = best ?? pass;
                r = pass.Residuals[first..];
                if (Differenced(pass, throttle, jacobian, Math.Max(1e-8, 0.01 * Math.Min(tolerance, 1e-4))) is not { } exact) continue;
                (pass, outer) = exact;
                damping = 1;
            }
            if (round % Patience == 0) marked = bestNorm;
            double[] next = outer.Step(r, damping, MostLnFraction);
            var moved = new double[pass.State.Count];
            next.CopyTo(moved, first);
            (step, before, state) = (next, r, pass.State.Moved(moved, 1));
        }
        var last = best ?? pass!;
        // as near as the flashes' own rounding lets it come
        if (LoopBalances.Norm(last.Residuals) <= Rounding) return new Closed(last, LoopBalances.Norm(last.Residuals), MostRounds, jacobian, outer, throttle);
        throw new SolveException(new SolveReport(SolveStatus.NotConverged, MostRounds, LoopBalances.Norm(last.Residuals), FormattableString.Invariant(
            $"the loop does not close with the load at {loadK:0.#} K: {OpenBalance.Of(last, evaluator.Hardware)}")));
    }

    // amounts by composition, differenced: each column is a loop settled at a neighbouring composition; null where the tables have no slopes or do not reach as far
    private (LoopPass At, BroydenMatrix Outer)? Differenced(LoopPass at, ThrottleEstimate throttle, double[]? jacobian, double tolerance)
    {
        if (evaluator.Tables.WithSlopes(at.Tables) is not { } middle) return null;
        at = at with { Tables = middle };
        int first = LoopState.FirstFraction, n = at.State.Count - first;
        var j = new double[n * n];
        for (int c = 0; c < n; c++)
        {
            var dx = new double[at.State.Count];
            dx[first + c] = FractionStep;
            var state = at.State.Moved(dx, 1);
            if (evaluator.Tables.Along(middle, state.Z()) is not { } tables) return null;
            LoopPass pass;
            try
            {
                (pass, _) = _inner.Settle(Carried(at, state, tables), at.LoadK, tables, at.Recuperator, throttle, jacobian, tolerance);
            }
            catch (LeftTablesException)
            {
                return null;
            }
            for (int r = 0; r < n; r++) j[r * n + c] = (pass.Residuals[first + r] - at.Residuals[first + r]) / FractionStep;
        }
        return (at, new BroydenMatrix(n, j));
    }

    // the loop settled on the throttle's estimate, the throttle asked there, until they agree
    private (LoopPass, double[]) Confirmed(LoopState state, double loadK, LoopTables tables, LoopPass? near, ThrottleEstimate throttle, double[]? jacobian, double tolerance, double enough, double closing)
    {
        LoopPass pass;
        // The throttle's march errs by some parts in ten thousand and jumps by as much where its grid changes: closer than that it is held, or
        // nothing would ever settle.
        bool held = tolerance < Resolution;
        if (throttle.Known && near is not null && !held && !ReferenceEquals(near.Tables, tables))
        {
            // another composition passes another flow: asked where the neighbour stood
            var (inlet, back) = LoopEvaluator.ThrottleQuestion(near);
            throttle.Ask(inlet with { Composition = tables.Z }, back, rough: true);
        }
        for (int i = 0; ; i++)
        {
            (pass, jacobian) = _inner.Settle(state, loadK, tables, near?.Recuperator, throttle, jacobian, tolerance);
            var (inlet, back) = LoopEvaluator.ThrottleQuestion(pass);
            double off = held ? throttle.Check(inlet, back) : throttle.Ask(inlet, back, rough: true), amounts = LoopBalances.Norm(pass.Residuals.AsSpan(LoopState.FirstFraction));
            // another composition follows: until then the throttle need not be closer
            if (!held && amounts > closing) enough = Math.Max(enough, Math.Min(MostPassing, 0.1 * amounts));
            if (held && !target.ThrottleIsFree && Math.Abs(off) > Resolution) throttle.Ask(inlet, back);
            if (target.ThrottleIsFree || Math.Abs(off) <= Math.Max(enough, Resolution))
                return (pass with { ThrottleFlow = throttle.Flow(inlet, back), ThrottleChoked = throttle.Choked, ThrottleUncertainty = throttle.Uncertainty, ThrottleOff = held ? off : 0 }, jacobian);
            if (i >= MostEstimates)
                throw new SolveException(new SolveReport(SolveStatus.NotConverged, i, off, FormattableString.Invariant(
                    $"throttle and loop did not come to one flow at a load of {loadK:0.#} K: {100 * (Math.Exp(off) - 1):0.####} % apart at {inlet.PressurePa / 1e5:0.##} bar absolute")));
            (state, near) = (pass.State, pass);
        }
    }

    // another composition has another enthalpy at the same temperature: what is carried over is the temperature
    public static LoopState Carried(LoopPass from, LoopState to, LoopTables tables)
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

    /// <summary>Closed tightly at a load, on tables whose isobars lie at its own pressures; null where these have no slopes.</summary>
    /// <param name="near">Closed nearby; where that was done tightly its tables and Jacobian serve again.</param>
    /// <param name="loadK">K; not a number: the load at which no cooling is left.</param>
    /// <param name="tolerance">Largest scaled balance left.</param>
    /// <param name="beyond">Closed on the other side of what is sought, which lies where nothing is left on the straight line between the two; null: near itself is the start.</param>
    /// <param name="like">The same closed with another fluid model: its Jacobian is good enough to begin with.</param>
    /// <exception cref="SolveException">It does not close.</exception>
    public Closed? Finish(Closed near, double loadK, double tolerance, Closed? beyond = null, Closed? like = null)
    {
        bool free = double.IsNaN(loadK), again = near.Tight && (free || Math.Abs(loadK - near.Pass.LoadK) < SameLoadK);
        var throttle = near.Throttle.Copy();
        var p = beyond is null ? near.Pass : Between(near.Pass, beyond.Pass, throttle);
        var jacobian = again ? near.Whole : like?.Whole ?? near.Whole;
        var start = again ? p with { LoadK = free ? p.LoadK : loadK } : WithSlopes(p, free ? p.LoadK : loadK);
        return start is null ? null : With(near, new LoopFinisher(this).Close(start, throttle, free, tolerance, jacobian), throttle);
    }

    private static Closed With(Closed near, LoopFinisher.Finished found, ThrottleEstimate throttle) =>
        near with { Throttle = throttle, Pass = found.Pass, Residual = found.Residual, Rounds = found.Steps, Whole = found.Jacobian, Tight = true };

    /// <summary>A closed pass with tables whose isobars lie at its own pressures.</summary>
    public Closed Centred(Closed near, double loadK) => near with { Pass = near.Pass with { Tables = AtItsPressures(near.Pass, loadK) } };

    /// <summary>True while the isobars of a pass's tables lie at its own pressures, or nearly.</summary>
    public static bool IsCentred(LoopPass p) => p.Tables.Frame.Holds(p.Recuperator.Hot.OutletPressurePa, p.AftercooledPa, p.State.SuctionPa, p.State.CoilPa, OffCentre);

    private LoopTables AtItsPressures(LoopPass p, double loadK) => evaluator.Tables.Make(p.Tables.Z,
        new TableFrame(p.Recuperator.Hot.OutletPressurePa / Near, p.AftercooledPa * Near, p.State.SuctionPa / Near, p.State.CoilPa * Near, Coldest(loadK), evaluator.Hardware.AftercooledK + 3));

    // once round the loop where the line between two passes has no cooling left over
    private LoopPass Between(LoopPass a, LoopPass b, ThrottleEstimate throttle)
    {
        double share = a.NetCoolingW / (a.NetCoolingW - b.NetCoolingW), loadK = a.LoadK + share * (b.LoadK - a.LoadK);
        var dx = new double[a.State.Count];
        for (int i = 0; i < dx.Length; i++) dx[i] = b.State.X[i] - a.State.X[i];
        var state = a.State.Moved(dx, share);
        return evaluator.Run(state, loadK, Tables(state, loadK, null, rough: true), a.Recuperator, target, throttle);
    }

    /// <summary>A pass on tables with slopes whose isobars lie at its own pressures; null where these have no slopes. Its balances are those from before.</summary>
    public LoopPass? WithSlopes(LoopPass p, double loadK) =>
        evaluator.Tables.WithSlopes(AtItsPressures(p, loadK)) is { } middle ? p with { State = Carried(p, p.State, middle), Tables = middle, LoadK = loadK } : null;

    /// <summary>A state of another fluid model as a guess for this one: pressures, composition and temperatures carried over.</summary>
    public LoopState Translated(LoopPass other)
    {
        double highOut = other.Recuperator.Hot.OutletPressurePa, suction = other.State.SuctionPa;
        double[] x = [.. other.State.X], z = other.State.Z();
        x[LoopState.Suction] = evaluator.Enthalpy(other.Compressor.Suction.TemperatureK, suction, z) / LoopState.EnthalpyScale;
        x[LoopState.Throttle] = evaluator.Enthalpy(other.Recuperator.Hot.OutletK, highOut, z) / LoopState.EnthalpyScale;
        x[LoopState.LowOutlet] = evaluator.Enthalpy(other.Recuperator.Cold.OutletK, suction, z) / LoopState.EnthalpyScale;
        return new LoopState(x);
    }

    /// <summary>Tables for a state: those at hand where composition and frame still suit.</summary>
    private LoopTables Tables(LoopState s, double loadK, LoopPass? near, bool rough, bool moving = false)
    {
        double[] z = s.Z();
        double high = near?.Tables.Buffer is { } buffer ? buffer.At(s.X[LoopState.High], s.SuctionPa).HighPa : evaluator.RoughHighPa(s);
        if (near is not null && !moving)
        {
            var f = near.Tables.Frame;
            double drop = near.Recuperator.Hot.PressureDropPa;
            bool holds = f.Holds(high - drop, high, s.SuctionPa, s.CoilPa) && f.ColdestK <= Math.Max(60, loadK - 0.4 * DeltaColdestK);
            if (holds && z.AsSpan().SequenceEqual(near.Tables.Z)) return near.Tables;
            if (holds) return near.Tables.FromFamily(z) < SlopesReach && evaluator.Tables.Along(near.Tables, z) is { } along ? along : evaluator.Tables.Make(z, f, rough);
        }
        return evaluator.Tables.Make(z, Frame(s, high, loadK), rough);
    }

    private TableFrame Frame(LoopState s, double highPa, double loadK) => TableFrame.Around(highPa, s.SuctionPa, s.CoilPa, Coldest(loadK), evaluator.Hardware.AftercooledK + 3);

    // a precooler may be far colder than a load that is still warm
    private double Coldest(double loadK)
    {
        double cold = Math.Max(60, loadK - Math.Max(DeltaColdestK, 0.12 * loadK));
        return evaluator.Hardware.Layout.Precooler is null ? cold : Math.Min(cold, PrecoolerColdestK);
    }

    private static bool IsHeld(LoopPass p) => p.Tables.Frame.Holds(p.Recuperator.Hot.OutletPressurePa, p.AftercooledPa, p.State.SuctionPa, p.State.CoilPa);
}
