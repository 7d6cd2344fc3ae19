using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;
using Coldwright.Fluids.Substances;
using Xunit;

namespace Coldwright.Verification;

/// <summary>
/// Pure fluids against tabulated values of the published equations (source lines in tests/data). Bands: 1e-5 relative
/// in density and pressure; caloric values 1e-5 relative or 0.1 J/mol (0.001 J/(mol K)); 1e-3 within 2 % of Tc and 20 % of
/// the critical density.
/// </summary>
public sealed class PureFluidTests
{
    private static bool NearCritical(Substance s, double t, double rho) =>
        Math.Abs(t / s.CriticalTemperatureK - 1) < 0.02 && Math.Abs(rho / s.CriticalDensity - 1) < 0.2;

    private static void Compare(List<string> bad, string where, double expected, double actual, double relative, double absolute = 0)
    {
        if (double.IsNaN(expected)) return;
        if (!(Math.Abs(expected - actual) <= Math.Max(relative * Math.Abs(expected), absolute))) bad.Add($"{where}: table {expected:R}, ours {actual:R}");
    }

    [Theory]
    [InlineData("saturation_points.csv", 1e-7)]
    [InlineData("saturation_points_extended_precision.csv", 1e-9)]
    public void Saturation_line_of_all_fluids(string file, double tolerance)
    {
        var table = Table.Read(file);
        var bad = new List<string>();
        foreach (var row in table.Rows)
        {
            var name = table.Text(row, "fluid");
            double t = table.Number(row, "T_K");
            var point = PureSaturation.AtTemperature(ReferenceModel.Create([name]), t);
            Compare(bad, $"{name} {t} K pressure", table.Number(row, "p_Pa"), point.PressurePa, tolerance);
            Compare(bad, $"{name} {t} K liquid", table.Number(row, "rho_liquid_mol_m3"), point.LiquidDensity, tolerance);
            Compare(bad, $"{name} {t} K vapour", table.Number(row, "rho_vapour_mol_m3"), point.VapourDensity, tolerance);
        }
        Assert.True(bad.Count == 0, $"{bad.Count} of {table.Rows.Count}\n" + string.Join("\n", bad.Take(20)));
    }

    [Fact]
    public void Single_phase_states()
    {
        var table = Table.Read("pure_single_phase.csv");
        var bad = new List<string>();
        foreach (var group in table.Rows.GroupBy(r => table.Text(r, "fluid")))
        {
            var model = ReferenceModel.Create([group.Key]);
            var flash = new Flash(model);
            foreach (var row in group)
            {
                double t = table.Number(row, "T_K"), p = table.Number(row, "p_Pa"), rho = table.Number(row, "rho_mol_m3");
                var phase = flash.TemperaturePressure(t, p, [1]).Phases.Single();
                double r = NearCritical(model.Substances[0], t, rho) ? 1e-3 : 1e-5;
                string where = $"{group.Key} {t} K {p} Pa";
                Compare(bad, where + " density", rho, phase.MolarDensity, r);
                Compare(bad, where + " enthalpy", table.Number(row, "h_rel_J_mol"), phase.MolarEnthalpy, r, 0.1);
                Compare(bad, where + " entropy", table.Number(row, "s_rel_J_molK"), phase.MolarEntropy, r, 1e-3);
                Compare(bad, where + " cp", table.Number(row, "cp_J_molK"), phase.MolarHeatCapacity, r, 1e-3);
                Compare(bad, where + " cv", table.Number(row, "cv_J_molK"), phase.MolarIsochoricHeatCapacity, r, 1e-3);
                Compare(bad, where + " speed of sound", table.Number(row, "w_m_s"), phase.SpeedOfSound, r);
            }
        }
        Assert.True(bad.Count == 0, $"{bad.Count}\n" + string.Join("\n", bad.Take(30)));
    }

    [Fact]
    public void Saturated_states()
    {
        var table = Table.Read("pure_saturation.csv");
        var bad = new List<string>();
        foreach (var group in table.Rows.GroupBy(r => table.Text(r, "fluid")))
        {
            var model = ReferenceModel.Create([group.Key]);
            var flash = new Flash(model);
            foreach (var row in group)
            {
                double t = table.Number(row, "T_K");
                var state = flash.TemperatureVapourFraction(t, 0.5, [1]);
                PhaseState v = state.Phases[0], l = state.Phases[1];
                bool near = NearCritical(model.Substances[0], t, l.MolarDensity) || NearCritical(model.Substances[0], t, v.MolarDensity);
                double r = near ? 1e-3 : 1e-5;
                string where = $"{group.Key} {t} K";
                Compare(bad, where + " pressure", table.Number(row, "p_Pa"), state.PressurePa, r);
                Compare(bad, where + " liquid density", table.Number(row, "rho_liquid_mol_m3"), l.MolarDensity, r);
                Compare(bad, where + " vapour density", table.Number(row, "rho_vapour_mol_m3"), v.MolarDensity, r);
                Compare(bad, where + " liquid enthalpy", table.Number(row, "h_l_rel_J_mol"), l.MolarEnthalpy, r, 0.1);
                Compare(bad, where + " vapour enthalpy", table.Number(row, "h_v_rel_J_mol"), v.MolarEnthalpy, r, 0.1);
                Compare(bad, where + " liquid entropy", table.Number(row, "s_l_rel_J_molK"), l.MolarEntropy, r, 1e-3);
                Compare(bad, where + " vapour entropy", table.Number(row, "s_v_rel_J_molK"), v.MolarEntropy, r, 1e-3);
                Compare(bad, where + " liquid cp", table.Number(row, "cp_l_J_molK"), l.MolarHeatCapacity, r, 1e-3);
                Compare(bad, where + " vapour cp", table.Number(row, "cp_v_J_molK"), v.MolarHeatCapacity, r, 1e-3);
            }
        }
        Assert.True(bad.Count == 0, $"{bad.Count}\n" + string.Join("\n", bad.Take(30)));
    }
}
