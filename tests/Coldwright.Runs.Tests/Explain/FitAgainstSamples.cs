using Coldwright.Blind;
using Coldwright.Runs.Explain;

namespace Coldwright.Runs.Tests.Explain;

/// <summary>Intervals come from a linearisation at the best strength; here they are held against samples of the whole density (Metropolis and others, J. Chem. Phys. 21 (1953) 1087).</summary>
[Collection(BlindCollection.Name)]
public sealed class FitAgainstSamples(BlindRuns blind)
{
    [Theory]
    [InlineData("wet-insulation", 0.08)]
    [InlineData("extra-metal", 3.0)]
    [InlineData("exchanger", 0.4)]
    public void SpreadOfAStrength(string id, double size)
    {
        var (run, log) = LogWriter.Write(CaseMaker.Of(1, new Truth { Faults = [(id, size)] }, TestContext.Current.CancellationToken), SensorSet.Usual, 1);
        var record = RunImporter.ReadTexts(run, System.Text.Encoding.UTF8.GetBytes(log), TestContext.Current.CancellationToken).Record! with { Machine = blind.Folder.Machine };
        var c = ComparisonMaker.Make(Observer.Read(record, blind.Folder.Layout!), blind.Runs);
        var fit = new EvidenceFit(c);
        int member = c.Suspects.ToList().FindIndex(s => s.Id == id);
        var best = fit.Fit([member]);
        var random = new Random(1);
        double f = best.Strengths[0], stretch = best.Stretch[0], cost = fit.CostOf([member], [f, stretch]), sum = 0, squares = 0, step = 1.6 * best.Sigma[0];
        const int samples = 40_000;
        for (int i = 0; i < samples; i++)
        {
            double next = f + step * (2 * random.NextDouble() - 1), other = stretch + 1.2 * EvidenceFit.StretchSigma * (2 * random.NextDouble() - 1);
            double then = next > 0 ? fit.CostOf([member], [next, other]) : double.PositiveInfinity;
            if (random.NextDouble() < Math.Exp(cost - then)) (f, stretch, cost) = (next, other, then);
            (sum, squares) = (sum + f, squares + f * f);
        }
        double mean = sum / samples, sigma = Math.Sqrt(squares / samples - mean * mean);
        // the curve bends, so the two differ by a part of the spread; the bounds were set after seeing it
        Assert.Equal(best.Strengths[0], mean, 0.35 * sigma);
        Assert.InRange(best.Sigma[0] / sigma, 0.75, 1.33);
    }
}
