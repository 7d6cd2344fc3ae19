using Coldwright.Numerics;

namespace Coldwright.Machine.Streams;

/// <summary>
/// Places the nodes of an isobar: a coarse march from the warm end, the changes of phases closed in on through the vanishing
/// phase's fraction, then halvings wherever a node differs from the cubic through its neighbours by more than the tolerance.
/// </summary>
internal sealed class IsobarSampler(StreamNodeMaker maker, double pressurePa, StreamTableOptions options, CancellationToken cancel)
{
    private const double NarrowestK = 0.02, LeastGain = 8;
    private const int LeastNodes = 5, MostNodes = 2000;

    /// <summary>Nodes from cold to warm, absent phases filled. The cold end is raised where the equations have no answer.</summary>
    public List<StreamNode> Sample(double coldestK, double warmestK)
    {
        var nodes = Coarse(coldestK, warmestK);
        var split = new List<StreamNode> { nodes[0] };
        for (int i = 1; i < nodes.Count; i++)
        {
            Boundaries(split, nodes[i - 1], nodes[i], split.Count > 1 && split[^2].Phases == nodes[i - 1].Phases ? split[^2] : null,
                i + 1 < nodes.Count && nodes[i + 1].Phases == nodes[i].Phases ? nodes[i + 1] : null);
            split.Add(nodes[i]);
        }
        var refined = Refine(split);
        for (int i = 1; i < refined.Count; i++)
            if (refined[i - 1].BoilsInto(refined[i])) maker.JoinBoiling(refined[i - 1], refined[i], pressurePa);
        FillAbsent(refined);
        return refined;
    }

    private List<StreamNode> Coarse(double coldestK, double warmestK)
    {
        var nodes = new List<StreamNode>();
        int steps = Math.Max(2, (int)Math.Ceiling((warmestK - coldestK) / options.FirstStepK));
        for (int i = 0; i <= steps; i++)
        {
            cancel.ThrowIfCancellationRequested();
            double t = warmestK + (coldestK - warmestK) * i / steps;
            var node = nodes.Count < 2 ? maker.Make(t, pressurePa) : maker.TryMake(t, pressurePa);
            // far below freezing the equations may end, or two liquids appear that do not exist: the table ends there
            if (node is null || nodes.Count > 0 && !(node.MolarEnthalpy < nodes[^1].MolarEnthalpy)) break;
            nodes.Add(node);
        }
        if (nodes.Count < 2)
            throw new SolveException(new SolveReport(SolveStatus.Outside, 0, double.NaN,
                FormattableString.Invariant($"no table between {coldestK:0.##} and {warmestK:0.##} K at {pressurePa / 1e5:0.###} bar absolute: enthalpy does not fall on cooling from {warmestK:0.##} K")));
        nodes.Reverse();
        return nodes;
    }

    // nodes between two neighbours of different phases, until the undecided width is below the limit
    private void Boundaries(List<StreamNode> into, StreamNode a, StreamNode b, StreamNode? beforeA, StreamNode? afterB)
    {
        if (AtOnce(a, b, beforeA, afterB) is var (cold, warm))
        {
            into.Add(cold);
            into.Add(warm);
            return;
        }
        while (a.Phases != b.Phases && b.TemperatureK - a.TemperatureK > options.BoundaryK)
        {
            cancel.ThrowIfCancellationRequested();
            var m = maker.Make(Guess(a, b, beforeA, afterB), pressurePa);
            Require(a, m, b);
            if (m.Phases == a.Phases)
            {
                into.Add(m);
                (beforeA, a) = (a, m);
            }
            else if (m.Phases == b.Phases)
            {
                // warm side nodes go in after the cold side's: kept in order by inserting later
                Boundaries(into, a, m, beforeA, b);
                into.Add(m);
                return;
            }
            else
            {
                Boundaries(into, a, m, beforeA, null);
                into.Add(m);
                (beforeA, a) = (null, m);
            }
        }
    }

    // Where one phase more or less is all that changes, its vanishing is followed without certificates; what lies beyond that place is certified.
    // Null: something else happens there.
    private (StreamNode Cold, StreamNode Warm)? AtOnce(StreamNode a, StreamNode b, StreamNode? beforeA, StreamNode? afterB)
    {
        int more = a.Fractions.Length - b.Fractions.Length;
        if (Math.Abs(more) != 1 || b.TemperatureK - a.TemperatureK < LeastGain * options.BoundaryK) return null;
        StreamNode rich = more > 0 ? a : b, poor = more > 0 ? b : a;
        if (VanishingPhase.Find(maker, pressurePa, Guess(a, b, beforeA, afterB), -more, rich, cancel) is not { } k) return null;
        double aside = 0.45 * options.BoundaryK;
        if (!(k - aside > a.TemperatureK && k + aside < b.TemperatureK)) return null;
        double side = more > 0 ? -aside : aside;
        if (maker.TryFollow(k + side, pressurePa, rich.Phases) is not { } within || maker.TryMake(k - side, pressurePa) is not { } without || within.Phases != rich.Phases || without.Phases != poor.Phases) return null;
        var (cold, warm) = more > 0 ? (within, without) : (without, within);
        return a.MolarEnthalpy < cold.MolarEnthalpy && cold.MolarEnthalpy < warm.MolarEnthalpy && warm.MolarEnthalpy < b.MolarEnthalpy ? (cold, warm) : null;
    }

    // The phase that vanishes does so about linearly: aim a little to the far side of where its fraction meets nought.
    private double Guess(StreamNode a, StreamNode b, StreamNode? beforeA, StreamNode? afterB)
    {
        double width = b.TemperatureK - a.TemperatureK, middle = 0.5 * (a.TemperatureK + b.TemperatureK);
        (StreamNode near, StreamNode? far) = a.Fractions.Length > b.Fractions.Length ? (a, beforeA) : (b, afterB);
        if (a.Fractions.Length == b.Fractions.Length || far is null) return middle;
        double best = double.NaN;
        for (int j = 0; j < near.Fractions.Length; j++)
        {
            double slope = (near.Fractions[j] - far.Fractions[j]) / (near.TemperatureK - far.TemperatureK), zero = near.TemperatureK - near.Fractions[j] / slope;
            if (zero > a.TemperatureK && zero < b.TemperatureK && !(Math.Abs(zero - near.TemperatureK) > Math.Abs(best - near.TemperatureK))) best = zero;
        }
        if (double.IsNaN(best)) return middle;
        double aside = Math.Max(0.4 * options.BoundaryK, 0.02 * width);
        double aim = best - a.TemperatureK > b.TemperatureK - best ? best - aside : best + aside;
        return Math.Clamp(aim, a.TemperatureK + 0.02 * width, b.TemperatureK - 0.02 * width);
    }

    private List<StreamNode> Refine(List<StreamNode> nodes)
    {
        for (int round = 0; round < 12; round++)
        {
            var next = new List<StreamNode>(nodes.Count * 2);
            var halve = Wanting(nodes);
            bool any = false;
            // from the warm end down, so that a flash starts from its neighbour
            for (int i = nodes.Count - 1; i > 0; i--)
            {
                next.Add(nodes[i]);
                if (!halve[i] || nodes[i].TemperatureK - nodes[i - 1].TemperatureK < NarrowestK) continue;
                cancel.ThrowIfCancellationRequested();
                var m = maker.Between(nodes[i - 1], nodes[i], pressurePa);
                Require(nodes[i - 1], m, nodes[i]);
                if (m.Phases != nodes[i].Phases)
                {
                    // a narrow region between two nodes of the same phases
                    var inner = new List<StreamNode> { nodes[i - 1] };
                    Boundaries(inner, nodes[i - 1], m, null, null);
                    inner.Add(m);
                    Boundaries(inner, m, nodes[i], null, null);
                    for (int k = inner.Count - 1; k > 0; k--) next.Add(inner[k]);
                }
                else next.Add(m);
                any = true;
            }
            next.Add(nodes[0]);
            next.Reverse();
            nodes = next;
            if (!any || nodes.Count > MostNodes) break;
        }
        return nodes;
    }

    // halve[i]: the interval between node i-1 and i needs a node
    private bool[] Wanting(List<StreamNode> nodes)
    {
        var halve = new bool[nodes.Count];
        for (int first = 0; first < nodes.Count;)
        {
            int last = first;
            while (last + 1 < nodes.Count && nodes[last + 1].Phases == nodes[first].Phases) last++;
            int count = last - first + 1;
            if (count > 1 && count < LeastNodes)
                for (int i = first + 1; i <= last; i++) halve[i] = nodes[i].TemperatureK - nodes[i - 1].TemperatureK > 0.3;
            else if (count >= LeastNodes) Compare(nodes, first, last, halve);
            first = last + 1;
        }
        return halve;
    }

    private void Compare(List<StreamNode> nodes, int first, int last, bool[] halve)
    {
        int count = last - first + 1;
        Span<double> h = stackalloc double[LeastNodes], v = stackalloc double[LeastNodes];
        for (int i = first + 1; i < last; i++)
        {
            int from = Math.Clamp(i - 2, first, last - 4), left = i - from;
            bool bad = false;
            for (int k = 0; k < LeastNodes; k++) h[k] = nodes[from + k].MolarEnthalpy;
            for (int c = 0; c < StreamColumn.Count && !bad; c++)
            {
                double value = nodes[i].Values[c];
                if (double.IsNaN(value)) continue;
                for (int k = 0; k < LeastNodes; k++) v[k] = nodes[from + k].Values[c];
                double tolerance = c switch
                {
                    StreamColumn.Temperature => options.TemperatureK,
                    StreamColumn.VapourFraction or StreamColumn.Quality => options.Fraction,
                    // the tension nears nought at a critical point, and enters by small powers
                    StreamColumn.SurfaceTension => options.Relative * Math.Max(Math.Abs(value), 1e-3),
                    _ => options.Relative * Math.Abs(value),
                };
                // one-sided stencils near a region's end exaggerate
                double stencil = left == 2 ? 1 : 2.5;
                bad = Math.Abs(Cubic.Without(h, v, 0, LeastNodes - 1, left) - value) > stencil * tolerance;
            }
            if (!bad) continue;
            halve[i] = halve[i + 1] = true;
        }
    }

    private static void FillAbsent(List<StreamNode> nodes) => FillAbsent([.. nodes.Select(n => n.TemperatureK)], [.. nodes.Select(n => n.Values)]);

    // towards where a phase is absent the last values it had; where it is nowhere, those of the other phase
    internal static void FillAbsent(double[] temperatureK, double[][] values)
    {
        for (int c = StreamColumn.VapourDensity; c < StreamColumn.Count; c++)
        {
            int known = Array.FindIndex(values, v => !double.IsNaN(v[c]));
            if (known < 0)
            {
                foreach (var v in values) v[c] = c >= StreamColumn.SurfaceTension ? 0 : v[c < StreamColumn.LiquidDensity ? c + 4 : c - 4];
                continue;
            }
            for (int i = 0; i < values.Length; i++)
            {
                if (!double.IsNaN(values[i][c])) { known = i; continue; }
                int next = Array.FindIndex(values, i, v => !double.IsNaN(v[c]));
                bool useNext = i < known || next >= 0 && temperatureK[next] - temperatureK[i] < temperatureK[i] - temperatureK[known];
                values[i][c] = values[useNext ? next : known][c];
                if (!useNext) known = i;
            }
        }
    }

    private void Require(StreamNode a, StreamNode m, StreamNode b)
    {
        if (m.MolarEnthalpy > a.MolarEnthalpy && m.MolarEnthalpy < b.MolarEnthalpy) return;
        throw new SolveException(new SolveReport(SolveStatus.NotConverged, 0, m.MolarEnthalpy - a.MolarEnthalpy,
            FormattableString.Invariant($"enthalpy does not rise with temperature at {pressurePa / 1e5:0.###} bar absolute: {a.MolarEnthalpy:R} J/mol at {a.TemperatureK:R} K ({a.Phases}), {m.MolarEnthalpy:R} at {m.TemperatureK:R} K ({m.Phases}), {b.MolarEnthalpy:R} at {b.TemperatureK:R} K ({b.Phases})")));
    }
}
