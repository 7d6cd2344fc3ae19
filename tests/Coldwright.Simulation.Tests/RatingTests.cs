using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Machine.Description;
using Coldwright.Simulation.Rating;
using Xunit;

namespace Coldwright.Simulation.Tests;

/// <summary>The steady rating on the example coolers.</summary>
public sealed class RatingTests
{
    [Theory]
    [InlineData("workshop", LimitationKind.Works)]
    [InlineData("short-exchanger", LimitationKind.Pinch)]
    [InlineData("leaky-box", LimitationKind.Leak)]
    public void Each_example_is_told_apart_and_its_balances_close(string example, LimitationKind expected)
    {
        var result = Coolers.Rate(Coolers.Folder(example).Machine!, RatingModel.Both);
        foreach (var r in new[] { result.Main, result.SecondOpinion! })
        {
            Assert.Equal(expected, r.LimitedBy.Kind);
            Assert.True(Math.Abs(r.Balance.Mass) < 1e-8, $"mass {r.Balance.Mass}");
            Assert.True(Math.Abs(r.Balance.Energy) < 1e-8, $"energy {r.Balance.Energy}");
            Assert.True(Math.Abs(r.Balance.Exergy) < 1e-6, $"exergy {r.Balance.Exergy}");
            // the second law, part by part
            Assert.All(r.Exergy.LossesW.Where(l => l.Name != "cooling left unused"), l => Assert.True(l.Watts > -1e-6 * r.Exergy.InputW, $"{l.Name} {l.Watts} W"));
            Assert.Equal(r.LimitedBy.Kind == LimitationKind.Works, r.Liquid!.CollectedLPerH > 0);
            Assert.All(r.CoolingCurve, p => Assert.True(p.PinchK >= 0));
        }
        Assert.DoesNotContain(result.Main.Limits, l => l.Broken);
    }

    [Fact]
    public void Both_models_agree_on_the_working_example_within_what_their_thermodynamics_allow()
    {
        var r = Coolers.Rate(Coolers.Folder("workshop").Machine!, RatingModel.Both);
        Assert.InRange(r.SecondOpinion!.NoLoadTemperatureK!.Value - r.Main.NoLoadTemperatureK!.Value, -12, 12);
        Assert.InRange(r.SecondOpinion.Loop.MolarFlow / r.Main.Loop.MolarFlow, 0.98, 1.02);
    }

    // Precooling helps where the mixture pinches at the warm end, and by as much as the ceilings differ once the exchanger
    // is endless. The ceilings are computed here from separate flashes.
    [Fact]
    public void Precooling_raises_the_cooling_at_110_K_by_the_ratio_of_the_least_isothermal_differences()
    {
        var machine = Coolers.Folder("workshop").Machine!;
        double At(MachineDescription m, double ua) =>
            Coolers.Rate(m.With<RecuperatorPart>(p => p with { ConductanceWPerK = ua }), atK: 110).Main.CoilCooling().Watts;
        double real = At(machine, 100) / At(machine.WithoutPrecooler().With<RecuperatorPart>(p => p with { LowSidePressureDropPa = 2e4 }), 100);
        Assert.True(real > 1.3, $"with over without precooling at equal exchanger: {real}");

        double PerMol(MachineDescription m, double ua) => Coolers.Rate(m.With<RecuperatorPart>(p => p with { ConductanceWPerK = ua }), atK: 110).Main.CoilCooling().PerMol;
        double large = PerMol(machine, 2e5) / PerMol(machine.WithoutPrecooler(), 2e5);
        double coldK = 110 - machine.PartsOf<CoilPart>().Single().DifferenceK;
        double with = LeastDifference(machine, coldK, 238.15), without = LeastDifference(machine.WithoutPrecooler(), coldK, 299.15);
        Assert.Equal(with / without, large, 0.02);
    }

    [Fact]
    public void Precooling_changes_next_to_nothing_when_the_pinch_is_at_the_cold_end()
    {
        // a charge rich in methane and poor in nitrogen: at 100 K its isothermal difference is least at the cold end
        var machine = Coolers.Folder("workshop").Machine!;
        var cold = machine with
        {
            Charge = machine.Charge with { Mixture = new(["nitrogen", "methane", "ethane", "propane"], [0.02, 0.30, 0.28, 0.40]) },
        };
        double PerMol(MachineDescription m) => Coolers.Rate(m.With<RecuperatorPart>(p => p with { ConductanceWPerK = 2e5 }), atK: 104, options: new RatingOptions { ColdestK = 100 }).Main.CoilCooling().PerMol;
        Assert.InRange(PerMol(cold) / PerMol(cold.WithoutPrecooler()), 0.98, 1.02);
    }

    private static double LeastDifference(MachineDescription m, double coldK, double warmK)
    {
        var z = m.Charge.Mixture.MoleFractions.ToArray();
        var flash = new Flash(ReferenceModel.Create(m.Charge.Mixture.Names));
        double low = m.Operation.LowPressurePa + m.PartsOf<RecuperatorPart>().Single().LowSidePressureDropPa, least = double.PositiveInfinity;
        for (int i = 0; i <= 400; i++)
        {
            double t = coldK + (warmK - coldK) * i / 400;
            least = Math.Min(least, flash.TemperaturePressure(t, low, z).MolarEnthalpy - flash.TemperaturePressure(t, m.Operation.HighPressurePa, z).MolarEnthalpy);
        }
        return least;
    }

    [Fact]
    public void Above_the_critical_pressure_there_is_no_condensing_temperature_and_no_jump()
    {
        var machine = Coolers.Folder("workshop").Machine!;
        double Collected(double bar) => Coolers.Rate(machine.With<FeedPart>(f => f with { PressurePa = bar * 1e5 })).Main.Liquid!.CollectedLPerH;
        var above = Coolers.Rate(machine.With<FeedPart>(f => f with { PressurePa = 34.2e5 })).Main.Liquid!;
        Assert.Null(above.CondensingTemperatureK);
        Assert.NotNull(Coolers.Rate(machine.With<FeedPart>(f => f with { PressurePa = 33.7e5 })).Main.Liquid!.CondensingTemperatureK);
        Assert.True(above.CollectedLPerH > 0);
        // either side of 33.958 bar; the load temperature is free above it, so a little more is collected there
        Assert.InRange(above.CollectedLPerH / Collected(33.7), 0.9, 2.5);
    }

    [Fact]
    public void A_worse_exchanger_and_a_worse_box_each_give_less()
    {
        var machine = Coolers.Folder("workshop").Machine!;
        double Net(MachineDescription m) { var r = Coolers.Rate(m, atK: 113).Main; return r.CoilCooling().Watts - r.HeatLeakW.Sum(p => p.Value); }
        double before = Net(machine);
        Assert.True(Net(machine.With<RecuperatorPart>(p => p with { ConductanceWPerK = 60 })) < before);
        Assert.True(Net(machine.With<ColdBoxPart>(p => p with { WallM = 0.09 })) < before);
    }

    [Theory]
    [InlineData("argon")]
    [InlineData("oxygen")]
    [InlineData("methane")]
    public void Other_products_are_liquefied(string gas)
    {
        var r = Coolers.Rate(Coolers.Folder("workshop").Machine!.With<FeedPart>(f => f with { Gas = gas })).Main;
        Assert.Equal(gas, r.Liquid!.Substance);
        Assert.True(r.Liquid.CollectedLPerH > 0);
        Assert.True(Math.Abs(r.Balance.Exergy) < 1e-6);
    }
}
