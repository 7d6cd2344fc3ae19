namespace Coldwright.Machine.Throttling;

/// <summary>Peak of a parabola through three neighbouring points.</summary>
internal static class Parabola
{
    /// <summary>Abscissa and height of the peak near the inner index <paramref name="i"/>, the largest of the three.</summary>
    public static (double X, double Y) Peak(double[] x, double[] y, int i)
    {
        if (i <= 0 || i >= x.Length - 1) return (x[i], y[i]);
        double a = x[i] - x[i - 1], b = x[i + 1] - x[i], da = (y[i] - y[i - 1]) / a, db = (y[i + 1] - y[i]) / b;
        double curve = (db - da) / (a + b), slope = (da * b + db * a) / (a + b);
        if (curve >= 0) return (x[i], y[i]);
        double step = Math.Clamp(-slope / (2 * curve), Math.Min(-a, b), Math.Max(-a, b));
        return (x[i] + step, y[i] + slope * step + curve * step * step);
    }
}
