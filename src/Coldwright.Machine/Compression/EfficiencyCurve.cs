namespace Coldwright.Machine.Compression;

/// <summary>
/// An efficiency against pressure ratio: a polynomial in ln r, fitted by least squares; held at its ends outside the fitted range.
/// </summary>
public sealed class EfficiencyCurve
{
    private readonly double[] _c;

    private EfficiencyCurve(double[] c, double low, double high, double rms) => (_c, LowestRatio, HighestRatio, RelativeRms) = (c, low, high, rms);

    /// <summary>Least pressure ratio of the fit.</summary>
    public double LowestRatio { get; }
    /// <summary>Greatest pressure ratio of the fit.</summary>
    public double HighestRatio { get; }
    /// <summary>Root-mean-square deviation of the points from the curve, relative: what one variable cannot say.</summary>
    public double RelativeRms { get; }

    /// <summary>Efficiency at a pressure ratio.</summary>
    /// <param name="ratio">Discharge over suction pressure.</param>
    public double At(double ratio)
    {
        double x = Math.Log(Math.Clamp(ratio, LowestRatio, HighestRatio)), y = 0;
        for (int i = _c.Length - 1; i >= 0; i--) y = y * x + _c[i];
        return y;
    }

    /// <summary>The fit.</summary>
    /// <param name="points">Pressure ratios with efficiencies, more than <paramref name="terms"/> of them.</param>
    /// <param name="terms">Number of terms, 1..5.</param>
    public static EfficiencyCurve Fit(IReadOnlyList<(double Ratio, double Efficiency)> points, int terms)
    {
        InputCheck.Within(terms, 1, 5, "", nameof(terms));
        if (points.Count <= terms) throw new ArgumentException($"{points.Count} points cannot settle {terms} terms", nameof(points));
        double low = points.Min(p => p.Ratio), high = points.Max(p => p.Ratio);
        // orthogonal polynomials on the points themselves (Forsythe's idea): powers of ln r, made orthogonal one after the other
        var x = points.Select(p => Math.Log(p.Ratio)).ToArray();
        var basis = new List<(double[] Values, double[] Powers)>();
        var c = new double[terms];
        for (int k = 0; k < terms; k++)
        {
            double[] v = x.Select(t => Math.Pow(t, k)).ToArray(), powers = new double[terms];
            powers[k] = 1;
            double size = Dot(v, v);
            // twice, against rounding
            for (int pass = 0; pass < 2; pass++)
                foreach (var (b, q) in basis)
                {
                    double share = Dot(b, v);
                    for (int i = 0; i < v.Length; i++) v[i] -= share * b[i];
                    for (int i = 0; i < terms; i++) powers[i] -= share * q[i];
                }
            double left = Math.Sqrt(Dot(v, v));
            if (left < 1e-7 * Math.Sqrt(size)) continue;
            for (int i = 0; i < v.Length; i++) v[i] /= left;
            for (int i = 0; i < terms; i++) powers[i] /= left;
            basis.Add((v, powers));
            double amount = 0;
            for (int i = 0; i < v.Length; i++) amount += v[i] * points[i].Efficiency;
            for (int i = 0; i < terms; i++) c[i] += amount * powers[i];
        }
        var curve = new EfficiencyCurve(c, low, high, 0);
        double rms = Math.Sqrt(points.Average(p => Math.Pow(curve.At(p.Ratio) / p.Efficiency - 1, 2)));
        return new EfficiencyCurve(c, low, high, rms);
    }

    private static double Dot(double[] a, double[] b) => a.Zip(b, (p, q) => p * q).Sum();
}
