using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Numerics.Scalars;
using Xunit;

namespace Coldwright.Fluids.Tests;

/// <summary>The hand-written derivatives of each model against hyper-dual numbers put through its generic text.</summary>
public sealed class HelmholtzDerivativesTests
{
    public static TheoryData<string, string> Cases()
    {
        var data = new TheoryData<string, string>();
        foreach (var model in new[] { "reference", "cubic" })
            foreach (var mixture in new[]
            {
                "nitrogen", "carbon-dioxide", "R125", "R14", "water",
                "nitrogen,methane", "nitrogen,methane,ethane,propane,isobutane", "argon,helium,neon,R14,R23,carbon-dioxide,water",
                "R32,R125,R134a,R1234yf,ethylene,propylene,oxygen,krypton", "helium,krypton,methane,R22", "R22,R23,R14,argon,isopentane,pentane", "xenon,hydrogen,neon,butane,R22",
            })
                data.Add(model, mixture);
        return data;
    }

    public static HelmholtzModel Model(string model, string[] names) =>
        model == "reference" ? ReferenceModel.Create(names) : CubicModel.Create(names);

    [Theory, MemberData(nameof(Cases))]
    public void Hand_written_derivatives_equal_the_generic_ones(string modelName, string mixture)
    {
        var model = Model(modelName, mixture.Split(','));
        int n = model.Count;
        var random = new Random(7);
        var e = model.CreateEvaluation();
        for (int trial = 0; trial < 12; trial++)
        {
            double temperature = 80 + 340 * random.NextDouble();
            var x = Enumerable.Range(0, n).Select(_ => trial % 3 == 0 ? Math.Pow(10, -8 * random.NextDouble()) : random.NextDouble()).ToArray();
            double sum = x.Sum();
            for (int i = 0; i < n; i++) x[i] /= sum;
            e.SetIsotherm(temperature, x);
            double density = e.DensityLimit * (0.001 + 0.75 * random.NextDouble());

            double f = e.ReducedPressure(density, out double slope);
            var rho = Second(model, x, temperature, density, (0, 1), (0, 1));
            Close(density * (1 + density * rho.First), f, "pressure", Math.Abs(density * density * rho.First) + density);
            Close(1 + 2 * density * rho.First + density * density * rho.Mixed, slope, "slope", Math.Abs(density * density * rho.Mixed));

            e.Caloric(density);
            var t = Second(model, x, temperature, density, (1, 0), (1, 0));
            Close(t.Value, e.A, "alphar");
            Close(temperature * t.First, e.ATemperature, "T a_T");
            Close(temperature * temperature * t.Mixed, e.ATemperature2, "T2 a_TT");
            Close(temperature * density * Second(model, x, temperature, density, (1, 0), (0, 1)).Mixed, e.ATemperatureDensity, "T rho a_Trho");

            e.Hessian(density);
            for (int k = 0; k < n; k++)
                for (int l = 0; l <= k; l++)
                {
                    var psi = Concentrations(model, x, temperature, density, k, l);
                    Close(psi.First, e.G[k], $"G[{k}]");
                    double scale = x[k] * x[l] < 1e-10 ? 10 : 1;
                    Close(density * psi.Mixed, e.H[k * n + l], $"H[{k},{l}]", scale * Math.Abs(e.H[k * n + l]) + 1);
                }
        }
    }

    private static void Close(double expected, double actual, string what, double scale = double.NaN)
    {
        double s = double.IsNaN(scale) ? Math.Abs(expected) + 1e-3 : scale;
        Assert.True(Math.Abs(expected - actual) <= 2e-10 * s, $"{what}: generic {expected:R}, hand-written {actual:R}");
    }

    private static HyperDual Second(HelmholtzModel model, double[] x, double t, double rho, (double T, double Rho) first, (double T, double Rho) second)
    {
        var y = x.Select(v => HyperDual.From(v)).ToArray();
        return model.ResidualHelmholtz(new HyperDual(t, first.T, second.T, 0), new HyperDual(rho, first.Rho, second.Rho, 0), y);
    }

    // psi = rho alphar(T, rho, x) with x = rho_i/rho, differentiated along two molar concentrations
    private static HyperDual Concentrations(HelmholtzModel model, double[] x, double t, double rho, int k, int l)
    {
        var c = x.Select((v, i) => new HyperDual(v * rho, i == k ? 1 : 0, i == l ? 1 : 0, 0)).ToArray();
        var total = HyperDual.From(0);
        foreach (var ci in c) total += ci;
        var y = c.Select(ci => ci / total).ToArray();
        return total * model.ResidualHelmholtz(HyperDual.From(t), total, y);
    }
}
