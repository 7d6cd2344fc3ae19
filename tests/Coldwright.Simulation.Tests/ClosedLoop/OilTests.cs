using Coldwright.Machine.Description;
using Xunit;

namespace Coldwright.Simulation.Tests.ClosedLoop;

/// <summary>Gas dissolved in the compressor's oil, as an option: it takes heavy gas out of the circulation, and the charge still closes.</summary>
public sealed class OilTests
{
    [Fact]
    public void The_oil_takes_the_heaviest_gas_and_the_charge_closes()
    {
        var m = Workshop.With<CompressorPart>(c => c with { Oil = c.Oil! with { MolarMass = 0.35, ChargeKg = 0.35 } });
        var closed = Workshop.Close(m, seed: Workshop.Closed);
        var rated = Workshop.Rate(closed);
        var (with, without) = (closed.Operating.Pass, Workshop.Closed.Operating.Pass);
        var held = with.Contents.Single(c => c.Place == "dissolved in the oil");
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant(
            $"dissolved {1e3 * held.Kg:0.0} g of {1e3 * rated.Closed!.ChargeKg:0} g; isobutane circulating {100 * without.Tables.Z[^1]:0.00} -> {100 * with.Tables.Z[^1]:0.00} %; no-load {Workshop.Closed.NoLoad?.Pass.LoadK:0.00} -> {closed.NoLoad?.Pass.LoadK:0.00} K"));
        Assert.InRange(rated.Closed!.ChargeError, 0, 1e-8);
        Assert.InRange(held.Kg / rated.Closed.ChargeKg, 0.01, 0.05);
        Assert.True(with.Tables.Z[^1] < 0.97 * without.Tables.Z[^1]);
        // at rest the cold oil holds more of it, and the pressure is lower for the same charge
        Assert.True(rated.Closed.StartUp.StandstillPressurePa < Workshop.Rate(Workshop.Closed).Closed!.StartUp.StandstillPressurePa);
    }
}
