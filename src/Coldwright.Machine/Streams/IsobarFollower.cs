namespace Coldwright.Machine.Streams;

/// <summary>
/// Samples an isobar at compositions around the one whose nodes exist: changes of phases are found again, the nodes between them keep their
/// relative places. The differences are the slopes of a <see cref="StreamFamily"/>. All compositions take their turn at one border and in one
/// region, so that the phases of one answer lead to the next.
/// </summary>
internal sealed class IsobarFollower(double pressurePa, CancellationToken cancel)
{
    private const double FirstWidthK = 0.1, WidestK = 15, NarrowK = 5e-4;

    private const double ScanK = 0.1, ScanEndK = 1e-3, LeastK = 2e-3;
    private const int MostScans = 40;

    // two liquids count as one
    private static string OneLiquid(string phases) => phases.Replace("+second_liquid", "", StringComparison.Ordinal);

    // A change within a region so narrow that every other search steps over it: looked for place by place.
    private double? Scanned(StreamNodeMaker maker, double nearK, string below, string above)
    {
        string? low = maker.TryMake(nearK, pressurePa)?.Phases, high = low;
        for (int n = 1; n <= MostScans; n++)
        {
            cancel.ThrowIfCancellationRequested();
            double down = nearK - n * ScanK, up = nearK + n * ScanK;
            string? lower = maker.TryMake(down, pressurePa)?.Phases;
            if (lower == below && low == above) return Bisected(maker, down, down + ScanK, below);
            string? upper = maker.TryMake(up, pressurePa)?.Phases;
            if (high == below && upper == above) return Bisected(maker, up - ScanK, up, below);
            (low, high) = (lower, upper);
        }
        return null;
    }

    private double Bisected(StreamNodeMaker maker, double low, double high, string below)
    {
        while (high - low > ScanEndK)
        {
            double k = 0.5 * (low + high);
            if (maker.TryMake(k, pressurePa)?.Phases == below) low = k; else high = k;
        }
        return 0.5 * (low + high);
    }

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
                string below = plan[i - 1].Phases, above = plan[i].Phases;
                // two liquids that become one have no fraction that falls to nought, and little changes there: taken as it is
                double? now = Border(makers[d], old, below, above) ?? Scanned(makers[d], old, below, above) ?? (OneLiquid(below) == OneLiquid(above) ? old : null);
                if (now is { } place) borders[d].Insert(1, new(i, old, place));
                else failed[d] = true;
            }
        }
        for (int d = 0; d < makers.Count; d++)
            for (int i = 1; i < borders[d].Count; i++)
            {
                // next to a border taken as it is
                borders[d][i] = borders[d][i] with { New = Math.Max(borders[d][i].New, borders[d][i - 1].New + LeastK) };
                failed[d] |= !(borders[d][i].New < plan[^1].TemperatureK);
            }
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
            var node = maker.TryFollow(k, pressurePa, plan[i].Phases);
            if (node is null || node.Phases != plan[i].Phases)
            {
                node = maker.TryMake(k, pressurePa);
                if (node is null || OneLiquid(node.Phases) != OneLiquid(plan[i].Phases)) return false;
            }
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
        1 => VanishingPhase.Find(maker, pressurePa, nearK, -1, below, above, cancel),
        -1 => VanishingPhase.Find(maker, pressurePa, nearK, 1, above, below, cancel),
        _ => Between(maker, nearK, below, above),
    };

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
