using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.Streams;
using Coldwright.Simulation.ClosedLoop;
using Coldwright.Simulation.Cooldown;
using Xunit;

namespace Coldwright.Simulation.Tests.Cooldown;

/// <summary>The tabulated run against one in which every property is a flash of the model, and that one against certified flashes.</summary>
public sealed class DirectTests
{
    private static (CooldownRun Tables, CooldownRun Direct) Both(string example, bool cubic, int cells, int insulation, double? fromK, double endS)
    {
        var folder = Coolers.Folder(example);
        var names = folder.Machine!.Charge.Mixture.Names;
        HelmholtzModel model = cubic ? CubicModel.Create(names) : ReferenceModel.Create(names);
        var hardware = HardwareReader.Read(folder.Machine, folder.Layout!, model, TestContext.Current.CancellationToken);
        var maker = new LoopMapMaker(hardware, model, StreamTableOptions.Default, TestContext.Current.CancellationToken);
        CooldownRun Run(bool direct)
        {
            var run = new CooldownRun(new Plant(hardware, cells, insulation, 0), maker, new CooldownOptions { Direct = direct }, PlantParameters.Nominal(), null, TestContext.Current.CancellationToken);
            run.Start(fromK);
            run.To(endS, null, null);
            Assert.Null(run.Stopped);
            Assert.Equal(endS, run.TimeS, 1e-9);
            Assert.True(run.EnergyError < 1e-9, $"{run.EnergyError}");
            return run;
        }

        return (Run(false), Run(true));
    }

    [Theory]
    [InlineData("stops-pinch", true, 24, 10, 170.0, 600.0)]
    [InlineData("workshop", false, 40, 14, null, 4 * 3600.0)]
    public void Temperatures_pressures_and_watts_are_the_direct_models(string example, bool cubic, int cells, int insulation, double? fromK, double endS)
    {
        var (tabulated, direct) = Both(example, cubic, cells, insulation, fromK, endS);
        TestContext.Current.TestOutputHelper?.WriteLine($"{example}: {direct.HeatResidual} of the cooling, balances {direct.WorstDrift}, {direct.DirectEvaluations} evaluations, {direct.Flashes}; load {tabulated.LoadK} and {direct.LoadK} K");
        // at moments between those it was brought to flashes at
        Assert.True(direct.HeatResidual is > 0 and < 5e-3 && direct.WorstDrift < 2e-3, $"{direct.HeatResidual} {direct.WorstDrift}");
        var (followed, certified, astray) = direct.Flashes;
        Assert.True(followed > certified && astray == 0, $"{followed} {certified} {astray}");
        PlantPoint a = tabulated.Point(tabulated.State), b = direct.Point(direct.State);
        Assert.Equal(b.LoadK, a.LoadK, 0.15);
        Assert.Equal(b.ThrottleK, a.ThrottleK, 0.3);
        Assert.Equal(b.RecuperatorInletK, a.RecuperatorInletK, 0.3);
        Assert.Equal(1, a.HighPa / b.HighPa, 1e-3);
        Assert.Equal(1, a.SuctionPa / b.SuctionPa, 5e-3);
        Assert.Equal(1, a.Flow / b.Flow, 5e-3);
        Assert.Equal(1, a.CoolingW / b.CoolingW, 0.01);
        Assert.Equal(1, a.PowerW / b.PowerW, 5e-3);
    }

    /// <summary>What is followed from a table's answer, or from that of a pass at another pressure and composition, is what a certified flash finds from nothing.</summary>
    [Fact]
    public void Followed_states_are_certified_ones()
    {
        var model = ReferenceModel.Create(["nitrogen", "methane", "ethane", "propane", "isobutane"]);
        var transport = new TransportModel(model);
        Flash flash = new(model), fresh = new(model);
        var states = new DirectStates(model, transport);
        var pass = new DirectPass();
        foreach (var (z, pressurePa) in new[] { (new[] { 0.27, 0.38, 0.2, 0.09, 0.06 }, 3.2e5), ([0.27, 0.38, 0.2, 0.09, 0.06], 3.25e5), ([0.275, 0.38, 0.2, 0.09, 0.055], 3.25e5) })
        {
            var table = StreamTable.Create(flash, transport, z, [2.9e5, 3.6e5], 115, 300, null, TestContext.Current.CancellationToken);
            var stream = states.Begin(table, pass);
            var (low, high) = table.Range(pressurePa);
            for (int i = 1; i < 50; i++)
            {
                double h = low + (high - low) * i / 50, slope = (fresh.PressureEnthalpy(pressurePa, h + 20, z).TemperatureK - fresh.PressureEnthalpy(pressurePa, h - 20, z).TemperatureK) / 40;
                var exact = fresh.PressureEnthalpy(pressurePa, h, z);
                var point = stream.At(h, pressurePa);
                Assert.Equal(exact.TemperatureK, point.TemperatureK, 2e-4);
                Assert.Equal(exact.TemperatureK, stream.Temperature(h + 1e-3, pressurePa, out _), 1e-3);
                Assert.Equal(1, stream.Slope(h, pressurePa) / slope, 1e-3);
                Assert.Equal(exact.VapourFraction, point.VapourFraction, 1e-4);
                Assert.Equal(1, point.Density / (exact.MolarDensity * exact.MolarMass), 2e-4);
                Assert.Equal(exact.PhaseNames, point.Phases);
            }
        }
        Assert.True(states.Followed > 3 * states.Certified && states.Astray == 0, $"{states.Followed} {states.Certified} {states.Astray}");
    }
}
