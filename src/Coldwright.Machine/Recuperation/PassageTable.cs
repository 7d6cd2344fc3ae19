using Coldwright.Machine.Flow;
using Coldwright.Machine.HeatTransfer;
using Coldwright.Machine.Streams;

namespace Coldwright.Machine.Recuperation;

/// <summary>
/// Films, friction and hold-up of one stream in one passage, tabulated along the isobars of its properties and for mass flows a factor apart: what
/// <see cref="LocalTransfer"/> gives, to 2 % at a place and 0.4 % along a passage (measured in the tests), at a tenth of the cost. Places are worked out when they are first asked for and kept.
/// Not thread-safe.
/// </summary>
public sealed class PassageTable
{
    // places between two nodes of an isobar; ln of the factor between two mass flows
    private const int Parts = 8;
    private const double FlowStep = 0.25, FilmPower = 0.8, FluxFlowPower = FilmPower - FilmParts.FluxPower;
    private const int Moles = 0, Gradient = 1, Momentum = 2, Film = 3, PerFlux = 4, OverVapour = 5, Sensible = 6, Share = 7, Rest = 8, Columns = 9;

    private readonly StreamTable _table;
    private readonly FlowChannel _channel;
    private readonly bool _condensing;
    private readonly double _holdUp;
    private readonly Dictionary<int, double[][]> _flows = [];
    private double[][] _lower = [], _upper = [];
    private (double MassFlow, int Index, double Between, double Power, double FluxPower) _at;

    /// <param name="table">Properties.</param>
    /// <param name="channel">Passage.</param>
    /// <param name="condensing">True: gives up heat; false: takes it up.</param>
    /// <param name="holdUp">Factor on the liquid's share of the cross-section, above 0.</param>
    public PassageTable(StreamTable table, FlowChannel channel, bool condensing, double holdUp) => (_table, _channel, _condensing, _holdUp) = (table, channel, condensing, holdUp);

    /// <summary>Properties that it was made for.</summary>
    public StreamTable Table => _table;

    /// <summary>The answer at a place.</summary>
    /// <param name="place">Of the table.</param>
    /// <param name="massFlow">kg/s, above 0.</param>
    /// <param name="slope">dT/dh that the mixture's glide is counted with, K mol/J, at least 0.</param>
    /// <param name="heatFlux">Into the stream, W/m2 of heated wall; used when boiling.</param>
    internal PassageAnswer At(in StreamPlace place, double massFlow, double slope, double heatFlux)
    {
        if (massFlow != _at.MassFlow) Take(massFlow);
        var (_, index, between, power, fluxPower) = _at;
        Span<double> v = stackalloc double[Columns];
        v.Clear();
        Add(place.Isobar, place.Lower, (1 - place.Weight) * (1 - between), _lower, index, v);
        Add(place.Isobar, place.Lower, (1 - place.Weight) * between, _upper, index + 1, v);
        if (place.Weight != 0)
        {
            Add(place.Isobar + 1, place.Upper, place.Weight * (1 - between), _lower, index, v);
            Add(place.Isobar + 1, place.Upper, place.Weight * between, _upper, index + 1, v);
        }
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

    private double[][] Flow(int index)
    {
        if (_flows.TryGetValue(index, out var known)) return known;
        var made = _table.Isobars.Select(i =>
        {
            double[] values = new double[((i.NodeCount - 1) * Parts + 1) * Columns];
            for (int k = 0; k < values.Length; k += Columns) values[k] = double.NaN;
            return values;
        }).ToArray();
        return _flows[index] = made;
    }

    private void Add(int isobar, IsobarPlace at, double weight, double[][] flow, int index, Span<double> sum)
    {
        double place = at.Share * Parts;
        int k = Math.Min((int)place, Parts - 1);
        double u = place - k;
        var values = flow[isobar];
        int a = (at.Node * Parts + k) * Columns, b = a + Columns;
        if (double.IsNaN(values[a])) Fill(isobar, at.Node * Parts + k, index, values.AsSpan(a, Columns));
        if (double.IsNaN(values[b])) Fill(isobar, at.Node * Parts + k + 1, index, values.AsSpan(b, Columns));
        double wa = weight * (1 - u), wb = weight * u;
        for (int c = 0; c < Columns; c++) sum[c] += wa * values[a + c] + wb * values[b + c];
    }

    // columns over the powers of the mass flow that they nearly follow, so that between two flows little is left to interpolate
    private void Fill(int isobar, int place, int index, Span<double> v)
    {
        var line = _table.Isobars[isobar];
        int node = Math.Min(place / Parts, line.NodeCount - 2);
        var p = _table.At(line.EnthalpyAt(node, (place - node * Parts) / (double)Parts), line.PressurePa);
        double ln = index * FlowStep, massFlow = Math.Exp(ln), power = Math.Exp(FilmPower * ln);
        var parts = LocalTransfer.Parts(p, _channel, massFlow, _condensing, _table.PseudoCriticalPressurePa);
        var local = LocalTransfer.At(p, _channel, massFlow, _condensing, 0, _table.PseudoCriticalPressurePa);
        v[Moles] = Math.Log(PassageContent(p, local.MeanDensity, _holdUp));
        v[Gradient] = Math.Log(local.FrictionGradient);
        v[Momentum] = Math.Log(local.MomentumFlux);
        v[Film] = Math.Max(parts.Film, parts.Floor) / power;
        v[PerFlux] = parts.PerFlux / Math.Exp(FluxFlowPower * ln);
        v[OverVapour] = power / parts.VapourAlone;
        v[Sensible] = LocalTransfer.TwoPhase(p) ? p.Quality * p.Vapour.HeatCapacity * p.MolarMass : 0;
        v[Share] = parts.Share;
        v[Rest] = parts.Rest / power;
    }

    /// <summary>Moles per volume: vapour fills its share of the cross-section, each phase with its own molar mass.</summary>
    /// <param name="p">State.</param>
    /// <param name="meanDensity">Mass per volume, slip included, kg/m3.</param>
    /// <param name="holdUp">Factor on the liquid's share.</param>
    internal static double PassageContent(in StreamPoint p, double meanDensity, double holdUp)
    {
        if (!LocalTransfer.TwoPhase(p) || !(p.VapourFraction is > 0 and < 1)) return p.Density / p.MolarMass;
        double vapour = Math.Clamp((p.Liquid.Density - meanDensity) / (p.Liquid.Density - p.Vapour.Density), 0, 1);
        vapour /= vapour + holdUp * (1 - vapour);
        double light = p.MolarMass * p.Quality / p.VapourFraction, heavy = p.MolarMass * (1 - p.Quality) / (1 - p.VapourFraction);
        return vapour * p.Vapour.Density / light + (1 - vapour) * p.Liquid.Density / heavy;
    }
}
