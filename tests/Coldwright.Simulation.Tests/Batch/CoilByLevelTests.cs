using Coldwright.Machine.Description;
using Coldwright.Numerics.Interpolation;
using Coldwright.Simulation.Batch;
using Coldwright.Simulation.Rating;
using Xunit;

namespace Coldwright.Simulation.Tests.Batch;

/// <summary>Turns under liquid no longer condense: what the cold end takes as the vessel fills.</summary>
public sealed class CoilByLevelTests
{
    private const double Slope = 2, FromK = 80, LeakW = 3;
    private static readonly MonotoneCubic _gross = new([FromK, 300], [0, Slope * 220], new bool[2]), _net = new([FromK, 300], [-LeakW, Slope * 220 - LeakW], new bool[2]);

    /// <summary>With a straight curve Q = a (T - T0) and a resistance r added in series, exactly Q = a (T - T0)/(1 + a r).</summary>
    [Theory]
    [InlineData(0.0, 1 / 25.0 - 1 / 15.0)]
    [InlineData(0.5, 0.0)]
    [InlineData(1.0, 1 / 5.0 - 1 / 15.0)]
    public void AStraightCurveHasAnExactAnswer(double level, double resistance)
    {
        var coil = new CoilByLevel(_net, _gross, [0, 0.5, 1], [25, 15, 5], 15);
        foreach (double t in (double[])[90, 110, 150]) Assert.Equal(Slope * (t - FromK) / (1 + Slope * resistance) - LeakW, coil.NetW(t, level), 1e-8);
    }

    [Fact]
    public void ConductancesThatRiseWithTheLevelAreRefused()
    {
        Assert.Contains("not rise", Assert.Throws<ArgumentException>(() => new CoilByLevel(_net, _gross, [0, 1], [10, 12], 11)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => new CoilByLevel(_net, _gross, [0, 1], [10, 0], 11));
    }

    /// <summary>The coil of the example by its own model: each layer of liquid takes conductance away, and less heat comes in than with an empty vessel.</summary>
    [Fact]
    public void TheExamplesCoilLosesConductanceAsTheVesselFills()
    {
        var folder = Coolers.Folder("workshop");
        var result = BatchSimulation.Run(folder.Machine!, folder.Layout!, folder.Shop, new RatingOptions { Model = RatingModel.Cubic, Hold = HeldPressure.Both },
            new BatchOptions { Plan = Bench.Plan(17e5, 0.9, 8e5) }, null, TestContext.Current.CancellationToken);
        LedgerTests.Closes(result.Run);
        var coil = result.Coil!;
        Assert.True(coil.Conductances[^1] < 0.9 * coil.Conductances[0], string.Join(", ", coil.Conductances));
        for (int i = 1; i < coil.Levels.Count; i++) Assert.True(coil.NetW(112, coil.Levels[i]) <= coil.NetW(112, coil.Levels[i - 1]) + 1e-9);
    }

    [Fact]
    public void ACoveredCoilMakesTheLastGramsSlowest()
    {
        var bare = Bench.Cooler().WithMetal();
        var levels = bare with { Coil = new CoilByLevel(bare.NetCoolingW, bare.NetCoolingW, [0, 1], [20, 2], 11) };
        var (even, covered) = (Bench.Run(bare, Bench.Plan(fill: 0.9)), Bench.Run(levels, Bench.Plan(fill: 0.9)));
        LedgerTests.Closes(covered);
        double Took(BatchRun run, double from, double to) => run.Series.First(m => m.VesselKg >= to).TimeS - run.Series.First(m => m.VesselKg >= from).TimeS;
        Assert.True(Took(covered, 0.18, 0.2) > 1.1 * Took(even, 0.18, 0.2));
        Assert.True(Took(covered, 0.03, 0.06) < 1.02 * Took(even, 0.03, 0.06));
    }
}
