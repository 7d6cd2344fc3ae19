using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Machine.Streams;
using Coldwright.Simulation.ClosedLoop;
using Coldwright.Simulation.Cooldown;
using Xunit;

namespace Coldwright.Simulation.Tests.Cooldown;

/// <summary>Slopes by parameters, and tables against the direct model.</summary>
public sealed class SlopeTests
{
    private readonly Plant _plant;
    private readonly LoopMapMaker _maker;

    public SlopeTests()
    {
        var folder = Coolers.Folder("stops-pinch");
        var model = CubicModel.Create(folder.Machine!.Charge.Mixture.Names);
        var hardware = HardwareReader.Read(folder.Machine, folder.Layout!, model, default);
        _plant = new Plant(hardware, 24, 10, 0);
        _maker = new LoopMapMaker(hardware, model, StreamTableOptions.Default, default);
    }

    private CooldownRun Run(double[] factors, bool sensitivity, double tolerance = 1e-5)
    {
        // one composition all along: its changes are no smooth function of a factor
        var run = new CooldownRun(_plant, _maker, new CooldownOptions { Sensitivity = sensitivity, Tolerance = tolerance, Drift = 0.3 }, factors, null, default) { TimedK = [230], Frozen = true };
        run.Start(null);
        run.To(3600, null, null);
        return run;
    }

    [Theory]
    [InlineData(PlantParameters.LoadMass)]
    [InlineData(PlantParameters.RecuperatorMetal)]
    [InlineData(PlantParameters.Leak)]
    public void Slopes_agree_with_differences_of_whole_runs(int parameter)
    {
        var with = Run(PlantParameters.Nominal(), true);
        double[] up = PlantParameters.Nominal(), down = PlantParameters.Nominal();
        (up[parameter], down[parameter]) = (1.03, 0.97);
        double difference = (Run(up, false).LoadK - Run(down, false).LoadK) / 0.06;
        double slope = with.Slopes![parameter * _plant.Layout.Count + _plant.Layout.Load] / _plant.Load.Capacity(with.LoadK);
        Assert.Equal(difference, slope, 0.06 * Math.Abs(difference) + 0.05);
    }

    [Fact]
    public void Ten_slopes_cost_less_than_two_runs_more()
    {
        var with = Run(PlantParameters.Nominal(), true, 1e-4);
        Assert.True(with.SlopeEvaluations < 2 * (with.Evaluations - with.SlopeEvaluations + 8 * with.Steps), $"{with.SlopeEvaluations} of {with.Evaluations} evaluations, {with.Steps} steps");
    }

    [Fact]
    public void Tables_on_the_way_agree_with_flashes_of_the_model()
    {
        var run = new CooldownRun(_plant, _maker, new CooldownOptions(), PlantParameters.Nominal(), null, default);
        run.Start(null);
        run.To(2 * 3600, null, null);
        var at = run.Point(run.State);
        var (f, flash, z) = (run.Equations, new Fluids.PhaseEquilibrium.Flash(_maker.Model), run.Z);
        for (int i = 0; i <= _plant.Layout.Cells; i += 3)
        {
            double hot = flash.PressureEnthalpy(f.Hot.PressurePa[i], f.Hot.Enthalpy[i], z).TemperatureK, cold = flash.PressureEnthalpy(f.Cold.PressurePa[i], f.Cold.Enthalpy[i], z).TemperatureK;
            Assert.Equal(hot, f.Loop.Tables.High.Temperature(f.Hot.Enthalpy[i], f.Hot.PressurePa[i], out _), 0.4);
            Assert.Equal(cold, f.Loop.Tables.Low.Temperature(f.Cold.Enthalpy[i], f.Cold.PressurePa[i], out _), 0.4);
        }
        // what the streams carry off, with both ends' enthalpies from the model at the table's temperatures
        double inlet = flash.TemperaturePressure(at.RecuperatorInletK, at.HighPa, z).MolarEnthalpy;
        double outlet = flash.TemperaturePressure(f.Loop.Tables.Low.Temperature(f.Cold.OutletEnthalpy, f.Cold.OutletPressurePa, out _), f.Cold.OutletPressurePa, z).MolarEnthalpy;
        Assert.Equal(at.CoolingW, at.Flow * (outlet - inlet), 0.01 * at.CoolingW);
    }

    [Fact]
    public void The_drift_of_the_composition_keeps_to_what_is_allowed()
    {
        var run = new CooldownRun(_plant, _maker, new CooldownOptions { Drift = 0.04 }, PlantParameters.Nominal(), null, default);
        run.Start(null);
        run.To(4 * 3600, null, null);
        Assert.True(run.WorstDrift < 0.12, $"{run.WorstDrift}");
    }
}
