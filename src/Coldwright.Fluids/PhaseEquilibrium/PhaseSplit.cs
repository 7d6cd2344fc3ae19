namespace Coldwright.Fluids.PhaseEquilibrium;

/// <summary>How a split ended.</summary>
internal enum SplitOutcome
{
    /// <summary>Equal fugacities, all fractions positive.</summary>
    Converged,
    /// <summary>A phase shrank to nothing or two became one; it was taken out and the rest must be solved again.</summary>
    PhaseLost,
    /// <summary>Nothing lowers the Gibbs energy any more, yet the fugacities differ; or a phase had no density root.</summary>
    Failed,
}

/// <summary>
/// Compositions and fractions of several phases of equal fugacity at T and p, found by going downhill in the Gibbs
/// energy: a few successive substitutions, then Newton steps shortened until the energy falls. A step that does not
/// lower it is taken back. A phase is given up only where pouring it into another one lowers the energy too, so that
/// rounds of adding and losing phases cannot run in a circle.
/// </summary>
internal sealed class PhaseSplit
{
    private const double Tolerance = 1e-11;

    private readonly FlashWorkspace _w;
    private readonly SplitStep _step;
    private readonly PhaseBuffer[] _saved;

    /// <summary>Iterations of the last call.</summary>
    public int Iterations { get; private set; }
    /// <summary>Largest difference of ln f between phases at the end of the last call.</summary>
    public double Residual { get; private set; }

    public PhaseSplit(FlashWorkspace workspace, SplitStep step)
    {
        (_w, _step) = (workspace, step);
        _saved = Enumerable.Range(0, FlashWorkspace.MaximumPhases).Select(_ => new PhaseBuffer(workspace.Count)).ToArray();
    }

    /// <summary>
    /// Solves from the phases given. <paramref name="depth"/>: tangent-plane distance of the phase just added;
    /// <paramref name="balanced"/>: the amounts add up to the overall composition already; otherwise one substitution
    /// makes them do so, and a phase that gets no amount by it is reported lost.
    /// </summary>
    public SplitOutcome Solve(PhaseBuffer[] phases, ref int count, double depth, bool balanced)
    {
        // a shallow instability starts next to its solution, where successive substitution crawls
        int successive = depth > -1e-3 ? 1 : 4, stalled = 0, shrinking = 0;
        double best = double.PositiveInfinity;
        (Iterations, Residual) = (0, double.PositiveInfinity);
        if (!Evaluate(phases, count)) return SplitOutcome.Failed;
        if (!balanced)
        {
            bool distributed = _step.Substitute(phases, count);
            if (!distributed || !PhaseSums.AllPositive(phases.AsSpan(0, count))) return SplitOutcome.PhaseLost;
            if (!Evaluate(phases, count)) return SplitOutcome.Failed;
        }
        if (count == _w.Count + 1)
        {
            Save(phases, count);
            int emptied = PhaseRule.Empty(phases.AsSpan(0, count));
            if (emptied >= 0)
            {
                Remove(phases, ref count, emptied);
                return SplitOutcome.PhaseLost;
            }
            Restore(phases, count);
        }
        for (; Iterations < 250; Iterations++)
        {
            var all = phases.AsSpan(0, count);
            double error = PhaseSums.FugacityDifference(all, _w.Z);
            Residual = error;
            if (Merge(phases, ref count)) return SplitOutcome.PhaseLost;
            if (error < Tolerance || error < 1e-9 && stalled > 6) return SplitOutcome.Converged;
            if (error < 0.5 * best) (best, stalled) = (error, 0);
            else if (++stalled > 12 && successive <= 0) (successive, stalled) = (3, 0);

            if (successive-- > 0 && Substitute(phases, count, error)) continue;
            bool descended = Descend(phases, count, error);
            // a phase that Newton's method wants to be rid of holds the others up: out with it when that lowers the
            // energy, or when it happens again and again and there is next to nothing left of it
            var small = phases[PhaseSums.Smallest(phases.AsSpan(0, count))];
            shrinking = _step.Limiting == small ? shrinking + 1 : 0;
            if (shrinking > 0 && small.Fraction < 1e-3)
            {
                bool anyway = small.Fraction < 1e-4 && (count > 2 || depth > -1e-5) && (shrinking >= 3 || !descended);
                if (GiveUp(phases, ref count, any: false, anyway)) return SplitOutcome.PhaseLost;
            }
            if (descended) continue;
            if (GiveUp(phases, ref count, any: true, anyway: false)) return SplitOutcome.PhaseLost;
            if (error < 1e-9) return SplitOutcome.Converged;
            // last resort: substitution on flat ground, where the error may rise for a while before it falls
            if (!Substitute(phases, count, error, 5)) return SplitOutcome.Failed;
        }
        return Residual < 1e-9 ? SplitOutcome.Converged : SplitOutcome.Failed;
    }

    private bool Evaluate(PhaseBuffer[] phases, int count)
    {
        for (int j = 0; j < count; j++) if (!_w.Evaluate(phases[j], phases[j].Branch)) return false;
        return true;
    }

    private double Gibbs(PhaseBuffer[] phases, int count) => PhaseSums.Gibbs(phases.AsSpan(0, count));

    // lower than before by at least as much as wanted; where the energy is flat to rounding, the fugacities tell
    private bool Better(PhaseBuffer[] phases, int count, double before, double error, double wanted, out double change, double gain = 0.9)
    {
        change = double.NaN;
        if (!PhaseSums.AllPositive(phases.AsSpan(0, count)) || !Evaluate(phases, count)) return false;
        change = Gibbs(phases, count) - before;
        double noise = PhaseSums.Rounding(phases.AsSpan(0, count)) + 2e-14 * (1 + Math.Abs(before));
        return change < -noise && change < wanted
            || Math.Abs(change) <= noise && PhaseSums.FugacityDifference(phases.AsSpan(0, count), _w.Z) < gain * error;
    }

    // a substitution, taken back when it leaves the region of positive amounts or raises the Gibbs energy
    private bool Substitute(PhaseBuffer[] phases, int count, double error, double gain = 0.9)
    {
        double before = Gibbs(phases, count);
        int largest = PhaseSums.Largest(phases.AsSpan(0, count));
        (phases[0], phases[largest]) = (phases[largest], phases[0]);
        Save(phases, count);
        if (_step.Substitute(phases, count) && Better(phases, count, before, error, 0, out _, gain)) return true;
        Restore(phases, count);
        return false;
    }

    // a Newton step shortened until the Gibbs energy falls; false when none does
    private bool Descend(PhaseBuffer[] phases, int count, double error)
    {
        double before = Gibbs(phases, count);
        // order and derivatives first: a step changes both
        for (int j = 0; j < count; j++)
        {
            _w.Resume(phases[j]);
            _w.Derivatives(phases[j]);
        }
        _step.Direction(phases, count);
        Save(phases, count);
        return Search(phases, count, before, error);
    }

    // along the direction, first through the ratios, then, where their phase fractions run away, through the amounts
    private bool Search(PhaseBuffer[] phases, int count, double before, double error)
    {
        double length = 1;
        for (int attempt = 0; attempt < 16; attempt++)
        {
            if (attempt == 5) length = 1;
            bool amounts = attempt >= 5 || count > _w.Count;
            double change = double.NaN, slope = _step.Slope * length;
            if (_step.Advance(phases, count, length, amounts) && Better(phases, count, before, error, 0.05 * slope, out change)) return true;
            Restore(phases, count);
            // the minimum of the parabola through value and slope here and the value there
            double shorter = slope / (2 * (slope - change));
            length *= shorter is > 0.02 and < 0.5 ? shorter : change > 0 ? 0.05 : 0.3;
        }
        return false;
    }

    // pours a phase (the smallest, or any) into the one that takes it best, if that lowers the Gibbs energy (or anyway)
    private bool GiveUp(PhaseBuffer[] phases, ref int count, bool any, bool anyway)
    {
        int smallest = PhaseSums.Smallest(phases.AsSpan(0, count)), which = -1, into = -1;
        double least = anyway ? double.PositiveInfinity : Gibbs(phases, count);
        Save(phases, count);
        for (int j = 0; j < count; j++)
            for (int k = 0; k < count; k++)
            {
                if (k == j || !any && j != smallest) continue;
                PhaseSums.Pour(phases[j], phases[k]);
                if (_w.Evaluate(phases[k], phases[k].Branch))
                {
                    double g = 0;
                    for (int l = 0; l < count; l++) if (l != j) g += phases[l].Fraction * PhaseSums.Gibbs(phases[l]);
                    if (g < least) (least, which, into) = (g, j, k);
                }
                phases[k].CopyFrom(_saved[k]);
            }
        if (into < 0) return false;
        PhaseSums.Pour(phases[which], phases[into]);
        Remove(phases, ref count, which);
        return true;
    }

    private void Save(PhaseBuffer[] phases, int count)
    {
        for (int j = 0; j < count; j++) _saved[j].CopyFrom(phases[j]);
    }

    private void Restore(PhaseBuffer[] phases, int count)
    {
        for (int j = 0; j < count; j++) phases[j].CopyFrom(_saved[j]);
    }

    private static bool Merge(PhaseBuffer[] phases, ref int count)
    {
        for (int a = 0; a < count; a++)
            for (int b = a + 1; b < count; b++)
                if (phases[a].Coincides(phases[b], 1e-12))
                {
                    PhaseSums.Pour(phases[b], phases[a]);
                    Remove(phases, ref count, b);
                    return true;
                }
        return false;
    }

    private static void Remove(PhaseBuffer[] phases, ref int count, int which)
    {
        for (int j = which; j < count - 1; j++) (phases[j], phases[j + 1]) = (phases[j + 1], phases[j]);
        count--;
    }
}
