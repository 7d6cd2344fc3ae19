namespace Coldwright.Machine.Streams;

/// <summary>Change of a node's temperature (K), enthalpy (J/mol), values and mole fractions per unit of a direction of composition.</summary>
internal readonly record struct NodeSlope(double TemperatureK, double MolarEnthalpy, double[] Values, double[] Vapour, double[] Liquid);

/// <summary>
/// Slopes of an isobar's nodes along directions of composition. A place where a phase vanishes moves by that phase's fraction: how it answers to the
/// composition over how it answers to the temperature. The nodes between two such places keep their relative places, and each is compared with its own
/// phases moved by a hair, so that no search and no certificate is needed. All directions take their turn at one node.
/// </summary>
internal sealed class IsobarSlopes(double pressurePa, CancellationToken cancel)
{
    // of ln(z_i/z_1): fugacities agree to 1e-11, so that slopes err by 1e-7 of a unit from rounding and by 1e-4 from curvature
    private const double Hair = 1e-4;
    // where a phase is lost on one side it is held on the other
    private static readonly double[] Hairs = [Hair, -Hair, 0.1 * Hair, -0.1 * Hair];
    // how much further than the node beyond it a phase may vanish by its slope: twice as far where it falls as a root does
    private const double MostGaps = 4, WarmingK = 1e-3, WarmingShare = 0.3;

    // first node above a place where the phases change, and how that place moves along each direction, K
    private readonly record struct Border(int First, double TemperatureK, double[] Slopes);

    /// <summary>By direction and node; null where a phase that comes or goes has no slope.</summary>
    /// <param name="plan">The nodes, rising.</param>
    /// <param name="maker">Makes nodes of the composition in the middle.</param>
    /// <param name="towards">Makers at a distance along a direction; they share the flash of <paramref name="maker"/>.</param>
    /// <param name="directions">How many.</param>
    public NodeSlope[][]? Find(IReadOnlyList<StreamNode> plan, StreamNodeMaker maker, Func<int, double, StreamNodeMaker> towards, int directions)
    {
        var slopes = new NodeSlope[directions][];
        for (int d = 0; d < directions; d++) slopes[d] = new NodeSlope[plan.Count];
        var none = new double[directions];
        var above = new Border(plan.Count, plan[^1].TemperatureK, none);
        while (above.First > 0)
        {
            cancel.ThrowIfCancellationRequested();
            int first = above.First - 1;
            while (first > 0 && plan[first - 1].Phases == plan[first].Phases) first--;
            var below = new Border(first, plan[0].TemperatureK, none);
            if (first > 0)
            {
                if (Moves(plan, first, maker, towards, directions) is not { } moves) return null;
                below = new Border(first, 0.5 * (plan[first - 1].TemperatureK + plan[first].TemperatureK), moves);
            }
            for (int i = above.First - 1; i >= first; i--)
                if (!Compare(plan[i], maker, towards, below, above, slopes, i)) return null;
            above = below;
        }
        foreach (var along in slopes) IsobarSampler.FillAbsent([.. plan.Select(n => n.TemperatureK)], [.. along.Select(s => s.Values)]);
        return slopes;
    }

    private bool Compare(StreamNode node, StreamNodeMaker maker, Func<int, double, StreamNodeMaker> towards, Border below, Border above, NodeSlope[][] slopes, int at)
    {
        double place = above.TemperatureK > below.TemperatureK ? Math.Clamp((node.TemperatureK - below.TemperatureK) / (above.TemperatureK - below.TemperatureK), 0, 1) : 0;
        if (!maker.TryReturn(node, pressurePa)) return false;
        for (int d = 0; d < slopes.Length; d++)
        {
            double move = below.Slopes[d] + place * (above.Slopes[d] - below.Slopes[d]);
            bool found = false;
            foreach (double hair in Hairs)
            {
                if (towards(d, hair).TryKeep(node.TemperatureK + hair * move, pressurePa, node.Phases) is not { } there) continue;
                slopes[d][at] = Slope(node, there, hair);
                found = true;
                break;
            }
            if (!found) return false;
        }
        return true;
    }

    // how the place between this node and the one before moves along each direction
    private double[]? Moves(IReadOnlyList<StreamNode> plan, int first, StreamNodeMaker maker, Func<int, double, StreamNodeMaker> towards, int directions)
    {
        StreamNode cold = plan[first - 1], warm = plan[first];
        int more = warm.Fractions.Length - cold.Fractions.Length;
        var moves = new double[directions];
        // a change of name alone, and two liquids that become one without either being used up: little changes there, taken as it is
        bool leave = more == 0 || OneLiquid(cold.Phases) == OneLiquid(warm.Phases);
        if (more == 0) return moves;
        var (rich, side, gap) = (more > 0 ? warm : cold, Math.Sign(more), warm.TemperatureK - cold.TemperatureK);
        int beyond = more > 0 ? first + 1 : first - 2;
        double warming = WarmingK;
        if (beyond >= 0 && beyond < plan.Count) warming = Math.Min(warming, WarmingShare * Math.Abs(plan[beyond].TemperatureK - rich.TemperatureK));
        if (!maker.TryReturn(rich, pressurePa)) return leave ? moves : null;
        double[] here = rich.Fractions;
        if (maker.TryKeepFractions(rich.TemperatureK + side * warming, pressurePa, rich.Phases) is not { } inward) return leave ? moves : null;
        int vanishing = -1;
        double nearest = MostGaps * gap;
        for (int j = 0; j < here.Length; j++)
        {
            double distance = here[j] * warming / (inward[j] - here[j]);
            if (distance > 0 && distance < nearest) (vanishing, nearest) = (j, distance);
        }
        if (vanishing < 0) return leave ? moves : null;
        double byWarming = side * (inward[vanishing] - here[vanishing]) / warming;
        for (int d = 0; d < directions; d++)
        {
            double? slope = null;
            foreach (double hair in Hairs)
            {
                if (towards(d, hair).TryKeepFractions(rich.TemperatureK, pressurePa, rich.Phases) is not { } there) continue;
                slope = -(there[vanishing] - here[vanishing]) / hair / byWarming;
                break;
            }
            if (slope is { } found) moves[d] = found;
            else if (!leave) return null;
        }
        return moves;
    }

    private static string OneLiquid(string phases) => phases.Replace("+second_liquid", "", StringComparison.Ordinal);

    private static NodeSlope Slope(StreamNode a, StreamNode b, double step)
    {
        double[] Of(IReadOnlyList<double>? from, IReadOnlyList<double>? to) => from is null ? [] : [.. from.Select((v, i) => (to![i] - v) / step)];
        return new NodeSlope((b.TemperatureK - a.TemperatureK) / step, (b.MolarEnthalpy - a.MolarEnthalpy) / step, Of(a.Values, b.Values), Of(a.Vapour, b.Vapour), Of(a.Liquid, b.Liquid));
    }
}
