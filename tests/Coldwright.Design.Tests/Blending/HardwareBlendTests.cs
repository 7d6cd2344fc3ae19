using Coldwright.Design.Blending;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Machine.Description;
using Coldwright.Numerics;
using Xunit;

namespace Coldwright.Design.Tests.Blending;

/// <summary>The mixture for the example's own hardware, under limits.</summary>
public sealed class HardwareBlendTests
{
    // four gases: every move of the local search is then one of twelve
    private static readonly BlendOptions _quick = new() { Reference = false, Generations = 6, Population = 16, FillingError = 0.005, Gases = ["nitrogen", "methane", "ethane", "isobutane"] };

    private static BlendResult Find(BlendOptions options, CancellationToken? cancel = null, Action<string>? observer = null)
    {
        var folder = Examples.Read("workshop");
        return BlendSearch.Find(folder.Machine!, folder.Layout!, folder.Shop, options, observer, cancel ?? TestContext.Current.CancellationToken);
    }

    /// <summary>The best is no worse than what the file has, keeps every limit, takes up no more than the second law allows, and gives at least its worst case.</summary>
    [Fact]
    public void TheBestIsNoWorseThanTheFilesOwnAndKeepsTheSecondLaw()
    {
        var r = Find(_quick with { Generations = 8, Gases = ["nitrogen", "methane", "ethane", "propane", "isobutane"] });
        Assert.True(r.KnowsNow);
        var best = r.Best;
        Assert.True(best.Main.IsGood && best.Main.Broken.Count == 0);
        Assert.True(best.WorstMerit >= r.Now.WorstMerit);
        Assert.True(best.WorstMerit <= best.Main.Merit + 0.05);
        Assert.True(best.Main.Freezing is null or { Margin: >= 1.3 });
        var machine = Examples.Read("workshop").Machine!;
        double roomK = machine.Room.TemperatureK;
        var flash = new Flash(CubicModel.Create(best.Mixture.Names));
        double[] z = [.. best.Mixture.MoleFractions];
        double Exergy(double p) => flash.TemperaturePressure(roomK, p, z) is var s ? s.MolarEnthalpy - roomK * s.MolarEntropy : 0;
        double most = (best.Main.FlowMolPerS * (Exergy(r.HighPressurePa) - Exergy(r.LowPressurePa)) + best.Main.PrecoolingW * (roomK / best.Main.InletK - 1)) / (roomK / r.TemperatureK - 1);
        Assert.InRange(best.Main.CoolingW, 0, most);
        // fewer gases give no more
        Assert.All(r.Near, n => Assert.True(n.WorstMerit <= best.WorstMerit + 0.3, $"{n.Mixture}: {n.WorstMerit}"));
        Assert.True(r.Rated.Cubic > 100);
    }

    [Fact]
    public void ALimitOnWhatBurnsIsKeptAndHasAPrice()
    {
        var r = Find(_quick with { Generations = 15, Limits = new BlendLimits { Flammable = 0.7 } });
        Assert.True(r.Best.Flammable <= 0.7 + 1e-9, $"{r.Best.Mixture}");
        Assert.All(r.Prices, p => Assert.True(p.Gain >= 0));
        // the price is what a search with that much more room finds
        var price = r.Prices.Single(p => p.Limit.StartsWith("share", StringComparison.Ordinal));
        double more = Find(_quick with { Generations = 15, Limits = new BlendLimits { Flammable = price.Relaxed } }).Best.WorstMerit - r.Best.WorstMerit;
        Assert.True(more > 0.5 && price.Gain > 0.5 * more, $"{price.Gain} W told, {more} W found");
    }

    [Fact]
    public void APriceIsKept()
    {
        var r = Find(_quick with { Generations = 10, Limits = new BlendLimits { PricePerKg = 14 } });
        Assert.True(r.Best.PricePerKg <= 14 * (1 + 1e-9), $"{r.Best.Mixture} at {r.Best.PricePerKg}");
    }

    [Fact]
    public void OneLiquidIsKept()
    {
        var r = Find(_quick with { Limits = new BlendLimits { OneLiquid = true } });
        Assert.False(r.Best.Main.TwoLiquids);
    }

    [Fact]
    public void TheColdestMixtureIsNoWarmerThanTheFilesOwn()
    {
        var r = Find(_quick with { Goal = BlendGoal.Lowest, Generations = 3, Population = 12, FillingError = 0, Gases = ["nitrogen", "methane", "ethane", "propane", "isobutane"] });
        Assert.True(r.Best.Main.NoLoadK <= r.Now.Main.NoLoadK + 1e-3, $"{r.Best.Main.NoLoadK} against {r.Now.Main.NoLoadK}");
    }

    [Fact]
    public void WhatCannotBeIsSaid()
    {
        var none = Assert.Throws<SolveException>(() => Find(_quick with { Generations = 2, Limits = new BlendLimits { Flammable = 0.01 }, Gases = ["methane", "ethane"] }));
        Assert.Contains("no mixture of methane, ethane", none.Report.Advice, StringComparison.Ordinal);
        Assert.Contains("2 to 8", Assert.Throws<ArgumentException>(() => Find(_quick with { Gases = ["methane"] })).Message, StringComparison.Ordinal);
        Assert.Contains("twice", Assert.Throws<ArgumentException>(() => Find(_quick with { Gases = ["methane", "methane"] })).Message, StringComparison.Ordinal);
        Assert.Contains("K", Assert.Throws<ArgumentException>(() => Find(_quick with { TemperatureK = 500 })).Message, StringComparison.Ordinal);
        Assert.Contains("price", Assert.Throws<ArgumentException>(() => Find(_quick with { Gases = ["argon", "methane"], Limits = new BlendLimits { PricePerKg = 5 } })).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void StoppedItKeepsTheBestSoFar()
    {
        using var source = new CancellationTokenSource();
        var r = Find(_quick with { Generations = 200 }, source.Token, text => { if (text.Contains("generation 3 ", StringComparison.Ordinal)) source.Cancel(); });
        Assert.True(r.Stopped);
        Assert.True(r.Best.Main.IsGood);
    }

    [Fact]
    public void FillingErrorsMoveOneFractionAndKeepTheOthersInProportion()
    {
        double[] x = [0.5, 0.3, 0.2], off = Fractions.Off(x, 0, 0.05)!;
        Assert.Equal(0.55, off[0], 1e-12);
        Assert.Equal(1.5, off[1] / off[2], 1e-12);
        Assert.Equal(1, off.Sum(), 1e-12);
        Assert.Null(Fractions.Off(x, 2, -0.2));
        Assert.Equal(7, Fractions.WithErrors(x, 0.01).Count());
        Assert.Equal(x, Fractions.Of(Fractions.Cube(x)), (a, b) => Math.Abs(a - b) < 1e-9);
    }
}
