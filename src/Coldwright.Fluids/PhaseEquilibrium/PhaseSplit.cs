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

    public PhaseSplit(FlashWorkspace workspace)
    {
        _w = workspace;
        _step = new SplitStep(workspace);
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
        int successive = depth > -1e-3 ? 1 : 4, stalled = 0;
        double best = double.PositiveInfinity, smallest = double.PositiveInfinity;
        (Iterations, Residual) = (0, double.PositiveInfinity);
        if (!Evaluate(phases, count)) return SplitOutcome.Failed;
        if (!balanced)
        {
            bool distributed = _step.Substitute(phases, count);
            if (!distributed || !PhaseSums.AllPositive(phases.AsSpan(0, count))) return SplitOutcome.PhaseLost;
            if (!Evaluate(phases, count)) return SplitOutcome.Failed;
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

            double least = all[PhaseSums.Smallest(all)].Fraction;
            if (least < 1e-3 && least < smallest && GiveUp(phases, ref count, any: false)) return SplitOutcome.PhaseLost;
            smallest = least;

            if (successive-- > 0 && Substitute(phases, count, error)) continue;
            if (Descend(phases, count, error)) continue;
            if (GiveUp(phases, ref count, any: true)) return SplitOutcome.PhaseLost;
            if (error < 1e-9) return SplitOutcome.Converged;
            if (!Substitute(phases, count, error)) return SplitOutcome.Failed;
        }
        return Residual < 1e-9 ? SplitOutcome.Converged : SplitOutcome.Failed;
    }

    private bool Evaluate(PhaseBuffer[] phases, int count)
    {
        for (int j = 0; j < count; j++) if (!_w.Evaluate(phases[j], phases[j].Branch)) return false;
        return true;
    }

    private double Gibbs(PhaseBuffer[] phases, int count) => PhaseSums.Gibbs(phases.AsSpan(0, count));

    // lower than before; where the energy is flat to rounding, the fugacities tell
    private bool Better(PhaseBuffer[] phases, int count, double before, double error)
    {
        if (!PhaseSums.AllPositive(phases.AsSpan(0, count)) || !Evaluate(phases, count)) return false;
        double change = Gibbs(phases, count) - before, noise = 3e-14 * (1 + Math.Abs(before));
        return change < -noise || change <= noise && PhaseSums.FugacityDifference(phases.AsSpan(0, count), _w.Z) < 0.9 * error;
    }

    // a substitution, taken back when it leaves the region of positive amounts or raises the Gibbs energy
    private bool Substitute(PhaseBuffer[] phases, int count, double error)
    {
        double before = Gibbs(phases, count);
        int largest = PhaseSums.Largest(phases.AsSpan(0, count));
        (phases[0], phases[largest]) = (phases[largest], phases[0]);
        Save(phases, count);
        if (_step.Substitute(phases, count) && Better(phases, count, before, error)) return true;
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
            _w.Evaluate(phases[j], phases[j].Branch);
            _w.Derivatives(phases[j]);
        }
        if (!_step.Direction(phases, count)) return false;
        Save(phases, count);
        double length = 1;
        for (int attempt = 0; attempt < 9; attempt++, length *= 0.3)
        {
            if (_step.Advance(phases, count, length) && Better(phases, count, before, error)) return true;
            Restore(phases, count);
        }
        return false;
    }

    // pours a phase (the smallest, or any) into the one that takes it best, if that lowers the Gibbs energy
    private bool GiveUp(PhaseBuffer[] phases, ref int count, bool any)
    {
        int smallest = PhaseSums.Smallest(phases.AsSpan(0, count)), which = -1, into = -1;
        double least = Gibbs(phases, count);
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
