using Coldwright.Simulation.Cooldown;

namespace Coldwright.Runs.Explain;

/// <summary>What the weighing came to.</summary>
/// <param name="Best">The likeliest set.</param>
/// <param name="Sets">All sets, the likeliest first.</param>
/// <param name="Scale">What the squares are divided by: above 1 where even the best set leaves more than the doubts allow.</param>
/// <param name="Fitted">The model with the best set and what the record says of the doubts.</param>
/// <param name="Taken">Causes as the model takes them over, the doubts' means included: strength, and its change for one standard deviation in the direction that moves the end most.</param>
internal sealed record Judgement(FittedSet Best, IReadOnlyList<FittedSet> Sets, double Scale, Course Fitted, IReadOnlyList<(CauseModel Cause, double Strength, double Step)> Taken)
{
    /// <summary>Probability of each set.</summary>
    public IReadOnlyList<double> Probabilities { get; } = Of(Sets, Scale);

    internal static double[] Of(IReadOnlyList<FittedSet> sets, double scale)
    {
        double most = sets.Max(s => s.LogEvidence);
        double[] p = [.. sets.Select(s => Math.Exp((s.LogEvidence - most) / scale))];
        double sum = p.Sum();
        return [.. p.Select(x => x / sum)];
    }
}
