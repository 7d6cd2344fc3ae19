using Coldwright.Runs.Tightness;

namespace Coldwright.Runs.Tests.Tightness;

/// <summary>The straight line against exact data and a certified fit.</summary>
public sealed class LineFitTests
{
    /// <summary>
    /// Anscombe, The American Statistician 27 (1973) 17, first data set: slope 0.5001 with standard error 0.1179, intercept 3.0001.
    /// </summary>
    [Fact]
    public void AnscombesFirstSetIsMet()
    {
        (double X, double Y)[] set = [(4, 4.26), (5, 5.68), (6, 7.24), (7, 4.82), (8, 6.95), (9, 8.81), (10, 8.04), (11, 8.33), (12, 10.84), (13, 7.58), (14, 9.96)];
        var fit = LineFit.Of([.. set.Select(p => p.X)], [.. set.Select(p => p.Y)], [.. set.Select(_ => 1e-3)]);
        Assert.Equal(0.5001, fit.Slope, 1e-4);
        Assert.Equal(3.0001, fit.At(0), 1e-4);
        // The residuals of this set alternate, so nothing is added for wandering.
        Assert.Equal(0, fit.Autocorrelation, 1e-12);
        Assert.Equal(0.1179, fit.SlopeUncertainty, 1e-4);
    }

    [Fact]
    public void WeightsCount()
    {
        var fit = LineFit.Of([0, 1, 2, 3], [0, 1, 2, 30], [1e-3, 1e-3, 1e-3, 1e6]);
        Assert.Equal(1, fit.Slope, 1e-6);
    }

    [Fact]
    public void WanderingResidualsWidenTheSlope()
    {
        var t = Enumerable.Range(0, 200).Select(i => (double)i).ToArray();
        var wander = t.Select(x => Math.Sin(x / 15)).ToArray();
        var noise = Make.Noise(3, 0.7);
        var white = t.Select(_ => noise()).ToArray();
        var u = t.Select(_ => 0.7).ToArray();
        Assert.True(LineFit.Of(t, wander, u).SlopeUncertainty > 3 * LineFit.Of(t, white, u).SlopeUncertainty);
    }

    [Fact]
    public void TooLittleIsRefused()
    {
        Assert.Throws<ArgumentException>(() => LineFit.Of([0, 1], [0, 1], [1, 1]));
        Assert.Throws<ArgumentException>(() => LineFit.Of([1, 1, 1], [0, 1, 2], [1, 1, 1]));
    }
}
