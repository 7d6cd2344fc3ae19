using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Machine.Streams;
using Coldwright.Simulation.ClosedLoop;
using Coldwright.Simulation.Cooldown;
using Xunit;

namespace Coldwright.Simulation.Tests.Cooldown;

/// <summary>Gas that the compressor's oil dissolves, while the cooler cools down.</summary>
public sealed class OilTests
{
    private static CooldownRun Run(MachineDescription machine)
    {
        Assert.True(LoopLayout.TryFind(machine, out var layout, out _));
        var model = CubicModel.Create(machine.Charge.Mixture.Names);
        var hardware = HardwareReader.Read(machine, layout, model, TestContext.Current.CancellationToken);
        var run = new CooldownRun(new Plant(hardware, 8, 4, 0), new LoopMapMaker(hardware, model, StreamTableOptions.Default, TestContext.Current.CancellationToken), new CooldownOptions(), PlantParameters.Nominal(), null, TestContext.Current.CancellationToken);
        run.Start(null);
        run.To(900, null, null);
        Assert.Null(run.Stopped);
        return run;
    }

    /// <summary>Heavy gas goes into the oil more than light gas, and none of the charge is lost sight of.</summary>
    [Fact]
    public void What_the_oil_dissolves_does_not_circulate()
    {
        var plain = Coolers.Folder("stops-pinch").Machine!;
        CooldownRun without = Run(plain), with = Run(plain.With<CompressorPart>(c => c with { Oil = c.Oil! with { MolarMass = 0.4 } }));
        Assert.True(with.Equations.Loop.OilK > with.Equations.Plant.Hardware.RoomK);
        Assert.True(with.Z[^1] < 0.97 * without.Z[^1], $"{with.Z[^1]} {without.Z[^1]}");
        Assert.True(with.Z[0] > without.Z[0]);
        with.Point(with.State);
        Assert.Equal(with.TotalMol, with.Equations.SpeciesMoles.ToArray().Sum(), 5e-3 * with.TotalMol);
    }
}
