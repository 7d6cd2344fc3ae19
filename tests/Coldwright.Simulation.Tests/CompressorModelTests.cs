using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Machine.Compression;
using Coldwright.Machine.Description;
using Xunit;

namespace Coldwright.Simulation.Tests;

/// <summary>Flow, work and discharge temperature of the compressor.</summary>
public sealed class CompressorModelTests
{
    private static CompressorPart Part(double clearance = 0.05) => new()
    {
        Name = "c", Type = CompressorType.Reciprocating, DisplacementM3 = 10e-6, SpeedRevPerS = 50, ClearanceFraction = clearance,
        IsentropicEfficiency = [(1, 0.78)], MotorEfficiency = 1, MaximumDischargeTemperatureK = 400,
    };

    // clearance formula 1 - c (r^(1/n) - 1) of the textbooks (Stoecker and Jones, Refrigeration and Air Conditioning, 1982,
    // ch. 11): dilute nitrogen re-expands with n = k = 1.4
    [Fact]
    public void Volumetric_efficiency_tends_to_the_textbook_formula_for_a_dilute_gas()
    {
        var model = new CompressorModel(Part(), new Flash(ReferenceModel.Create(["nitrogen"])), [1]);
        double r = 4.38;
        Assert.Equal(1 - 0.05 * (Math.Pow(r, 1 / 1.4) - 1), model.Run(300, 0.5e5, r * 0.5e5).VolumetricEfficiency, 1e-3);
    }

    // worked value of isentropic compression, 1 to 10 bar at 300 K, k = 1.4, efficiency 0.78: 10416.877 J/mol (ideal gas;
    // textbook formula, figure reproduced in the open library "fluids"); nitrogen is close to that gas
    [Fact]
    public void Work_of_a_nearly_ideal_gas()
    {
        var r = new CompressorModel(Part(0), new Flash(ReferenceModel.Create(["nitrogen"])), [1]).Run(300, 1e5, 10e5);
        Assert.Equal(10416.877, r.ElectricalPowerW / r.MolarFlow, 0.01 * 10416.877);
    }

    [Fact]
    public void Energy_of_the_compressor_closes()
    {
        var part = Part() with { ShellHeatFraction = 0.6, SuctionHeatingK = 10, MotorEfficiency = 0.8 };
        var r = new CompressorModel(part, new Flash(ReferenceModel.Create(["nitrogen", "methane"])), [0.4, 0.6]).Run(290, 2e5, 15e5);
        Assert.Equal(r.ElectricalPowerW, r.MolarFlow * (r.Discharge.MolarEnthalpy - r.Suction.MolarEnthalpy) + r.ShellHeatW, 1e-6 * r.ElectricalPowerW);
        Assert.True(r.Discharge.TemperatureK > r.Suction.TemperatureK);
    }

    // common practice: throttling a typical mixture that enters as gas, once, from about 28 to 1.5 bar at 300 K cools it by 15 to 30 K
    [Fact]
    public void One_throttling_of_a_gas_mixture_cools_by_some_twenty_kelvin()
    {
        double[] z = [0.35, 0.33, 0.18, 0.09, 0.05];
        var flash = new Flash(ReferenceModel.Create(["nitrogen", "methane", "ethane", "propane", "isobutane"]));
        var before = flash.TemperaturePressure(300, 28e5, z);
        Assert.Equal(1, before.VapourFraction);
        Assert.InRange(300 - flash.PressureEnthalpy(1.5e5, before.MolarEnthalpy, z).TemperatureK, 15, 30);
    }
}
