using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.PhaseEquilibrium;
using Xunit;

namespace Coldwright.Fluids.Tests;

/// <summary>A start of the certificate that comes upon the way of another goes no further: the answers are those of starts that all go to their own ends.</summary>
public sealed class StartPathsTests
{
    private static readonly string[] Gases = ["nitrogen", "argon", "methane", "ethane", "ethylene", "propane", "propylene", "isobutane", "butane", "R14", "R23", "isopentane"];
    private const int PerMixture = 100;

    // COLDWRIGHT_PATHS=500: 50,000 states in each of the four
    private static readonly int Mixtures = int.TryParse(Environment.GetEnvironmentVariable("COLDWRIGHT_PATHS"), out int n) ? n : 60;

    [Theory]
    [InlineData("cubic", true), InlineData("cubic", false), InlineData("reference", true), InlineData("reference", false)]
    public void Nothing_is_missed(string kind, bool cold)
    {
        int parted = 0, everyStep = 0, steps = 0;
        var differences = new List<string>();
        for (int m = 0; m < Mixtures; m++)
        {
            var random = new Random((cold ? 3_000_000 : 4_000_000) + m);
            string[] names = [.. Gases.OrderBy(_ => random.Next()).Take(2 + random.Next(5))];
            HelmholtzModel model = kind == "cubic" ? CubicModel.Create(names) : ReferenceModel.Create(names);
            Flash all = new(model), fewer = new(model);
            all.Solver.StartPaths.InUse = false;
            for (int k = 0; k < PerMixture; k++)
            {
                double[] z = [.. names.Select(_ => Math.Exp(3 * random.NextDouble()) * (random.Next(6) == 0 ? 0.01 : 1))];
                double sum = z.Sum(), t = cold ? 75 + 70 * random.NextDouble() : 80 + 240 * random.NextDouble(), p = 1e5 * Math.Exp(4 * random.NextDouble());
                for (int i = 0; i < z.Length; i++) z[i] /= sum;
                bool one = all.TrySolve(t, p, z), other = fewer.TrySolve(t, p, z);
                if (one && all.PhaseCount > 1 && all.PhaseNames().Contains("second", StringComparison.Ordinal)) parted++;
                if (one != other || one && (all.PhaseNames() != fewer.PhaseNames() || Math.Abs(all.Enthalpy() - fewer.Enthalpy()) > 1e-4))
                    differences.Add(FormattableString.Invariant($"{string.Join(", ", names)}: {string.Join(" ", z.Select(v => v.ToString("R", System.Globalization.CultureInfo.InvariantCulture)))} at {t:R} K, {p:R} Pa: {(one ? all.PhaseNames() : "none")}, {(other ? fewer.PhaseNames() : "none")}"));
            }
            everyStep += all.Solver.StartPaths.Steps;
            steps += fewer.Solver.StartPaths.Steps;
        }
        TestContext.Current.TestOutputHelper?.WriteLine($"{Mixtures * PerMixture} states, {kind}, {(cold ? "cold" : "all temperatures")}: {everyStep} steps, {steps} with the ways of other starts");
        // regression: a fifth of the steps is left out, more where neighbours are alike
        Assert.InRange(steps, 0, 0.9 * everyStep);
        Assert.True(differences.Count == 0, $"{differences.Count} of {Mixtures * PerMixture}\n" + string.Join("\n", differences.Take(20)));
        Assert.InRange(parted, cold ? Mixtures * PerMixture / 20 : 0, Mixtures * PerMixture);
    }
}
