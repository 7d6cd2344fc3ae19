using System.Globalization;
using Coldwright.Benchmarks;
using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.PhaseEquilibrium;
using Xunit;

namespace Coldwright.Fluids.Tests;

/// <summary>Every state at which the flash ever failed (tests/data/hard_cases.csv), checked independently.</summary>
public sealed class HardCases
{
    public static TheoryData<string, double, double, string, string> Rows()
    {
        var data = new TheoryData<string, double, double, string, string>();
        foreach (var line in File.ReadLines(Path.Combine(AppContext.BaseDirectory, "data", "hard_cases.csv")))
        {
            if (line.StartsWith('#') || line.StartsWith("model,", StringComparison.Ordinal)) continue;
            var cells = line.Split(',');
            data.Add(cells[0], double.Parse(cells[1], CultureInfo.InvariantCulture), double.Parse(cells[2], CultureInfo.InvariantCulture), cells[3], cells[4]);
        }
        return data;
    }

    [Theory, MemberData(nameof(Rows))]
    public void Has_a_certified_answer(string modelName, double temperatureK, double pressurePa, string mixture, string whatWentWrong)
    {
        var parts = mixture.Split(';').Select(p => p.Split('=')).ToArray();
        string[] names = parts.Select(p => p[0]).ToArray();
        double[] z = parts.Select(p => double.Parse(p[1], CultureInfo.InvariantCulture)).ToArray();
        HelmholtzModel model = modelName == "reference" ? ReferenceModel.Create(names) : CubicModel.Create(names);
        var flash = new Flash(model);
        var state = flash.TemperaturePressure(temperatureK, pressurePa, z);
        Assert.True(new IndependentCheck(model, 5).Fault(state, z) is null, $"{whatWentWrong}: {new IndependentCheck(model, 5).Fault(state, z)}");

        double h = flash.PressureEnthalpy(pressurePa, state.MolarEnthalpy, z).MolarEnthalpy;
        Assert.True(Math.Abs(h - state.MolarEnthalpy) < 1e-8 * model.GasConstant * 300, $"{whatWentWrong}: (p,h) closes to {h - state.MolarEnthalpy:0.0e+0} J/mol");
        double s = flash.PressureEntropy(pressurePa, state.MolarEntropy, z).MolarEntropy;
        Assert.True(Math.Abs(s - state.MolarEntropy) < 1e-8 * model.GasConstant, $"{whatWentWrong}: (p,s) closes to {s - state.MolarEntropy:0.0e+0} J/(mol K)");
    }
}
