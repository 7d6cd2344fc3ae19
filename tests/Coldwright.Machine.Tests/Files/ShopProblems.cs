using Coldwright.Machine.Files;

namespace Coldwright.Machine.Tests.Files;

public sealed class ShopProblems
{
    [Theory]
    [InlineData("electricity: 0.31 per kWh", "electricity: 0.31", "0.31 per kWh")]
    [InlineData("electricity: 0.31 per kWh", "electricity: 0.31 per kg", "not a price of energy")]
    [InlineData("electricity: 0.31 per kWh", "electricity: -0.31 per kWh", "at least 0")]
    [InlineData("  ethane:", "  ethan:", "did you mean")]
    [InlineData("  ethane:", "  R290:", "is propane, which is here twice")]
    [InlineData("price: 38.00 per kg", "price: 38.00 per L", "not a price by mass")]
    [InlineData("currency: EUR", "curency: EUR", "nearest is 'currency'")]
    [InlineData("nitrogen: 2.40 per L", "nitrogen: [2]", "single value")]
    [InlineData("tube: 3/8 in ACR, price: 4.40 per m", "tube: 3/8 in ACR, price: 4.40 per kg", "not a price by length")]
    [InlineData("tube: 3/8 in ACR,", "tube: huge,", "no tube size")]
    [InlineData("material: perlite,", "material: cheese,", "no material")]
    [InlineData("price: 0.12 per L", "price: 0.12", "0.12")]
    public void AreNamed(string old, string replacement, string expected)
    {
        Assert.Contains(old, Examples.WorkshopShop, StringComparison.Ordinal);
        var read = MachineFolderReader.ReadTexts(Examples.Workshop, Examples.WorkshopShop.Replace(old, replacement, StringComparison.Ordinal));
        Assert.Null(read.Shop);
        Assert.NotNull(read.Machine);
        Assert.Contains(read.Problems, p => p.File == "shop.yaml" && p.Message.Contains(expected, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("electricity: 0.31 per kWh")]
    [InlineData("electricity: 0.31 EUR per kWh")]
    [InlineData("electricity: 0.31 EUR/kWh")]
    [InlineData("electricity: 310 per MWh")]
    public void ThePriceMayNameTheCurrency(string price)
    {
        var read = MachineFolderReader.ReadTexts(Examples.Workshop, Examples.WorkshopShop.Replace("electricity: 0.31 per kWh", price, StringComparison.Ordinal));
        Assert.Empty(read.Problems);
        Assert.Equal(0.31, read.Shop!.ElectricityPerKWh, 1e-12);
    }

    [Fact]
    public void AGasWithoutPriceIsSaid()
    {
        var read = MachineFolderReader.ReadTexts(Examples.Workshop, "currency: EUR\nelectricity: 0.31 per kWh\n");
        Assert.Empty(read.Problems);
        Assert.Contains(read.Notes, n => n.Contains("no price for nitrogen, methane, ethane, propane, isobutane", StringComparison.Ordinal));
    }
}
