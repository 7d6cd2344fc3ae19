using Coldwright.Numerics.LinearAlgebra;

namespace Coldwright.Fluids.PhaseEquilibrium;

/// <summary>
/// One step of a split: the Newton direction in the amounts, with exact derivatives (Michelsen, Fluid Phase Equilib. 9 (1982) 21), and the way from equilibrium ratios to fractions and compositions.
/// Steps are carried over to the logarithms of the ratios so that traces keep their digits.
/// </summary>
internal sealed class SplitStep
{
    // of the temperature, in one step
    private const double MostWarming = 0.05;

    private readonly FlashWorkspace _w;
    private readonly double[] _k, _matrix, _factor, _vectors, _direction, _descent, _step, _scale, _beta, _change, _total, _thermal, _exchange;
    // per unknown its phase and component; per component the phase that balances it
    private readonly int[] _phase, _component, _home;

    /// <summary>The phase that the last direction would have taken more than nine tenths of, so that the step was shortened; or null.</summary>
    public PhaseBuffer? Limiting { get; private set; }

    /// <summary>Change of the Gibbs energy per unit length along the last direction; negative.</summary>
    public double Slope { get; private set; }

    public SplitStep(FlashWorkspace workspace)
    {
        _w = workspace;
        int n = workspace.Count, most = FlashWorkspace.MaximumPhases, m = (most - 1) * n;
        (_k, _step, _scale, _direction, _descent) = (new double[m], new double[m], new double[m], new double[m], new double[m]);
        (_matrix, _factor, _vectors) = (new double[m * m], new double[m * m], new double[m * m]);
        (_thermal, _exchange) = (new double[m], new double[m]);
        (_change, _total, _beta) = (new double[most * n], new double[most], new double[most - 1]);
        (_phase, _component, _home) = (new int[m], new int[m], new int[n]);
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
    /// The direction in scaled amounts. Each component is balanced by the phase that holds most of it, so that what the
    /// others exchange with it is a small change of a large amount, however few of it they hold. The largest phase is put
    /// first. Every phase must carry its derivatives.
    /// </summary>
    public void Direction(PhaseBuffer[] phases, int count)
    {
        int m = Assemble(phases, count);
        _matrix.AsSpan(0, m * m).CopyTo(_factor);
        if (Dense.TryCholesky(_factor, m, 1e-12)) Dense.SolveCholesky(_factor, _step, m);
        else AbsoluteCurvature(m);
        Limit(phases, count, m);
    }

    /// <summary>
    /// As <see cref="Direction"/>, with temperature as one more unknown and enthalpy or entropy given. Every phase must carry its
    /// thermal derivatives. False where the Gibbs energy is not convex.
    /// </summary>
    /// <param name="phases">Phases.</param>
    /// <param name="count">Number of phases, 2 or more.</param>
    /// <param name="enthalpy">True: enthalpy is given; false: entropy.</param>
    /// <param name="missing">What is missing of it, over RT or R.</param>
    /// <param name="heatCapacity">Heat capacity at constant pressure and amounts over R.</param>
    /// <param name="warming">Change of temperature over temperature, shortened with the rest of the step.</param>
    public bool TryCaloricDirection(PhaseBuffer[] phases, int count, bool enthalpy, double missing, double heatCapacity, out double warming)
    {
        warming = 0;
        int m = Assemble(phases, count);
        _matrix.AsSpan(0, m * m).CopyTo(_factor);
        if (!Dense.TryCholesky(_factor, m, 1e-12)) return false;
        // ln f falls with ln T by the partial enthalpy: the amounts answer to both
        double direct = 0, byWarming = 0;
        for (int row = 0; row < m; row++)
        {
            int i = _component[row];
            _thermal[row] = (phases[_phase[row]].PartialEnthalpy[i] - phases[_home[i]].PartialEnthalpy[i]) * _scale[row];
            _exchange[row] = _thermal[row] + (enthalpy ? 0 : _descent[row]);
        }
        Dense.SolveCholesky(_factor, _step, m);
        Dense.SolveCholesky(_factor, _thermal, m);
        for (int row = 0; row < m; row++)
        {
            direct += _exchange[row] * _step[row];
            byWarming += _exchange[row] * _thermal[row];
        }
        warming = (missing - direct) / (heatCapacity + byWarming);
        if (!double.IsFinite(warming)) return false;
        double most = Math.Min(1, MostWarming / Math.Abs(warming));
        for (int row = 0; row < m; row++) _step[row] = most * (_step[row] + warming * _thermal[row]);
        warming *= most * Limit(phases, count, m);
        return true;
    }

    // unknowns, their descent and the curvature; returns how many there are
    private int Assemble(PhaseBuffer[] phases, int count)
    {
        int n = _w.Count, m = (count - 1) * n, largest = PhaseSums.Largest(phases.AsSpan(0, count));
        (phases[0], phases[largest]) = (phases[largest], phases[0]);
        int row = 0;
        for (int i = 0; i < n; i++)
        {
            int home = 0;
            for (int j = 1; j < count; j++) if (Amount(phases[j], i) > Amount(phases[home], i)) home = j;
            _home[i] = home;
            double b = Amount(phases[home], i), reference = b > 0 ? phases[home].LnX[i] + phases[home].LnPhi[i] : 0;
            for (int j = 0; j < count; j++)
            {
                if (j == home) continue;
                double a = Amount(phases[j], i);
                (_phase[row], _component[row]) = (j, i);
                _scale[row] = a > 0 && b > 0 ? Math.Sqrt(a * (b / (a + b))) : 0;
                _step[row] = a > 0 && b > 0 ? -(phases[j].LnX[i] + phases[j].LnPhi[i] - reference) * _scale[row] : 0;
                row++;
            }
        }
        for (row = 0; row < m; row++)
            for (int column = 0; column <= row; column++)
                _matrix[row * m + column] = _scale[row] == 0 || _scale[column] == 0 ? row == column ? 1 : 0 : Curvature(phases, row, column);
        _step.AsSpan(0, m).CopyTo(_descent);
        return m;
    }

    // no phase may lose more than nine tenths of itself in one step; returns the share of the step that is left
    private double Limit(PhaseBuffer[] phases, int count, int m)
    {
        int n = _w.Count;
        Changes(count, m);
        double keep = 1;
        Limiting = null;
        for (int j = 0; j < count; j++)
            if (_total[j] < 0 && 0.9 * phases[j].Fraction / -_total[j] < keep) (keep, Limiting) = (0.9 * phases[j].Fraction / -_total[j], phases[j]);
        Slope = 0;
        for (int i = 0; i < m; i++) Slope -= keep * _step[i] * _descent[i];
        for (int k = 0; k < count * n; k++) _change[k] *= keep;
        for (int j = 0; j < count; j++) _total[j] *= keep;
        return keep;
    }

    private static double Amount(PhaseBuffer phase, int i) => phase.Fraction * phase.X[i];

    // second derivative of the Gibbs energy with two scaled amounts; what a phase gains the component's home phase loses
    private double Curvature(PhaseBuffer[] phases, int row, int column)
    {
        int i = _component[row], k = _component[column], j = _phase[row], l = _phase[column], n = _w.Count, at = i * n + k;
        double sum = 0;
        if (j == l) sum += phases[j].C[at] / phases[j].Fraction;
        if (j == _home[k]) sum -= phases[j].C[at] / phases[j].Fraction;
        if (_home[i] == l) sum -= phases[l].C[at] / phases[l].Fraction;
        if (_home[i] == _home[k]) sum += phases[_home[i]].C[at] / phases[_home[i]].Fraction;
        sum *= _scale[row] * _scale[column];
        if (i != k) return sum;
        // (1/n_ij + 1/n_i,home) scale^2 = 1 on the diagonal
        return sum + (j == l ? 1 : _scale[row] * _scale[column] / Amount(phases[_home[i]], i));
    }

    // amounts gained by every phase, component by component, and in total
    private void Changes(int count, int m)
    {
        int n = _w.Count;
        Array.Clear(_change);
        Array.Clear(_total);
        for (int row = 0; row < m; row++)
        {
            int i = _component[row], j = _phase[row];
            double amount = _step[row] * _scale[row];
            _change[j * n + i] += amount;
            _change[_home[i] * n + i] -= amount;
            _total[j] += amount;
            _total[_home[i]] -= amount;
        }
    }

    // Far from the solution the Gibbs energy need not be convex: along directions of negative curvature the step takes the
    // curvature's absolute value, so that it still leads downhill and is as long as the curvature allows.
    private void AbsoluteCurvature(int m)
    {
        _matrix.AsSpan(0, m * m).CopyTo(_factor);
        SymmetricEigen.Solve(_factor, _vectors, m);
        Array.Clear(_direction);
        for (int k = 0; k < m; k++)
        {
            double along = 0;
            for (int i = 0; i < m; i++) along += _vectors[i * m + k] * _step[i];
            along /= Math.Max(Math.Abs(_factor[k * m + k]), 1e-9);
            for (int i = 0; i < m; i++) _direction[i] += along * _vectors[i * m + k];
        }
        _direction.AsSpan(0, m).CopyTo(_step);
    }

    /// <summary>
    /// Moves the phases by <paramref name="length"/> times the direction, through the logarithms of the ratios or, with
    /// <paramref name="amounts"/>, through the amounts themselves (more phases than components have no unique fractions
    /// for given ratios). False when no amounts fit it.
    /// </summary>
    public bool Advance(PhaseBuffer[] phases, int count, double length, bool amounts)
    {
        int n = _w.Count;
        if (amounts) return MoveAmounts(phases, count, length) > 0;
        var r = phases[0];
        for (int j = 1; j < count; j++)
            for (int i = 0; i < n; i++)
            {
                int row = (j - 1) * n + i;
                double nj = Amount(phases[j], i), nr = Amount(r, i);
                if (!(nj > 0 && nr > 0)) { _k[row] = r.X[i] > 0 ? phases[j].X[i] / r.X[i] : 1; continue; }
                double d = length * (_change[j * n + i] / nj - _total[j] / phases[j].Fraction - _change[i] / nr + _total[0] / r.Fraction);
                _k[row] = phases[j].X[i] / r.X[i] * Math.Exp(Math.Clamp(d, -1.5, 1.5));
            }
        return Distribute(phases, count);
    }

    /// <summary>Linear in the amounts, so that what one phase loses the others gain to the last digit; returns the length that could be gone, 0 for none.</summary>
    public double MoveAmounts(PhaseBuffer[] phases, int count, double length)
    {
        int n = _w.Count;
        // no amount may fall below a tenth of itself
        for (int j = 0; j < count; j++)
            for (int i = 0; i < n; i++)
                if (_change[j * n + i] < 0) length = Math.Min(length, 0.9 * Amount(phases[j], i) / -_change[j * n + i]);
        for (int j = 0; j < count; j++)
        {
            double sum = 0;
            for (int i = 0; i < n; i++)
            {
                phases[j].X[i] = Amount(phases[j], i) + length * _change[j * n + i];
                sum += phases[j].X[i];
            }
            if (!(sum > 0)) return 0;
            for (int i = 0; i < n; i++) phases[j].X[i] /= sum;
            phases[j].Fraction = sum;
        }
        return length;
    }
}
