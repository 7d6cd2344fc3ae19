using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Coldwright.Numerics.Scalars;

namespace Coldwright.Fluids.EquationsOfState.PengRobinson;

/// <summary>
/// Hand-written derivatives of <see cref="PengRobinsonModel"/>, tested against its generic text. With V = 1 + C the
/// shifted volume per unit volume, B and C the sums of rho_i b_i and rho_i c_i, N the density and D = sum rho_i rho_j a_ij:
/// psi = -N ln(V - B) - D Phi(V, B)/(R T), Phi = ln[(V + d1 B)/(V + d2 B)]/(2 sqrt(2) B).
/// </summary>
internal sealed class PengRobinsonEvaluation : PhaseEvaluation
{
    private static readonly double S = 2 * Math.Sqrt(2), D1 = PengRobinsonModel.Delta1, D2 = PengRobinsonModel.Delta2;
    private readonly PengRobinsonModel _m;
    // the model's constants next to each other; rows of the attraction padded to whole vectors
    private readonly double[] _covolume, _translation, _pair, _row;
    private readonly int _stride;
    private readonly double[] _root, _root1, _root2, _ax;
    private double _a, _b, _c, _isothermT = double.NaN;
    // density of the last Gradient on this isotherm
    private double _gradientAt = double.NaN;

    public PengRobinsonEvaluation(PengRobinsonModel model) : base(model.Count, model.GasConstant)
    {
        _m = model;
        _covolume = [.. model.Covolume];
        _translation = [.. model.Components.Select(c => c.Translation)];
        _stride = (Count + Vector256<double>.Count - 1) / Vector256<double>.Count * Vector256<double>.Count;
        (_pair, _row) = (new double[Count * _stride], new double[_stride]);
        (_root, _root1, _root2, _ax) = (new double[Count], new double[Count], new double[Count], new double[Count]);
    }

    public override void SetIsotherm(double temperatureK, ReadOnlySpan<double> x)
    {
        Temperature = temperatureK;
        _gradientAt = double.NaN;
        x.CopyTo(X);
        if (temperatureK != _isothermT)
        {
            for (int i = 0; i < Count; i++)
            {
                // sqrt(a_i) and its T derivatives: T d/dT and T^2 d2/dT2
                double tc = _m.Components[i].CriticalTemperatureK, tr = temperatureK / tc;
                var alpha = AlphaFunction.Evaluate(_m.Alpha, _m.Shape[i], new HyperDual(tr, tr, tr, 0));
                var root = HyperDual.Pow(_m.AttractionAtCritical[i] * alpha, 0.5);
                (_root[i], _root1[i], _root2[i]) = (root.Value, root.First, root.Mixed);
            }
            for (int i = 0; i < Count; i++)
                for (int j = 0; j < Count; j++) _pair[j * _stride + i] = _m.OneMinusKij[i * Count + j] * _root[i] * _root[j];
            _isothermT = temperatureK;
        }
        SumPairs();
        double a = 0, b = 0, c = 0;
        for (int i = 0; i < _ax.Length; i++)
        {
            double xi = X[i];
            _ax[i] = _row[i];
            a += xi * _row[i];
            b += xi * _covolume[i];
            c += xi * _translation[i];
        }
        (_a, _b, _c) = (a, b, c);
        DensityLimit = 1 / (b - c) * (1 - 1e-12);
        DividingDensity = 1 / (3.9513730 * b);
    }

    // sum_j a_ij x_j into _row, a vector of components at a time
    private void SumPairs()
    {
        ref double pair = ref MemoryMarshal.GetArrayDataReference(_pair), row = ref MemoryMarshal.GetArrayDataReference(_row);
        for (int lane = 0; lane < _stride; lane += Vector256<double>.Count)
        {
            var sum = Vector256<double>.Zero;
            for (int j = 0; j < X.Length; j++)
                sum += Vector256.LoadUnsafe(ref pair, (nuint)(j * _stride + lane)) * X[j];
            sum.StoreUnsafe(ref row, (nuint)lane);
        }
    }

    public override double ReducedPressure(double density, out double slope)
    {
        double v = 1 / density + _c, rt = GasConstant * Temperature;
        double q = v * v + 2 * _b * v - _b * _b, w = v - _b;
        double dpdv = -1 / (w * w) + _a / rt * (2 * v + 2 * _b) / (q * q);
        slope = -dpdv / (density * density);
        return 1 / w - _a / (rt * q);
    }

    /// <summary>
    /// Newton's method on the cubic in Z from a nearby density. Right of the inflection with a rising cubic there is only the
    /// largest root (vapour), left of it only the smallest (liquid), so the branch is proved, not assumed.
    /// </summary>
    public override bool TryRootNear(double pressurePa, bool vapour, double guess, out double density)
    {
        density = double.NaN;
        double rt = GasConstant * Temperature, a = _a * pressurePa / (rt * rt), b = _b * pressurePa / rt;
        double c2 = b - 1, c1 = a - 3 * b * b - 2 * b, c0 = -(a * b - b * b - b * b * b), inflection = -c2 / 3;
        double z = (1 / guess + _c) * pressurePa / rt;
        for (int i = 0; i < 8; i++)
        {
            double f = ((z + c2) * z + c1) * z + c0, slope = (3 * z + 2 * c2) * z + c1;
            if (!(slope > 0) || !(vapour ? z > inflection : z < inflection)) return false;
            double step = f / slope;
            if (!(Math.Abs(step) < 0.3 * z)) return false;
            z -= step;
            if (Math.Abs(step) > 1e-9 * z) continue;
            // one more step from 1e-9 is down to rounding
            z -= (((z + c2) * z + c1) * z + c0) / ((3 * z + 2 * c2) * z + c1);
            if (!(z > b)) return false;
            density = 1 / (z * rt / pressurePa - _c);
            return true;
        }
        return false;
    }

    public override bool TryClosedFormRoots(double pressurePa, out double vapourDensity, out double liquidDensity)
    {
        vapourDensity = liquidDensity = double.NaN;
        double rt = GasConstant * Temperature, a = _a * pressurePa / (rt * rt), b = _b * pressurePa / rt;
        // Z^3 + c2 Z^2 + c1 Z + c0 = 0 with Z = p v/(R T), v untranslated
        double c2 = b - 1, c1 = a - 3 * b * b - 2 * b, c0 = -(a * b - b * b - b * b * b);
        double p = c1 - c2 * c2 / 3, q = 2 * c2 * c2 * c2 / 27 - c2 * c1 / 3 + c0, discriminant = q * q / 4 + p * p * p / 27;
        double high, low;
        if (discriminant > 0)
        {
            double s = Math.Sqrt(discriminant);
            double u = q > 0 ? Math.Cbrt(-q / 2 - s) : Math.Cbrt(-q / 2 + s);
            high = low = u - (u == 0 ? 0 : p / (3 * u)) - c2 / 3;
        }
        else
        {
            double r = 2 * Math.Sqrt(-p / 3), angle = Math.Acos(Math.Clamp(3 * q / (p * r), -1, 1)) / 3;
            high = r * Math.Cos(angle) - c2 / 3;
            low = r * Math.Cos(angle + 2 * Math.PI / 3) - c2 / 3;
            double middle = r * Math.Cos(angle - 2 * Math.PI / 3) - c2 / 3;
            if (middle < low) (low, middle) = (middle, low);
            if (low <= b) low = middle > b && middle < high ? high : high;
        }
        double vapour = Polish(high, c2, c1, c0), liquid = low == high ? vapour : Polish(low, c2, c1, c0);
        if (vapour > b) vapourDensity = Density(vapour);
        if (liquid > b) liquidDensity = Density(liquid);
        return true;

        double Density(double z) => 1 / (z * rt / pressurePa - _c);
    }

    private static double Polish(double z, double c2, double c1, double c0)
    {
        for (int i = 0; i < 4; i++)
        {
            double f = ((z + c2) * z + c1) * z + c0, d = (3 * z + 2 * c2) * z + c1;
            if (d == 0) break;
            double step = f / d;
            if (Math.Abs(step) > 0.1 * Math.Abs(z)) break;
            z -= step;
            if (Math.Abs(step) < 1e-16 * Math.Abs(z)) break;
        }
        return z;
    }

    private void Base(double rho, out double v, out double b, out double w, out double phi)
    {
        v = 1 + _c * rho;
        b = _b * rho;
        w = v - b;
        // the logarithm of (V + d1 B)/(V + d2 B) as an area tangent, which keeps its digits at low density
        phi = 2 * Math.Atanh(0.5 * S * b / (v + b)) / (S * b);
    }

    public override void Gradient(double density)
    {
        if (density == _gradientAt) return;
        _gradientAt = density;
        Base(density, out double v, out double b, out double w, out double phi);
        double rt = GasConstant * Temperature, d = density * density * _a;
        double q = (v + D1 * b) * (v + D2 * b), phiV = -1 / q, phiB = (v / q - phi) / b;
        double logW = Math.Log(w);
        for (int i = 0; i < Count; i++)
        {
            double bi = _covolume[i], ci = _translation[i];
            G[i] = -logW - density * (ci - bi) / w - (2 * density * _ax[i] * phi + d * (phiB * bi + phiV * ci)) / rt;
        }
        double f = ReducedPressure(density, out double slope);
        ADensity = f / density - 1;
        ADensity2 = slope - 1 - 2 * ADensity;
        A = -logW - density * _a * phi / rt;
        ATemperature = TemperatureTerm(density, phi, 1);
    }

    public override void Hessian(double density)
    {
        Gradient(density);
        Base(density, out double v, out double b, out double w, out double phi);
        double rt = GasConstant * Temperature, d = density * density * _a;
        double q = (v + D1 * b) * (v + D2 * b), qV = 2 * (v + b), qB = 2 * (v - b);
        double phiV = -1 / q, phiB = (v / q - phi) / b;
        double phiVV = qV / (q * q), phiVB = qB / (q * q), phiBB = (-v * qB / (q * q) - 2 * phiB) / b;
        int n = Count;
        double scale = density / rt, repulsion = density / w, square = repulsion * repulsion;
        for (int i = 0; i < n; i++)
        {
            double bi = _covolume[i], ci = _translation[i], wi = ci - bi, di = 2 * density * _ax[i], pi = phiB * bi + phiV * ci;
            // the row is linear in the pair's attraction, w_j, d_j, p_j, b_j and c_j
            double onPair = -2 * scale * phi, onW = square * wi - repulsion, onA = -2 * density * scale * pi, constant = -repulsion * wi;
            double onB = -scale * (di * phiB + d * (phiBB * bi + phiVB * ci)), onC = -scale * (di * phiV + d * (phiVB * bi + phiVV * ci));
            for (int j = 0; j <= i; j++)
            {
                double bj = _covolume[j], cj = _translation[j];
                H[i * n + j] = H[j * n + i] = constant + onPair * _pair[j * _stride + i] + onW * (cj - bj) + onA * _ax[j] + onB * bj + onC * cj;
            }
        }
    }

    public override void Thermal(double density)
    {
        Hessian(density);
        Caloric(density);
        Base(density, out double v, out double b, out _, out double phi);
        double rt = GasConstant * Temperature, q = (v + D1 * b) * (v + D2 * b), phiV = -1 / q, phiB = (v / q - phi) / b;
        double excess = density * density * (AttractionDerivative(1) - _a);
        for (int i = 0; i < Count; i++)
        {
            double first = 0;
            for (int j = 0; j < Count; j++) first += _m.OneMinusKij[i * Count + j] * _root1[j] * X[j];
            double slope = _root1[i] * _ax[i] / _root[i] + _root[i] * first;
            GTemperature[i] = -(2 * density * (slope - _ax[i]) * phi + excess * (phiB * _covolume[i] + phiV * _translation[i])) / rt;
        }
    }

    public override void Caloric(double density)
    {
        Gradient(density);
        Base(density, out double v, out double b, out _, out double phi);
        ATemperature2 = TemperatureTerm(density, phi, 2);
        // the attraction's density slope: rho d(rho phi)/drho with phi per unit volume of rho
        double rt = GasConstant * Temperature;
        double slope = density / ((v + D1 * b) * (v + D2 * b));
        double a1 = AttractionDerivative(1);
        ATemperatureDensity = -slope * (a1 - _a) / rt;
    }

    // T d/dT (order 1) or T^2 d2/dT2 (order 2) of -rho phi a(T)/(R T)
    private double TemperatureTerm(double density, double phi, int order)
    {
        double rt = GasConstant * Temperature, a1 = AttractionDerivative(1);
        return order == 1
            ? -density * phi * (a1 - _a) / rt
            : -density * phi * (AttractionDerivative(2) - 2 * a1 + 2 * _a) / rt;
    }

    // T da/dT or T^2 d2a/dT2 of the mixture's attraction
    private double AttractionDerivative(int order)
    {
        double sum = 0;
        for (int i = 0; i < Count; i++)
        {
            if (order == 1)
            {
                sum += 2 * X[i] * _root1[i] * _ax[i] / _root[i];
                continue;
            }
            double first = 0;
            for (int j = 0; j < Count; j++) first += _m.OneMinusKij[i * Count + j] * _root1[j] * X[j];
            sum += 2 * X[i] * (_root2[i] * _ax[i] / _root[i] + _root1[i] * first);
        }
        return sum;
    }
}
