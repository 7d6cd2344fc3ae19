using Coldwright.Fluids.Substances;

namespace Coldwright.Benchmarks;

/// <summary>A random mixture and state for the soak: 1 to 8 components, fractions 1e-8 to 1, 75 to 420 K, 0.3 to 80 bar.</summary>
/// <param name="Names">Substances.</param>
/// <param name="Z">Mole fractions.</param>
/// <param name="TemperatureK">K.</param>
/// <param name="PressurePa">Pa.</param>
public sealed record RandomState(string[] Names, double[] Z, double TemperatureK, double PressurePa)
{
    /// <summary>State number <paramref name="index"/> of a seed: the same on every machine.</summary>
    public static RandomState Draw(int seed, int index)
    {
        var random = new Random(unchecked(seed * 1000003 + index));
        var all = SubstanceCatalog.Names.Where(n => n != "water").ToArray();
        int n = random.Next(1, 9);
        // partial shuffle
        var pool = all.ToArray();
        for (int i = 0; i < n; i++)
        {
            int j = random.Next(i, pool.Length);
            (pool[i], pool[j]) = (pool[j], pool[i]);
        }
        var z = new double[n];
        for (int i = 0; i < n; i++)
        {
            z[i] = random.NextDouble() < 0.3 ? Math.Pow(10, -8 * random.NextDouble()) : 0.02 + random.NextDouble();
        }
        double sum = z.Sum();
        for (int i = 0; i < n; i++) z[i] = Math.Max(z[i] / sum, 1e-8);
        sum = z.Sum();
        for (int i = 0; i < n; i++) z[i] /= sum;
        return new RandomState(pool[..n], z, 75 + 345 * random.NextDouble(), 1e5 * Math.Exp(Math.Log(0.3) + Math.Log(80 / 0.3) * random.NextDouble()));
    }

    /// <summary>True when a substance above 0.1 % is more than 30 K below its triple point: reported apart.</summary>
    public bool FarBelowTriplePoint => Names.Zip(Z).Any(p => p.Second > 1e-3 && SubstanceCatalog.Get(p.First).TripleTemperatureK - TemperatureK > 30);

    /// <inheritdoc/>
    public override string ToString() => FormattableString.Invariant($"{TemperatureK:R} K {PressurePa:R} Pa ") + string.Join(";", Names.Zip(Z, (n, x) => FormattableString.Invariant($"{n}={x:R}")));
}
