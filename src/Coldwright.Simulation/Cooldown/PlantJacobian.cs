using Coldwright.Machine.Recuperation;
using Coldwright.Numerics.Integration;
using P = Coldwright.Simulation.Cooldown.PlantParameters;

namespace Coldwright.Simulation.Cooldown;

/// <summary>
/// Jacobian of <see cref="PlantEquations"/> at the cost of a few evaluations: what a wall's temperature does to everything downstream is a chain of the march's own
/// slopes; the loop's few unknowns are differenced. Rows of the ledger repeat those of the heats, so that energy closes to rounding.
/// </summary>
internal sealed class PlantJacobian
{
    private const double LoopStep = 2e-5, EnthalpyStep = 2, LoadStepK = 0.02, FoamStepK = 1e-3;

    private readonly PlantEquations _f;
    private readonly double[] _base, _shifted, _state, _hot, _cold, _foam, _work, _moles, _held;

    public PlantJacobian(PlantEquations equations)
    {
        _f = equations;
        var l = equations.Plant.Layout;
        (_base, _shifted, _state) = (new double[l.Count], new double[l.Count], new double[l.Count]);
        (_moles, _held) = (new double[l.Ratios + 1], new double[l.Ratios + 1]);
        (_hot, _cold, _foam, _work) = (new double[l.Cells + 1], new double[l.Cells + 1], new double[l.Insulation + 1], new double[l.Insulation]);
    }

    /// <summary>Fills the matrix; refuses by leaving it not a number, which the integrator takes as a refusal.</summary>
    public void Fill(double time, ReadOnlySpan<double> y, ReadOnlySpan<double> p, JacobianMatrix j)
    {
        var l = _f.Plant.Layout;
        _f.NowS = time;
        if (!_f.Evaluate(y, p, _base, slopes: true))
        {
            j[0, 0] = double.NaN;
            return;
        }
        var at = _f.At;
        _f.SpeciesMoles.CopyTo(_held);
        if (_f.Running) Streams(at, y, p, j);
        Walls(at, y, p, j);
        if (_f.Running)
        {
            Loop(y, p, j);
            Relax(j);
        }
        Ledger(p, j);
    }

    // the loop's rows hold derivatives of its balances until here
    private void Relax(JacobianMatrix j)
    {
        var l = _f.Plant.Layout;
        int n = l.Balances;
        Span<double> block = stackalloc double[n * n];
        for (int r = 0; r < n; r++)
            for (int c = 0; c < n; c++) block[r * n + c] = j[l.High + r, l.High + c];
        Hold(block);
        _f.Relaxation.Take(block);
        for (int c = 0; c < l.Cooled; c++)
        {
            var column = block[..n];
            for (int r = 0; r < n; r++) column[r] = j[l.High + r, c];
            _f.Relaxation.Column(column);
            for (int r = 0; r < n; r++) j[l.High + r, c] = column[r];
        }
    }

    /// <summary>Takes the loop's Jacobian for its relaxation.</summary>
    public void Refresh(ReadOnlySpan<double> y, ReadOnlySpan<double> p)
    {
        int high = _f.Plant.Layout.High, n = _f.Plant.Layout.Balances;
        Span<double> block = stackalloc double[n * n];
        if (!_f.Evaluate(y, p, _base, slopes: false)) return;
        y.CopyTo(_state);
        for (int c = 0; c < n; c++)
        {
            if (Shifted(y, p, high + c) is not { } step) return;
            for (int r = 0; r < n; r++) block[r * n + c] = (_shifted[high + r] - _base[high + r]) / step;
        }
        Hold(block);
        _f.Relaxation.Take(block);
    }

    // a composition that is held has no balances, and must not make the others' matrix singular
    private void Hold(Span<double> block)
    {
        if (!_f.Loop.IsHeld) return;
        int n = _f.Plant.Layout.Balances;
        for (int i = n - _f.Plant.Layout.Ratios; i < n; i++) block[i * n + i] = 1;
    }

    private void Streams(PlantPoint at, ReadOnlySpan<double> y, ReadOnlySpan<double> p, JacobianMatrix j)
    {
        var (l, plant) = (_f.Plant.Layout, _f.Plant);
        double n = at.Flow;
        // throttle and coil by the enthalpy that arrives, coil by the load
        var high = _f.Streams.High;
        double shiftedK = high.Temperature(at.ThrottleEnthalpy + EnthalpyStep, at.ThrottlePa, out _);
        double lnFlowByH = (_f.LnThrottle(shiftedK, at.ThrottlePa, at.CoilPa, p) - _f.LnThrottle(at.ThrottleK, at.ThrottlePa, at.CoilPa, p)) / EnthalpyStep;
        double coilByH = (_f.Coil(at.ThrottleEnthalpy + EnthalpyStep, at.CoilPa, n, at.LoadK, p).Enthalpy - at.CoilOutEnthalpy) / EnthalpyStep;
        double coilByLoad = (_f.Coil(at.ThrottleEnthalpy, at.CoilPa, n, at.LoadK + LoadStepK, p).Enthalpy - at.CoilOutEnthalpy) / LoadStepK;
        for (int c = 0; c < l.Cells; c++)
        {
            double byHeat = 1 / plant.Metal.Capacity(_f.WallK[c]);
            Array.Clear(_hot);
            for (int i = c; i < l.Cells; i++) _hot[i + 1] = _f.Hot.ByInlet[i] * _hot[i] + (i == c ? _f.Hot.ByWall[i] * byHeat : 0);
            double throttled = _hot[l.Cells];
            Column(c, coilByH * throttled, c, _f.Cold.ByWall[c] * byHeat, n, at, p, j);
            j[l.LnFlow, c] += lnFlowByH * throttled;
            j[l.Load, c] += -n * (_cold[l.Cells] - throttled) / plant.CapacityOf(l.Load, p);
        }
        Array.Clear(_hot);
        Column(l.Load, coilByLoad / plant.Load.Capacity(at.LoadK), -1, 0, n, at, p, j);
        j[l.Load, l.Load] += -n * _cold[l.Cells] / plant.CapacityOf(l.Load, p);
    }

    // the low stream's chain from the coil on, and what a column does to heats, returning gas and charge
    private void Column(int column, double coilOut, int wall, double byWall, double n, PlantPoint at, ReadOnlySpan<double> p, JacobianMatrix j)
    {
        var (l, plant) = (_f.Plant.Layout, _f.Plant);
        Array.Clear(_moles);
        _cold[l.Cells] = coilOut;
        for (int i = l.Cells - 1; i >= 0; i--)
        {
            _cold[i] = _f.Cold.ByInlet[i] * _cold[i + 1] + (i == wall ? byWall : 0);
            double hot = n * (_hot[i + 1] - _hot[i]), cold = n * (_cold[i] - _cold[i + 1]);
            j[i, column] += -(hot + cold) / plant.CapacityOf(i, p);
            double above = 0.5 * (_hot[i] + _hot[i + 1]), below = 0.5 * (_cold[i] + _cold[i + 1]);
            for (int s = 0; s < _moles.Length; s++) _moles[s] += _f.Hot.SpeciesByEnthalpy[i * _moles.Length + s] * above + _f.Cold.SpeciesByEnthalpy[i * _moles.Length + s] * below;
        }
        j[l.Return, column] += _cold[0] / PlantLayout.EnthalpyScale;
        j[l.LnCoil, column] += -_moles.Sum() / _f.Charge.Mol(p);
        if (!_f.Loop.IsHeld)
            for (int s = 0; s < l.Ratios; s++) j[l.FirstRatio + s, column] += _moles[0] / _held[0] - _moles[s + 1] / _held[s + 1];
    }

    private void Walls(PlantPoint at, ReadOnlySpan<double> y, ReadOnlySpan<double> p, JacobianMatrix j)
    {
        var (l, plant) = (_f.Plant.Layout, _f.Plant);
        double cell = plant.CapacityOf(0, p);
        for (int i = 0; i < l.Cells; i++)
        {
            double byHeat = 1 / plant.Metal.Capacity(_f.WallK[i]);
            if (i > 0) Exchange(i, i - 1, _f.Axial(i));
            if (i + 1 < l.Cells) Exchange(i, i + 1, _f.Axial(i + 1));
            if (plant.Hardware.RecuperatorLeak is { } leak && (!_f.Running || plant.Hardware.Recuperator.LeakReceiver == LeakReceiver.Wall))
            {
                double g = p[P.Leak] * leak.ConductancePerLength * plant.Hardware.Recuperator.LengthM / l.Cells * byHeat;
                j[i, i] -= g / cell;
                j[l.Leaked, i] -= g / PlantLayout.LedgerJ;
            }

            void Exchange(int from, int to, double g)
            {
                j[from, from] -= g * byHeat / cell;
                j[to, from] += g * byHeat / cell;
            }
        }
        Foam(at, p, j);
        double load = plant.CapacityOf(l.Load, p), loadByHeat = 1 / plant.Load.Capacity(at.LoadK);
        foreach (var path in plant.Penetrations)
            if (!path.EndsWarm)
            {
                double g = p[P.Leak] * path.AreaOverLengthM * path.Material.Conductivity(at.LoadK).Value * loadByHeat;
                j[l.Load, l.Load] -= g / load;
                j[l.Leaked, l.Load] -= g / PlantLayout.LedgerJ;
            }
    }

    private void Foam(PlantPoint at, ReadOnlySpan<double> p, JacobianMatrix j)
    {
        var (l, plant) = (_f.Plant.Layout, _f.Plant);
        if (plant.Insulation is not { } foam) return;
        _f.FoamK.CopyTo(_work);
        for (int c = -1; c < l.Insulation; c++)
        {
            double inside = at.LoadK + (c < 0 ? FoamStepK : 0);
            if (c >= 0) _work[c] += FoamStepK;
            foam.Flows(inside, _work, p[P.Leak], _foam);
            if (c >= 0) _work[c] = _f.FoamK[c];
            int column = c < 0 ? l.Load : l.FirstInsulation + c;
            double byHeat = 1 / ((c < 0 ? plant.Load.Capacity(at.LoadK) : foam.Heat[c].Capacity(_f.FoamK[c])) * FoamStepK);
            for (int i = Math.Max(0, c); i <= Math.Min(l.Insulation, c + 1); i++)
            {
                double d = (_foam[i] - _f.FoamW[i]) * byHeat;
                if (i > 0) j[l.FirstInsulation + i - 1, column] += d / plant.CapacityOf(l.FirstInsulation + i - 1, p);
                if (i < l.Insulation) j[l.FirstInsulation + i, column] -= d / plant.CapacityOf(l.FirstInsulation + i, p);
                if (i == 0) j[l.Load, column] += d / plant.CapacityOf(l.Load, p);
                if (i == l.Insulation) j[l.Leaked, column] += d / PlantLayout.LedgerJ;
            }
        }
    }

    private void Loop(ReadOnlySpan<double> y, ReadOnlySpan<double> p, JacobianMatrix j)
    {
        var l = _f.Plant.Layout;
        y.CopyTo(_state);
        for (int c = l.High; c < l.High + l.LoopCount; c++)
        {
            if (Shifted(y, p, c) is not { } step) j[0, 0] = double.NaN;
            else for (int r = 0; r < l.Count; r++) j[r, c] = (_shifted[r] - _base[r]) / step;
        }
    }

    // one unknown moved; null where neither side has an answer
    private double? Shifted(ReadOnlySpan<double> y, ReadOnlySpan<double> p, int c)
    {
        double step = LoopStep * Math.Max(1, Math.Abs(y[c]));
        _state[c] = y[c] + step;
        bool ok = _f.Evaluate(_state, p, _shifted, slopes: false);
        if (!ok)
        {
            // at the edge of what a part can answer the other side may still be inside
            step = -step;
            _state[c] = y[c] + step;
            ok = _f.Evaluate(_state, p, _shifted, slopes: false);
        }
        _state[c] = y[c];
        return ok ? step : null;
    }

    // heats in their own unit sum to leak less cooling; electrical energy hangs on the loop alone
    private void Ledger(ReadOnlySpan<double> p, JacobianMatrix j)
    {
        var (l, plant) = (_f.Plant.Layout, _f.Plant);
        for (int c = 0; c < l.Cooled; c++)
        {
            double sum = 0;
            for (int r = 0; r < l.High; r++) sum += plant.CapacityOf(r, p) * j[r, c];
            j[l.Cooled, c] = j[l.Leaked, c] - sum / PlantLayout.LedgerJ;
        }
    }
}
