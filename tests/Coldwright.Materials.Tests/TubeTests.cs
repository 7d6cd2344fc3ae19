using Coldwright.Materials.Tubes;
using Xunit;

namespace Coldwright.Materials.Tests;

/// <summary>Tube sizes and ratings.</summary>
public sealed class TubeTests
{
    private const double Inch = 0.0254;
    private const double Psi = 6894.757293168;

    [Theory]
    [InlineData("3/8 in ACR", 0.375, 0.032)]
    [InlineData("5/16 in ACR", 0.312, 0.032)]
    [InlineData("1-1/8 in ACR", 1.125, 0.050)]
    [InlineData("2-1/8 in type L", 2.125, 0.070)]
    [InlineData("2 in type L", 2.125, 0.070)]
    [InlineData("1 in type M", 1.125, 0.035)]
    [InlineData("  1-1/4 IN Type k ", 1.375, 0.065)]
    [InlineData("3/4 in type L", 0.875, 0.045)]
    [InlineData("3/4 in OD type L", 0.750, 0.042)]
    [InlineData("0.25 x 0.03 in", 0.25, 0.03)]
    public void Finds_sizes_in_inches(string text, double outsideInch, double wallInch)
    {
        Assert.True(TubeTable.TryFind(text, out var outside, out var wall));
        Assert.Equal(outsideInch * Inch, outside, 1e-12);
        Assert.Equal(wallInch * Inch, wall, 1e-12);
    }

    [Fact]
    public void Finds_millimetres()
    {
        Assert.True(TubeTable.TryFind("6.35 x 0.8 mm", out var outside, out var wall));
        Assert.Equal(6.35e-3, outside, 1e-15);
        Assert.Equal(0.8e-3, wall, 1e-15);
    }

    [Theory]
    [InlineData("")]
    [InlineData("3/8 in")]
    [InlineData("3/7 in ACR")]
    [InlineData("3/0 in ACR")]
    [InlineData("7 in ACR")]
    [InlineData("1 in type N")]
    [InlineData("6.35 x 4 mm")]
    [InlineData("6.35 x 0 mm")]
    [InlineData("-6.35 x 0.8 mm")]
    [InlineData("6.35 x 0.8")]
    [InlineData("999999999999999999999999 x 1 mm")]
    public void Refuses_what_it_does_not_know(string text) => Assert.False(TubeTable.TryFind(text, out _, out _));

    [Fact]
    public void Every_size_finds_itself()
    {
        Assert.True(TubeTable.Sizes.Count >= 40);
        foreach (var size in TubeTable.Sizes)
        {
            Assert.True(TubeTable.TryFind(size.Text, out var outside, out var wall), size.Text);
            Assert.Equal((size.OutsideDiameterM, size.WallM), (outside, wall));
        }
    }

    /// <summary>
    /// Published ratings in psi, annealed. ASTM B280 tube at 150 °F (ratings table as reprinted at scribd.com); type K at 150 °F
    /// (likewise); type M at 100 °F (Copper Development Association, Copper Tube Handbook, as found at copper.org). Type M and K
    /// are independent of the B280 rows from which the tolerance was first read.
    /// </summary>
    [Theory]
    [InlineData("1/8 in ACR", 150, 2613)]
    [InlineData("1/4 in ACR", 150, 1195)]
    [InlineData("3/8 in ACR", 150, 836)]
    [InlineData("1/2 in ACR", 150, 618)]
    [InlineData("5/8 in ACR", 150, 525)]
    [InlineData("3/4 in ACR", 150, 435)]
    [InlineData("0.75 x 0.042 in", 150, 537)]
    [InlineData("7/8 in ACR", 150, 495)]
    [InlineData("1-1/8 in ACR", 150, 420)]
    [InlineData("1-3/8 in ACR", 150, 373)]
    [InlineData("1-5/8 in ACR", 150, 347)]
    [InlineData("2-1/8 in ACR", 150, 309)]
    [InlineData("2-5/8 in ACR", 150, 285)]
    [InlineData("1 in type K", 150, 557)]
    [InlineData("1-1/4 in type K", 150, 452)]
    [InlineData("1-1/2 in type K", 150, 420)]
    [InlineData("2 in type K", 150, 370)]
    [InlineData("2-1/2 in type K", 150, 338)]
    [InlineData("3/8 in type M", 100, 570)]
    [InlineData("1/2 in type M", 100, 494)]
    [InlineData("3/4 in type M", 100, 407)]
    [InlineData("1 in type M", 100, 337)]
    [InlineData("1-1/4 in type M", 100, 338)]
    [InlineData("1-1/2 in type M", 100, 331)]
    [InlineData("2 in type M", 100, 299)]
    [InlineData("2-1/2 in type M", 100, 274)]
    [InlineData("3 in type M", 100, 253)]
    [InlineData("4 in type M", 100, 251)]
    public void Reproduces_the_published_ratings(string tube, double fahrenheit, double psi)
    {
        Assert.True(TubeTable.TryFind(tube, out var outside, out var wall));
        var rating = TubeRating.AllowableGaugePressurePa(outside, wall, (fahrenheit + 459.67) / 1.8 - 1e-9) / Psi;
        Assert.InRange(rating - psi, -1, 1);
    }

    [Fact]
    public void Heat_never_strengthens_the_tube()
    {
        var last = double.PositiveInfinity;
        for (var t = 70.0; t <= TubeRating.MaximumTemperatureK; t += 1)
        {
            var now = TubeRating.AllowableGaugePressurePa(0.375 * Inch, 0.032 * Inch, t);
            Assert.True(now <= last);
            last = now;
        }
        Assert.Throws<ArgumentOutOfRangeException>(() => TubeRating.AnnealedStressPa(TubeRating.MaximumTemperatureK + 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => TubeRating.AllowableGaugePressurePa(0.01, 0.005, 300));
    }
}
