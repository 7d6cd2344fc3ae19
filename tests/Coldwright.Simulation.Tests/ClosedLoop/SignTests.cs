using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Xunit;

namespace Coldwright.Simulation.Tests.ClosedLoop;

/// <summary>One input changed on the frozen example: which way the answer goes. Each sign is common practice; the sizes are printed.</summary>
public sealed class SignTests
{
    private static double NoLoad(MachineDescription m) => Workshop.Close(m, seed: Workshop.Closed).NoLoad?.Pass.LoadK ?? 300;
    private static double Frozen => Workshop.Closed.NoLoad!.Pass.LoadK;

    private static void Says(string change, double now) => TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{change}: no-load temperature {Frozen:0.00} -> {now:0.00} K"));

    // common practice
    [Fact]
    public void Poorer_insulation_is_warmer()
    {
        double now = NoLoad(Workshop.With<ColdBoxPart>(b => b with { WallM = 0.5 * b.WallM }));
        Says("half the insulation", now);
        Assert.True(now > Frozen + 0.5);
    }

    // common practice
    [Fact]
    public void Without_precooling_it_is_warmer()
    {
        var m = Workshop.With<PrecoolerPart>(p => p with { Loop = null, OutletTemperatureK = 320, CapacityW = null });
        double now = Workshop.Close(m).NoLoad?.Pass.LoadK ?? 300;
        Says("precooler off", now);
        Assert.True(now > Frozen + 2);
    }

    // common practice
    [Fact]
    public void A_shorter_exchanger_is_warmer()
    {
        double now = NoLoad(Workshop.With<RecuperatorPart>(r => r with { LengthM = 0.7 * r.LengthM }));
        Says("exchanger 30 % shorter", now);
        Assert.True(now > Frozen + 0.5);
    }

    // common practice
    [Fact]
    public void A_longer_capillary_lowers_the_low_pressure()
    {
        var longer = Workshop.Close(Workshop.With<ThrottlePart>(t => t with { Capillary = t.Capillary! with { LengthM = 1.4 * t.Capillary.LengthM } }), seed: Workshop.Closed);
        double before = Workshop.Closed.Operating.Pass.State.SuctionPa, now = longer.Operating.Pass.State.SuctionPa;
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"capillary 40 % longer: low side {before / 1e5:0.00} -> {now / 1e5:0.00} bar absolute"));
        Assert.True(now < 0.98 * before);
    }

    // common practice
    [Fact]
    public void Overcharge_raises_and_undercharge_lowers_the_pressure_at_rest_and_the_buffer_takes_the_rest()
    {
        double Rest(double factor) => Workshop.Rate(Workshop.Close(Workshop.Machine with { Charge = Workshop.Machine.Charge with { MassKg = factor * Workshop.Machine.Charge.MassKg } }, seed: Workshop.Closed)).Closed!.StartUp.StandstillPressurePa;
        double more = Rest(1.15), less = Rest(0.85), here = Workshop.Rate(Workshop.Closed).Closed!.StartUp.StandstillPressurePa;
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"charge -15 %, as is, +15 %: {less / 1e5:0.0}, {here / 1e5:0.0}, {more / 1e5:0.0} bar absolute at rest"));
        Assert.True(less < here && here < more);
    }

    // common practice
    [Fact]
    public void With_its_light_gas_lost_it_is_warmer()
    {
        var c = Workshop.Machine.Charge;
        double[] z = [.. c.Mixture.MoleFractions];
        // half of the nitrogen gone; the rest stays as it was
        double lost = 0.5 * z[0], left = 1 - lost;
        z[0] -= lost;
        var mixture = new Composition(c.Mixture.Names, [.. z.Select(x => x / left)]);
        double kilograms = c.MassKg!.Value * (1 - lost * 0.0280134 / MolarMass(c.Mixture));
        double now = NoLoad(Workshop.Machine with { Charge = c with { Mixture = mixture, MassKg = kilograms } });
        Says("half of the nitrogen lost", now);
        Assert.True(now > Frozen + 0.5);
    }

    private static double MolarMass(Composition m) => m.Names.Zip(m.MoleFractions, (n, x) => x * SubstanceCatalog.Get(n).MolarMass).Sum();
}
