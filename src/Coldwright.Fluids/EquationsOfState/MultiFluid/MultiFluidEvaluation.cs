using System.Runtime.Intrinsics;
using Coldwright.Numerics;
using Coldwright.Numerics.Scalars;

namespace Coldwright.Fluids.EquationsOfState.MultiFluid;

/// <summary>
/// Hand-written derivatives of <see cref="MultiFluidModel"/>, tested against its generic text. On an isotherm the
/// terms of all fluids with the same density function collapse into one coefficient, so a density step costs a few
/// dozen multiplications whatever the number of components.
/// </summary>
internal sealed class MultiFluidEvaluation : PhaseEvaluation
{
    private readonly MultiFluidModel _model;
    private readonly TermTable _t;
    private readonly int _owners;
    private double _tr, _vr, _tau;
    // density of the last Gradient on this isotherm
    private double _gradientAt = double.NaN;

    // per term on the isotherm: coefficient c and tau dc/dtau
    private readonly double[] _c, _cq, _gc, _gcq;
    // owners whose equation is continued linearly in tau because the mixture's tau lies beyond its limit
    private readonly bool[] _continued;
    private readonly double[] _weight;
    private readonly CollapsedIsotherm _collapsed;
    // density functions at the last density: value, v = dlog/dlog(delta), delta dv/ddelta
    private readonly double[] _power, _groupE, _groupU, _b, _bv, _gb, _gv, _gdv;
    // per owner sums
    private readonly double[] _o, _od, _ot;
    private readonly double[] _t1, _v1, _t2, _v2, _p, _q, _dk, _dkd, _dkt;

    public MultiFluidEvaluation(MultiFluidModel model) : base(model.Count, model.GasConstant)
    {
        _model = model;
        _t = model.Table;
        int n = model.Count;
        _owners = model.Owners.Length;
        (_c, _cq) = (new double[_t.PowerN.Length], new double[_t.PowerN.Length]);
        (_gc, _gcq) = (new double[_t.GaussN.Length], new double[_t.GaussN.Length]);
        _continued = new bool[_owners];
        _weight = new double[_owners];
        _collapsed = new CollapsedIsotherm(_t);
        _power = new double[_t.HighestD + 1];
        (_groupE, _groupU) = (new double[_t.GroupL.Length], new double[_t.GroupL.Length]);
        (_b, _bv) = (new double[_t.BasisD.Length], new double[_t.BasisD.Length]);
        (_gb, _gv, _gdv) = (new double[_t.GaussD.Length], new double[_t.GaussD.Length], new double[_t.GaussD.Length]);
        (_o, _od, _ot) = (new double[_owners], new double[_owners], new double[_owners]);
        (_t1, _v1, _t2, _v2) = (new double[n], new double[n], new double[n * n], new double[n * n]);
        (_p, _q, _dk, _dkd, _dkt) = (new double[n], new double[n], new double[n], new double[n], new double[n]);
    }

    public override void SetIsotherm(double temperatureK, ReadOnlySpan<double> x)
    {
        Temperature = temperatureK;
        _gradientAt = double.NaN;
        x.CopyTo(X);
        _tr = _model.ReducingTemperature.Value(x);
        _vr = _model.ReducingVolume.Value(x);
        _tau = _tr / temperatureK;
        double logTau = Math.Log(_tau), limit = 0, critical = 0;
        for (int i = 0; i < Count; i++)
        {
            _weight[i] = x[i];
            limit += x[i] * _model.LimitVolume[i];
            critical += x[i] * _model.CriticalVolume[i];
        }
        DensityLimit = DensityRule.LimitFactor / limit;
        DividingDensity = 1 / critical;
        for (int d = 0; d < _model.Departures.Length; d++)
        {
            var (i, j, f) = _model.Departures[d];
            _weight[Count + d] = f * x[i] * x[j];
        }
        Coefficients(_tau, logTau, 0, _t.PowerN.Length, 0, _t.GaussN.Length);
        for (int o = 0; o < _owners; o++)
            if (_continued[o] = _tau > _model.TauLimit[o]) Continue(o, _model.TauLimit[o]);
        _collapsed.Clear();
        for (int o = 0; o < _owners; o++)
        {
            double w = _weight[o];
            if (w == 0) continue;
            for (int k = _t.PowerStart[o]; k < _t.PowerStart[o + 1]; k++) _collapsed.Power(_t.PowerD[k], _t.PowerGroup[k]) += w * _c[k];
            for (int k = _t.GaussStart[o]; k < _t.GaussStart[o + 1]; k++) _collapsed.Bell(_t.GaussBasis[k]) += w * _gc[k];
        }
    }

    // coefficients of a range of power and Gaussian terms at tau
    private void Coefficients(double tau, double logTau, int from, int to, int gaussFrom, int gaussTo)
    {
        int k = from;
        var factor = Vector256.Create(logTau);
        for (; k <= to - 4; k += 4)
        {
            var t = Vector256.LoadUnsafe(ref _t.PowerT[k]);
            var c = Vector256.LoadUnsafe(ref _t.PowerN[k]) * VectorExponential.Exp(t * factor);
            c.StoreUnsafe(ref _c[k]);
            (c * t).StoreUnsafe(ref _cq[k]);
        }
        for (; k < to; k++)
        {
            _c[k] = _t.PowerN[k] * Math.Exp(_t.PowerT[k] * logTau);
            _cq[k] = _c[k] * _t.PowerT[k];
        }
        foreach (int m in _t.TauExponential)
        {
            if (m < from || m >= to) continue;
            double tm = Math.Pow(tau, _t.PowerM[m]);
            _c[m] *= Math.Exp(-tm);
            _cq[m] = _c[m] * (_t.PowerT[m] - _t.PowerM[m] * tm);
        }
        for (k = gaussFrom; k < gaussTo; k++)
        {
            double dt = tau - _t.GaussGammaTau[k];
            _gc[k] = _t.GaussT[k] * logTau - _t.GaussBetaTau[k] * dt * dt;
        }
        for (k = gaussFrom; k <= gaussTo - 4; k += 4)
            (Vector256.LoadUnsafe(ref _t.GaussN[k]) * VectorExponential.Exp(Vector256.LoadUnsafe(ref _gc[k]))).StoreUnsafe(ref _gc[k]);
        for (; k < gaussTo; k++) _gc[k] = _t.GaussN[k] * Math.Exp(_gc[k]);
        for (k = gaussFrom; k < gaussTo; k++)
            _gcq[k] = _gc[k] * (_t.GaussT[k] - 2 * _t.GaussBetaTau[k] * tau * (tau - _t.GaussGammaTau[k]));
    }

    // value and slope at the limit, then a straight line: c(tau) = c* + (tau - tau*) c'*
    private void Continue(int owner, double limit)
    {
        int p0 = _t.PowerStart[owner], p1 = _t.PowerStart[owner + 1], g0 = _t.GaussStart[owner], g1 = _t.GaussStart[owner + 1];
        Coefficients(limit, Math.Log(limit), p0, p1, g0, g1);
        double ratio = _tau / limit;
        for (int k = p0; k < p1; k++)
        {
            _c[k] += (ratio - 1) * _cq[k];
            _cq[k] *= ratio;
        }
        for (int k = g0; k < g1; k++)
        {
            _gc[k] += (ratio - 1) * _gcq[k];
            _gcq[k] *= ratio;
        }
    }

    private void DensityFunctions(double delta)
    {
        _power[0] = 1;
        for (int d = 1; d < _power.Length; d++) _power[d] = _power[d - 1] * delta;
        _groupE[0] = 1;
        for (int g = 1; g < _groupE.Length; g++)
        {
            double gl = _t.GroupG[g] * _power[_t.GroupL[g]];
            _groupE[g] = Math.Exp(-gl);
            _groupU[g] = _t.GroupL[g] * gl;
        }
        for (int j = 0; j < _b.Length; j++)
        {
            int d = _t.BasisD[j], g = _t.BasisGroup[j];
            _b[j] = _power[d] * _groupE[g];
            _bv[j] = d - _groupU[g];
        }
        int count = _gb.Length;
        for (int j = 0; j < count; j++)
        {
            double e = delta - _t.GaussEpsilon[j];
            _gb[j] = -_t.GaussEta[j] * e * e - _t.GaussBetaDelta[j] * (delta - _t.GaussGammaDelta[j]);
        }
        int k = 0;
        for (; k <= count - 4; k += 4) VectorExponential.Exp(Vector256.LoadUnsafe(ref _gb[k])).StoreUnsafe(ref _gb[k]);
        for (; k < count; k++) _gb[k] = Math.Exp(_gb[k]);
        for (int j = 0; j < count; j++)
        {
            double eta2 = 2 * _t.GaussEta[j], bd = _t.GaussBetaDelta[j];
            _gb[j] *= _power[_t.GaussD[j]];
            _gv[j] = _t.GaussD[j] - delta * (eta2 * (delta - _t.GaussEpsilon[j]) + bd);
            _gdv[j] = -delta * (eta2 * (2 * delta - _t.GaussEpsilon[j]) + bd);
        }
    }

    private void CollapsedDensityDerivatives(double delta, out double first, out double second)
    {
        _collapsed.Evaluate(delta, out double s1, out double s2);
        foreach (var (owner, terms) in _t.NonAnalytic)
        {
            double w = _weight[owner];
            if (w == 0 || _continued[owner]) continue;
            for (int i = 0; i < terms.N.Length; i++)
            {
                var f = ResidualFormula.NonAnalytic(terms, i, new HyperDual(delta, delta, delta, 0), HyperDual.From(_tau));
                s1 += w * f.First;
                s2 += w * f.Mixed;
            }
        }
        (first, second) = (s1, s2);
    }

    public override double ReducedPressure(double density, out double slope)
    {
        CollapsedDensityDerivatives(density * _vr, out double a1, out double a2);
        slope = 1 + 2 * a1 + a2;
        return density * (1 + a1);
    }

    // per-owner value, delta and tau derivatives; totals of the first derivatives
    private void OwnerSums(double delta)
    {
        double total = 0, totalTau = 0, magnitude = 0;
        for (int o = 0; o < _owners; o++)
        {
            double a = 0, at = 0, ad = 0, absolute = 0;
            for (int k = _t.PowerStart[o]; k < _t.PowerStart[o + 1]; k++)
            {
                int j = _t.PowerBasis[k];
                double cb = _c[k] * _b[j];
                a += cb;
                absolute += Math.Abs(cb);
                at += _cq[k] * _b[j];
                ad += cb * _bv[j];
            }
            for (int k = _t.GaussStart[o]; k < _t.GaussStart[o + 1]; k++)
            {
                int j = _t.GaussBasis[k];
                double cb = _gc[k] * _gb[j];
                a += cb;
                at += _gcq[k] * _gb[j];
                ad += cb * _gv[j];
            }
            (_o[o], _ot[o], _od[o]) = (a, at, ad);
            magnitude += Math.Abs(_weight[o]) * absolute;
        }
        foreach (var (owner, terms) in _t.NonAnalytic)
            for (int i = 0; i < terms.N.Length && !_continued[owner]; i++)
            {
                var f = ResidualFormula.NonAnalytic(terms, i, new HyperDual(delta, delta, 0, 0), new HyperDual(_tau, 0, _tau, 0));
                _o[owner] += f.Value;
                _od[owner] += f.First;
                _ot[owner] += f.Second;
            }
        for (int o = 0; o < _owners; o++)
        {
            total += _weight[o] * _o[o];
            totalTau += _weight[o] * _ot[o];
        }
        A = total;
        AMagnitude = magnitude;
        ATemperature = -totalTau;
    }

    // D_k = sum_j x_j F_kj a_kj and its derivatives; returns S = sum x_i x_j F a_ij and the same for the derivatives
    private void DepartureSums(out double s, out double sd, out double st)
    {
        Array.Clear(_dk);
        Array.Clear(_dkd);
        Array.Clear(_dkt);
        s = sd = st = 0;
        for (int d = 0; d < _model.Departures.Length; d++)
        {
            var (i, j, f) = _model.Departures[d];
            double a = f * _o[Count + d], ad = f * _od[Count + d], at = f * _ot[Count + d];
            _dk[i] += X[j] * a; _dk[j] += X[i] * a;
            _dkd[i] += X[j] * ad; _dkd[j] += X[i] * ad;
            _dkt[i] += X[j] * at; _dkt[j] += X[i] * at;
            double xx = X[i] * X[j];
            s += xx * a; sd += xx * ad; st += xx * at;
        }
    }

    public override void Gradient(double density)
    {
        if (density == _gradientAt) return;
        _gradientAt = density;
        double delta = density * _vr;
        CollapsedDensityDerivatives(delta, out double a1, out double a2);
        (ADensity, ADensity2) = (a1, a2);
        DensityFunctions(delta);
        OwnerSums(delta);
        if (Count == 1) { G[0] = A + a1; return; }
        DepartureSums(out double s, out _, out _);
        _model.ReducingTemperature.Gradient(X, _t1);
        _model.ReducingVolume.Gradient(X, _v1);
        double tau1 = -ATemperature;
        for (int k = 0; k < Count; k++)
        {
            _v1[k] = (_v1[k] - _vr) / _vr;
            _t1[k] = (_t1[k] - 2 * _tr) / _tr;
            G[k] = _o[k] + _dk[k] - s + a1 * _v1[k] + tau1 * _t1[k];
        }
    }

    public override void Hessian(double density)
    {
        Gradient(density);
        MixedSecondDerivatives(density * _vr, out double adt, out double att);
        Hessian(adt, att);
    }

    public override void Thermal(double density)
    {
        Gradient(density);
        MixedSecondDerivatives(density * _vr, out double adt, out double att);
        Hessian(adt, att);
        KeepTemperatureDerivatives(adt, att);
        double tau1 = -ATemperature;
        if (Count == 1) GTemperature[0] = ATemperature - adt;
        else
            for (int k = 0; k < Count; k++) GTemperature[k] = -(_q[k] + adt * _v1[k] + (att + tau1) * _t1[k]);
    }

    private void Hessian(double adt, double att)
    {
        if (Count == 1)
        {
            // psi = rho alphar(rho): rho psi'' = 2 rho a_rho + rho^2 a_rhorho
            H[0] = 2 * ADensity + ADensity2;
            return;
        }
        DepartureSums(out double s, out double sd, out double st);
        _model.ReducingTemperature.Hessian(X, _t2);
        _model.ReducingVolume.Hessian(X, _v2);
        int n = Count;
        for (int k = 0; k < n; k++)
        {
            _p[k] = _od[k] + _dkd[k] - sd;
            _q[k] = _ot[k] + _dkt[k] - st;
        }
        double a1 = ADensity, a2 = ADensity2, tau1 = -ATemperature;
        for (int k = 0; k < n; k++)
            for (int l = 0; l <= k; l++)
            {
                double vk = _v1[k], vl = _v1[l], tk = _t1[k], tl = _t1[l];
                // v_kl - v_k - v_l + 2v and t_kl - 2 t_k - 2 t_l + 6 t, in units of v and t
                double vkl = _v2[k * n + l] / _vr - vk - vl;
                double tkl = _t2[k * n + l] / _tr - 2 * tk - 2 * tl - 2;
                double h = 2 * s - _dk[k] - _dk[l]
                    + _p[k] * vl + _p[l] * vk + _q[k] * tl + _q[l] * tk
                    + a2 * vk * vl + adt * (vk * tl + vl * tk) + att * tk * tl
                    + a1 * vkl + tau1 * tkl;
                H[k * n + l] = H[l * n + k] = h;
            }
        for (int d = 0; d < _model.Departures.Length; d++)
        {
            var (i, j, f) = _model.Departures[d];
            double a = f * _o[n + d];
            H[i * n + j] += a;
            H[j * n + i] += a;
        }
    }

    // delta tau a_deltatau and tau^2 a_tautau of the mixture
    private void MixedSecondDerivatives(double delta, out double deltaTau, out double tauTau)
    {
        double dt = 0, tt = 0;
        for (int o = 0; o < _owners; o++)
        {
            double w = _weight[o];
            if (w == 0) continue;
            double sdt = 0, stt = 0;
            bool curved = !_continued[o];
            for (int k = _t.PowerStart[o]; k < _t.PowerStart[o + 1]; k++)
            {
                int j = _t.PowerBasis[k];
                sdt += _cq[k] * _b[j] * _bv[j];
                if (!curved) continue;
                double q = _t.PowerT[k], dq = 0, m = _t.PowerM[k];
                if (m != 0)
                {
                    double tm = m * Math.Pow(_tau, m);
                    q -= tm;
                    dq = -m * tm;
                }
                stt += _c[k] * _b[j] * (q * (q - 1) + dq);
            }
            for (int k = _t.GaussStart[o]; k < _t.GaussStart[o + 1]; k++)
            {
                int j = _t.GaussBasis[k];
                sdt += _gcq[k] * _gb[j] * _gv[j];
                if (!curved) continue;
                double b2 = 2 * _t.GaussBetaTau[k], g = _t.GaussGammaTau[k];
                double q = _t.GaussT[k] - b2 * _tau * (_tau - g), dq = -b2 * _tau * (2 * _tau - g);
                stt += _gc[k] * _gb[j] * (q * (q - 1) + dq);
            }
            dt += w * sdt;
            tt += w * stt;
        }
        foreach (var (owner, terms) in _t.NonAnalytic)
        {
            double w = _weight[owner];
            if (w == 0 || _continued[owner]) continue;
            for (int i = 0; i < terms.N.Length; i++)
            {
                dt += w * ResidualFormula.NonAnalytic(terms, i, new HyperDual(delta, delta, 0, 0), new HyperDual(_tau, 0, _tau, 0)).Mixed;
                tt += w * ResidualFormula.NonAnalytic(terms, i, HyperDual.From(delta), new HyperDual(_tau, _tau, _tau, 0)).Mixed;
            }
        }
        (deltaTau, tauTau) = (dt, tt);
    }

    public override void Caloric(double density)
    {
        Gradient(density);
        MixedSecondDerivatives(density * _vr, out double dt, out double tt);
        KeepTemperatureDerivatives(dt, tt);
    }

    // tau derivatives at fixed composition to temperature derivatives
    private void KeepTemperatureDerivatives(double deltaTau, double tauTau)
    {
        ATemperatureDensity = -deltaTau;
        ATemperature2 = tauTau - 2 * ATemperature;
    }
}
