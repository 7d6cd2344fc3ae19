namespace Coldwright.Machine.Streams;

/// <summary>Polynomials through a handful of unevenly spaced nodes (Lagrange).</summary>
internal static class Cubic
{
    /// <summary>Slope at node <paramref name="at"/> of the polynomial through nodes from..to of one column of a row-major table.</summary>
    public static double Slope(ReadOnlySpan<double> x, ReadOnlySpan<double> y, int column, int columns, int from, int to, int at)
    {
        double sum = 0, own = 0;
        for (int j = from; j <= to; j++)
        {
            if (j == at) continue;
            double w = 1 / (x[j] - x[at]);
            own -= w;
            for (int k = from; k <= to; k++) if (k != j && k != at) w *= (x[at] - x[k]) / (x[j] - x[k]);
            sum += w * y[j * columns + column];
        }
        return sum + own * y[at * columns + column];
    }

    /// <summary>Value at a place of the polynomial through the nodes given by index, one of them left out.</summary>
    public static double Without(ReadOnlySpan<double> x, ReadOnlySpan<double> y, int from, int to, int left)
    {
        double sum = 0, at = x[left];
        for (int j = from; j <= to; j++)
        {
            if (j == left) continue;
            double w = y[j];
            for (int k = from; k <= to; k++) if (k != j && k != left) w *= (at - x[k]) / (x[j] - x[k]);
            sum += w;
        }
        return sum;
    }
}
