using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.PhaseEquilibrium;
using Xunit;

namespace Coldwright.Fluids.Tests;

/// <summary>
/// A warm solve follows the stationary points of an earlier certificate instead of starting from everywhere. Along random paths of
/// small and large steps its answers are those of cold solves.
/// </summary>
public sealed class WarmCertificateTests
{
    private static readonly string[] Gases =
    [
        "nitrogen", "argon", "methane", "ethane", "ethylene", "propane", "propylene", "isobutane", "butane", "pentane", "R14", "R23", "krypton", "oxygen", "carbon-dioxide", "hydrogen",
    ];

    private const int Steps = 100;

    // COLDWRIGHT_WARM=5000 compares 500,000 answers
    private static readonly int Paths = int.TryParse(Environment.GetEnvironmentVariable("COLDWRIGHT_WARM"), out int n) ? n : 500;

    [Theory]
    [InlineData("reference")]
    [InlineData("cubic")]
    public void Warm_answers_are_cold_answers(string kind)
    {
        var differences = Enumerable.Range(0, Paths).AsParallel().AsOrdered().SelectMany(i => Walk(kind, i)).ToList();
        Assert.True(differences.Count == 0, $"{differences.Count} of {Paths * Steps}\n" + string.Join("\n", differences.Take(20)));
    }

    // cold mixtures with much nitrogen and small steps: two liquids, with and without vapour
    private static readonly string[] Partners = ["methane", "ethane", "propane", "isobutane", "ethylene", "argon", "R14", "propylene"];

    [Theory]
    [InlineData("reference")]
    [InlineData("cubic")]
    public void Warm_answers_are_cold_answers_where_liquids_part(string kind)
    {
        var differences = Enumerable.Range(0, Paths).AsParallel().AsOrdered().SelectMany(i =>
        {
            var random = new Random(9_000_000 + i);
            string[] partners = [.. Partners];
            random.Shuffle(partners);
            string[] names = ["nitrogen", .. partners.Take(1 + random.Next(5))];
            double[] z = [.. names.Select((_, k) => (k == 0 ? 0.3 : 0) + Math.Pow(10, -random.NextDouble()))];
            return Follow(kind, names, z, random, 85 + 50 * random.NextDouble(), 140, 0.01, i);
        }).ToList();
        Assert.True(differences.Count == 0, $"{differences.Count} of {Paths * Steps}\n" + string.Join("\n", differences.Take(20)));
    }

    private static List<string> Walk(string kind, int seed)
    {
        var random = new Random(7_000_000 + seed);
        string[] names = random.GetItems(Gases, 40).Distinct().Take(2 + random.Next(5)).ToArray();
        double[] z = [.. names.Select(_ => Math.Pow(10, -1.7 * random.NextDouble()))];
        return Follow(kind, names, z, random, 85 + 230 * random.NextDouble(), 330, 0.05, seed);
    }

    private static List<string> Follow(string kind, string[] names, double[] z, Random random, double t, double warmest, double leastStep, int seed)
    {
        double sum = z.Sum();
        z = [.. z.Select(v => v / sum)];
        HelmholtzModel model = kind == "reference" ? ReferenceModel.Create(names) : CubicModel.Create(names);
        var (warm, cold) = (new Flash(model), new Flash(model));
        double p = 1e5 * Math.Exp(Math.Log(60) * random.NextDouble());
        double step = leastStep * Math.Pow(120, random.NextDouble()), squeeze = 0.05 * random.NextDouble() * random.NextDouble();
        var found = new List<string>();
        for (int i = 0; i < Steps; i++)
        {
            t += step * (random.NextDouble() < 0.8 ? 1 : -1) * random.NextDouble();
            p *= Math.Exp(squeeze * (2 * random.NextDouble() - 1));
            if (t > warmest || t < 80) step = -step;
            t = Math.Clamp(t, 78, warmest + 5);
            bool a = warm.TrySolve(t, p, z, warm: true), b = cold.TrySolve(t, p, z);
            if (a != b || a && (Math.Abs(warm.Enthalpy() - cold.Enthalpy()) > 1e-6 * 8.314 * t || warm.PhaseCount != cold.PhaseCount) && !SameEnergy(warm, cold))
                found.Add(FormattableString.Invariant($"{t:R} K {p:R} Pa {string.Join(";", names.Zip(z, (n, v) => FormattableString.Invariant($"{n}={v:R}")))}: warm {a} {warm.PhaseNames()} {warm.Enthalpy():R}, cold {b} {cold.PhaseNames()} {cold.Enthalpy():R} (path {seed}, step {i})"));
        }
        return found;
    }

    // on a boundary and next to a point where two phases become one, answers of the same Gibbs energy (within rounding, over RT) are the same
    private static bool SameEnergy(Flash a, Flash b) => Math.Abs(PhaseSums.Gibbs(a.Solver.Phases) - PhaseSums.Gibbs(b.Solver.Phases)) < 3e-9;
}
