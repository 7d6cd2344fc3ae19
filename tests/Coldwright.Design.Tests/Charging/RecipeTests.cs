using Coldwright.Design.Charging;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.Substances;
using Xunit;

namespace Coldwright.Design.Tests.Charging;

/// <summary>Filling step by step: what the gauge shows, what comes back when the recipe is followed, what errors do.</summary>
public sealed class RecipeTests
{
    private const double RoomK = 293.15, RoomPa = 1.008e5, GasConstant = 8.314462618;
    private static readonly string[] _names = ["nitrogen", "methane", "ethane", "propane", "isobutane"];
    private static readonly double[] _z = [0.27, 0.38, 0.20, 0.09, 0.06];

    private static RestingGas Space(double volumeM3, params string[] names) => new(names.Length == 0 ? _names : names, volumeM3, RoomK, ReferenceModel.Create);

    private static FillingRecipe Recipe(RestingGas gas, double total, ChargeOptions? options = null, double[]? z = null) =>
        FillingRecipe.Make(gas, [.. (z ?? _z).Select(x => x * total)], RoomPa, options ?? new ChargeOptions(), null, TestContext.Current.CancellationToken);

    /// <summary>At a hundred pascals every gas is ideal: each step ends at n R T / V of what is in, and the gauge rises by the partial pressure.</summary>
    [Fact]
    public void ThinGasIsIdeal()
    {
        var gas = Space(1);
        double total = 100 / (GasConstant * RoomK), sum = 0;
        foreach (var step in Recipe(gas, total).Steps)
        {
            sum += step.Moles;
            Assert.Equal(sum * GasConstant * RoomK, step.UntilPa, 2e-5 * step.UntilPa);
            Assert.Equal(0, step.LiquidShare, 1e-12);
        }
        Assert.Equal(total, sum, 1e-12 * total);
    }

    /// <summary>Following the readings gives the mixture back.</summary>
    [Theory]
    [InlineData(0.012, 12)]
    [InlineData(0.012, 1)]
    [InlineData(0.004, 8)]
    public void FollowedItGivesTheMixture(double volumeM3, double total)
    {
        var gas = Space(volumeM3);
        var recipe = Recipe(gas, total);
        var back = recipe.Followed(gas);
        for (int i = 0; i < _z.Length; i++) Assert.Equal(_z[i], back[i] / back.Sum(), 1e-6);
        Assert.Equal(recipe.StandstillPa, gas.At(back).PressurePa, 1e-5 * recipe.StandstillPa);
    }

    /// <summary>With every reading one and a half of its standard deviations off, in any direction, no fraction is off by more than the tolerances allow together.</summary>
    [Fact]
    public void WrongReadingsStayWithinTheirTolerances()
    {
        var gas = Space(0.012);
        var recipe = Recipe(gas, 12, new ChargeOptions { ScaleKg = 1e-3, GaugePa = 3e3 });
        for (int signs = 0; signs < 1 << recipe.Steps.Count; signs++)
        {
            double Sign(int k) => (signs >> k & 1) == 0 ? 1.5 : -1.5;
            var back = recipe.Followed(gas, k => Sign(k) * 3e3, k => Sign(k) * 1e-3);
            for (int i = 0; i < _z.Length; i++) Assert.Equal(_z[i], back[i] / back.Sum(), 0.01);
        }
    }

    /// <summary>An amount that is one tolerance too large moves its own mole fraction by what is allowed, to first order.</summary>
    [Fact]
    public void AToleranceIsWhatItSays()
    {
        foreach (var step in Recipe(Space(0.012), 12).Steps) Assert.Equal(0.005, step.Error!.Fraction, 0.0003);
    }

    /// <summary>
    /// A gas alone that is more than its saturated vapour stands at its vapour pressure, the gauge tells nothing, and it is told by weight. Vapour pressures at 20 °C:
    /// propane 8.365 bar (Lemmon, McLinden, Wagner 2009) and isobutane 3.022 bar (Buecker, Wagner 2006), both from memory.
    /// </summary>
    [Theory]
    [InlineData("propane", 8.365e5)]
    [InlineData("isobutane", 3.022e5)]
    public void NoVapourPressureIsPassedUnnoticed(string name, double vapourPa)
    {
        var gas = Space(0.003, name);
        var recipe = Recipe(gas, 6, null, [1]);
        var step = Assert.Single(recipe.Steps);
        Assert.Equal(vapourPa, step.UntilPa, 2e-3 * vapourPa);
        Assert.True(step.LiquidShare > 0.3);
        Assert.Equal(FillingMeasure.Weight, step.By);
        Assert.Null(step.ByGaugeKg);
        Assert.True(step.BottleTooWeak);
    }

    /// <summary>A mixture that condenses while it is let in is noticed too, and the heavy gas of a charge that would not fit as gas goes in by weight.</summary>
    [Fact]
    public void CondensingOnFillingIsNoticed()
    {
        var step = Recipe(Space(0.003), 12, null, [0.2, 0.1, 0.1, 0.1, 0.5]).Steps.Single(s => s.Gas == "isobutane");
        Assert.True(step.LiquidShare > 0);
        Assert.Equal(FillingMeasure.Weight, step.By);
    }

    /// <summary>In random recipes every step that ends above the dew pressure of what is in then, found by its own flash, is said to hold liquid and is told by weight; and no other.</summary>
    [Fact]
    public void NoStepOfARandomRecipePassesADewPressureUnnoticed()
    {
        var random = new Random(5);
        int wet = 0, dry = 0;
        for (int trial = 0; trial < 12; trial++)
        {
            double[] z = [.. _names.Select(_ => random.NextDouble() + 0.02)];
            z = [.. z.Select(v => v / z.Sum())];
            var gas = Space(0.004 + 0.03 * random.NextDouble());
            var now = new double[_names.Length];
            foreach (var step in Recipe(gas, 6 + 8 * random.NextDouble(), null, z).Steps)
            {
                now[Array.IndexOf(_names, step.Gas)] += step.Moles;
                string[] present = [.. _names.Where((_, i) => now[i] > 0)];
                double[] x = [.. now.Where(n => n > 0).Select(n => n / now.Sum())];
                if (present.Length < 2) continue;
                double? dewPa;
                try
                {
                    dewPa = new Fluids.PhaseEquilibrium.Flash(ReferenceModel.Create(present)).TemperatureVapourFraction(RoomK, 1, x).PressurePa;
                }
                catch (Numerics.SolveException)
                {
                    // no dew point at this temperature: nothing can condense
                    dewPa = null;
                }
                if (dewPa is { } dew && Math.Abs(step.UntilPa / dew - 1) < 1e-4) continue;
                bool condenses = step.UntilPa > dewPa;
                Assert.Equal(condenses, step.LiquidShare > 0);
                if (condenses) Assert.True(step.By == FillingMeasure.Weight && step.ByGaugeKg is null && step.TolerancePa is null);
                if (condenses) wet++;
                else dry++;
            }
        }
        Assert.True(wet > 5 && dry > 5, $"{wet} with liquid, {dry} without");
    }

    [Fact]
    public void NitrogenComesFirstThenTheGasesOfLeastPressure()
    {
        var recipe = Recipe(Space(0.012), 12);
        Assert.Equal(["nitrogen", "isobutane", "propane", "ethane", "methane", "nitrogen"], recipe.Steps.Select(s => s.Gas));
        Assert.InRange(recipe.Steps[0].UntilPa, RoomPa + 1e4, RoomPa + 4e4);
        Assert.All(recipe.Steps, s => Assert.False(s.BottleTooWeak, $"{s.Gas}: {s.UntilPa} against {s.BottlePa}"));
    }

    /// <summary>The order in which a file names its gases does not matter.</summary>
    [Fact]
    public void TheOrderOfTheFileDoesNotMatter()
    {
        var one = Recipe(Space(0.012), 12);
        var other = Recipe(Space(0.012, [.. _names.Reverse()]), 12, null, [.. _z.Reverse()]);
        Assert.Equal(one.Steps.Select(s => (s.Gas, Math.Round(s.UntilPa))), other.Steps.Select(s => (s.Gas, Math.Round(s.UntilPa))));
    }

    [Fact]
    public void EachRinseThinsTheAirByVacuumOverRinsePressure()
    {
        var none = Evacuation.Of(50, 0, 1.5e5, "nitrogen", 0.01, RoomK, 10, 1e-5);
        Assert.Equal(50 * 0.01 / (GasConstant * RoomK), none.AirMol, 1e-12);
        Assert.Equal(none.AirMol * 1e-6 / 9, Evacuation.Of(50, 2, 1.5e5, "nitrogen", 0.01, RoomK, 10, 1e-5).AirMol, 1e-5 * none.AirMol * 1e-6);
        var poor = Evacuation.Of(3000, null, 1.5e5, "nitrogen", 0.01, RoomK, 10, 1e-5);
        Assert.True(poor.AirMol <= 1e-5 * 10 && poor.Rinses > 0);
        Assert.Contains("vacuum", Assert.Throws<ArgumentException>(() => Evacuation.Of(2e5, 1, 1.5e5, "nitrogen", 0.01, RoomK, 10, 1e-5)).Message, StringComparison.Ordinal);
    }

    /// <summary>Graham's law: in molecular flow two gases are lost at rates as 1/sqrt(M), so ln(left) of both stand in that ratio.</summary>
    [Fact]
    public void AFineLeakFollowsGrahamsLaw()
    {
        var gas = Space(0.012);
        double[] moles = [.. _z.Select(x => 12 * x)];
        var cases = TopUp.Of(gas, moles, 0.05, null);
        var (wide, fine) = (cases[0], cases[1]);
        for (int i = 0; i < _z.Length; i++) Assert.Equal(_z[i], wide.Left[i], 1e-9);
        double Mass(int i) => SubstanceCatalog.Get(_names[i]).MolarMass;
        double LnLeft(int i) => Math.Log(1 - fine.AddKg[i] / (moles[i] * Mass(i)));
        Assert.Equal(Math.Sqrt(Mass(4) / Mass(1)), LnLeft(1) / LnLeft(4), 1e-6);
        Assert.True(fine.Left[1] < _z[1] && fine.Left[4] > _z[4]);
        Assert.All(cases, c => Assert.Equal(0.05, c.AddKg.Sum(), 1e-9));
        Assert.All(TopUp.Of(gas, moles, null, fine.PressurePa), c => Assert.Equal(fine.PressurePa, c.PressurePa, 1.0));
        Assert.Equal(0.05, TopUp.Of(gas, moles, null, fine.PressurePa)[1].LostKg, 1e-6);
    }

    [Fact]
    public void NonsenseIsRefusedWithNameValueLimitAndUnit()
    {
        Assert.Contains("3000 g are said to be lost", Assert.Throws<ArgumentException>(() => TopUp.Of(Space(0.012), [.. _z.Select(x => 12 * x)], 3, null)).Message, StringComparison.Ordinal);
        Assert.Contains("not below", Assert.Throws<ArgumentException>(() => TopUp.Of(Space(0.012), [.. _z.Select(x => 12 * x)], null, 9e6)).Message, StringComparison.Ordinal);
        Assert.Contains("m3", Assert.Throws<ArgumentException>(() => Space(-1)).Message, StringComparison.Ordinal);
    }
}
