using System.Numerics;
using System.Runtime.InteropServices;
using Coldwright.Machine.Flow;
using Coldwright.Machine.HeatTransfer;
using Coldwright.Machine.Streams;

namespace Coldwright.Machine.Recuperation;

/// <summary>
/// Films, friction and hold-up of one stream in one passage, tabulated along the isobars of its properties and for mass flows a factor apart: what
/// <see cref="LocalTransfer"/> gives, to 2 % at a place and 0.4 % along a passage (measured in the tests), at a tenth of the cost. Places are worked out when they are first asked for and kept.
/// Made on a <see cref="StreamMover"/>, it follows the composition along slopes of its own, at the same places between the changes of phases. Not thread-safe.
/// </summary>
public sealed class PassageTable
{
    // places between two nodes of an isobar; ln of the factor between two mass flows, a fifth of what friction takes to turn turbulent
    private const int Parts = 8;
    private const double FlowStep = 0.0625, FilmPower = 0.8, FluxFlowPower = FilmPower - FilmParts.FluxPower;
    private const int Moles = 0, Gradient = 1, Momentum = 2, Film = 3, PerFlux = 4, OverVapour = 5, Sensible = 6, Share = 7, Rest = 8, Held = 9;

    private readonly StreamTable _table;
    private readonly FlowChannel _channel;
    private readonly bool _condensing;
    private readonly double _holdUp;
    private readonly IReadOnlyList<StreamTable> _neighbours = [];
    private readonly double[] _step = [], _entry;
    // of one composition: the parts of what is looked up, then the share of every substance in what is held
    private readonly int _columns;
    // by isobar and place; null: not yet asked for
    private readonly Dictionary<int, double[]?[][]> _flows = [];
    private double[]?[][] _lower = [], _upper = [];
    private (double MassFlow, int Index, double Between, double Power, double FluxPower) _at;

    /// <param name="table">Properties.</param>
    /// <param name="channel">Passage.</param>
    /// <param name="condensing">True: gives up heat; false: takes it up.</param>
    /// <param name="holdUp">Factor on the liquid's share of the cross-section, above 0.</param>
    public PassageTable(StreamTable table, FlowChannel channel, bool condensing, double holdUp) : this(table, [], channel, condensing, holdUp) { }

    /// <param name="mover">Properties along the composition.</param>
    /// <param name="channel">Passage.</param>
    /// <param name="condensing">True: gives up heat; false: takes it up.</param>
    /// <param name="holdUp">Factor on the liquid's share of the cross-section, above 0.</param>
    public PassageTable(StreamMover mover, FlowChannel channel, bool condensing, double holdUp) : this(mover.Middle, mover.Neighbours, channel, condensing, holdUp) { }

    private PassageTable(StreamTable table, IReadOnlyList<StreamTable> neighbours, FlowChannel channel, bool condensing, double holdUp)
    {
        (_table, _neighbours, _channel, _condensing, _holdUp) = (table, neighbours, channel, condensing, holdUp);
        _step = new double[neighbours.Count];
        _columns = Held + table.Composition.Count;
        _entry = new double[_columns * (1 + neighbours.Count)];
    }

    /// <summary>Follows the composition to a distance from the middle of its mover, as <see cref="StreamMover.At"/>.</summary>
    public void MoveTo(ReadOnlySpan<double> step) => step.CopyTo(_step);

    /// <summary>Properties that it was made for.</summary>
    public StreamTable Table => _table;

    /// <summary>The answer at a place.</summary>
    /// <param name="place">Of the table.</param>
    /// <param name="massFlow">kg/s, above 0.</param>
    /// <param name="slope">dT/dh that the mixture's glide is counted with, K mol/J, at least 0.</param>
    /// <param name="heatFlux">Into the stream, W/m2 of heated wall; used when boiling.</param>
    /// <param name="shares">Filled with the share of every substance in what is held; may be empty.</param>
    internal PassageAnswer At(in StreamPlace place, double massFlow, double slope, double heatFlux, Span<double> shares = default)
    {
        if (massFlow != _at.MassFlow) Take(massFlow);
        var (_, index, between, power, fluxPower) = _at;
        var v = _entry.AsSpan();
        v.Clear();
        Add(place.Isobar, place.Lower, (1 - place.Weight) * (1 - between), _lower, index, v);
        Add(place.Isobar, place.Lower, (1 - place.Weight) * between, _upper, index + 1, v);
        if (place.Weight != 0)
        {
            Add(place.Isobar + 1, place.Upper, place.Weight * (1 - between), _lower, index, v);
            Add(place.Isobar + 1, place.Upper, place.Weight * between, _upper, index + 1, v);
        }
        for (int d = 0; d < _step.Length; d++)
        {
            var slopes = v.Slice((d + 1) * _columns, _columns);
            for (int c = 0; c < slopes.Length; c++) v[c] += _step[d] * slopes[c];
        }
        if (!shares.IsEmpty) v.Slice(Held, shares.Length).CopyTo(shares);
        double film = v[Rest];
        if (v[Share] > 0)
        {
            double pure = v[Film];
            if (!_condensing && heatFlux > 0 && v[PerFlux] > 0) pure += v[PerFlux] * fluxPower * Math.Pow(heatFlux, FilmParts.FluxPower);
            film += v[Share] / (1 / pure + Math.Clamp(v[Sensible] * slope, 0, 1) * v[OverVapour]);
        }
        return new(film * power, Math.Exp(v[Gradient]), Math.Exp(v[Momentum]), Math.Exp(v[Moles]));
    }

    // the two mass flows about this one
    private void Take(double massFlow)
    {
        double ln = Math.Log(massFlow), place = ln / FlowStep, floor = Math.Floor(place);
        int index = (int)floor;
        _at = (massFlow, index, place - floor, Math.Exp(FilmPower * ln), Math.Exp((FluxFlowPower - FilmPower) * ln));
        (_lower, _upper) = (Flow(index), Flow(index + 1));
    }

    private double[]?[][] Flow(int index) => _flows.TryGetValue(index, out var known) ? known : _flows[index] = [.. _table.Isobars.Select(i => new double[]?[(i.NodeCount - 1) * Parts + 1])];

    private void Add(int isobar, IsobarPlace at, double weight, double[]?[][] flow, int index, Span<double> sum)
    {
        double place = at.Share * Parts;
        int k = Math.Min((int)place, Parts - 1), a = at.Node * Parts + k;
        double u = place - k, wa = weight * (1 - u), wb = weight * u;
        var values = flow[isobar];
        ReadOnlySpan<double> from = values[a] ??= Filled(isobar, a, index), to = values[a + 1] ??= Filled(isobar, a + 1, index);
        ReadOnlySpan<Vector<double>> wideFrom = MemoryMarshal.Cast<double, Vector<double>>(from), wideTo = MemoryMarshal.Cast<double, Vector<double>>(to);
        var wideSum = MemoryMarshal.Cast<double, Vector<double>>(sum);
        var (wideA, wideB) = (new Vector<double>(wa), new Vector<double>(wb));
        for (int i = 0; i < wideSum.Length; i++) wideSum[i] += wideA * wideFrom[i] + wideB * wideTo[i];
        for (int c = wideSum.Length * Vector<double>.Count; c < sum.Length; c++) sum[c] += wa * from[c] + wb * to[c];
    }

    // values, then their slopes along every direction
    private double[] Filled(int isobar, int place, int index)
    {
        double[] entry = new double[_entry.Length];
        var v = entry.AsSpan(0, _columns);
        bool two = Fill(_table, isobar, place, index, v);
        for (int d = 0; d < _neighbours.Count; d++)
        {
            var slope = entry.AsSpan((d + 1) * _columns, _columns);
            // next to a change of phases a neighbour may lie just beyond it: that is no slope
            if (Fill(_neighbours[d], isobar, place, index, slope) != two) slope.Clear();
            else for (int c = 0; c < slope.Length; c++) slope[c] = (slope[c] - v[c]) / StreamMover.NeighbourStep;
        }
        return entry;
    }

    // columns over the powers of the mass flow that they nearly follow, so that between two flows little is left to interpolate; true where there are two phases
    private bool Fill(StreamTable table, int isobar, int place, int index, Span<double> v)
    {
        var line = table.Isobars[isobar];
        int node = Math.Min(place / Parts, line.NodeCount - 2);
        double h = line.EnthalpyAt(node, (place - node * Parts) / (double)Parts);
        var p = table.At(h, line.PressurePa);
        double ln = index * FlowStep, massFlow = Math.Exp(ln), power = Math.Exp(FilmPower * ln);
        var parts = LocalTransfer.Parts(p, _channel, massFlow, _condensing, table.PseudoCriticalPressurePa);
        var local = LocalTransfer.At(p, _channel, massFlow, _condensing, 0, table.PseudoCriticalPressurePa);
        v[Moles] = Math.Log(PassageContent.MolarDensity(p, local.MeanDensity, _holdUp));
        v[Gradient] = Math.Log(local.FrictionGradient);
        v[Momentum] = Math.Log(local.MomentumFlux);
        v[Film] = Math.Max(parts.Film, parts.Floor) / power;
        v[PerFlux] = parts.PerFlux / Math.Exp(FluxFlowPower * ln);
        v[OverVapour] = power / parts.VapourAlone;
        v[Sensible] = LocalTransfer.TwoPhase(p) ? p.Quality * p.Vapour.HeatCapacity * p.MolarMass : 0;
        v[Share] = parts.Share;
        v[Rest] = parts.Rest / power;
        PassageContent.Shares(table, p, local.MeanDensity, _holdUp, v[Held..]);
        return LocalTransfer.TwoPhase(p);
    }
}
