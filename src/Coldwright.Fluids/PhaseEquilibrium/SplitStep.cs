using Coldwright.Numerics.LinearAlgebra;

namespace Coldwright.Fluids.PhaseEquilibrium;

/// <summary>
/// One step of a split: the Newton direction in the amounts of all phases but a reference phase, with exact derivatives
/// (Michelsen, Fluid Phase Equilib. 9 (1982) 21), and the way from equilibrium ratios to fractions and compositions.
/// Steps are carried over to the logarithms of the ratios so that traces keep their digits.
/// </summary>
internal sealed class SplitStep
{
    private readonly FlashWorkspace _w;
    private readonly double[] _k, _matrix, _factor, _step, _scale, _beta, _change;

    public SplitStep(FlashWorkspace workspace)
    {
        _w = workspace;
        int n = workspace.Count, m = (FlashWorkspace.MaximumPhases - 1) * n;
        (_k, _step, _scale, _change) = (new double[m], new double[m], new double[m], new double[m + n]);
        (_matrix, _factor) = (new double[m * m], new double[m * m]);
        _beta = new double[FlashWorkspace.MaximumPhases - 1];
    }

    /// <summary>
    /// Successive substitution: ratios from the fugacity coefficients (the phase listed first is the reference), then
    /// fractions (which may leave 0..1) and compositions. False when the ratios allow none.
    /// </summary>
    public bool Substitute(PhaseBuffer[] phases, int count)
    {
        int n = _w.Count;
        for (int j = 1; j < count; j++)
            for (int i = 0; i < n; i++)
                _k[(j - 1) * n + i] = Math.Exp(phases[0].LnPhi[i] - phases[j].LnPhi[i]);
        return Distribute(phases, count);
    }

    // phase fractions for the ratios in _k (to phase 0), then compositions
    private bool Distribute(PhaseBuffer[] phases, int count)
    {
        int n = _w.Count;
        for (int j = 1; j < count; j++) _beta[j - 1] = phases[j].Fraction;
        if (count == 2)
        {
            if (!RachfordRice.TrySolve(_w.Z, _k.AsSpan(0, n), ref _beta[0])) return false;
        }
        else if (!RachfordRice.TrySolve(_w.Z, _k.AsSpan(0, (count - 1) * n), _beta.AsSpan(0, count - 1))) return false;
        double first = 1;
        for (int j = 1; j < count; j++)
        {
            phases[j].Fraction = _beta[j - 1];
            first -= _beta[j - 1];
        }
        phases[0].Fraction = first;
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

    /// <summary>
    /// The direction in scaled amounts; the reference phase is put first. Every phase must carry its derivatives. False
    /// when the matrix cannot be made positive definite.
    /// </summary>
    public bool Direction(PhaseBuffer[] phases, int count)
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
        (phases[0], phases[reference]) = (phases[reference], phases[0]);
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

    /// <summary>Moves the phases by <paramref name="length"/> times the direction; false when no amounts fit it.</summary>
    public bool Advance(PhaseBuffer[] phases, int count, double length)
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
        if (count <= n && Distribute(phases, count)) return true;
        // more phases than components have no unique fractions for given ratios: move the amounts themselves
        return MoveAmounts(phases, count, length);
    }

    private bool MoveAmounts(PhaseBuffer[] phases, int count, double length)
    {
        int n = _w.Count;
        var r = phases[0];
        for (int i = 0; i < n; i++)
        {
            double left = _w.Z[i];
            for (int j = 1; j < count; j++)
            {
                double amount = phases[j].Fraction * phases[j].X[i];
                if (amount > 0) amount *= Math.Exp(Math.Clamp(length * _step[(j - 1) * n + i] * _scale[(j - 1) * n + i] / amount, -1.5, 1.5));
                phases[j].X[i] = amount;
                left -= amount;
            }
            if (left < 0 || left == 0 && _w.Z[i] > 0) return false;
            r.X[i] = left;
        }
        for (int j = 0; j < count; j++)
        {
            double sum = 0;
            for (int i = 0; i < n; i++) sum += phases[j].X[i];
            if (!(sum > 0)) return false;
            for (int i = 0; i < n; i++) phases[j].X[i] /= sum;
            phases[j].Fraction = sum;
        }
        return true;
    }
}
