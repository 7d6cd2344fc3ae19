using Coldwright.Numerics.Optimisation;
using Xunit;

namespace Coldwright.Numerics.Tests.Optimisation;

/// <summary>Differential evolution on the published test functions that its authors used (R. Storn, K. Price, J. Global Optimization 11 (1997) 341) and others of De Jong's and Rastrigin's; all have their best at a known place.</summary>
public sealed class DifferentialEvolutionTests
{
    private static double Sphere(double[] x) => x.Sum(v => v * v);

    private static double Rosenbrock(double[] x) => Enumerable.Range(0, x.Length - 1).Sum(i => 100 * Math.Pow(x[i + 1] - x[i] * x[i], 2) + Math.Pow(1 - x[i], 2));

    private static double Rastrigin(double[] x) => 10 * x.Length + x.Sum(v => v * v - 10 * Math.Cos(2 * Math.PI * v));

    private static double Ackley(double[] x) => 20 + Math.E - 20 * Math.Exp(-0.2 * Math.Sqrt(x.Average(v => v * v))) - Math.Exp(x.Average(v => Math.Cos(2 * Math.PI * v)));

    private static double Griewank(double[] x) => 1 + x.Sum(v => v * v / 4000) - x.Select((v, i) => Math.Cos(v / Math.Sqrt(i + 1))).Aggregate(1.0, (a, b) => a * b);

    private static readonly Dictionary<string, (Func<double[], double> F, double Low, double High, double Best)> _functions = new()
    {
        ["sphere"] = (Sphere, -5.12, 5.12, 0), ["rosenbrock"] = (Rosenbrock, -2.048, 2.048, 1), ["rastrigin"] = (Rastrigin, -5.12, 5.12, 0), ["ackley"] = (Ackley, -30, 30, 0), ["griewank"] = (Griewank, -50, 50, 0),
    };

    [Theory]
    [InlineData("sphere", 6, 1e-8)]
    [InlineData("rosenbrock", 3, 1e-5)]
    [InlineData("rastrigin", 4, 1e-5)]
    [InlineData("ackley", 4, 1e-4)]
    [InlineData("griewank", 3, 1e-3)]
    public void TheBestOfAPublishedFunctionIsFound(string name, int dimensions, double within)
    {
        var (f, low, high, at) = _functions[name];
        var search = new DifferentialEvolution { Population = 12 * dimensions, Generations = 600, Spread = 0 };
        var r = search.Maximise(dimensions, (u, _) => -f([.. u.Select(v => low + (high - low) * v)]), [], null, TestContext.Current.CancellationToken);
        Assert.True(-r.Value < within, $"{name}: {-r.Value} after {r.Evaluations}");
        Assert.All(r.Place, u => Assert.Equal(at, low + (high - low) * u, 0.05));
    }

    [Fact]
    public void TheSameSeedGivesTheSameAnswerOnAnyNumberOfThreads()
    {
        SearchResult Run(int threads, int seed) => new DifferentialEvolution { Threads = threads, Seed = seed, Generations = 20 }.Maximise(3, (u, _) => -Sphere([.. u.Select(v => v - 0.3)]), [], null, TestContext.Current.CancellationToken);
        Assert.Equal(Run(1, 7).Place, Run(2, 7).Place);
        Assert.NotEqual(Run(1, 7).Place, Run(1, 8).Place);
    }

    /// <summary>A start is never lost: the answer is at least as good.</summary>
    [Fact]
    public void AStartIsNeverLost()
    {
        double[] start = [0.123, 0.456];
        var r = new DifferentialEvolution { Generations = 1 }.Maximise(2, (u, _) => u[0] == start[0] && u[1] == start[1] ? 10 : u[0], [start], null, TestContext.Current.CancellationToken);
        Assert.Equal(start, r.Place);
        Assert.Equal(10, r.Value);
    }

    /// <summary>A trial that cannot beat its parent need not be worked out: answers below the floor may be anything.</summary>
    [Fact]
    public void TheFloorMayBeUsed()
    {
        double Value(double[] u) => -Sphere([.. u.Select(v => v - 0.6)]);
        var full = new DifferentialEvolution { Generations = 40 }.Maximise(3, (u, _) => Value(u), [], null, TestContext.Current.CancellationToken);
        var cut = new DifferentialEvolution { Generations = 40 }.Maximise(3, (u, floor) => Value(u) is var v && v < floor ? double.NegativeInfinity : v, [], null, TestContext.Current.CancellationToken);
        Assert.Equal(full.Place, cut.Place);
    }

    [Fact]
    public void StoppedItGivesTheBestSoFar()
    {
        using var source = new CancellationTokenSource();
        var r = new DifferentialEvolution { Generations = 1000, Spread = 0 }.Maximise(2, (u, _) => u[0], [], (g, _) => { if (g == 3) source.Cancel(); }, source.Token);
        Assert.True(r.Stopped);
        Assert.Equal(3, r.Generations);
        Assert.True(r.Value > 0.8);
    }

    [Fact]
    public void SettingsOutOfRangeAreRefused()
    {
        Assert.Throws<ArgumentException>(() => new DifferentialEvolution { Population = 3 }.Maximise(2, (_, _) => 0, [], null, TestContext.Current.CancellationToken));
        Assert.Throws<ArgumentException>(() => new DifferentialEvolution().Maximise(0, (_, _) => 0, [], null, TestContext.Current.CancellationToken));
        Assert.Throws<ArgumentException>(() => new DifferentialEvolution().Maximise(2, (_, _) => 0, [[0.5]], null, TestContext.Current.CancellationToken));
    }
}
