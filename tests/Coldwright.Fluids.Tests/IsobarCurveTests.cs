using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;
using Xunit;

namespace Coldwright.Fluids.Tests;

/// <summary>
/// Enthalpy curves walk along isobars with warm starts and close in on every phase boundary to 1e-4 K: the hardest use
/// of the flash (phases that appear and vanish with next to no amount).
/// </summary>
public sealed class IsobarCurveTests
{
    [Theory]
    [InlineData("cubic")]
    [InlineData("reference")]
    public void Curves_of_random_cooler_mixtures_are_built_without_failure(string kind)
    {
        string[] names = ["nitrogen", "methane", "ethane", "propane", "isobutane"];
        HelmholtzModel model = kind == "cubic" ? CubicModel.Create(names) : ReferenceModel.Create(names);
        var flash = new Flash(model);
        var random = new Random(3);
        var failures = new List<string>();
        for (int i = 0; i < (kind == "cubic" ? 150 : 40); i++)
        {
            double[] x = [0.29, 0.40, 0.18, 0.08, 0.05];
            for (int k = 0; k < 5; k++) x[k] *= Math.Exp(1.2 * (random.NextDouble() - 0.5));
            double sum = x.Sum();
            for (int k = 0; k < 5; k++) x[k] /= sum;
            foreach (double pressure in new[] { 4.6e5, 18.508e5 })
                try
                {
                    var curve = new IsobarCurve(flash, x, pressure, 100, 300);
                    Assert.True(curve.TemperaturesK.Count > 20);
                }
                catch (Coldwright.Numerics.SolveException e)
                {
                    failures.Add($"{e.Message} | {string.Join(";", names.Zip(x, (n, v) => FormattableString.Invariant($"{n}={v:R}")))}");
                }
        }
        Assert.True(failures.Count == 0, $"{failures.Count}\n" + string.Join("\n", failures.Take(10)));
    }
}
