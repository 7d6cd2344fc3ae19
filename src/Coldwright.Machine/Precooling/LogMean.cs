namespace Coldwright.Machine.Precooling;

/// <summary>Logarithmic mean temperature difference, exact for two streams whose temperatures are straight in the heat exchanged.</summary>
internal static class LogMean
{
    /// <summary>K; 0 when either difference is not above 0.</summary>
    public static double Of(double a, double b)
    {
        if (!(a > 0 && b > 0)) return 0;
        double mean = 0.5 * (a + b), d = (a - b) / mean;
        return Math.Abs(d) < 1e-3 ? mean * (1 - d * d / 12 * (1 + d * d / 15)) : (a - b) / Math.Log(a / b);
    }
}
