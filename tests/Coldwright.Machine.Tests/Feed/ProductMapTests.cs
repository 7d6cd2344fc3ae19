using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Machine.Feed;

namespace Coldwright.Machine.Tests.Feed;

/// <summary>The product's table against published vapour pressures and flash fractions, and against certified flashes.</summary>
public sealed class ProductMapTests
{
    // Vapour pressures, bar, of the reference equations: Span et al., J. Phys. Chem. Ref. Data 29 (2000) 1361 (nitrogen); Tegeler, Span, Wagner, ibid. 28 (1999) 779
    // (argon); Setzmann, Wagner, ibid. 20 (1991) 1061 (methane).
    [Theory]
    [InlineData("nitrogen", 65, 0.1740)]
    [InlineData("nitrogen", 80, 1.3687)]
    [InlineData("nitrogen", 100, 7.7828)]
    [InlineData("nitrogen", 120, 25.106)]
    [InlineData("argon", 85, 0.7890)]
    [InlineData("argon", 110, 6.6526)]
    [InlineData("argon", 140, 31.682)]
    [InlineData("methane", 95, 0.1982)]
    [InlineData("methane", 130, 3.6732)]
    [InlineData("methane", 180, 32.852)]
    public void VapourPressuresAreThoseOfThePublishedEquations(string gas, double temperatureK, double bar)
    {
        var map = Pure(gas);
        Assert.Equal(bar, map.Bubble(temperatureK)!.Value.PressurePa / 1e5, bar * 3e-4);
        Assert.Equal(temperatureK, map.BubbleTemperature(bar * 1e5)!.Value, 0.02);
    }

    // Saturated liquid let down to 1 atm: same sources.
    [Theory]
    [InlineData("nitrogen", 5, 0.1768)]
    [InlineData("nitrogen", 10, 0.2897)]
    [InlineData("nitrogen", 20, 0.4491)]
    [InlineData("argon", 5, 0.1322)]
    [InlineData("argon", 10, 0.2153)]
    [InlineData("argon", 20, 0.3286)]
    public void FlashFractionsAreThoseOfThePublishedEquations(string gas, double bar, double fraction)
    {
        var map = Pure(gas);
        double atmosphere = map.BubbleTemperature(101325)!.Value;
        var (hot, cold, vapour) = (map.Bubble(map.BubbleTemperature(bar * 1e5)!.Value)!.Value, map.Bubble(atmosphere)!.Value, map.Dew(atmosphere)!.Value);
        Assert.Equal(fraction, (hot.LiquidEnthalpy - cold.LiquidEnthalpy) / (vapour.VapourEnthalpy - cold.LiquidEnthalpy), 2e-4);
    }

    /// <summary>Pressure of a vessel filled with liquid at its boiling point, shut and warmed to 300 K: the reference equations, as above.</summary>
    [Theory]
    [InlineData("nitrogen", 1.0, 2929)]
    [InlineData("nitrogen", 0.9, 2023)]
    [InlineData("nitrogen", 0.5, 482)]
    [InlineData("argon", 1.0, 3386)]
    [InlineData("argon", 0.5, 506)]
    public void AShutVesselThatWarmsReachesThePublishedPressure(string gas, double fill, double bar)
    {
        var map = Pure(gas);
        double t = map.BubbleTemperature(101325)!.Value, density = fill * map.Bubble(t)!.Value.LiquidDensity;
        Assert.Equal(bar, map.Phase.AtDensity(300, density).PressurePa / 1e5, 0.004 * bar);
    }

    [Theory]
    [InlineData("nitrogen", 92.0, 150.0)]
    [InlineData("nitrogen", 118.0, 300.0)]
    [InlineData("argon", 110.0, 700.0)]
    [InlineData("oxygen", 130.0, 200.0)]
    [InlineData("methane", 150.0, 120.0)]
    public void TheStateOfBothPhasesIsThatOfACertifiedFlash(string gas, double temperatureK, double density)
    {
        var model = ReferenceModel.Create([gas]);
        var state = Of([gas], [1.0]).At(temperatureK, density);
        double mass = model.Substances[0].MolarMass;
        Assert.True(state.TwoPhase);
        var flash = new Flash(model).PressureEnthalpy(state.PressurePa, (state.InternalEnergy + state.PressurePa / density) * mass, [1.0]);
        Assert.Equal(temperatureK, flash.TemperatureK, 1e-3);
        Assert.Equal(density, flash.MolarDensity * mass, 2e-4 * density);
        Assert.Equal(1 - state.LiquidShare, flash.VapourFraction, 2e-4);
    }

    [Theory]
    [InlineData(85.0, 100.0)]
    [InlineData(105.0, 300.0)]
    [InlineData(120.0, 200.0)]
    public void AMixtureIsThatOfACertifiedFlash(double temperatureK, double density)
    {
        double[] z = [0.94, 0.05, 0.01];
        var model = ReferenceModel.Create(["nitrogen", "oxygen", "argon"]);
        var map = Of(["nitrogen", "oxygen", "argon"], z);
        var state = map.At(temperatureK, density);
        double mass = map.Phase.MolarMass;
        Assert.True(state.TwoPhase);
        var flash = new Flash(model).TemperaturePressure(temperatureK, state.PressurePa, z);
        Assert.Equal(density, flash.MolarDensity * mass, 0.01 * density);
        Assert.Equal(state.InternalEnergy, flash.MolarEnthalpy / mass - state.PressurePa / (flash.MolarDensity * mass), 800.0);
        Assert.True(map.DewTemperature(state.PressurePa) > map.BubbleTemperature(state.PressurePa));
    }

    /// <summary>Energy rises with temperature through gas, both phases, liquid and dense fluid alike, so that a vessel has one temperature.</summary>
    [Fact]
    public void EnergyRisesWithTemperatureAtEveryDensity()
    {
        foreach (var map in (ProductMap[])[Pure("nitrogen"), Pure("argon"), Of(["nitrogen", "oxygen"], [0.999, 0.001])])
            foreach (double density in (double[])[3, 20, 100, 280, 400, 600])
            {
                double before = double.NegativeInfinity;
                for (double t = map.ColdestK + 0.1; t < 200; t += 0.25)
                {
                    var s = map.At(t, density);
                    Assert.True(s.InternalEnergy > before, FormattableString.Invariant($"{density} kg/m3 at {t} K: {s.InternalEnergy} after {before}"));
                    before = s.InternalEnergy;
                }
            }
    }

    /// <summary>Common practice: a 38 L receiver that falls from 9.3 to 3.1 bar absolute in a room (25 °C) gives 260 to 270 g of nitrogen.</summary>
    [Fact]
    public void AReceiverGivesWhatTheTradeExpects()
    {
        var gas = Pure("nitrogen").Phase;
        Assert.InRange(1e3 * 0.038 * (gas.At(298.15, 9.3e5).Density - gas.At(298.15, 3.1e5).Density), 260, 270);
    }

    /// <summary>Common practice: a vessel of 0.32 L holds about 190 g of saturated liquid at 17 bar, not the 260 g that its volume holds at 1 bar.</summary>
    [Fact]
    public void AVesselHoldsWhatTheTradeExpects()
    {
        var map = Pure("nitrogen");
        double Held(double pa) => 0.32 * map.Bubble(map.BubbleTemperature(pa)!.Value)!.Value.LiquidDensity;
        Assert.InRange(Held(17e5), 188, 194);
        Assert.InRange(Held(101325), 256, 260);
    }

    [Fact]
    public void ImpureGasIsTakenApart()
    {
        var shop = new Description.ShopDescription
        {
            Currency = "EUR", ElectricityPerKWh = 0, GasPerKg = new Dictionary<string, double>(), GasPurity = new Dictionary<string, double> { ["nitrogen"] = 0.999 },
            GasImpurities = new Dictionary<string, IReadOnlyDictionary<string, double>> { ["nitrogen"] = new Dictionary<string, double> { ["argon"] = 4e-4, ["water"] = 5e-6 } },
        };
        var purity = ProductPurity.Of("nitrogen", shop);
        Assert.Equal(["nitrogen", "oxygen", "argon"], purity.Mixture.Names);
        Assert.Equal(5.95e-4, purity.Mixture.MoleFractions[1], 1e-9);
        Assert.Equal(("water", 5e-6), Assert.Single(purity.Traces));
        Assert.Contains("oxygen", Assert.Single(purity.Said), StringComparison.Ordinal);
        Assert.Equal(["nitrogen"], ProductPurity.Of("nitrogen", null).Mixture.Names);
    }

    private static ProductMap Pure(string gas) => Of([gas], [1.0]);

    private static ProductMap Of(string[] names, double[] z) => ProductMap.Create(ReferenceModel.Create(names), z, TestContext.Current.CancellationToken);
}
