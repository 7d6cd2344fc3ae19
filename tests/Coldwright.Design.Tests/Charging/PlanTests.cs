using Coldwright.Design.Charging;
using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Rating;
using Xunit;

namespace Coldwright.Design.Tests.Charging;

/// <summary>The whole plan of the example.</summary>
public sealed class PlanTests
{
    private static readonly RatingOptions _cubic = new() { Model = RatingModel.Cubic };

    private static ChargeResult Plan(MachineDescription machine, ChargeOptions options)
    {
        var folder = Examples.Read("workshop");
        return ChargePlanner.Plan(machine, folder.Layout!, folder.Shop, options, _cubic, null, TestContext.Current.CancellationToken);
    }

    private static MachineDescription Workshop => Examples.Read("workshop").Machine!;

    [Fact]
    public void TheExamplesRecipeAddsUp()
    {
        var plan = Plan(Workshop, new ChargeOptions { Circulation = false });
        Assert.Equal(0.32, plan.MassKg, 1e-9);
        Assert.Equal(0.32, plan.Recipe.Steps.Sum(s => s.MassKg), 1e-9);
        Assert.Equal(plan.Recipe.StandstillPa, plan.Recipe.Steps[^1].UntilPa, 1.0);
        Assert.Equal("local-codes", plan.Findings[^1].Id);
        // a mixture's worth as cooling hangs on every fraction, and none of them all alike
        Assert.True(plan.Recipe.Steps.Select(s => s.Error!.Cooling).Distinct().Count() > 3);
    }

    /// <summary>The amount worked out from a standstill pressure stands at that pressure.</summary>
    [Fact]
    public void WithoutAMassTheStandstillPressureTellsTheAmount()
    {
        var machine = Workshop with { Charge = Workshop.Charge with { MassKg = null }, Operation = Workshop.Operation with { StandstillPressurePa = 9e5 } };
        Assert.Equal(9e5, Plan(machine, new ChargeOptions { Circulation = false }).Recipe.StandstillPa, 10.0);
    }

    [Fact]
    public void AirLeftInAHydrocarbonLoopIsAFinding()
    {
        var plan = Plan(Workshop, new ChargeOptions { Circulation = false, VacuumPa = 2e4, Rinses = 0 });
        Assert.Contains(plan.Findings, f => f is { Id: "oxygen-in-charge", Grade: Safety.Grade.Serious });
        Assert.DoesNotContain(Plan(Workshop, new ChargeOptions { Circulation = false, VacuumPa = 20, Rinses = 2 }).Findings, f => f.Id == "oxygen-in-charge");
    }

    [Fact]
    public void MoreThanTheLoopStandsIsAFinding()
    {
        var plan = Plan(Workshop, new ChargeOptions { Circulation = false, MassKg = 0.9 });
        Assert.False(plan.StandsBelowLimits);
        Assert.Contains(plan.Findings, f => f.Id == "standstill-above-limit");
    }

    [Fact]
    public void TracesOfTheGasesAreCounted()
    {
        var folder = Examples.Read("workshop");
        var shop = folder.Shop! with { GasImpurities = new Dictionary<string, IReadOnlyDictionary<string, double>> { ["methane"] = new Dictionary<string, double> { ["water"] = 10e-6 } } };
        var plan = ChargePlanner.Plan(folder.Machine!, folder.Layout!, shop, new ChargeOptions { Circulation = false, Rinses = 3 }, _cubic, null, TestContext.Current.CancellationToken);
        var water = plan.Traces.Single(t => t.Name == "water");
        Assert.Equal(3.8e-6, water.FromGases, 1e-12);
        Assert.True(water.Freezes && water.FreezesAtK is > 180 and < 273);
    }

    /// <summary>What circulates once it is cold is the closed loop's own answer for this charge: more of the light gases than was charged.</summary>
    [Fact]
    public void WhatCirculatesIsTheClosedLoopsAnswer()
    {
        var folder = Examples.Read("closed-loop");
        var plan = ChargePlanner.Plan(folder.Machine!, folder.Layout!, folder.Shop, new ChargeOptions(), _cubic, null, TestContext.Current.CancellationToken);
        static double Share(Composition c, string gas) => c.MoleFractions[c.Names.ToList().IndexOf(gas)];
        double Of(string gas) => Share(plan.Cold!.Loop.Composition, gas);
        double Charged(string gas) => Share(plan.Mixture, gas);
        Assert.True(Of("nitrogen") > Charged("nitrogen") && Of("isobutane") < Charged("isobutane"));
        var charged = folder.Machine! with { Charge = folder.Machine.Charge with { Mixture = plan.Mixture, MassKg = plan.MassKg }, Operation = folder.Machine.Operation with { StandstillPressurePa = plan.Recipe.StandstillPa } };
        var rated = CoolerRating.Rate(charged, folder.Layout!, folder.Shop!, _cubic with { Hold = HeldPressure.Neither }, null, TestContext.Current.CancellationToken).Main;
        foreach (string gas in plan.Mixture.Names) Assert.Equal(Share(rated.Loop.Composition, gas), Of(gas), 1e-4);
    }

    /// <summary>Water that the pump leaves is held against what stays dissolved: with a poor vacuum it freezes, and rinsing helps as the recipe says.</summary>
    [Fact]
    public void WaterOfAPoorVacuumFreezesAndRinsingHelps()
    {
        ChargeResult With(int rinses) => Plan(Workshop, new ChargeOptions { Circulation = false, VacuumPa = 1500, Rinses = rinses });
        var (poor, rinsed) = (With(0), With(4));
        double Water(ChargeResult r) => r.Traces.SingleOrDefault(t => t.Name == "water")?.Total ?? 0;
        Assert.True(poor.Traces.Single(t => t.Name == "water").Freezes);
        Assert.Contains(poor.Findings, f => f.Id == "freezes-water");
        Assert.Equal(Math.Pow(1500 / (Workshop.Room.PressurePa + 5e4), 4), Water(rinsed) / Water(poor), 1e-6);
        Assert.DoesNotContain(rinsed.Findings, f => f.Id == "freezes-water");
    }

    [Fact]
    public void StoppedInTheClosedLoopTheRecipeStands()
    {
        using var source = new CancellationTokenSource();
        var folder = Examples.Read("workshop");
        var plan = ChargePlanner.Plan(folder.Machine!, folder.Layout!, folder.Shop, new ChargeOptions(), _cubic, text => { if (text.StartsWith("closing", StringComparison.Ordinal)) source.Cancel(); }, source.Token);
        Assert.True(plan.Stopped);
        Assert.Null(plan.Cold);
        Assert.Equal(6, plan.Recipe.Steps.Count);
    }

    [Fact]
    public void WhatIsMissingIsNamed()
    {
        var machine = Workshop with { Charge = Workshop.Charge with { MassKg = null }, Operation = Workshop.Operation with { StandstillPressurePa = null } };
        Assert.Contains("mass", Assert.Throws<MissingKeysException>(() => Plan(machine, new ChargeOptions { Circulation = false })).Keys[0].Key, StringComparison.Ordinal);
        Assert.Contains("kg", Assert.Throws<ArgumentException>(() => Plan(Workshop, new ChargeOptions { MassKg = -1 })).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => Plan(Workshop, new ChargeOptions { Mixture = new Composition(["unobtainium"], [1.0]) }));
    }
}
