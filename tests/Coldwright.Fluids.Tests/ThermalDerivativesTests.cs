using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.PhaseEquilibrium;
using Xunit;

namespace Coldwright.Fluids.Tests;

/// <summary>
/// Hand-written temperature derivatives of the residual chemical potentials against differences, and (p,h) and (p,s) flashes started
/// from a neighbour against (T,p) flashes.
/// </summary>
public sealed class ThermalDerivativesTests
{
    private static readonly string[] Names = ["nitrogen", "methane", "ethane", "propane", "isobutane"];
    private static readonly double[] Charge = [0.30, 0.25, 0.18, 0.15, 0.12];

    private static HelmholtzModel Model(string kind) => kind == "reference" ? ReferenceModel.Create(Names) : CubicModel.Create(Names);

    [Theory]
    [InlineData("reference", 300, 150)]
    [InlineData("reference", 110, 17000)]
    [InlineData("cubic", 300, 150)]
    [InlineData("cubic", 110, 17000)]
    public void Chemical_potentials_follow_temperature(string kind, double t, double density)
    {
        var e = Model(kind).CreateEvaluation();
        const double Step = 1e-4;
        double[] At(double kelvin)
        {
            e.SetIsotherm(kelvin, Charge);
            e.Gradient(density);
            return [.. e.G];
        }

        double[] below = At(t * (1 - Step)), above = At(t * (1 + Step));
        e.SetIsotherm(t, Charge);
        e.Thermal(density);
        for (int i = 0; i < Names.Length; i++)
        {
            double difference = (above[i] - below[i]) / (2 * Step);
            Assert.True(Math.Abs(e.GTemperature[i] - difference) < 1e-6 * (1 + Math.Abs(difference)), $"{Names[i]}: {e.GTemperature[i]} and {difference}");
        }
    }

    /// <summary>Along isenthalps and isentropes through one, two and three phases every answer is that of a fresh flash at its temperature.</summary>
    [Theory]
    [InlineData("reference", true)]
    [InlineData("reference", false)]
    [InlineData("cubic", true)]
    [InlineData("cubic", false)]
    public void Neighbours_lead_to_the_same_state(string kind, bool enthalpy)
    {
        var model = Model(kind);
        var (flash, fresh) = (new Flash(model), new Flash(model));
        int most = 0;
        foreach (double t in new[] { 108.0, 125, 180, 270 })
        {
            var start = flash.TemperaturePressure(t, 18.5e5, Charge);
            double target = enthalpy ? start.MolarEnthalpy : start.MolarEntropy;
            for (double p = 18.5e5; p > 2e5; p *= 0.93)
            {
                var state = enthalpy ? flash.PressureEnthalpy(p, target, Charge) : flash.PressureEntropy(p, target, Charge);
                var again = fresh.TemperaturePressure(state.TemperatureK, p, Charge);
                double scale = model.GasConstant * (enthalpy ? 300 : 1), found = enthalpy ? again.MolarEnthalpy : again.MolarEntropy;
                Assert.True(Math.Abs(found - target) < 1e-7 * scale, $"{p} Pa from {t} K: {found} for {target} ({state.PhaseNames} {again.PhaseNames})");
                Assert.Equal(again.Phases.Count, state.Phases.Count);
                most = Math.Max(most, state.Phases.Count);
            }
        }
        Assert.Equal(3, most);
    }
}
