namespace Coldwright.Design.Blending;

/// <summary>
/// The best of fewer gases: each gas taken out of the best in turn and the rest made best again, then from the best of those once more, down to two. What turns
/// out better than the best so far, as may happen where the models part, becomes the best.
/// </summary>
internal sealed class FewerGases(RobustSearch search, WorstCase worst, BlendOptions options, CancellationToken cancel)
{
    private const double LastStep = 0.005;
    private const int Tried = 3;

    private readonly List<double[]> _near = [];
    private readonly List<(int Gas, double Merit)> _without = [];

    /// <summary>The best of each smaller number of gases, most gases first.</summary>
    public IReadOnlyList<double[]> Near => _near;
    /// <summary>Best merit at its worst without a gas, by the cubic model.</summary>
    public IReadOnlyList<(int Gas, double Merit)> Without => _without;

    /// <summary>Goes down; the answer is the best of all.</summary>
    public (double[] X, double Merit) Of((double[] X, double Merit) best)
    {
        // a set of fewer gases that turns out better is the best, and its own subsets are what is near it
        for (bool again = true; again && !cancel.IsCancellationRequested;)
        {
            again = false;
            _near.Clear();
            _without.Clear();
            for (var at = best.X; at.Count(v => v > 0) > 2 && !cancel.IsCancellationRequested;)
            {
                bool first = ReferenceEquals(at, best.X);
                var level = Level(at, first).ToArray();
                if (level.Length == 0) break;
                (at, double merit) = level.MaxBy(l => l.Merit);
                if (worst.AsksBoth) (at, merit) = first ? new LinearSteps(worst.Raters, options, cancel).From(at, LastStep, [.. Enumerable.Range(0, at.Length).Where(i => at[i] > 0)]) : (at, worst.Both(at, best.Merit));
                if (merit > best.Merit)
                {
                    best = search.Polished(at);
                    again = true;
                    break;
                }
                _near.Add(at);
            }
        }
        return best;
    }

    // of the gases of the best every one is taken out in earnest; further down only what begins well
    private IEnumerable<(double[] X, double Merit)> Level(double[] at, bool first)
    {
        int[] present = [.. Enumerable.Range(0, at.Length).Where(i => at[i] > 0)];
        var starts = present.Select(gone => Start(at, gone, [.. present.Where(i => i != gone)])).OrderByDescending(s => s.Merit).Take(first ? present.Length : Tried).ToArray();
        foreach (var (x, _, gone) in starts)
        {
            var found = new LinearSteps([worst.CubicRater], options, cancel).From(x, LastStep, [.. present.Where(i => i != gone)]);
            if (found.Merit <= BlendPoint.Unusable) continue;
            if (first) _without.Add((gone, found.Merit));
            yield return found;
        }
    }

    // the rest in proportion, or what the search has met of that set when that is better
    private (double[] X, double Merit, int Gone) Start(double[] at, int gone, int[] left)
    {
        var x = Fractions.Clean([.. at.Select((v, i) => i == gone ? 0 : v)]);
        double merit = worst.Cubic(x, double.NegativeInfinity);
        return search.BestOfEachSet.FirstOrDefault(m => left.All(i => m[i] > 0) && m.Count(v => v > 0) == left.Length) is { } met && worst.Cubic(met, merit) is var better && better > merit ? (met, better, gone) : (x, merit, gone);
    }
}
