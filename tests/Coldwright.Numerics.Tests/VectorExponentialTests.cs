using System.Runtime.Intrinsics;
using Xunit;

namespace Coldwright.Numerics.Tests;

public sealed class VectorExponentialTests
{
    [Fact]
    public void It_agrees_with_the_runtime_to_the_last_places_over_the_whole_range()
    {
        var random = new Random(2);
        double worst = 0;
        for (int i = 0; i < 400_000; i++)
        {
            double x = i < 200_000 ? -708 + 1417 * random.NextDouble() : 40 * (random.NextDouble() - 0.5);
            double ours = VectorExponential.Exp(Vector256.Create(x))[0], theirs = Math.Exp(x);
            worst = Math.Max(worst, Math.Abs(ours / theirs - 1));
        }
        Assert.True(worst < 4.5e-16, $"largest relative difference {worst}");
        Assert.Equal(1, VectorExponential.Exp(Vector256<double>.Zero)[0]);
        Assert.True(VectorExponential.Exp(Vector256.Create(-1e9))[2] is > 0 and < 1e-300);
    }
}
