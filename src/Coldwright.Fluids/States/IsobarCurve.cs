using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Numerics;
using Coldwright.Numerics.Interpolation;

namespace Coldwright.Fluids.States;

/// <summary>
/// Enthalpy along an isobar of a fixed composition: nodes are certified (T,p) flashes, placed so that a straight line
/// between neighbours errs by less than a set temperature, with a node at every change of phases; between nodes a monotone
/// cubic, which errs about a hundredth of that (measured in the tests).
/// </summary>
public sealed class IsobarCurve
{
    private const double Step = 4, BoundaryWidthK = 1e-4, CoarseErrorK = 0.5;

    private readonly double _boundaryWidthK;
    private readonly bool _coarse;

    private readonly MonotoneCubic _temperature, _enthalpy;

    /// <summary>Pressure, Pa.</summary>
    public double PressurePa { get; }
    /// <summary>Node temperatures, K, rising.</summary>
    public IReadOnlyList<double> TemperaturesK { get; }
    /// <summary>Node enthalpies, J/mol, rising.</summary>
    public IReadOnlyList<double> Enthalpies { get; }
    /// <summary>Phases between node i and i+1, in words.</summary>
    public IReadOnlyList<string> Phases { get; }

    /// <summary>Builds the curve.</summary>
    /// <param name="flash">Flash of the mixture's model.</param>
    /// <param name="z">Mole fractions.</param>
    /// <param name="pressurePa">Pa.</param>
    /// <param name="coldestK">Lower end, K; raised when the equations have no answer there.</param>
    /// <param name="warmestK">Upper end, K.</param>
    /// <param name="linearErrorK">Node spacing: largest error of a straight line between neighbours, K. Above 0.5 K, for searches, changes of phase are placed within half of it only, and nodes between certified ones of the same phases follow these.</param>
    /// <param name="cancel">Cancels the work.</param>
    public IsobarCurve(Flash flash, ReadOnlySpan<double> z, double pressurePa, double coldestK, double warmestK, double linearErrorK = 0.1, CancellationToken cancel = default)
    {
        PressurePa = pressurePa;
        _coarse = linearErrorK > CoarseErrorK;
        _boundaryWidthK = _coarse ? 0.5 * linearErrorK : BoundaryWidthK;
        var nodes = new List<Node>();
        var composition = z.ToArray();
        for (double t = warmestK; ; t = Math.Max(t - Step, coldestK))
        {
            cancel.ThrowIfCancellationRequested();
            var node = Solve(flash, composition, t, nodes.Count > 0);
            // far below freezing the equations may end, or two liquids appear that do not exist: the curve ends there
            if (node is null || nodes.Count > 0 && !(node.Value.H < nodes[^1].H))
            {
                if (nodes.Count < 2) throw flash.Failed(t, pressurePa);
                break;
            }
            nodes.Add(node.Value);
            if (t <= coldestK) break;
        }
        nodes.Reverse();
        var all = new List<Node> { nodes[0] };
        for (int i = 1; i < nodes.Count; i++) Fill(flash, composition, nodes[i - 1], nodes[i], linearErrorK, all, cancel, 0);
        // a pure or nearly pure fluid jumps within the boundary width: keep the temperatures apart enough to divide by
        var t0 = all.Select(n => n.T).ToArray();
        var h0 = all.Select(n => n.H).ToArray();
        var kink = new bool[all.Count];
        for (int i = 1; i < all.Count - 1; i++) kink[i] = all[i].Phases != all[i - 1].Phases || all[i + 1].Phases != all[i].Phases;
        TemperaturesK = t0;
        Enthalpies = h0;
        Phases = all.Select(n => n.Phases).ToArray();
        _temperature = new MonotoneCubic(h0, t0, kink);
        _enthalpy = new MonotoneCubic(t0, h0, kink);
    }

    private readonly record struct Node(double T, double H, string Phases);

    private Node? Solve(Flash flash, double[] z, double t, bool warm) =>
        flash.TrySolve(t, PressurePa, z, warm) ? new Node(t, flash.Enthalpy(), flash.PhaseNames()) : null;

    // for searches: between two certified neighbours of the same phases a node needs no certificate of its own
    private Node? Followed(Flash flash, double[] z, Node a, double t) =>
        flash.PhaseNames() == a.Phases && flash.TryFollow(t, PressurePa, z) && flash.PhaseNames() == a.Phases ? new Node(t, flash.Enthalpy(), a.Phases) : null;

    // adds the nodes after a up to and including b
    private void Fill(Flash flash, double[] z, Node a, Node b, double error, List<Node> into, CancellationToken cancel, int depth)
    {
        cancel.ThrowIfCancellationRequested();
        double width = b.T - a.T;
        bool boundary = a.Phases != b.Phases;
        if (boundary ? width > _boundaryWidthK : depth < 12)
        {
            var m = (_coarse && !boundary ? Followed(flash, z, a, 0.5 * (a.T + b.T)) : null) ?? Solve(flash, z, 0.5 * (a.T + b.T), true) ?? throw flash.Failed(0.5 * (a.T + b.T), PressurePa);
            if (!(m.H > a.H && m.H < b.H)) throw new SolveException(new SolveReport(SolveStatus.NotConverged, 0, m.H - a.H,
                FormattableString.Invariant($"enthalpy does not rise with temperature at {PressurePa / 1e5:0.###} bar absolute: {a.H:R} J/mol at {a.T:R} K ({a.Phases}), {m.H:R} at {m.T:R} K ({m.Phases}), {b.H:R} at {b.T:R} K ({b.Phases})")));
            double line = a.T + width * (m.H - a.H) / (b.H - a.H);
            if (boundary || Math.Abs(line - m.T) > error)
            {
                Fill(flash, z, a, m, error, into, cancel, depth + 1);
                Fill(flash, z, m, b, error, into, cancel, depth + 1);
                return;
            }
            into.Add(m);
        }
        into.Add(b);
    }

    /// <summary>Coldest node, K.</summary>
    public double ColdestK => TemperaturesK[0];
    /// <summary>Warmest node, K.</summary>
    public double WarmestK => TemperaturesK[^1];
    /// <summary>Temperature (K) at an enthalpy (J/mol).</summary>
    public double Temperature(double molarEnthalpy) => _temperature.At(molarEnthalpy);
    /// <summary>Enthalpy (J/mol) at a temperature (K).</summary>
    public double Enthalpy(double temperatureK) => _enthalpy.At(temperatureK);

    /// <summary>Phases at an enthalpy, in words.</summary>
    public string PhasesAt(double molarEnthalpy)
    {
        int i = ((double[])Enthalpies).AsSpan().BinarySearch(molarEnthalpy);
        if (i < 0) i = ~i - 1;
        return Phases[Math.Clamp(i, 0, Phases.Count - 1)];
    }
}
