using Coldwright.Machine.ColdVessel;
using Coldwright.Machine.Recuperation;
using Coldwright.Numerics;
using static Coldwright.Machine.Tests.ColdVessel.ColdVesselSamples;

namespace Coldwright.Machine.Tests.ColdVessel;

/// <summary>A wide-boiling mixture at 3.5 bar absolute in the coil, nitrogen at 12 bar absolute around it.</summary>
public class ColdVesselTests
{
    private static readonly ColdVesselOptions Quick = new() { Band = false };

    private static ColdVesselInput Quickly(double levelM, CoilInletEnd end = CoilInletEnd.Bottom) => Case(levelM) with { Options = Quick, Coil = Coil with { InletEnd = end } };

    [Theory]
    [InlineData(CoilInletEnd.Bottom)]
    [InlineData(CoilInletEnd.Top)]
    public void HeatFallsAsTheLevelRises(CoilInletEnd end)
    {
        double last = double.PositiveInfinity;
        for (double level = 0; level <= Vessel.HeightM; level += 0.01)
        {
            var r = Quickly(level, end).Solve();
            Assert.True(r.CondensedKgPerS <= last * (1 + 1e-9), $"{level} m: {r.CondensedKgPerS} after {last} kg/s");
            last = r.CondensedKgPerS;
            Assert.True(Math.Abs(r.EnergyError) < 1e-7 && Math.Abs(r.EnergyError) * Math.Max(r.HeatW, 1e-3) < 1e-8 * Math.Max(r.HeatW, 1), $"{level}: {r.EnergyError}");
            Assert.Equal(Coil.OutsideAreaM2, r.CondensingAreaM2 + r.SubmergedAreaM2, 1e-12);
            Assert.InRange(r.SubcoolingK, 0, 7.7);
            Assert.True(r.PressureDropPa > 0 && r.Report.Solved);
        }
    }

    [Fact]
    public void LevelsOutsideTheCoilAreItsEnds()
    {
        Assert.Equal(Quickly(0).Solve().HeatW, Quickly(Coil.BottomM).Solve().HeatW, 1e-9);
        var full = Quickly(Coil.TopM).Solve();
        Assert.Equal(0, full.HeatW, 1e-6);
        Assert.Equal(0, full.CondensedKgPerS);
        // nothing to do but fall in temperature with the pressure
        Assert.Equal(full.InletK, full.LiquidK, 0.05);
        Assert.Contains(full.Warnings, w => w.Contains("covers all of the coil"));
    }

    [Fact]
    public void ASmallStepInLevelIsASmallStepInHeat()
    {
        double Heat(double level) => Quickly(level).Solve().HeatW;
        Assert.Equal(Heat(0.1), Heat(0.1 + 1e-6), 1e-3);
        Assert.Equal(Heat(Coil.BottomM), Heat(Coil.BottomM + 1e-6), 1e-3);
    }

    [Fact]
    public void ProfileRunsFromContentToMixture()
    {
        var r = Quickly(0.1).Solve();
        Assert.InRange(r.Profile[^1].PositionM, 0.95 * Coil.LengthM, Coil.LengthM);
        Assert.InRange(r.Profile[^1].HeightM, Coil.TopM - 0.01, Coil.TopM);
        Assert.InRange(r.Profile[^1].MixtureK, r.InletK, r.OutletK);
        double last = 0;
        foreach (var s in r.Profile)
        {
            Assert.True(s.MixtureK < s.WallK && s.WallK < s.ContentK && s.HeatPerLength > 0 && s.PositionM > last, $"{s}");
            Assert.Equal(s.HeatPerLength, s.ConductancePerLength * (s.ContentK - s.MixtureK), 1e-6 * s.HeatPerLength);
            Assert.Equal(s.HeightM <= 0.1 + 1e-9 ? CoilZone.Submerged : CoilZone.Condensing, s.Zone);
            last = s.PositionM;
        }
        Assert.Equal(r.HeatW, r.ConductanceWPerK * r.MeanDifferenceK, 1e-9);
        Assert.InRange(r.MeanDifferenceK, r.OutletDifferenceK, r.SaturationK!.Value - r.InletK);
    }

    [Fact]
    public void RefiningTheGridConverges()
    {
        double Heat(int cells) => (Quickly(0.08) with { Options = Quick with { Cells = cells } }).Solve().HeatW;
        double finest = Heat(1024);
        Assert.InRange((Heat(32) - finest) / (Heat(128) - finest), 8, 32);
        Assert.Equal(finest, Heat(32), 2e-4 * finest);
    }

    [Fact]
    public void AGivenLiquidStoresTheRest()
    {
        var steady = Quickly(0.1).Solve();
        var warm = (Quickly(0.1) with { LiquidK = steady.SaturationK }).Solve();
        var cold = (Quickly(0.1) with { LiquidK = steady.LiquidK - 0.5 }).Solve();
        Assert.False(warm.Steady);
        Assert.True(warm.LiquidGainW < 0 && cold.LiquidGainW > 0);
        // drip and liquid: feed in = mixture's gain + what the liquid keeps
        double fed = warm.CondensedKgPerS * Nitrogen.HeatOfCondensation;
        Assert.Equal(fed, warm.CondensingW + warm.LiquidW + warm.LiquidGainW, 1e-9 * fed);
        var same = (Quickly(0.1) with { LiquidK = steady.LiquidK }).Solve();
        Assert.Equal(0, same.LiquidGainW, 1e-6);
        Assert.Equal(steady.HeatW, same.HeatW, 1e-9 * steady.HeatW);
    }

    [Fact]
    public void AWarmFeedCostsCondensate()
    {
        var cold = Quickly(0.05).Solve();
        var warm = (Quickly(0.05) with { FeedK = 290 }).Solve();
        Assert.True(warm.CondensedKgPerS < 0.6 * cold.CondensedKgPerS);
        Assert.Equal(warm.CondensedKgPerS * (Nitrogen.Gas(290).MassEnthalpy - Nitrogen.Gas(Nitrogen.DewK!.Value).MassEnthalpy), warm.DesuperheatingW, 1e-3 * warm.DesuperheatingW);
        Assert.Equal(0, cold.DesuperheatingW, 1e-9);
        Assert.True(Math.Abs(warm.EnergyError) < 1e-8);
        Assert.Contains(warm.Warnings, w => w.Contains("dew point"));
    }

    [Fact]
    public void ADenseFluidIsCooledAndSaid()
    {
        var question = Quickly(0) with { Product = Pure("nitrogen", 45e5), FeedK = 250, LiquidK = 115 };
        var r = question.Solve();
        Assert.Null(r.SaturationK);
        Assert.All(r.Profile, s => Assert.Equal(CoilZone.Dense, s.Zone));
        Assert.Equal(0, r.CondensingAreaM2);
        Assert.Equal(r.HeatW, r.CondensedKgPerS * (question.Product.Gas(250).MassEnthalpy - question.Product.Liquid(115).MassEnthalpy), 1e-9 * r.HeatW);
        Assert.Equal(115 - r.OutletK, r.OutletDifferenceK, 1e-12);
        Assert.Contains(r.Warnings, w => w.Contains("critical pressure"));
        Assert.Throws<ArgumentException>(() => (question with { LiquidK = null }).Solve());
        Assert.Throws<ArgumentException>(() => (question with { FeedK = null }).Solve());
    }

    [Fact]
    public void ImpuritiesHoldTheCoilBack()
    {
        var pure = Quickly(0.05).Solve();
        var air = (Quickly(0.05) with { Product = Of(["nitrogen", "oxygen", "argon"], [0.97, 0.02, 0.01], 12e5) }).Solve();
        Assert.True(air.CondensedKgPerS < pure.CondensedKgPerS);
        Assert.True(Math.Abs(air.EnergyError) < 1e-8);
        Assert.Contains(air.Warnings, w => w.Contains("glide"));
        // a light gas that is not vented is worse by far
        var helium = (Quickly(0.08) with { Product = Of(["nitrogen", "helium"], [0.9995, 0.0005], 12e5) }).Solve();
        Assert.Equal(2.903, helium.HeatW, 0.005); // regression
    }

    [Fact]
    public void FreezingIsSaid()
    {
        // methane at 1.2 bar absolute condenses at 114 K and freezes at 90.7 K
        var r = (Quickly(0.2) with { Product = Pure("methane", 1.2e5), LiquidK = 91.5, Mixture = StreamInlet.AtTemperature(Low, 0.3, 85, LowPa) }).Solve();
        Assert.Contains(r.Warnings, w => w.Contains("freezes onto the coil"));
    }

    [Fact]
    public void ACoilAroundTheVesselWorksThroughItsWall()
    {
        var around = Coil with { Position = CoilPosition.Around, CoilDiameterM = 0.0604, LengthM = 3, PitchM = 0.012 };
        var r = (Quickly(0.08) with { Coil = around }).Solve();
        Assert.Equal(Math.PI * Vessel.BoreM * around.HeightM, r.CondensingAreaM2 + r.SubmergedAreaM2, 1e-12);
        Assert.True(Math.Abs(r.EnergyError) < 1e-8);
        double Heat(ColdCoilGeometry coil) => (Quickly(0.08) with { Coil = coil }).Solve().HeatW;
        Assert.True(Heat(around with { BondWidthM = 4e-3 }) > r.HeatW);
        Assert.True(Heat(around with { BondConductivity = 5 }) < r.HeatW);
        Assert.True((Quickly(0.08) with { Coil = around, Vessel = Vessel with { Material = "stainless-304" } }).Solve().HeatW < r.HeatW);
        // solder of no thickness, round thick walls of the best copper: the wall's fins vanish and the exchanger is films only
        var ideal = (Quickly(0) with { Coil = around with { BondThicknessM = 0, BondWidthM = 9.9e-3 }, Vessel = Vessel with { Material = "copper-ofhc-500" }, Options = Plain(50, 50) }).Solve();
        double area = Math.PI * Vessel.BoreM * around.PitchM / around.TurnLengthM, films = 1 / (1 / (50 * area) + 1 / (50 * Math.PI * around.BoreM));
        Assert.Equal(films, ideal.Profile[0].ConductancePerLength, 0.03 * films);
    }

    [Fact]
    public void TheCorrelationsUncertaintyReachesTheResult()
    {
        var r = Case(0.08).Solve();
        Assert.InRange(r.Band!.HeatW, 0.001 * r.HeatW, 0.2 * r.HeatW);
        Assert.InRange(r.Band.ConductanceWPerK, 0.1 * r.ConductanceWPerK, 0.4 * r.ConductanceWPerK);
        Assert.InRange(r.Band.PressureDropPa, 0.1 * r.PressureDropPa, 0.4 * r.PressureDropPa);
        Assert.InRange(r.Band.OutletK, 0.01, 2);
        var known = (Case(0.08) with { Options = Plain(400, 1000) with { Band = true } }).Solve();
        Assert.Equal(0, known.Band!.HeatW);
    }

    [Fact]
    public void AGivenHeatNeedsItsDifference()
    {
        var cancel = TestContext.Current.CancellationToken;
        foreach (double heat in new[] { 2.0, 15, 40 })
        {
            var r = ColdVesselModel.SolveForHeat(Quickly(0.08), heat, cancel);
            Assert.Equal(heat, r.HeatW, 1e-6 * heat);
            Assert.True(r.OutletDifferenceK > 0);
        }
        Assert.True(ColdVesselModel.SolveForHeat(Quickly(0.08), 20, cancel).InletK < ColdVesselModel.SolveForHeat(Quickly(0.08), 10, cancel).InletK);
        var e = Assert.Throws<SolveException>(() => ColdVesselModel.SolveForHeat(Quickly(0.08), 5000, cancel));
        Assert.Contains("at most", e.Message);
        Assert.Throws<ArgumentException>(() => ColdVesselModel.SolveForHeat(Quickly(0.08), -1, cancel));
    }

    [Fact]
    public void WhatCannotBeIsRefusedInWords()
    {
        var e = Assert.Throws<SolveException>(() => Case(0.08, 110).Solve());
        Assert.Contains("not colder than the content", e.Message);
        e = Assert.Throws<SolveException>(() => (Quickly(0) with { Coil = Coil with { OutsideDiameterM = 0.002, WallM = 0.0005 }, Mixture = StreamInlet.AtTemperature(Low, 0.3, 99, LowPa) }).Solve());
        Assert.Contains("wider tube", e.Message);
        // a liquid whose table ends (as at its freezing point) well above what the mixture would cool it to
        e = Assert.Throws<SolveException>(() => (Quickly(0.2) with { Product = Pure("nitrogen", 12e5, 104) }).Solve());
        Assert.Contains("freezes", e.Message);
    }

    [Fact]
    public void EveryNumberIsChecked()
    {
        void Bad(ColdVesselInput input, string name)
        {
            var e = Assert.Throws<ArgumentException>(() => input.Solve());
            Assert.Contains(name, e.Message);
        }
        var c = Case();
        Bad(c with { LevelM = -0.01 }, "LevelM");
        Bad(c with { LevelM = 1 }, "LevelM");
        Bad(c with { FeedK = 80 }, "FeedK");
        Bad(c with { LiquidK = 300 }, "LiquidK");
        Bad(c with { Coil = Coil with { OutsideDiameterM = 0 } }, "OutsideDiameterM");
        Bad(c with { Coil = Coil with { WallM = 0.004 } }, "WallM");
        Bad(c with { Coil = Coil with { LengthM = double.NaN } }, "LengthM");
        Bad(c with { Coil = Coil with { CoilDiameterM = 0.01 } }, "CoilDiameterM");
        Bad(c with { Coil = Coil with { CoilDiameterM = 0.05 } }, "CoilDiameterM");
        Bad(c with { Coil = Coil with { PitchM = 0.005 } }, "PitchM");
        Bad(c with { Coil = Coil with { BottomM = 0.2 } }, "TopM");
        Bad(c with { Coil = Coil with { BottomM = -1 } }, "BottomM");
        Bad(c with { Coil = Coil with { RoughnessM = 1 } }, "RoughnessM");
        Bad(c with { Coil = Coil with { BondWidthM = 0.1 } }, "BondWidthM");
        Bad(c with { Coil = Coil with { BondThicknessM = 0.1 } }, "BondThicknessM");
        Bad(c with { Coil = Coil with { BondConductivity = 0 } }, "BondConductivity");
        Bad(c with { Coil = Coil with { Material = "cheese" } }, "cheese");
        Bad(c with { Coil = Coil with { Position = CoilPosition.Around } }, "CoilDiameterM");
        Bad(c with { Vessel = Vessel with { OutsideDiameterM = 3 } }, "OutsideDiameterM");
        Bad(c with { Vessel = Vessel with { WallM = 0 } }, "WallM");
        Bad(c with { Vessel = Vessel with { LengthM = 0 } }, "LengthM");
        Bad(c with { Vessel = Vessel with { CapWallM = 1 } }, "CapWallM");
        Bad(c with { Vessel = Vessel with { Material = "cheese" } }, "cheese");
        Bad(c with { Options = Quick with { Cells = 3 } }, "cells");
        Bad(c with { Options = Quick with { Inside = new SideOptions(-1) } }, "mixture");
        Bad(c with { Mixture = c.Mixture with { MolarFlow = 0 } }, "molar flow");
        Assert.Contains("pressurePa", Assert.Throws<ArgumentException>(() => Pure("nitrogen", 1)).Message);
        Assert.Contains("coldestK", Assert.Throws<ArgumentException>(() => Pure("nitrogen", 5e5, 5)).Message);
    }

    [Fact]
    public void RandomCasesCloseTheirBalance()
    {
        var random = new Random(7);
        string[] gases = ["nitrogen", "argon", "oxygen", "methane"];
        for (int k = 0; k < 60; k++)
        {
            var product = Pure(gases[k % 4], 2e5 * Math.Pow(12, random.NextDouble()), 84);
            double mixtureK = Math.Max(85, product.BubbleK!.Value - 12 * random.NextDouble() - 0.05);
            if (mixtureK >= product.BubbleK || mixtureK < product.FreezingK + 1) continue;
            var coil = random.Next(3) == 0
                ? Coil with { Position = CoilPosition.Around, CoilDiameterM = 0.0604, PitchM = 0.012, LengthM = 1 + 2 * random.NextDouble() }
                : Coil with { InletEnd = (CoilInletEnd)random.Next(2) };
            var r = (Case(Vessel.HeightM * 0.9 * random.NextDouble()) with
            {
                Coil = coil, Product = product, Options = Quick, FeedK = random.Next(2) == 0 ? null : 250, Mixture = StreamInlet.AtTemperature(Low, 0.002 * Math.Pow(50, random.NextDouble()), mixtureK, LowPa),
            }).Solve();
            Assert.True(Math.Abs(r.EnergyError) * Math.Max(r.HeatW, 1e-3) < 1e-8 * Math.Max(r.HeatW, 1), $"{k}: {r.EnergyError} of {r.HeatW} W");
            // the last half cell's change of pressure moves the temperature by microkelvins
            Assert.True(r.OutletK <= r.SaturationK + 1e-4, $"{k}: {r.OutletK} past {r.SaturationK}");
            Assert.True(r.CondensedKgPerS >= 0 && double.IsFinite(r.HeatW));
        }
    }

    [Fact]
    public void AKnownCase() => Assert.Equal(17.901, Quickly(0.08).Solve().HeatW, 0.01); // regression
}
