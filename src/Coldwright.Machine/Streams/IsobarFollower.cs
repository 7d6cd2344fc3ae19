namespace Coldwright.Machine.Streams;

/// <summary>
/// Samples an isobar at a neighbouring composition with the nodes of one that exists: changes of phases are found again to a few
/// microkelvin, the nodes between them keep their relative places. So a table changes smoothly with the composition, which freshly placed
/// nodes do not, and a loop that is closed for its composition can settle.
/// </summary>
internal sealed class IsobarFollower(StreamNodeMaker maker, double pressurePa, CancellationToken cancel)
{
    private const double FirstWidthK = 0.05, WidestK = 4, NarrowK = 2e-6;
    private const int MostTrials = 60;

    /// <summary>Nodes from cold to warm; null when the phases no longer follow one another as in the plan.</summary>
    /// <param name="plan">Temperatures and phases of the other composition's nodes, rising.</param>
    public List<StreamNode>? Follow(IReadOnlyList<(double K, string Phases)> plan)
    {
        // old and new border above every node's region; the table's ends stay
        var borders = new List<(int First, double Old, double New)> { (0, plan[0].K, plan[0].K) };
        for (int i = plan.Count - 1; i > 0; i--)
        {
            if (plan[i].Phases == plan[i - 1].Phases) continue;
            double old = 0.5 * (plan[i].K + plan[i - 1].K);
            if (Border(old, plan[i - 1].Phases, plan[i].Phases) is not { } now) return null;
            borders.Insert(1, (i, old, now));
        }
        for (int i = 1; i < borders.Count; i++)
            if (!(borders[i].New > borders[i - 1].New) || !(borders[i].New < plan[^1].K)) return null;
        var nodes = new StreamNode[plan.Count];
        int region = borders.Count - 1;
        // from the warm end down, each flash from its neighbour
        for (int i = plan.Count - 1; i >= 0; i--)
        {
            cancel.ThrowIfCancellationRequested();
            while (borders[region].First > i) region--;
            var (_, oldLow, newLow) = borders[region];
            var (oldHigh, newHigh) = region + 1 < borders.Count ? (borders[region + 1].Old, borders[region + 1].New) : (plan[^1].K, plan[^1].K);
            double k = oldHigh > oldLow ? newLow + (plan[i].K - oldLow) * (newHigh - newLow) / (oldHigh - oldLow) : plan[i].K;
            var node = maker.TryMake(k, pressurePa);
            if (node is null || node.Phases != plan[i].Phases || (i + 1 < plan.Count && !(node.MolarEnthalpy < nodes[i + 1].MolarEnthalpy))) return null;
            nodes[i] = node;
        }
        List<StreamNode> filled = [.. nodes];
        IsobarSampler.FillAbsent(filled);
        return filled;
    }

    // where the phases change from those below to those above
    private double? Border(double nearK, string below, string above)
    {
        double low = double.NaN, high = double.NaN, width = FirstWidthK;
        StreamNode? a = null, b = null, beyondA = null, beyondB = null;
        for (double k = nearK; double.IsNaN(low) || double.IsNaN(high);)
        {
            if (maker.TryMake(k, pressurePa) is not { } m) return null;
            if (m.Phases == below) (beyondA, a, low) = (a, m, k);
            else if (m.Phases == above) (beyondB, b, high) = (b, m, k);
            else return null;
            k = double.IsNaN(high) ? low + width : high - width;
            width *= 3;
            if (width > WidestK) return null;
        }
        if (!(low < high)) return null;
        for (int i = 0; i < MostTrials && high - low > NarrowK; i++)
        {
            cancel.ThrowIfCancellationRequested();
            double k = Aim(low, high, a!, b!, beyondA, beyondB, i);
            if (maker.TryMake(k, pressurePa) is not { } m) return null;
            if (m.Phases == below) (beyondA, a, low) = (a, m, k);
            else if (m.Phases == above) (beyondB, b, high) = (b, m, k);
            else return null;
        }
        return 0.5 * (low + high);
    }

    // the vanishing phase's fraction falls about linearly to nought; every third trial a bisection
    private static double Aim(double low, double high, StreamNode a, StreamNode b, StreamNode? beyondA, StreamNode? beyondB, int trial)
    {
        double middle = 0.5 * (low + high);
        var (near, far) = a.Fractions.Length > b.Fractions.Length ? (a, beyondA) : (b, beyondB);
        if (trial % 3 == 2 || a.Fractions.Length == b.Fractions.Length || far is null || far.Fractions.Length != near.Fractions.Length) return middle;
        double best = double.NaN;
        for (int j = 0; j < near.Fractions.Length; j++)
        {
            double slope = (near.Fractions[j] - far.Fractions[j]) / (near.TemperatureK - far.TemperatureK), zero = near.TemperatureK - near.Fractions[j] / slope;
            if (zero > low && zero < high && !(Math.Abs(zero - near.TemperatureK) > Math.Abs(best - near.TemperatureK))) best = zero;
        }
        if (double.IsNaN(best)) return middle;
        // alternately a little to either side of where it meets nought, so that both ends close in
        double aside = Math.Max(0.3 * NarrowK, 0.01 * (high - low)) * (trial % 3 == 0 ? 1 : -1);
        return Math.Clamp(best + aside, low + 0.02 * (high - low), high - 0.02 * (high - low));
    }
}
