namespace Coldwright.Runs.Tightness;

/// <summary>A straight line through points with weights 1/u^2.</summary>
/// <param name="AtMean">Value at the weighted mean time.</param>
/// <param name="MeanT">Weighted mean time.</param>
/// <param name="Slope">Slope.</param>
/// <param name="SlopeUncertainty">Its standard uncertainty, from the larger of the stated uncertainties and the scatter about the line; slow wandering of the residuals widens it.</param>
/// <param name="Scatter">Standard deviation of the residuals.</param>
/// <param name="Autocorrelation">Correlation of neighbouring residuals, 0 to 0.98.</param>
public sealed record LineFit(double AtMean, double MeanT, double Slope, double SlopeUncertainty, double Scatter, double Autocorrelation)
{
    private const double MostAutocorrelation = 0.98;

    /// <summary>Value on the line.</summary>
    public double At(double t) => AtMean + Slope * (t - MeanT);

    /// <summary>Fits a line.</summary>
    /// <param name="t">Times, ascending, at least 3.</param>
    /// <param name="y">Values.</param>
    /// <param name="u">Standard uncertainty of each value that is its own (not shared), above 0.</param>
    public static LineFit Of(ReadOnlySpan<double> t, ReadOnlySpan<double> y, ReadOnlySpan<double> u)
    {
        if (t.Length < 3 || y.Length != t.Length || u.Length != t.Length) throw new ArgumentException($"a line needs 3 points or more with value and uncertainty each, got {t.Length}, {y.Length} and {u.Length}", nameof(t));
        double w = 0, mt = 0, my = 0;
        for (var i = 0; i < t.Length; i++)
        {
            var wi = 1 / (u[i] * u[i]);
            (w, mt, my) = (w + wi, mt + wi * t[i], my + wi * y[i]);
        }
        (mt, my) = (mt / w, my / w);
        double stt = 0, sty = 0;
        for (var i = 0; i < t.Length; i++)
        {
            var wi = 1 / (u[i] * u[i]);
            (stt, sty) = (stt + wi * (t[i] - mt) * (t[i] - mt), sty + wi * (t[i] - mt) * (y[i] - my));
        }
        if (!(stt > 0)) throw new ArgumentException("all points have the same time; a slope needs two", nameof(t));
        var slope = sty / stt;
        double chi = 0, sum = 0, lagged = 0, before = 0;
        for (var i = 0; i < t.Length; i++)
        {
            var r = y[i] - my - slope * (t[i] - mt);
            (chi, sum) = (chi + r * r / (u[i] * u[i]), sum + r * r);
            if (i > 0) lagged += r * before;
            before = r;
        }
        // Weather on the residuals: n wandering points are worth n (1 - r)/(1 + r) independent ones.
        var r1 = sum > 0 ? Math.Clamp(lagged / sum, 0, MostAutocorrelation) : 0;
        var inflate = Math.Max(1, chi / (t.Length - 2)) * (1 + r1) / (1 - r1);
        return new(my, mt, slope, Math.Sqrt(inflate / stt), Math.Sqrt(sum / (t.Length - 2)), r1);
    }
}
