namespace Coldwright.Machine.Streams;

/// <summary>
/// Samples an isobar at compositions around the one whose nodes exist: changes of phases are found again, the nodes between them keep their
/// relative places. The differences are the slopes of a <see cref="StreamFamily"/>. All compositions take their turn at one border and in one
/// region, so that the phases of one answer lead to the next.
/// </summary>
internal sealed class IsobarFollower(double pressurePa, CancellationToken cancel)
{
    private const double FirstWidthK = 0.1, WidestK = 15, NarrowK = 5e-4, NearK = 2e-3;
    private const int MostTrials = 40;

    // old and new place of the border below a region's first node; the table's ends stay
    private readonly record struct BorderPlace(int First, double Old, double New);

    /// <summary>Nodes from cold to warm for every composition; null for one whose phases do not follow one another as in the plan.</summary>
    /// <param name="plan">The nodes that exist, rising.</param>
    /// <param name="makers">One for every composition; they share a flash.</param>
    public List<StreamNode>?[] Follow(IReadOnlyList<StreamNode> plan, IReadOnlyList<StreamNodeMaker> makers)
    {
        var borders = new List<BorderPlace>[makers.Count];
        var nodes = new StreamNode?[makers.Count][];
        for (int d = 0; d < makers.Count; d++) (borders[d], nodes[d]) = ([new(0, plan[0].TemperatureK, plan[0].TemperatureK)], new StreamNode?[plan.Count]);
        var failed = new bool[makers.Count];
        for (int i = plan.Count - 1; i > 0; i--)
        {
            if (plan[i].Phases == plan[i - 1].Phases) continue;
            double old = 0.5 * (plan[i].TemperatureK + plan[i - 1].TemperatureK);
            for (int d = 0; d < makers.Count; d++)
            {
                if (failed[d]) continue;
                if (Border(makers[d], old, plan[i - 1].Phases, plan[i].Phases) is { } now) borders[d].Insert(1, new(i, old, now));
                else failed[d] = true;
            }
        }
        for (int d = 0; d < makers.Count; d++)
            for (int i = 1; i < borders[d].Count; i++) failed[d] |= !(borders[d][i].New > borders[d][i - 1].New) || !(borders[d][i].New < plan[^1].TemperatureK);
        for (int region = borders.Select(b => b.Count).DefaultIfEmpty(0).Max() - 1; region >= 0; region--)
            for (int d = 0; d < makers.Count; d++)
                // there and back again, each flash from its neighbour
                if (!failed[d]) failed[d] = !Fill(makers[d], plan, borders[d], region, nodes[d], downwards: d % 2 == 0);
        return [.. nodes.Select((n, d) => failed[d] ? null : Finished(n))];
    }

    private bool Fill(StreamNodeMaker maker, IReadOnlyList<StreamNode> plan, List<BorderPlace> borders, int region, StreamNode?[] nodes, bool downwards)
    {
        var (first, oldLow, newLow) = borders[region];
        bool last = region + 1 == borders.Count;
        var (end, oldHigh, newHigh) = last ? (plan.Count, plan[^1].TemperatureK, plan[^1].TemperatureK) : (borders[region + 1].First, borders[region + 1].Old, borders[region + 1].New);
        for (int j = first; j < end; j++)
        {
            cancel.ThrowIfCancellationRequested();
            int i = downwards ? end - 1 - (j - first) : j;
            double k = oldHigh > oldLow ? newLow + (plan[i].TemperatureK - oldLow) * (newHigh - newLow) / (oldHigh - oldLow) : plan[i].TemperatureK;
            if (maker.TryFollow(k, pressurePa, plan[i].Phases) is not { } node || node.Phases != plan[i].Phases) return false;
            nodes[i] = node;
        }
        return true;
    }

    private static List<StreamNode>? Finished(StreamNode?[] nodes)
    {
        for (int i = 1; i < nodes.Length; i++)
            if (!(nodes[i]!.MolarEnthalpy > nodes[i - 1]!.MolarEnthalpy)) return null;
        List<StreamNode> filled = [.. nodes.Select(n => n!)];
        IsobarSampler.FillAbsent(filled);
        return filled;
    }

    // where the phases change from those below to those above
    private double? Border(StreamNodeMaker maker, double nearK, string below, string above) => (below.AsSpan().Count('+') - above.AsSpan().Count('+')) switch
    {
        1 => Vanishes(maker, nearK, -1, below, above),
        -1 => Vanishes(maker, nearK, 1, above, below),
        _ => Between(maker, nearK, below, above),
    };

    // Where the fraction of a phase falls to nought, from the side (1: the warmer) that has it: that side's phases are moved along without a
    // certificate, and the last steps end so near that the rest of the way is straight.
    private double? Vanishes(StreamNodeMaker maker, double nearK, int side, string rich, string poor)
    {
        double k = nearK + side * FirstWidthK, width = 3 * FirstWidthK, outside = double.NaN;
        (double K, double[] Fractions)? near = null, far = null;
        for (int trial = 0; trial < MostTrials; trial++)
        {
            cancel.ThrowIfCancellationRequested();
            if (maker.TryFollow(k, pressurePa, rich) is not { } m) return null;
            if (m.Phases == poor)
            {
                if (double.IsNaN(outside) || side * (k - outside) > 0) outside = k;
                if (near is null && (width *= 3) > WidestK) return null;
                k = near is { } inner ? 0.5 * (inner.K + outside) : k + side * width;
                continue;
            }
            if (m.Phases != rich) return null;
            var here = (K: k, m.Fractions);
            if (near is null)
            {
                (near, k) = (here, k + side * 2 * FirstWidthK);
                continue;
            }
            if (side * (here.K - near.Value.K) > 0) far = here;
            else (far, near) = (near, here);
            var (a, b) = (near.Value, far!.Value);
            // which of two liquids is the lighter may change with them: the phase whose fraction meets nought first
            double distance = double.PositiveInfinity;
            for (int j = 0; j < a.Fractions.Length; j++)
                if (b.Fractions[j] > a.Fractions[j]) distance = Math.Min(distance, a.Fractions[j] * side * (b.K - a.K) / (b.Fractions[j] - a.Fractions[j]));
            if (distance > WidestK) return null;
            if (distance < NearK) return a.K - side * distance;
            // one that falls as a root does is not overshot at half the way
            k = a.K - side * 0.5 * distance;
            if (side * (k - outside) <= 0) k = 0.5 * (a.K + outside);
        }
        return null;
    }

    // a change of phases that is none of one appearing: closed in on from both sides
    private double? Between(StreamNodeMaker maker, double nearK, string below, string above)
    {
        double low = double.NaN, high = double.NaN, width = FirstWidthK;
        for (double k = nearK; double.IsNaN(low) || double.IsNaN(high);)
        {
            if (maker.TryMake(k, pressurePa) is not { } m) return null;
            if (m.Phases == below) low = k;
            else if (m.Phases == above) high = k;
            else return null;
            k = double.IsNaN(high) ? low + width : high - width;
            width *= 3;
            if (width > WidestK) return null;
        }
        if (!(low < high)) return null;
        while (high - low > NarrowK)
        {
            cancel.ThrowIfCancellationRequested();
            double k = 0.5 * (low + high);
            if (maker.TryMake(k, pressurePa) is not { } m) return null;
            if (m.Phases == below) low = k;
            else if (m.Phases == above) high = k;
            else return null;
        }
        return 0.5 * (low + high);
    }
}
