using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Xunit;

namespace Coldwright.Verification;

/// <summary>
/// Critical points of the pure equations. The figures of 2a are those of the papers named in <see cref="LiquefactionTests"/>;
/// the numerical ones (dp/drho = d2p/drho2 = 0) come with the superancillary expansions of Bell and Alpert.
/// </summary>
public sealed class CriticalPointTests
{
    /// <summary>Critical temperature (K) and pressure (bar) as published; the pressure follows from the equation at the critical density.</summary>
    [Theory]
    [InlineData("nitrogen", 126.192, 33.958)]
    [InlineData("argon", 150.687, 48.630)]
    [InlineData("oxygen", 154.581, 50.430)]
    [InlineData("methane", 190.564, 45.992)]
    [InlineData("ethylene", 282.350, 50.418)]
    [InlineData("ethane", 305.322, 48.722)]
    [InlineData("propylene", 364.211, 45.550)]
    [InlineData("propane", 369.890, 42.512)]
    [InlineData("isobutane", 407.817, 36.290)]
    [InlineData("butane", 425.125, 37.960)]
    [InlineData("R23", 299.293, 48.320)]
    [InlineData("krypton", 209.480, 55.250)]
    public void Published_critical_points(string name, double temperatureK, double bar)
    {
        var model = ReferenceModel.Create([name]);
        var s = model.Substances[0];
        var e = model.CreateEvaluation();
        e.SetIsotherm(s.CriticalTemperatureK, [1]);
        double p = e.ReducedPressure(s.CriticalDensity, out double slope) * e.GasConstant * s.CriticalTemperatureK / 1e5;
        // isobutane's paper has 407.81 K, the table 407.817 K
        Assert.True(Math.Abs(s.CriticalTemperatureK - temperatureK) < (name == "isobutane" ? 8e-3 : 2e-3), $"{name}: {s.CriticalTemperatureK} K");
        Assert.True(Math.Abs(p / bar - 1) < 1e-3, $"{name}: {p} bar");
        Assert.True(Math.Abs(slope) < 0.02, $"{name}: slope {slope}");
    }

    [Fact]
    public void Numerical_critical_points_of_all_equations()
    {
        var table = Table.Read("numerical_critical_points.csv");
        var bad = new List<string>();
        foreach (var row in table.Rows)
        {
            string name = table.Text(row, "fluid");
            double t = table.Number(row, "T_K"), rho = table.Number(row, "rho_mol_m3");
            var e = ReferenceModel.Create([name]).CreateEvaluation();
            e.SetIsotherm(t, [1]);
            e.ReducedPressure(rho, out double slope);
            e.ReducedPressure(rho * 1.01, out double above);
            e.ReducedPressure(rho * 0.99, out double below);
            // dp/drho vanishes and has its minimum there
            if (!(Math.Abs(slope) < 1e-6 && above > 0 && below > 0)) bad.Add($"{name} {t} K: slope {slope:0.0e+0}, {below:0.0e+0} below, {above:0.0e+0} above");
        }
        Assert.True(bad.Count == 0, string.Join("\n", bad));
    }

    /// <summary>The saturation line closes at the critical point: both densities within 20 % of it a thousandth below.</summary>
    [Theory]
    [InlineData("nitrogen"), InlineData("argon"), InlineData("methane"), InlineData("ethane"), InlineData("propane"), InlineData("R23")]
    public void Saturation_ends_at_the_critical_point(string name)
    {
        var model = ReferenceModel.Create([name]);
        var s = model.Substances[0];
        var point = PureSaturation.AtTemperature(model, s.CriticalTemperatureK * 0.9999);
        Assert.InRange(point.LiquidDensity / s.CriticalDensity, 1.0, 1.25);
        Assert.InRange(point.VapourDensity / s.CriticalDensity, 0.75, 1.0);
        Assert.Throws<Coldwright.Numerics.SolveException>(() => PureSaturation.AtTemperature(model, s.CriticalTemperatureK * 1.01));
    }
}
