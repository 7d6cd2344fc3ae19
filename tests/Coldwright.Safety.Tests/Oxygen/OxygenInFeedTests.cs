using Coldwright.Machine.Description;
using Coldwright.Machine.Feed;
using Xunit;
using static Coldwright.Safety.Tests.Workbench;

namespace Coldwright.Safety.Tests.Oxygen;

/// <summary>What a label or a certificate tells of the oxygen in the gas fed, and what the finding makes of it.</summary>
public sealed class OxygenInFeedTests
{
    private static ShopDescription Shop(double? purity, params (string Name, double Share)[] named) => new()
    {
        Currency = "EUR",
        ElectricityPerKWh = 0.3,
        GasPerKg = new Dictionary<string, double>(),
        GasPurity = purity is { } p ? new Dictionary<string, double> { ["nitrogen"] = p } : new Dictionary<string, double>(),
        GasImpurities = named.Length == 0 ? new Dictionary<string, IReadOnlyDictionary<string, double>>() : new Dictionary<string, IReadOnlyDictionary<string, double>> { ["nitrogen"] = named.ToDictionary(n => n.Name, n => n.Share) },
    };

    /// <summary>
    /// The two grades of A-A-59155 (Commercial Item Description, Nitrogen, 5 March 2003, table A: argon, neon and helium count as nitrogen) and the monograph
    /// of USP 32: the oxygen allowed is all that the purity leaves.
    /// </summary>
    [Theory]
    [InlineData(0.9995, 0.0005)]
    [InlineData(0.9950, 0.0050)]
    [InlineData(0.9900, 0.0100)]
    public void APurityAloneBoundsTheOxygenAsSpecificationsDo(double purity, double oxygen)
    {
        var found = ProductPurity.Oxygen("nitrogen", Shop(purity));
        Assert.Equal(oxygen, found!.Value.MoleFraction, 12);
        Assert.True(found.Value.IsMost);
    }

    [Fact]
    public void WhatACertificateNamesCounts()
    {
        Assert.Equal((20e-6, false), ProductPurity.Oxygen("nitrogen", Shop(0.999, ("oxygen", 20e-6))));
        // without a purity as well
        Assert.Equal((20e-6, false), ProductPurity.Oxygen("nitrogen", Shop(null, ("oxygen", 20e-6))));
        // argon and water named: the rest may still be oxygen
        Assert.Equal(350e-6, ProductPurity.Oxygen("nitrogen", Shop(0.999, ("argon", 600e-6), ("water", 50e-6)))!.Value.MoleFraction, 12);
        Assert.Null(ProductPurity.Oxygen("nitrogen", Shop(null, ("argon", 600e-6))));
        Assert.Null(ProductPurity.Oxygen("nitrogen", null));
    }

    /// <summary>The mixture that condenses agrees: where the oxygen is named, the rest of the label is no oxygen.</summary>
    [Fact]
    public void TheMixtureThatCondensesHoldsTheSameOxygen()
    {
        foreach (var shop in (ShopDescription[])[Shop(0.999), Shop(0.999, ("oxygen", 20e-6)), Shop(0.999, ("argon", 600e-6), ("water", 50e-6)), Shop(0.98, ("oxygen", 0.01), ("argon", 0.009))])
        {
            var mixture = ProductPurity.Of("nitrogen", shop).Mixture;
            Assert.Equal(ProductPurity.Oxygen("nitrogen", shop)!.Value.MoleFraction, mixture.MoleFractions[mixture.Names.ToList().IndexOf("oxygen")], 12);
            Assert.Equal(1, mixture.MoleFractions.Sum(), 12);
        }
    }

    /// <summary>Nitrogen at 99 % from a generator that tells its oxygen and nitrogen at 99 % from a bottle that does not: the finding says which of the two it knows.</summary>
    [Fact]
    public void TheFindingSaysWhatItKnows()
    {
        var machine = Sound.WithGas("nitrogen");
        string Text(ShopDescription shop)
        {
            var finding = Assert.Single(SafetyReview.Of(machine, CautionInputs.Of(machine, shop), TestContext.Current.CancellationToken).Findings, f => f.Id == "oxygen-enriching");
            return $"{finding.Rule} {finding.Do} {finding.Source}";
        }

        string bottle = Text(Shop(0.99)), generator = Text(Shop(0.99, ("oxygen", 0.002)));
        Assert.Contains("up to 1 % of oxygen", bottle, StringComparison.Ordinal);
        Assert.Contains("certificate", bottle, StringComparison.Ordinal);
        Assert.Contains("A-A-59155", bottle, StringComparison.Ordinal);
        Assert.Contains("with 0.2 % of oxygen", generator, StringComparison.Ordinal);
        Assert.DoesNotContain("up to", generator, StringComparison.Ordinal);
    }
}
