namespace Coldwright.Materials.Solids;

/// <summary>
/// log10 k = (c0 + c2 T^0.5 + c4 T + c6 T^1.5 + c8 T^2) / (1 + c1 T^0.5 + c3 T + c5 T^1.5 + c7 T^2),
/// k in W/(m K), T in K. Source: Simon, Drexler, Reed, NIST Monograph 177 (1992), p. 7-23.
/// </summary>
public sealed class HalfPowerRationalCurve : PropertyCurve
{
    private readonly double[] _c;

    /// <param name="minimumK">Lower end of the fit, K.</param>
    /// <param name="maximumK">Upper end of the fit, K.</param>
    /// <param name="coefficients">c_0 to c_8.</param>
    public HalfPowerRationalCurve(double minimumK, double maximumK, IReadOnlyList<double> coefficients) : base(minimumK, maximumK)
    {
        if (coefficients.Count != 9) throw new ArgumentException($"the half-power rational form has 9 coefficients, got {coefficients.Count}");
        _c = coefficients.ToArray();
    }

    /// <inheritdoc/>
    public override double At(double temperatureK)
    {
        var r = Math.Sqrt(temperatureK);
        var numerator = _c[0] + r * (_c[2] + r * (_c[4] + r * (_c[6] + r * _c[8])));
        var denominator = 1 + r * (_c[1] + r * (_c[3] + r * (_c[5] + r * _c[7])));
        return Math.Pow(10, numerator / denominator);
    }
}
