using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Machine.Streams;
using Coldwright.Simulation.ClosedLoop;
using Coldwright.Simulation.Cooldown;
using Xunit;

namespace Coldwright.Simulation.Tests.Cooldown;

/// <summary>The tabulated run against one that flashes the model at every place of every evaluation, on the same coarse grid.</summary>
public sealed class DirectTests
{
    private const double TimeS = 60;

    private static CooldownRun Run(bool direct)
    {
        var folder = Coolers.Folder("stops-pinch");
        var model = CubicModel.Create(folder.Machine!.Charge.Mixture.Names);
        var hardware = HardwareReader.Read(folder.Machine, folder.Layout!, model, TestContext.Current.CancellationToken);
        var maker = new LoopMapMaker(hardware, model, StreamTableOptions.Default, TestContext.Current.CancellationToken, direct);
        var run = new CooldownRun(new Plant(hardware, 8, 4, 0), maker, new CooldownOptions { Tolerance = 1e-3 }, PlantParameters.Nominal(), null, TestContext.Current.CancellationToken);
        run.Start(170);
        run.To(TimeS, null, null);
        Assert.Null(run.Stopped);
        Assert.Equal(TimeS, run.TimeS, 1e-9);
        return run;
    }

    [Fact]
    public void Temperatures_pressures_and_watts_are_the_direct_models()
    {
        CooldownRun tabulated = Run(false), direct = Run(true);
        PlantPoint a = tabulated.Point(tabulated.State), b = direct.Point(direct.State);
        Assert.Equal(b.LoadK, a.LoadK, 0.1);
        Assert.Equal(b.ThrottleK, a.ThrottleK, 0.5);
        Assert.Equal(b.RecuperatorInletK, a.RecuperatorInletK, 0.3);
        Assert.Equal(1, a.HighPa / b.HighPa, 5e-3);
        Assert.Equal(1, a.SuctionPa / b.SuctionPa, 0.01);
        Assert.Equal(1, a.Flow / b.Flow, 0.01);
        Assert.Equal(1, a.CoolingW / b.CoolingW, 0.015);
        Assert.Equal(1, a.PowerW / b.PowerW, 5e-3);
    }
}
