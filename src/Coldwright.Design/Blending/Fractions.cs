namespace Coldwright.Design.Blending;

/// <summary>Mole fractions and the unit cube that a global search lives in.</summary>
internal static class Fractions
{
    // below this share of the cube's side a gas is left out, so that mixtures of fewer gases are found exactly
    private const double Left = 0.06;
    /// <summary>Less than this of a gas is none of it.</summary>
    public const double Least = 2e-3;

    /// <summary>Mole fractions of a place in the cube.</summary>
    public static double[] Of(double[] cube)
    {
        double[] x = [.. cube.Select(u => Math.Max(0, u - Left))];
        double sum = x.Sum();
        if (sum < 1e-9) return [.. cube.Select((_, i) => i == 0 ? 1.0 : 0)];
        return Clean([.. x.Select(v => v / sum)]);
    }

    /// <summary>A place in the cube of mole fractions.</summary>
    public static double[] Cube(IReadOnlyList<double> x)
    {
        double most = x.Max();
        return [.. x.Select(v => v <= 0 ? 0 : Left + (1 - Left) * v / most)];
    }

    /// <summary>Traces left out, sum 1.</summary>
    public static double[] Clean(double[] x)
    {
        double sum = x.Where(v => v >= Least).Sum();
        return [.. x.Select(v => v >= Least ? v / sum : 0)];
    }

    /// <summary>One fraction off by so much, the others in proportion; null where that leaves nothing of it or it is absent.</summary>
    public static double[]? Off(double[] x, int gas, double by)
    {
        if (x[gas] <= 0 || x[gas] + by < Least || x[gas] >= 1) return null;
        double scale = (1 - x[gas] - by) / (1 - x[gas]);
        return scale <= 0 ? null : [.. x.Select((v, i) => i == gas ? v + by : v * scale)];
    }

    /// <summary>The mixture and every single filling error, both ways; null where a gas is absent or too little for it.</summary>
    public static IReadOnlyList<double[]?> WithErrors(double[] x, double error) =>
        error <= 0 ? [x] : [x, .. Enumerable.Range(0, x.Length).SelectMany(i => (double[]?[])[Off(x, i, error), Off(x, i, -error)])];
}
