using Coldwright.Numerics.LinearAlgebra;

namespace Coldwright.Fluids.PhaseEquilibrium;

/// <summary>How a split ended.</summary>
internal enum SplitOutcome
{
    /// <summary>Equal fugacities, all fractions positive.</summary>
    Converged,
    /// <summary>A phase shrank to nothing or two became one; it was taken out and the rest must be solved again.</summary>
    PhaseLost,
    /// <summary>Iterations ran out, or a phase had no density root.</summary>
    Failed,
}

/// <summary>
/// Compositions and fractions of 2 to 4 phases of equal fugacity at T and p: successive substitution, then Newton in
/// the phase amounts with exact derivatives (Michelsen, Fluid Phase Equilib. 9 (1982) 21), each step carried over to the
/// logarithms of the equilibrium ratios so that traces keep their digits.
/// </summary>
internal sealed class PhaseSplit
{
    private const double Tolerance = 1e-11;

    private readonly FlashWorkspace _w;
    private readonly double[] _k, _matrix, _factor, _step, _scale, _beta, _change;
    private readonly PhaseBuffer[] _saved;

    /// <summary>Iterations of the last call.</summary>
    public int Iterations { get; private set; }
    /// <summary>Largest difference of ln f between phases at the end of the last call.</summary>
    public double Residual { get; private set; }

    public PhaseSplit(FlashWorkspace workspace)
    {
        _w = workspace;
        int n = workspace.Count, m = (FlashWorkspace.MaximumPhases - 1) * n;
        (_k, _step, _scale, _change) = (new double[m], new double[m], new double[m], new double[m + n]);
        (_matrix, _factor) = (new double[m * m], new double[m * m]);
        _saved = Enumerable.Range(0, FlashWorkspace.MaximumPhases).Select(_ => new PhaseBuffer(n)).ToArray();
        _beta = new double[FlashWorkspace.MaximumPhases - 1];
    }

    /// <summary>
    /// Solves from the phases given. <paramref name="depth"/>: tangent-plane distance of the phase just added;
    /// <paramref name="downhill"/>: the phases lie below the Gibbs energy of every smaller number of phases, so that
    /// two phases cannot become one.
    /// </summary>
    public SplitOutcome Solve(PhaseBuffer[] phases, ref int count, double depth, bool downhill)
    {
        // a shallow instability starts next to its solution, where successive substitution crawls
        int successive = depth > -1e-3 ? 1 : 4;
        int outside = 0, stalled = 0, patience = downhill ? 40 : 8;
        double best = double.PositiveInfinity;
        Iterations = 0;
        if (!Evaluate(phases, count)) return SplitOutcome.Failed;
        for (; Iterations < 300; Iterations++)
        {
            double error = FugacityDifference(phases, count);
            Residual = error;
            if (Merge(phases, ref count)) return SplitOutcome.PhaseLost;
            // equal fugacities alone are not enough: the amounts must come from this call's own material balance
            if (Iterations > 0 && (error < Tolerance || error < 1e-9 && stalled > 6))
            {
                if (AllPositive(phases, count)) return SplitOutcome.Converged;
                Remove(phases, ref count, Smallest(phases, count));
                Renormalise(phases, count);
                return SplitOutcome.PhaseLost;
            }
            if (error < 0.5 * best) (best, stalled) = (error, 0);
            else if (++stalled > 5 && successive <= 0) successive = 4;

            bool positive = AllPositive(phases, count), moved = false;
            if (successive <= 0 && positive) moved = Descend(phases, count);
            if (!moved)
            {
                successive--;
                Save(phases, count);
                bool distributed = Substitute(phases, count, ref outside);
                if (downhill && count == 2 && positive && !(distributed && AllPositive(phases, count)))
                {
                    // substitution overshoots out of the two-phase region that is known to exist
                    Restore(phases, count);
                    outside = 0;
                    if (!Descend(phases, count)) return SplitOutcome.Failed;
                    continue;
                }
                if (!distributed || outside > patience)
                {
                    Remove(phases, ref count, Smallest(phases, count));
                    Renormalise(phases, count);
                    return SplitOutcome.PhaseLost;
                }
                if (!Evaluate(phases, count)) return SplitOutcome.Failed;
            }
        }
        return Residual < 1e-9 && AllPositive(phases, count) ? SplitOutcome.Converged : SplitOutcome.Failed;
    }

    private bool Evaluate(PhaseBuffer[] phases, int count)
    {
        for (int j = 0; j < count; j++) if (!_w.Evaluate(phases[j], phases[j].Branch)) return false;
        return true;
    }

    private bool Substitute(PhaseBuffer[] phases, int count, ref int outside)
    {
        int n = _w.Count;
        Swap(phases, 0, Largest(phases, count));
        for (int j = 1; j < count; j++)
            for (int i = 0; i < n; i++)
                _k[(j - 1) * n + i] = Math.Exp(phases[0].LnPhi[i] - phases[j].LnPhi[i]);
        return Distribute(phases, count, ref outside);
    }

    // a Newton step shortened until the Gibbs energy falls; false when none does
    private bool Descend(PhaseBuffer[] phases, int count)
    {
        double before = Gibbs(phases, count), error = FugacityDifference(phases, count);
        // order and derivatives first: a step changes both
        for (int j = 0; j < count; j++)
        {
            _w.Evaluate(phases[j], phases[j].Branch);
            _w.Derivatives(phases[j]);
        }
        if (!NewtonDirection(phases, count)) return false;
        Save(phases, count);
        double length = 1;
        for (int attempt = 0; attempt < 7; attempt++, length *= 0.3)
        {
            if (Advance(phases, count, length) && AllPositive(phases, count) && Evaluate(phases, count)
                && (Gibbs(phases, count) < before || FugacityDifference(phases, count) < 0.7 * error && error < 1e-4))
                return true;
            Restore(phases, count);
        }
        return false;
    }

    private static double Gibbs(PhaseBuffer[] phases, int count)
    {
        double g = 0;
        for (int j = 0; j < count; j++)
            for (int i = 0; i < phases[j].X.Length; i++)
                if (phases[j].X[i] > 0) g += phases[j].Fraction * phases[j].X[i] * (Math.Log(phases[j].X[i]) + phases[j].LnPhi[i]);
        return g;
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
                    phases[a].Fraction += phases[b].Fraction;
                    Remove(phases, ref count, b);
                    return true;
                }
        return false;
    }

    private static bool AllPositive(PhaseBuffer[] phases, int count)
    {
        for (int j = 0; j < count; j++) if (!(phases[j].Fraction > 0)) return false;
        return true;
    }

    private static int Largest(PhaseBuffer[] phases, int count)
    {
        int r = 0;
        for (int j = 1; j < count; j++) if (phases[j].Fraction > phases[r].Fraction) r = j;
        return r;
    }

    private static int Smallest(PhaseBuffer[] phases, int count)
    {
        int r = 0;
        for (int j = 1; j < count; j++) if (phases[j].Fraction < phases[r].Fraction) r = j;
        return r;
    }

    private static void Swap(PhaseBuffer[] phases, int a, int b) => (phases[a], phases[b]) = (phases[b], phases[a]);

    private static void Remove(PhaseBuffer[] phases, ref int count, int which)
    {
        for (int j = which; j < count - 1; j++) Swap(phases, j, j + 1);
        count--;
    }

    private void Renormalise(PhaseBuffer[] phases, int count)
    {
        if (count == 1)
        {
            phases[0].Fraction = 1;
            _w.Z.CopyTo(phases[0].X, 0);
            return;
        }
        double sum = 0;
        for (int j = 0; j < count; j++) sum += Math.Max(phases[j].Fraction, 1e-6);
        for (int j = 0; j < count; j++) phases[j].Fraction = Math.Max(phases[j].Fraction, 1e-6) / sum;
    }

    private double FugacityDifference(PhaseBuffer[] phases, int count)
    {
        double error = 0;
        for (int i = 0; i < _w.Count; i++)
        {
            if (_w.Z[i] == 0) continue;
            double reference = Math.Log(phases[0].X[i]) + phases[0].LnPhi[i];
            for (int j = 1; j < count; j++)
                error = Math.Max(error, Math.Abs(Math.Log(phases[j].X[i]) + phases[j].LnPhi[i] - reference));
        }
        return double.IsNaN(error) ? double.PositiveInfinity : error;
    }

    // phase fractions for the ratios in _k (to phase 0), then compositions
    private bool Distribute(PhaseBuffer[] phases, int count, ref int outside)
    {
        int n = _w.Count;
        for (int j = 1; j < count; j++) _beta[j - 1] = phases[j].Fraction;
        if (count == 2)
        {
            if (!RachfordRice.TrySolve(_w.Z, _k.AsSpan(0, n), ref _beta[0])) return false;
        }
        else if (!RachfordRice.TrySolve(_w.Z, _k.AsSpan(0, (count - 1) * n), _beta.AsSpan(0, count - 1))) return false;
        double first = 1;
        bool inside = true;
        for (int j = 1; j < count; j++)
        {
            phases[j].Fraction = _beta[j - 1];
            first -= _beta[j - 1];
            inside &= _beta[j - 1] > 0;
        }
        phases[0].Fraction = first;
        inside &= first > 0;
        outside = inside ? 0 : outside + 1;
        for (int i = 0; i < n; i++)
        {
            double e = first;
            for (int j = 1; j < count; j++) e += _beta[j - 1] * _k[(j - 1) * n + i];
            double x = _w.Z[i] / e;
            phases[0].X[i] = x;
            for (int j = 1; j < count; j++) phases[j].X[i] = x * _k[(j - 1) * n + i];
        }
        for (int j = 0; j < count; j++)
        {
            double sum = 0;
            for (int i = 0; i < n; i++) sum += phases[j].X[i];
            if (!(sum > 0) || !double.IsFinite(sum)) return false;
            for (int i = 0; i < n; i++) phases[j].X[i] /= sum;
        }
        return true;
    }

    // the direction in scaled amounts of all phases but the reference (put first)
    private bool NewtonDirection(PhaseBuffer[] phases, int count)
    {
        int n = _w.Count, m = (count - 1) * n;
        // the reference phase is the one in which no component is a trace, so that no digits are lost in its 1/n_i
        int reference = 0;
        double widest = -1;
        for (int j = 0; j < count; j++)
        {
            double least = double.PositiveInfinity;
            for (int i = 0; i < n; i++) if (_w.Z[i] > 0) least = Math.Min(least, phases[j].Fraction * phases[j].X[i] / _w.Z[i]);
            if (least > widest) (widest, reference) = (least, j);
        }
        Swap(phases, 0, reference);
        var r = phases[0];
        for (int j = 1; j < count; j++)
            for (int i = 0; i < n; i++)
            {
                double a = phases[j].Fraction * phases[j].X[i], b = r.Fraction * r.X[i];
                _scale[(j - 1) * n + i] = a > 0 && b > 0 ? Math.Sqrt(a * (b / (a + b))) : 0;
                _step[(j - 1) * n + i] = a > 0 && b > 0
                    ? -(Math.Log(phases[j].X[i]) + phases[j].LnPhi[i] - Math.Log(r.X[i]) - r.LnPhi[i]) * _scale[(j - 1) * n + i]
                    : 0;
            }
        for (int j = 1; j < count; j++)
            for (int l = 1; l <= j; l++)
                for (int i = 0; i < n; i++)
                    for (int k = 0; k < n; k++)
                    {
                        int row = (j - 1) * n + i, column = (l - 1) * n + k;
                        if (column > row) continue;
                        double a = r.C[i * n + k] / r.Fraction;
                        if (j == l) a += phases[j].C[i * n + k] / phases[j].Fraction;
                        a *= _scale[row] * _scale[column];
                        if (i == k)
                        {
                            double nr = r.Fraction * r.X[i];
                            if (_scale[row] == 0) a = row == column ? 1 : 0;
                            else if (j == l) a += 1;                       // (1/n_ij + 1/n_ir) scale^2
                            else a += _scale[row] * _scale[column] / nr;
                        }
                        _matrix[row * m + column] = a;
                    }
        // far from the solution the Gibbs energy need not be convex: add to the diagonal until it is
        _matrix.AsSpan(0, m * m).CopyTo(_factor);
        double shift = 0;
        while (!Dense.TryCholesky(_factor, m, 1e-12))
        {
            shift = shift == 0 ? 0.02 : 4 * shift;
            if (shift > 1e6) return false;
            _matrix.AsSpan(0, m * m).CopyTo(_factor);
            for (int row = 0; row < m; row++) _factor[row * m + row] += shift;
        }
        Dense.SolveCholesky(_factor, _step, m);
        // no phase may lose more than nine tenths of itself in one step
        double keep = 1, given = 0;
        for (int j = 1; j < count; j++)
        {
            double total = 0;
            for (int i = 0; i < n; i++) total += _step[(j - 1) * n + i] * _scale[(j - 1) * n + i];
            if (total < 0) keep = Math.Min(keep, 0.9 * phases[j].Fraction / -total);
            given += total;
        }
        if (given > 0) keep = Math.Min(keep, 0.9 * r.Fraction / given);
        if (keep < 1) for (int i = 0; i < m; i++) _step[i] *= keep;
        return true;
    }

    // the step, carried over to the logarithms of the ratios so that traces keep their digits
    private bool Advance(PhaseBuffer[] phases, int count, double length)
    {
        int n = _w.Count;
        var r = phases[0];
        double referenceTotal = 0;
        for (int i = 0; i < n; i++)
        {
            double sum = 0;
            for (int j = 1; j < count; j++) sum -= _step[(j - 1) * n + i] * _scale[(j - 1) * n + i];
            _change[i] = sum;
            referenceTotal += sum;
        }
        for (int j = 1; j < count; j++)
        {
            double total = 0;
            for (int i = 0; i < n; i++) total += _step[(j - 1) * n + i] * _scale[(j - 1) * n + i];
            for (int i = 0; i < n; i++)
            {
                int row = (j - 1) * n + i;
                if (_scale[row] == 0) { _k[row] = r.X[i] > 0 ? phases[j].X[i] / r.X[i] : 1; continue; }
                double nj = phases[j].Fraction * phases[j].X[i], nr = r.Fraction * r.X[i];
                double d = length * (_step[row] * _scale[row] / nj - total / phases[j].Fraction - _change[i] / nr + referenceTotal / r.Fraction);
                _k[row] = phases[j].X[i] / r.X[i] * Math.Exp(Math.Clamp(d, -1.5, 1.5));
            }
        }
        int ignored = 0;
        return Distribute(phases, count, ref ignored);
    }
}
