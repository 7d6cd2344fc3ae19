using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.Flow;
using Coldwright.Machine.Throttling;

namespace Coldwright.Machine.Tests.Throttling;

/// <summary>Limits with exact answers: ideal gas in a nozzle and with friction, liquid without flashing.</summary>
public class FannoTests(ITestOutputHelper output)
{
    private const double Gamma = 5.0 / 3;
    private static readonly MultiFluidModel Argon = ReferenceModel.Create(["argon"]);
    private readonly Flash _flash = new(Argon);

    private CapillaryModel Model(CapillaryResolution? fine = null) => new(_flash, new TransportModel(Argon)) { Resolution = fine ?? CapillaryResolution.Default };

    // 0.2 bar: ideal within 0.02 %
    private ThrottleInlet Inlet(double pressurePa = 0.2e5) => ThrottleInlet.Of(_flash.TemperaturePressure(300, pressurePa, [1]));

    [Fact]
    public void Short_smooth_tube_passes_the_critical_flow_of_an_ideal_gas()
    {
        // A. H. Shapiro, Compressible Fluid Flow I (1953), ch. 4
        var result = Model().Flow(new CapillaryTube { BoreM = 0.02, LengthM = 1e-6, EntranceLoss = 0, RoughnessM = 0 }, Inlet(), 0.05e5, TestContext.Current.CancellationToken);
        double exact = IdealGasCriticalFlow.MassFlux(Gamma, 0.2e5, 300, 0.039948);
        Assert.True(result.Choked);
        Assert.Equal(1, result.MassFlux / exact, 1.5e-3);
    }

    [Fact]
    public void Printed_critical_state_of_an_ideal_gas()
    {
        // documentation of the open library fluids, which says it matches a printed example (12.4): T0 473 K, k 1.289 -> T* 413.281 K;
        // p0 14 bar -> p* 7.66813 bar
        Assert.Equal(413.281, 473 * IdealGasCriticalFlow.TemperatureRatio(1.289), 5e-4);
        Assert.Equal(7.66813, 14 * IdealGasCriticalFlow.PressureRatio(1.289), 5e-6);
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(2)]
    [InlineData(20)]
    public void Choked_length_is_that_of_fanno(double metres)
    {
        // Shapiro, ch. 6: f L*/D = (1-M^2)/(gamma M^2) + (gamma+1)/(2 gamma) ln[(gamma+1) M^2/(2 + (gamma-1) M^2)], f of Darcy
        var tube = new CapillaryTube { BoreM = 0.004, LengthM = metres, EntranceLoss = 0, RoughnessM = 4e-4 };
        var result = Model().Flow(tube, Inlet(1e5), 0.004e5, TestContext.Current.CancellationToken);
        double p1 = result.EntrancePressurePa, v1 = result.Profile[0].SpecificVolume, w = result.Profile[0].VelocityMPerS;
        double m2 = w * w / (Gamma * p1 * v1);
        double exact = (1 - m2) / (Gamma * m2) + (Gamma + 1) / (2 * Gamma) * Math.Log((Gamma + 1) * m2 / (2 + (Gamma - 1) * m2));
        // the wall is so rough that f hardly follows the Reynolds number; its mean along the length is taken
        double mean = result.Profile.Zip(result.Profile.Skip(1)).Sum(x => 0.5 * (x.First.FrictionFactor + x.Second.FrictionFactor) * (x.Second.PositionM - x.First.PositionM)) / result.Profile[^1].PositionM;
        output.WriteLine($"M1 {Math.Sqrt(m2):0.0000}, f L/D {mean * metres / 0.004:0.0000}, Fanno {exact:0.0000}, exit {result.ExitPressurePa:0} Pa");
        Assert.True(result.Choked);
        Assert.Equal(1, mean * metres / 0.004 / exact, 1e-3);
    }

    [Fact]
    public void Liquid_without_flashing_follows_darcy()
    {
        var flash = new Flash(ReferenceModel.Create(["propane"]));
        var transport = new TransportModel(flash.Model);
        var state = flash.TemperaturePressure(220, 10e5, [1]);
        var tube = new CapillaryTube { BoreM = 1e-3, LengthM = 3 };
        var result = new CapillaryModel(flash, transport).Flow(tube, ThrottleInlet.Of(state), 2e5, TestContext.Current.CancellationToken);
        double rho = state.MolarDensity * state.MolarMass, mu = transport.Viscosity(220, state.MolarDensity, [1]).Value, g = result.MassFlux;
        double f = Friction.Churchill(g * 1e-3 / mu, tube.RoughnessM / 1e-3), drop = (f * 3 / 1e-3 + 1.5) * g * g / (2 * rho);
        Assert.False(result.Choked);
        Assert.Equal(1, drop / 8e5, 2e-3);
        Assert.Equal(2e5, result.ExitPressurePa, 1);
    }

    [Fact]
    public void Refined_grid_converges_at_second_order()
    {
        var pub = new PublishedCapillaryFlow("R134a");
        var inlet = ThrottleInlet.Of(pub.Flash.TemperaturePressure(313.15, 11.6e5, [1]));
        double Flow(int cells) => new CapillaryModel(pub.Flash, pub.Transport) { Resolution = new(24, cells) }
            .Flow(new CapillaryTube { BoreM = 0.66e-3, LengthM = 2 }, inlet, 4e5, TestContext.Current.CancellationToken).MassFlowKgPerS;
        double exact = Flow(64), coarse = Math.Abs(Flow(1) - exact), fine = Math.Abs(Flow(2) - exact), finer = Math.Abs(Flow(4) - exact);
        output.WriteLine($"errors {coarse / exact:0.0e0} {fine / exact:0.0e0} {finer / exact:0.0e0}: order {Math.Log2(coarse / fine):0.00}, {Math.Log2(fine / finer):0.00}");
        Assert.InRange(Math.Log2(coarse / finer) / 2, 1.7, 2.4);
    }
}
