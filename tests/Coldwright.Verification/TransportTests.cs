using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Xunit;

namespace Coldwright.Verification;

/// <summary>Pure fluids: transport properties against tables of another program and against the values printed in the papers.</summary>
public sealed class TransportTests(ITestOutputHelper output)
{
    // The tables have R22 and R32 by extended corresponding states, we by residual entropy scaling: see TransportOtherMethodTests.
    private static readonly string[] OtherMethod = ["R22", "R32"];

    /// <summary>Why some tolerances are wider than 1e-4.</summary>
    private static double Tolerance(string fluid, string property) => (fluid, property) switch
    {
        // Friend and others (1989) switch to a scaled equation within 3 % of the critical point; we stay with the equation of state.
        ("methane", "k") => 4e-4,
        _ => 1e-4,
    };

    [Fact]
    public void The_same_correlations_give_the_same_values()
    {
        var table = Table.Read("transport_points.csv");
        var bad = new List<string>();
        foreach (var group in table.Rows.GroupBy(r => table.Text(r, "fluid")).Where(g => !OtherMethod.Contains(g.Key)))
        {
            var transport = new TransportModel(ReferenceModel.Create([group.Key]));
            var worst = new Dictionary<string, double> { ["mu"] = 0, ["k"] = 0 };
            foreach (var row in group)
            {
                double t = table.Number(row, "T_K"), rho = table.Number(row, "rho_mol_m3");
                Compare("mu", table.Number(row, "mu_Pa_s"), transport.Viscosity(t, rho, [1]).Value);
                Compare("k", table.Number(row, "k_W_mK"), transport.Conductivity(t, rho, [1]).Value);
                void Compare(string what, double expected, double ours)
                {
                    if (double.IsNaN(expected)) return;
                    double d = Math.Abs(ours / expected - 1);
                    worst[what] = Math.Max(worst[what], d);
                    if (!(d <= Tolerance(group.Key, what))) bad.Add($"{group.Key} {t} K {rho} mol/m3 {what}: {ours:g8}, table {expected:g8}");
                }
            }
            output.WriteLine($"{group.Key,-15} {group.Count(),4} rows, largest deviation: viscosity {worst["mu"]:e1}, conductivity {worst["k"]:e1}");
        }
        Assert.True(bad.Count == 0, $"{bad.Count}\n" + string.Join("\n", bad.Take(30)));
    }

    [Fact]
    public void Surface_tension_of_pure_fluids()
    {
        var table = Table.Read("transport_surface_tension.csv");
        foreach (var group in table.Rows.GroupBy(r => table.Text(r, "fluid")))
        {
            var model = ReferenceModel.Create([group.Key]);
            var (transport, flash, worst) = (new TransportModel(model), new Flash(model), 0.0);
            foreach (var row in group)
            {
                var state = flash.TemperatureVapourFraction(table.Number(row, "T_K"), 0.5, [1]);
                double sigma = transport.SurfaceTension(state.TemperatureK, state.Phases[1], state.Phases[0]).Value;
                worst = Math.Max(worst, Math.Abs(sigma / table.Number(row, "sigma_N_m") - 1));
            }
            output.WriteLine($"{group.Key,-15} {group.Count(),4} rows, largest deviation of surface tension {worst:e1}");
            Assert.True(worst < 1e-6, $"{group.Key}: {worst}");
        }
    }

    /// <summary>Values the authors printed so that others may check their programs.</summary>
    [Fact]
    public void Values_printed_in_the_papers()
    {
        var table = Table.Read("transport_published.csv");
        var bad = new List<string>();
        int count = 0;
        foreach (var row in table.Rows)
        {
            string fluid = table.Text(row, "fluid"), property = table.Text(row, "property");
            double t = table.Number(row, "T_K"), expected = table.Number(row, "expected"), value = table.Number(row, "value");
            var model = ReferenceModel.Create([fluid]);
            double rho = table.Text(row, "given") switch
            {
                "rho_mol_m3" => value,
                "rho_kg_m3" => value / model.Substances[0].MolarMass,
                "p_Pa" => new Flash(model).TemperaturePressure(t, value, [1]).MolarDensity,
                _ => value == 0 ? PureSaturation.AtTemperature(model, t).LiquidDensity : PureSaturation.AtTemperature(model, t).VapourDensity,
            };
            // Water within 0.1 K of its critical point: the enhancement of its viscosity, left out here, enters. 8 % at most.
            double tolerance = fluid == "water" && t == 647.35 && value is > 200 and < 500 ? 0.08 : table.Number(row, "tolerance");
            var transport = new TransportModel(model);
            double ours = property == "viscosity_Pa_s" ? transport.Viscosity(t, rho, [1]).Value : transport.Conductivity(t, rho, [1]).Value;
            count++;
            if (!(Math.Abs(ours / expected - 1) <= tolerance)) bad.Add($"{fluid} {t} K {value} {property}: {ours:g8}, printed {expected:g8} ({table.Text(row, "source")})");
        }
        output.WriteLine($"{count} printed values");
        Assert.True(bad.Count == 0, $"{bad.Count}\n" + string.Join("\n", bad.Take(30)));
    }
}
