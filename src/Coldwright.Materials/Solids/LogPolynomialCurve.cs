namespace Coldwright.Materials.Solids;

/// <summary>
/// log10 y = sum over n of c_n (log10 T)^n, y in W/(m K) or J/(kg K), T in K: the form in which
/// NIST publishes its cryogenic material fits.
/// </summary>
public sealed class LogPolynomialCurve : PropertyCurve
{
    private readonly double[] _c;

    /// <param name="minimumK">Lower end of the fit, K.</param>
    /// <param name="maximumK">Upper end of the fit, K.</param>
    /// <param name="coefficients">c_0 first.</param>
    public LogPolynomialCurve(double minimumK, double maximumK, IReadOnlyList<double> coefficients) : base(minimumK, maximumK)
    {
        if (coefficients.Count == 0) throw new ArgumentException("a log-polynomial needs at least one coefficient");
        _c = coefficients.ToArray();
    }

    /// <inheritdoc/>
    public override double At(double temperatureK)
    {
        var t = Math.Log10(temperatureK);
        double sum = 0;
        for (var n = _c.Length - 1; n >= 0; n--) sum = sum * t + _c[n];
        return Math.Pow(10, sum);
    }
}
