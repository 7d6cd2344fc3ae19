using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;
using Coldwright.Fluids.Substances;
using Coldwright.Fluids.Transport;
using Xunit;

namespace Coldwright.Verification;

/// <summary>
/// Transport properties where our method and the table's differ, and mixtures against published values. The deviations are printed; the limits are
/// stated uncertainties where there are any, else what was found (marked), so that a change is noticed.
/// </summary>
public sealed class TransportOtherMethodTests(ITestOutputHelper output)
{
    /// <summary>
    /// R22 and R32: residual entropy scaling (ours) against extended corresponding states (the table's). Limits: found, not stated. The two methods part
    /// company in liquids, most where it is cold.
    /// </summary>
    [Theory]
    [InlineData("R22", 0.43, 0.10)]
    [InlineData("R32", 0.42, 0.14)]
    public void Two_methods_for_one_fluid(string fluid, double viscosityLimit, double conductivityLimit)
    {
        var table = Table.Read("transport_points.csv");
        var transport = new TransportModel(ReferenceModel.Create([fluid]));
        var s = transport.Model.Substances[0];
        var found = new List<(string Where, double Viscosity, double Conductivity)>();
        foreach (var row in table.Rows.Where(r => table.Text(r, "fluid") == fluid))
        {
            double t = table.Number(row, "T_K"), rho = table.Number(row, "rho_mol_m3");
            var ours = transport.At(t, rho, [1]);
            string where = rho < 0.5 * s.CriticalDensity ? "gas" : t < 200 ? "liquid below 200 K" : rho > 1.5 * s.CriticalDensity ? "liquid from 200 K" : "near critical density";
            found.Add((where, ours.Viscosity.Value / table.Number(row, "mu_Pa_s") - 1, ours.Conductivity.Value / table.Number(row, "k_W_mK") - 1));
        }
        foreach (var g in found.GroupBy(f => f.Where))
        {
            var mu = g.Select(f => f.Viscosity).Where(double.IsFinite).DefaultIfEmpty().ToArray();
            var k = g.Select(f => f.Conductivity).Where(double.IsFinite).DefaultIfEmpty().ToArray();
            output.WriteLine($"{fluid} {g.Key}: viscosity {mu.Min():p1} to {mu.Max():p1}, conductivity {k.Min():p1} to {k.Max():p1} ({g.Count()} rows)");
        }
        Assert.All(found, f => Assert.True(!(Math.Abs(f.Viscosity) > viscosityLimit) && !(Math.Abs(f.Conductivity) > conductivityLimit), $"{f}"));
    }

    /// <summary>
    /// R410A and R407C (measured) and air (its own correlation) against the mixture methods. Viscosity: the authors state 8 % for two thirds of their data, so
    /// 12 % is the limit for each. Conductivity: 8.3 % for 95 %, without the critical enhancement; air at its critical point shows what that means.
    /// </summary>
    [Fact]
    public void Mixtures_against_published_values()
    {
        var table = Table.Read("transport_mixtures.csv");
        var bad = new List<string>();
        foreach (var row in table.Rows)
        {
            string mixture = table.Text(row, "mixture"), property = table.Text(row, "property"), given = table.Text(row, "given");
            double t = table.Number(row, "T_K"), value = table.Number(row, "value");
            var (names, x) = Composition(mixture);
            var model = ReferenceModel.Create(names);
            var (flash, transport) = (new Flash(model), new TransportModel(model));
            double rho = value;
            if (given == "p_Pa") rho = flash.TemperaturePressure(t, value, x).MolarDensity;
            if (given == "vapour_fraction")
            {
                var state = flash.TemperatureVapourFraction(t, value, x);
                rho = state.Phases.Single(p => p.Kind == PhaseKind.Vapour == (value == 1)).MolarDensity;
            }
            bool viscosity = property == "viscosity_Pa_s";
            double d = (viscosity ? transport.Viscosity(t, rho, x) : transport.Conductivity(t, rho, x)).Value / table.Number(row, "expected") - 1;
            output.WriteLine($"{mixture,-6} {t,7} K {given,-16} {value,8} {property,-18} {d,7:p1}");
            bool critical = mixture == "air" && t == 132.64 && !viscosity;
            if (critical ? d is not (> -0.65 and < -0.55) : !(Math.Abs(d) < (viscosity ? 0.12 : 0.083))) bad.Add($"{mixture} {t} K {given} {value} {property}: {d:p1}");
        }
        Assert.True(bad.Count == 0, string.Join("\n", bad));
    }

    private static (string[] Names, double[] X) Composition(string mixture)
    {
        (string[] names, double[] mass) = mixture switch
        {
            "R410A" => ((string[])["R32", "R125"], (double[])[0.5, 0.5]),
            "R407C" => (["R32", "R125", "R134a"], [0.23, 0.25, 0.52]),
            _ => (["nitrogen", "oxygen", "argon"], []),
        };
        if (mass.Length == 0) return (names, [0.7812, 0.2096, 0.0092]);
        double[] moles = [.. mass.Select((m, i) => m / SubstanceCatalog.Get(names[i]).MolarMass)];
        return (names, [.. moles.Select(m => m / moles.Sum())]);
    }

    /// <summary>
    /// Liquids of like molecules: the logarithm of viscosity mixes nearly in proportion (common practice). A guard
    /// against a wild mixture method, not a measurement.
    /// </summary>
    [Theory]
    [InlineData("nitrogen", "argon", 95)]
    [InlineData("nitrogen", "methane", 95)]
    [InlineData("argon", "methane", 95)]
    [InlineData("ethane", "propane", 180)]
    [InlineData("propane", "isobutane", 180)]
    [InlineData("methane", "ethylene", 120)]
    [InlineData("ethylene", "propane", 180)]
    public void Like_liquids_mix_nearly_in_the_logarithm(string a, string b, double t)
    {
        double Pure(string name)
        {
            var model = ReferenceModel.Create([name]);
            return new TransportModel(model).Viscosity(t, PureSaturation.AtTemperature(model, t).LiquidDensity, [1]).Value;
        }
        var mixed = ReferenceModel.Create([a, b]);
        var state = new Flash(mixed).TemperatureVapourFraction(t, 0, [0.5, 0.5]);
        double eta = new TransportModel(mixed).Viscosity(t, state.Phases[^1].MolarDensity, [0.5, 0.5]).Value, ratio = eta / Math.Sqrt(Pure(a) * Pure(b));
        output.WriteLine($"{a}+{b} {t} K: {ratio:f3}");
        Assert.InRange(ratio, 0.9, 1.12);
    }
}
