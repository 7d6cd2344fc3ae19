using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.Throttling;

namespace Coldwright.Machine.Tests.Throttling;

/// <summary>Valves by flow coefficient.</summary>
public class ValveTests(ITestOutputHelper output)
{
    private static ValveResult Flow(string[] names, double[] z, double t, double p, double back, ControlValve valve)
    {
        var flash = new Flash(ReferenceModel.Create(names));
        return new ValveModel(flash, new TransportModel(flash.Model)).Flow(valve, ThrottleInlet.Of(flash.TemperaturePressure(t, p, z)), back, TestContext.Current.CancellationToken);
    }

    [Fact]
    public void Liquid_example_of_the_standard()
    {
        // IEC 60534-2-1 / ISA-75.01.01 Example 1, as printed in the documentation of the open library fluids: water 965.4 kg/m3, pv 70.1 kPa,
        // pc 22120 kPa, 680 to 220 kPa, 360 m3/h, FL 0.9 -> Kv 165 (164.9954763704956)
        double area = new ControlValve { Kv = 100 }.EffectiveAreaM2 * 1.649954763704956;
        Assert.Equal(0.1 * 965.4, ControlValveEquations.Liquid(area, 965.4, 680e3, 220e3, 70.1e3, 22120e3, 0.9), 0.01);
        // Example 2, segmented ball, FL 0.6, choked: Kv 238 (238.05817216710483)
        Assert.Equal(0.1 * 965.4, ControlValveEquations.Liquid(area * 238.05817216710483 / 164.9954763704956, 965.4, 680e3, 220e3, 70.1e3, 22120e3, 0.6), 0.02);
    }

    [Theory]
    [InlineData(19.9e5)]
    [InlineData(17e5)]
    [InlineData(12e5)]
    [InlineData(8e5)]
    [InlineData(2e5)]
    public void Gas_agrees_with_the_standard(double back)
    {
        var r = Flow(["nitrogen"], [1], 300, 20e5, back, new ControlValve { Kv = 0.02 });
        output.WriteLine($"{back / 1e5} bar: {r.MassFlowKgPerS * 3600:0.0000} kg/h, standard {r.StandardMassFlowKgPerS * 3600:0.0000}");
        Assert.Equal(1, r.MassFlowKgPerS / r.StandardMassFlowKgPerS!.Value, 0.02);
    }

    [Theory]
    [InlineData(300, 11e5, 0.005)]
    [InlineData(300, 1e5, 0.09)]
    [InlineData(308, 1e5, 0.06)]
    [InlineData(317.5, 1e5, 0.04)]
    public void Liquid_agrees_with_the_standard_flashing_or_not(double t, double back, double within)
    {
        var r = Flow(["R134a"], [1], t, 11.6e5, back, new ControlValve { Kv = 0.02 });
        output.WriteLine($"{t} K {back / 1e5} bar: {r.MassFlowKgPerS * 3600:0.000} kg/h, standard {r.StandardMassFlowKgPerS * 3600:0.000}, equilibrium {r.EquilibriumMassFlowKgPerS * 3600:0.000}");
        Assert.Equal(1, r.MassFlowKgPerS / r.StandardMassFlowKgPerS!.Value, within);
        Assert.True(r.EquilibriumMassFlowKgPerS <= r.MassFlowKgPerS * 1.001);
    }

    [Fact]
    public void Two_phase_equilibrium_flow_agrees_with_omega()
    {
        // Leung (1986), omega from two points on the isentrope (API 520 part I annex C): both from memory
        var flash = new Flash(ReferenceModel.Create(["methane", "propane"]));
        var state = flash.TemperaturePressure(230, 20e5, [0.5, 0.5]);
        Assert.Equal("vapour+liquid", state.PhaseNames);
        var nine = flash.PressureEntropy(18e5, state.MolarEntropy, [0.5, 0.5], 228);
        double v0 = 1 / (state.MolarDensity * state.MolarMass), omega = OmegaMethod.Omega(v0, 1 / (nine.MolarDensity * nine.MolarMass));
        var r = new ValveModel(flash, new TransportModel(flash.Model)).Flow(new ControlValve { Kv = 0.02, LateFlashing = 0 }, ThrottleInlet.Of(state), 1e5, TestContext.Current.CancellationToken);
        double flux = r.MassFlowKgPerS / r.ThroatAreaM2, expected = OmegaMethod.CriticalFlux(omega, 20e5, v0);
        output.WriteLine($"omega {omega:0.000}: {flux:0} against {expected:0} kg/(m2 s), throat {r.ThroatPressurePa / 20e5:0.000} against {OmegaMethod.CriticalRatio(omega):0.000}");
        Assert.Equal(1, flux / expected, 0.02);
        Assert.Equal(OmegaMethod.CriticalRatio(omega), r.ThroatPressurePa / 20e5, 0.02);
        Assert.Null(r.StandardMassFlowKgPerS);
    }

    [Fact]
    public void Isothermal_gas_is_omega_one() => Assert.Equal(Math.Exp(-0.5), OmegaMethod.CriticalRatio(1), 1e-6);

    [Fact]
    public void Flow_falls_without_jumps_from_liquid_through_two_phases_to_gas()
    {
        var model = ReferenceModel.Create(["R134a"]);
        var flash = new Flash(model);
        var half = flash.PressureVapourFraction(10e5, 0.5, [1]);
        double liquid = half.Phases[1].MolarEnthalpy, heat = half.Phases[0].MolarEnthalpy - liquid, last = double.NaN;
        var valve = new ValveModel(flash, new TransportModel(model));
        for (double x = -0.05; x <= 1.06; x += 0.01)
        {
            double flow = valve.Flow(new ControlValve { Kv = 0.02 }, new ThrottleInlet(10e5, liquid + x * heat, half.TemperatureK, [1]), 2e5, TestContext.Current.CancellationToken).MassFlowKgPerS;
            if (last > 0) Assert.InRange(flow / last, 0.80, 1.03);
            last = flow;
        }
    }

    [Fact]
    public void Opening_units_and_required_coefficient_are_consistent()
    {
        var valve = new ControlValve { Kv = 0.02 };
        double full = Flow(["nitrogen"], [1], 300, 20e5, 2e5, valve).MassFlowKgPerS;
        Assert.Equal(0.25, Flow(["nitrogen"], [1], 300, 20e5, 2e5, valve with { Opening = 0.25 }).MassFlowKgPerS / full, 1e-9);
        Assert.Equal(0.865, ControlValve.OfCv(1).Kv);
        var flash = new Flash(ReferenceModel.Create(["nitrogen"]));
        double kv = new ValveModel(flash, new TransportModel(flash.Model)).RequiredKv(valve, ThrottleInlet.Of(flash.TemperaturePressure(300, 20e5, [1])), 2e5, 2 * full, TestContext.Current.CancellationToken);
        Assert.Equal(0.04, kv, 1e-9);
        Assert.Contains("Opening", Assert.Throws<ArgumentException>(() => Flow(["nitrogen"], [1], 300, 20e5, 2e5, valve with { Opening = 1.2 })).Message);
        Assert.Contains("Kv", Assert.Throws<ArgumentException>(() => Flow(["nitrogen"], [1], 300, 20e5, 2e5, valve with { Kv = 0 })).Message);
    }
}
