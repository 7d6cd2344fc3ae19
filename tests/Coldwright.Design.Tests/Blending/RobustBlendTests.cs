using Coldwright.Design.Blending;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Machine.Description;
using Coldwright.Simulation.Rating;
using Xunit;

namespace Coldwright.Design.Tests.Blending;

/// <summary>The worst case, the exhaustive grid and the number of gases, on the example's own hardware.</summary>
public sealed class RobustBlendTests
{
    private static readonly string[] _three = ["nitrogen", "methane", "isobutane"];
    private static readonly BlendOptions _quick = new() { Generations = 10, Population = 20, Gases = _three, Reference = false };

    private static BlendResult Find(BlendOptions options)
    {
        var folder = Examples.Read("workshop");
        return BlendSearch.Find(folder.Machine!, folder.Layout!, folder.Shop, options, null, TestContext.Current.CancellationToken);
    }

    private static BlendRater Rater(BlendOptions options, bool reference)
    {
        var folder = Examples.Read("workshop");
        var (machine, layout, loadK) = BlendSearch.Start(folder.Machine!, folder.Layout!, options, [], TestContext.Current.CancellationToken);
        return new BlendRater(machine, layout, options.Gases, reference ? ReferenceModel.Create : CubicModel.Create, options, loadK, null, [.. options.Gases.Select(_ => (double?)1)]);
    }

    private static double[] Fractions(BlendChoice c, IReadOnlyList<string> gases) => [.. gases.Select(g => c.Mixture.Names.ToList().IndexOf(g) is var i and >= 0 ? c.Mixture.MoleFractions[i] : 0)];

    /// <summary>What is said to be the worst is the least of every single error, both ways, in both models; and what is near is no better.</summary>
    [Fact]
    public void TheWorstCaseIsTheLeastOfEveryErrorInBothModels()
    {
        var options = _quick with { Reference = true, FillingError = 0.01 };
        var r = Find(options);
        double[] x = Fractions(r.Best, _three);
        double worst = double.PositiveInfinity;
        foreach (bool reference in (bool[])[false, true])
        {
            var rater = Rater(options, reference);
            worst = Math.Min(worst, rater.Of(x).Merit);
            for (int i = 0; i < x.Length; i++)
                foreach (double by in (double[])[0.01, -0.01])
                {
                    double[] off = [.. x.Select((v, k) => k == i ? v + by : v * (1 - x[i] - by) / (1 - x[i]))];
                    worst = Math.Min(worst, rater.Of(off).Merit);
                }
        }
        Assert.Equal(worst, r.Best.WorstMerit, 1e-6 * Math.Abs(worst));
        Assert.True(r.Best.WorstMerit < Math.Min(r.Best.Main.Merit, r.Best.Cubic.Merit));
        Assert.All(r.Near, n => Assert.True(n.WorstMerit <= r.Best.WorstMerit + 1e-9, $"{n.Mixture}: {n.WorstMerit} against {r.Best.WorstMerit}"));
        Assert.True(r.Rated is { Cubic: > 100, Reference: > 10 } && r.ProcessorSeconds > 0);
    }

    /// <summary>Every mixture of three gases in steps of a thirtieth, at its worst: none is better than what the search found.</summary>
    [Fact]
    public void AnExhaustiveGridFindsNothingBetterAtItsWorst()
    {
        var rater = Rater(_quick, false);
        var worst = new WorstCase(rater, null, _quick.FillingError);
        double found = Find(_quick).Best.WorstMerit, grid = double.NegativeInfinity;
        for (int i = 1; i < 30; i++)
            for (int j = 1; j < 30 - i; j++) grid = Math.Max(grid, worst.Cubic([i / 30.0, j / 30.0, (30 - i - j) / 30.0], grid));
        Assert.True(grid > 0 && found >= grid, $"{found} W found, {grid} W on the grid");
    }

    /// <summary>A gas more to choose from, on the same hardware and at the worst of the errors: no worse, but for what the last step of the search leaves open.</summary>
    [Fact]
    public void OneGasMoreIsNotWorseOnHardware()
    {
        string[] all = ["nitrogen", "methane", "isobutane", "ethane", "propane"];
        double before = double.NegativeInfinity;
        for (int n = 3; n <= all.Length; n++)
        {
            double merit = Find(_quick with { Gases = all[..n] }).Best.WorstMerit;
            Assert.True(merit >= before - 3e-3 * Math.Abs(before), $"{n} gases: {merit} W after {before} W");
            before = merit;
        }
    }

    /// <summary>Two seeds end at the same merit: the search has found its way.</summary>
    [Fact]
    public void AnotherSeedFindsTheSameMerit()
    {
        double one = Find(_quick).Best.WorstMerit, other = Find(_quick with { Seed = 7 }).Best.WorstMerit;
        Assert.Equal(one, other, 5e-3 * one);
    }

    /// <summary>The litres that a mixture is chosen for are those that the cooler's rating gives with it.</summary>
    [Fact]
    public void TheLitresAreThoseOfTheRating()
    {
        var r = Find(_quick with { Goal = BlendGoal.Litres });
        Assert.Equal(r.Best.Main.Merit, r.Best.Main.CollectedLPerH!.Value, 1e-12);
        var folder = Examples.Read("workshop");
        var machine = folder.Machine! with { Charge = folder.Machine.Charge with { Mixture = r.Best.Mixture } };
        var shop = new ShopDescription { Currency = "", ElectricityPerKWh = 0, GasPerKg = new Dictionary<string, double>() };
        var rated = CoolerRating.Rate(machine, folder.Layout!, shop, new RatingOptions { Model = RatingModel.Cubic, Hold = HeldPressure.Both, OperatingTemperatureK = r.TemperatureK }, null, TestContext.Current.CancellationToken).Main;
        Assert.Equal(rated.Liquid!.CollectedLPerH, r.Best.Main.Merit, 5e-3 * r.Best.Main.Merit);
    }

    [Fact]
    public void LitresOfNothingAreRefused()
    {
        var folder = Examples.Read("workshop");
        var layout = folder.Layout! with { Feed = null };
        Assert.Contains("nothing is liquefied", Assert.Throws<ArgumentException>(() => BlendSearch.Find(folder.Machine!, layout, folder.Shop, _quick with { Goal = BlendGoal.Litres, TemperatureK = 110 }, null, TestContext.Current.CancellationToken)).Message, StringComparison.Ordinal);
    }
}
