using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Machine.Description;
using Coldwright.Numerics;
using Coldwright.Simulation.ClosedLoop;
using Xunit;

namespace Coldwright.Simulation.Tests.ClosedLoop;

/// <summary>The first guess of the closed loop, where it is far from what follows, and why it leads nowhere when it cannot.</summary>
public sealed class WarmStartTests
{
    // a capillary so narrow that the compressor stands at its highest ratio and still moves more: no steady state, and the part is named with both flows
    [Fact]
    public void A_throttle_too_narrow_for_the_compressor_is_named()
    {
        var machine = Narrow(0.45);
        var refused = Assert.Throws<SolveException>(() => Workshop.Close(machine));
        Assert.Contains("throttle is too narrow", refused.Report.Advice, StringComparison.Ordinal);
        Assert.Contains("mol/s", refused.Report.Advice, StringComparison.Ordinal);
    }

    [Fact]
    public void A_throttle_that_is_only_tight_is_not_blamed()
    {
        var machine = Narrow(0.9);
        Assert.Null(WarmStart.TooNarrow(Hardware(machine), CubicModel.Create(machine.Charge.Mixture.Names), Target(machine), TestContext.Current.CancellationToken));
    }

    // machines that used to be refused: the guess stood at a pressure ratio at which the compressor delivers nothing (28), left out the friction of the low side (86),
    // or the precooler was so large that the recuperator's warm end turned round (56, 311)
    [Theory]
    [InlineData(28)]
    [InlineData(56)]
    [InlineData(86)]
    [InlineData(311)]
    public void Machines_far_from_the_first_guess_close(int seed)
    {
        var solver = Workshop.Close(RandomMachine.Make(seed));
        Assert.True(solver.Operating.Residual < 1e-8, $"machine {seed}: residual {solver.Operating.Residual:E1}");
    }

    // the guess holds what was charged and passes what is compressed, as gas with the compressor's own volume: the loop closed warm stands within a tenth of it
    [Fact]
    public void The_guess_is_near_the_warm_loop()
    {
        var model = CubicModel.Create(Workshop.Machine.Charge.Mixture.Names);
        var (h, target) = (Hardware(Workshop.Machine), Target(Workshop.Machine));
        var alone = h with { Precooler = null, Layout = h.Layout with { Precooler = null } };
        var cancel = TestContext.Current.CancellationToken;
        var guess = WarmStart.Guess(alone, model, target, cancel);
        var closed = new LoopCloser(new LoopEvaluator(alone, model, new LoopAccuracy(), cancel), target).Close(guess, h.RoomK - 3, 2e-3, null).Pass;
        Assert.Equal(closed.State.SuctionPa, guess.SuctionPa, 0.1 * closed.State.SuctionPa);
        Assert.Equal(closed.State.CoilPa, guess.CoilPa, 0.1 * closed.State.CoilPa);
    }

    private static MachineDescription Narrow(double factor) =>
        Workshop.With<ThrottlePart>(t => t with { Capillary = t.Capillary! with { BoreM = factor * t.Capillary.BoreM } });

    private static Hardware Hardware(MachineDescription m) => HardwareReader.Read(m, Workshop.Layout(m), CubicModel.Create(m.Charge.Mixture.Names), TestContext.Current.CancellationToken, null);

    private static LoopTarget Target(MachineDescription m) => ClosedRating.Target(m, Workshop.Layout(m), HeldPressure.Neither);
}
