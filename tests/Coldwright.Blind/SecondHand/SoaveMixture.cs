namespace Coldwright.Blind.SecondHand;

/// <summary>
/// The equation of Soave (Chem. Eng. Sci. 27 (1972) 1197) for a mixture, in a version of its own: critical constants, heat capacities (straight and square in temperature)
/// and pair parameters from memory, hydrocarbons among themselves without any. SI, molar.
/// </summary>
internal sealed class SoaveMixture
{
    private const double R = 8.314462618, ZeroK = 300;

    // name, kg/mol, critical K, critical Pa, acentric factor; ideal gas: cp/R = max(least, a + b T + c T2); pair parameter with nitrogen
    private static readonly (string Name, double Mass, double CriticalK, double CriticalPa, double Omega, double Least, double A, double B, double C, double WithNitrogen)[] _known =
    [
        ("nitrogen", 0.028014, 126.2, 34.0e5, 0.038, 3.5, 3.5, 0, 0, 0), ("methane", 0.016043, 190.6, 45.99e5, 0.012, 4.0, 1.702, 9.081e-3, -2.164e-6, 0.028),
        ("ethane", 0.030070, 305.3, 48.72e5, 0.1, 4.4, 1.131, 19.225e-3, -5.561e-6, 0.041), ("propane", 0.044097, 369.8, 42.48e5, 0.152, 5.2, 1.213, 28.785e-3, -8.824e-6, 0.076),
        ("isobutane", 0.058123, 408.1, 36.48e5, 0.181, 6.4, 1.677, 37.853e-3, -11.945e-6, 0.094),
    ];

    private readonly double[] _b, _m, _criticalK, _atCritical, _least, _a, _slope, _curve;
    private readonly double[,] _pair;

    public SoaveMixture(IReadOnlyList<string> names)
    {
        var all = names.Select(n => _known.Single(k => k.Name == n)).ToArray();
        int n = all.Length;
        Mass = [.. all.Select(k => k.Mass)];
        _criticalK = [.. all.Select(k => k.CriticalK)];
        CriticalPa = [.. all.Select(k => k.CriticalPa)];
        Omega = [.. all.Select(k => k.Omega)];
        _b = [.. all.Select(k => 0.08664 * R * k.CriticalK / k.CriticalPa)];
        _atCritical = [.. all.Select(k => 0.42748 * R * R * k.CriticalK * k.CriticalK / k.CriticalPa)];
        _m = [.. all.Select(k => 0.48 + 1.574 * k.Omega - 0.176 * k.Omega * k.Omega)];
        (_least, _a, _slope, _curve) = ([.. all.Select(k => k.Least)], [.. all.Select(k => k.A)], [.. all.Select(k => k.B)], [.. all.Select(k => k.C)]);
        _pair = new double[n, n];
        for (int i = 0; i < n; i++)
            for (int j = 0; j < n; j++)
                if (i != j) _pair[i, j] = names[i] == "nitrogen" ? all[j].WithNitrogen : names[j] == "nitrogen" ? all[i].WithNitrogen : 0;
    }

    public int Count => _b.Length;
    public double[] Mass { get; }
    public double[] CriticalPa { get; }
    public double[] Omega { get; }
    public double CriticalK(int i) => _criticalK[i];

    /// <summary>Heat capacity of the ideal gas, J/(mol K).</summary>
    public double IdealCapacity(double[] z, double k)
    {
        double sum = 0;
        for (int i = 0; i < z.Length; i++) sum += z[i] * R * Math.Max(_least[i], _a[i] + k * (_slope[i] + k * _curve[i]));
        return sum;
    }

    // from 300 K, exact: below the temperature at which the parabola meets the least value it is constant
    private double IdealEnthalpy(int i, double k)
    {
        double b = _slope[i], c = _curve[i], turn = b == 0 ? 0 : 2 * (_least[i] - _a[i]) / (b + Math.Sqrt(b * b + 4 * c * (_least[i] - _a[i])));
        double Parabola(double t) => t * (_a[i] + t * (b / 2 + t * c / 3));
        double Whole(double t) => t >= turn ? Parabola(t) - Parabola(turn) : _least[i] * (t - turn);
        return R * (Whole(k) - Whole(ZeroK));
    }

    /// <summary>One phase: logarithms of the fugacity coefficients, molar volume and enthalpy.</summary>
    /// <param name="k">Temperature, K.</param>
    /// <param name="p">Pressure, Pa.</param>
    /// <param name="x">Mole fractions.</param>
    /// <param name="liquid">True for the dense root.</param>
    /// <param name="lnPhi">Filled with the logarithms.</param>
    public (double Volume, double Enthalpy) Phase(double k, double p, double[] x, bool liquid, double[] lnPhi)
    {
        int n = Count;
        Span<double> root = stackalloc double[n], fall = stackalloc double[n], sums = stackalloc double[n];
        for (int i = 0; i < n; i++)
        {
            double s = Math.Sqrt(k / _criticalK[i]), f = 1 + _m[i] * (1 - s);
            root[i] = Math.Sqrt(_atCritical[i]) * f;
            fall[i] = -Math.Sqrt(_atCritical[i]) * _m[i] * s / (2 * k);
        }
        double a = 0, slope = 0, b = 0, ideal = 0;
        for (int i = 0; i < n; i++)
        {
            double sum = 0, change = 0;
            for (int j = 0; j < n; j++)
            {
                sum += x[j] * root[j] * (1 - _pair[i, j]);
                change += x[j] * fall[j] * (1 - _pair[i, j]);
            }
            sums[i] = root[i] * sum;
            a += x[i] * sums[i];
            slope += x[i] * (fall[i] * sum + root[i] * change);
            b += x[i] * _b[i];
            ideal += x[i] * IdealEnthalpy(i, k);
        }
        double rt = R * k, bigA = a * p / (rt * rt), bigB = b * p / rt, z = Root(bigA, bigB, liquid), log = Math.Log(1 + bigB / z);
        for (int i = 0; i < n; i++) lnPhi[i] = _b[i] / b * (z - 1) - Math.Log(z - bigB) - bigA / bigB * (2 * sums[i] / a - _b[i] / b) * log;
        return (z * rt / p, ideal + rt * (z - 1) + (k * slope - a) / b * log);
    }

    // Z3 - Z2 + p Z + q = 0 by Cardano, with a step of Newton; of the roots above B the largest or the least
    private static double Root(double a, double b, bool liquid)
    {
        double p = a - b - b * b, q = -a * b, third = 1.0 / 3, u = p - third, v = q + p * third - 2.0 / 27, disc = 0.25 * v * v + u * u * u / 27;
        if (disc > 0)
        {
            double s = Math.Sqrt(disc);
            return Polished(third + Math.Cbrt(-0.5 * v + s) + Math.Cbrt(-0.5 * v - s), p, q, b);
        }
        double r = 2 * Math.Sqrt(-u * third), angle = Math.Acos(Math.Clamp(3 * v / (u * r), -1, 1)) * third;
        double gas = Polished(third + r * Math.Cos(angle), p, q, b), dense = third + r * Math.Cos(angle + 2 * Math.PI * third);
        return liquid && dense > b ? Polished(dense, p, q, b) : gas;
    }

    private static double Polished(double z, double p, double q, double b)
    {
        double slope = (3 * z - 2) * z + p;
        return Math.Max(b * 1.0001, Math.Abs(slope) < 1e-9 ? z : z - (((z - 1) * z + p) * z + q) / slope);
    }
}
