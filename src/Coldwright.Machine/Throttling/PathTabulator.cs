using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;

namespace Coldwright.Machine.Throttling;

/// <summary>Where the nodes of an expansion come from: flashes at pressure and enthalpy, each started from its neighbour.</summary>
internal sealed class PathTabulator(Flash flash, TransportModel transport, ThrottleInlet inlet, TwoPhaseViscosity rule, CancellationToken cancel)
{
    private const double VanishingQuality = 2e-4, NarrowBracket = 2e-4, SoonBoils = 1.3;
    private const int MostRefinements = 7;
    private readonly PathNodeSolver _solver = new(flash, transport, inlet, rule);

    /// <summary>kg/mol.</summary>
    public double MolarMass => _solver.MolarMass;

    /// <summary>Why the table ended above the pressure asked for; null when it did not.</summary>
    public string? EndedEarly { get; private set; }

    /// <summary>
    /// Nodes from the inlet's pressure down to an end (Pa), evenly in the logarithm, with one more wherever the phases change. Every other node is
    /// certified; one between two of the same phases takes these along. With an earlier table of this path all nodes take along the phases that it has
    /// there; with one of a path close by all but the first.
    /// </summary>
    /// <param name="endPa">Pa.</param>
    /// <param name="intervals">How many.</param>
    /// <param name="kinetic">Kinetic energy at a pressure, J/kg.</param>
    /// <param name="before">The earlier table; null: none.</param>
    /// <param name="own">False: it is that of a path close by.</param>
    public List<PathNode> Tabulate(double endPa, int intervals, Func<double, double> kinetic, List<PathNode>? before = null, bool own = true)
    {
        EndedEarly = null;
        double ratio = Math.Log(endPa / inlet.PressurePa);
        double Pressure(int i) => i == intervals ? endPa : inlet.PressurePa * Math.Exp(ratio * i / intervals);
        var nodes = new List<PathNode>(intervals + 4);
        for (int i = 0; i <= intervals; i += before is null ? Math.Clamp(intervals - i, 1, 2) : 1)
        {
            cancel.ThrowIfCancellationRequested();
            double p = Pressure(i), guess = before is null ? Guess(nodes, p, inlet.TemperatureK) : Shifted(nodes, before, p, kinetic);
            try
            {
                nodes.Add(before is null || !own && i == 0 ? _solver.At(p, kinetic(p), guess) : As(before, p, kinetic, guess, own));
            }
            catch (Numerics.SolveException e) when (nodes.Count > 3)
            {
                EndedEarly = e.Report.Advice;
                break;
            }
        }
        if (before is null) nodes = Filled(nodes, kinetic);
        for (int i = nodes.Count - 1; i > 0; i--)
            if (nodes[i].Quality == 0 != (nodes[i - 1].Quality == 0) || nodes[i].Quality == 1 != (nodes[i - 1].Quality == 1)) MarkChange(nodes, i, kinetic);
        return nodes;
    }

    // one node between every two
    private List<PathNode> Filled(List<PathNode> coarse, Func<double, double> kinetic)
    {
        var nodes = new List<PathNode>(2 * coarse.Count + 4) { coarse[0] };
        for (int i = 1; i < coarse.Count; i++)
        {
            cancel.ThrowIfCancellationRequested();
            nodes.Add(Within(coarse[i - 1], coarse[i], Math.Sqrt(coarse[i - 1].PressurePa * coarse[i].PressurePa), kinetic, Between(coarse, i)));
            nodes.Add(coarse[i]);
        }
        return nodes;
    }

    // With the phases that an earlier table has around a pressure. Vapour alone may be so no longer, nor liquid that soon boils on another path: no phase
    // that is lost would show it.
    private PathNode As(List<PathNode> before, double p, Func<double, double> kinetic, double guess, bool own)
    {
        int below = before.FindIndex(n => n.PressurePa <= p);
        if (below < 0 || before[below].Quality == 1 || !own && before[below].Quality == 0 && before.Exists(n => n.Quality > 0 && n.PressurePa > p / SoonBoils))
            return _solver.At(p, kinetic(p), guess);
        return Within(before[Math.Max(below - 1, 0)], before[below], p, kinetic, guess);
    }

    // Between two nodes: their phases where they are the same. Where one has a phase more, that phase is there until it is used up. Where there is
    // more to it a certified flash says what there is.
    private PathNode Within(PathNode above, PathNode below, double p, Func<double, double> kinetic, double guess)
    {
        int more = below.Phases.AsSpan().Count('+') - above.Phases.AsSpan().Count('+');
        PathNode? like = above.Phases == below.Phases ? p / below.PressurePa < above.PressurePa / p ? below : above : more switch { 1 => below, -1 => above, _ => null };
        return like is { } node && _solver.TryAt(p, kinetic(p), guess, node.Phases, node.Mark) is { } found ? found : _solver.At(p, kinetic(p), guess);
    }

    // temperature midway in the logarithm of pressure, by the parabola through a third node of the same phases where there is one
    private static double Between(List<PathNode> nodes, int i)
    {
        PathNode a = nodes[i - 1], b = nodes[i];
        double mean = 0.5 * (a.TemperatureK + b.TemperatureK);
        if (a.Phases != b.Phases) return mean;
        if (i > 1 && nodes[i - 2].Phases == a.Phases) return mean - 0.125 * (nodes[i - 2].TemperatureK - 2 * a.TemperatureK + b.TemperatureK);
        return i + 1 < nodes.Count && nodes[i + 1].Phases == b.Phases ? mean - 0.125 * (a.TemperatureK - 2 * b.TemperatureK + nodes[i + 1].TemperatureK) : mean;
    }

    /// <summary>The node at a pressure (Pa) and kinetic energy (J/kg).</summary>
    public PathNode At(double pressurePa, double kinetic, double guessK) => _solver.At(pressurePa, kinetic, guessK);

    // the earlier table's temperature, moved by what it was wrong at the last node, in proportion to the kinetic energy where there is some
    private double Shifted(List<PathNode> nodes, List<PathNode> before, double p, Func<double, double> kinetic)
    {
        double t = ExpansionGrid.TemperatureAt(before, p);
        if (nodes.Count == 0) return t;
        double known = kinetic(nodes[^1].PressurePa), shift = (nodes[^1].TemperatureK - ExpansionGrid.TemperatureAt(before, nodes[^1].PressurePa)) * (known > 0 ? kinetic(p) / known : 1);
        return Math.Max(t + Math.Clamp(shift, -30, 30), 0.8 * t);
    }

    // Lagrange through the last three nodes of the same phases, in the logarithm of pressure
    private static double Guess(List<PathNode> nodes, double p, double start)
    {
        int n = nodes.Count;
        if (n == 0) return start;
        PathNode a = nodes[^1];
        if (n == 1 || nodes[^2].Phases != a.Phases) return a.TemperatureK;
        PathNode b = nodes[^2];
        double u = Math.Log(p), ua = Math.Log(a.PressurePa), ub = Math.Log(b.PressurePa);
        double t = a.TemperatureK + (u - ua) / (ub - ua) * (b.TemperatureK - a.TemperatureK);
        if (n > 2 && nodes[^3].Phases == a.Phases)
        {
            PathNode c = nodes[^3];
            double uc = Math.Log(c.PressurePa);
            double bend = ((c.TemperatureK - a.TemperatureK) / (uc - ua) - (b.TemperatureK - a.TemperatureK) / (ub - ua)) / (uc - ub);
            t += bend * (u - ua) * (u - ub);
        }
        return Math.Clamp(t, 0.8 * a.TemperatureK, 1.2 * a.TemperatureK);
    }

    // Vapour or the last liquid appears or vanishes between i-1 and i: closes in on the place and puts a node there. A second
    // liquid coming or going bends the volume too little to be worth it.
    private void MarkChange(List<PathNode> nodes, int i, Func<double, double> kinetic)
    {
        PathNode before = nodes[i - 1], after = nodes[i], beyond = i + 1 < nodes.Count ? nodes[i + 1] : after;
        bool onset = before.Quality == 0 && after.Quality > 0;
        for (int k = 0; k < MostRefinements && before.PressurePa > after.PressurePa * (1 + NarrowBracket) && !(onset && after.Quality < VanishingQuality); k++)
        {
            double p = Math.Sqrt(before.PressurePa * after.PressurePa);
            if (onset && beyond.Quality > after.Quality && k % 3 != 2)
            {
                double zero = after.PressurePa + after.Quality / (beyond.Quality - after.Quality) * (after.PressurePa - beyond.PressurePa);
                // a little short of it, so that a trace of vapour shows which side it is, and is enough of a phase to be found quickly
                zero -= 0.5 * VanishingQuality * (after.PressurePa - beyond.PressurePa) / (beyond.Quality - after.Quality);
                if (zero > after.PressurePa && zero < before.PressurePa) p = zero;
            }
            double share = Math.Log(before.PressurePa / p) / Math.Log(before.PressurePa / after.PressurePa);
            var middle = Within(before, after, p, kinetic, before.TemperatureK + share * (after.TemperatureK - before.TemperatureK));
            if (middle.Quality == 0 == (before.Quality == 0) && middle.Quality == 1 == (before.Quality == 1)) before = middle;
            else (beyond, after) = (after, middle);
        }
        if (after.PressurePa == nodes[i].PressurePa) nodes[i] = after with { Kink = true };
        else nodes.Insert(i, after with { Kink = true });
    }
}
