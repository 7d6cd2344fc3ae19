using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;

namespace Coldwright.Machine.Streams;

/// <summary>
/// A table with the slopes of all its nodes along the composition, in ln of each fraction over the first one's. Tables of neighbouring
/// compositions follow from it without a flash, and differ from it smoothly: a loop can be closed for its composition on them. They err by
/// the square of the distance (measured in the tests). Immutable; may be shared between threads.
/// </summary>
public sealed class StreamFamily
{
    // a border's own width is some ten times this
    private const double HairK = 1e-4, HairEnthalpy = 1e-3, MostLogarithm = 0.7;

    private readonly StreamTable _table;
    private readonly double[] _xi, _molarMass, _criticalPa;
    // by direction, isobar and node
    private readonly NodeSlope[][][] _slopes;

    private StreamFamily(StreamTable table, double[] molarMass, double[] criticalPa, NodeSlope[][][] slopes) =>
        (_table, _xi, _molarMass, _criticalPa, _slopes) = (table, Xi(table.Composition), molarMass, criticalPa, slopes);

    /// <summary>The table in the middle.</summary>
    public StreamTable Table => _table;

    /// <summary>The family of a table; null where phases appear or vanish so near that no slope belongs to it.</summary>
    /// <param name="table">Table of a mixture.</param>
    /// <param name="flash">Flash of the model that the table was made with.</param>
    /// <param name="transport">Transport properties of the same substances.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="ArgumentException">A table of constant properties has no composition.</exception>
    public static StreamFamily? Create(StreamTable table, Flash flash, TransportModel transport, CancellationToken cancel = default)
    {
        int n = table.Composition.Count;
        if (n == 0) throw new ArgumentException("a table of constant properties has no composition", nameof(table));
        double[] xi = Xi(table.Composition);
        var maker = new StreamNodeMaker(flash, transport, [.. table.Composition]);
        var makers = new Dictionary<(int, double), StreamNodeMaker>();
        StreamNodeMaker Towards(int direction, double step)
        {
            if (!makers.TryGetValue((direction, step), out var there))
                makers[(direction, step)] = there = new StreamNodeMaker(flash, transport, Fractions([.. xi.Select((v, i) => i == direction ? v + step : v)]));
            return there;
        }
        // by isobar first
        var found = new List<NodeSlope[][]>(table.Isobars.Count);
        foreach (var isobar in table.Isobars)
        {
            if (new IsobarSlopes(isobar.PressurePa, cancel).Find(isobar.Nodes, maker, Towards, n - 1) is not { } slopesHere) return null;
            found.Add(slopesHere);
        }
        NodeSlope[][][] slopes = [.. Enumerable.Range(0, n - 1).Select(d => found.Select(isobar => isobar[d]).ToArray())];
        return new StreamFamily(table, [.. flash.Model.Substances.Select(s => s.MolarMass)], [.. flash.Model.Substances.Select(s => s.CriticalPressurePa)], slopes);
    }

    /// <summary>Largest difference of ln(z_i/z_1) from the table in the middle.</summary>
    public double Distance(ReadOnlySpan<double> z)
    {
        double largest = 0;
        for (int i = 0; i < _xi.Length; i++) largest = Math.Max(largest, Math.Abs(Math.Log(z[i + 1] / z[0]) - _xi[i]));
        return largest;
    }

    /// <summary>The table of a neighbouring composition.</summary>
    /// <param name="z">Mole fractions, sum 1; a few hundredths in ln of a fraction are near.</param>
    public StreamTable At(ReadOnlySpan<double> z)
    {
        double[] composition = z.ToArray(), step = Xi(composition);
        for (int d = 0; d < step.Length; d++) step[d] -= _xi[d];
        var isobars = new IsobarTable[_table.Isobars.Count];
        for (int i = 0; i < isobars.Length; i++)
        {
            isobars[i] = new IsobarTable(_table.Isobars[i].PressurePa, Moved(i, step));
        }
        double mass = 0, critical = 0;
        for (int i = 0; i < composition.Length; i++)
        {
            mass += composition[i] * _molarMass[i];
            critical += composition[i] * _criticalPa[i];
        }
        return _table.Moved(isobars, composition, mass, critical);
    }

    private List<StreamNode> Moved(int isobar, double[] step)
    {
        var from = _table.Isobars[isobar].Nodes;
        var nodes = new List<StreamNode>(from.Count);
        // from the warm end down: what a border has moved over is left out
        for (int k = from.Count - 1; k >= 0; k--)
        {
            var node = from[k];
            double t = node.TemperatureK, h = node.MolarEnthalpy;
            for (int d = 0; d < step.Length; d++)
            {
                t += step[d] * _slopes[d][isobar][k].TemperatureK;
                h += step[d] * _slopes[d][isobar][k].MolarEnthalpy;
            }
            if (nodes.Count > 0 && !(t < nodes[^1].TemperatureK - HairK && h < nodes[^1].MolarEnthalpy - HairEnthalpy)) continue;
            double[] values = [.. node.Values], moves = new double[values.Length];
            double[]? vapour = node.Vapour is null ? null : [.. node.Vapour], liquid = node.Liquid is null ? null : [.. node.Liquid];
            for (int d = 0; d < step.Length; d++)
            {
                var slope = _slopes[d][isobar][k];
                Add(moves, slope.Values, step[d]);
                if (vapour is not null) Add(vapour, slope.Vapour, step[d]);
                if (liquid is not null) Add(liquid, slope.Liquid, step[d]);
            }
            for (int c = 0; c < values.Length; c++) values[c] = Moved(values[c], moves[c], c);
            values[StreamColumn.Temperature] = t;
            nodes.Add(new StreamNode { TemperatureK = t, MolarEnthalpy = h, Phases = node.Phases, Fractions = node.Fractions, Vapour = vapour, Liquid = liquid, Values = values });
        }
        nodes.Reverse();
        return nodes;
    }

    // what is never negative goes over in its logarithm
    private static double Moved(double value, double move, int column) =>
        column >= StreamColumn.SpecificVolume && value > 0 ? value * Math.Exp(Math.Clamp(move / value, -MostLogarithm, MostLogarithm)) : value + move;

    private static void Add(double[] values, double[] slope, double step)
    {
        for (int i = 0; i < values.Length; i++) values[i] += step * slope[i];
    }

    private static double[] Xi(IReadOnlyList<double> z)
    {
        var xi = new double[z.Count - 1];
        for (int i = 0; i < xi.Length; i++) xi[i] = Math.Log(z[i + 1] / z[0]);
        return xi;
    }

    private static double[] Fractions(double[] xi)
    {
        var z = new double[xi.Length + 1];
        double sum = z[0] = 1;
        for (int i = 0; i < xi.Length; i++) sum += z[i + 1] = Math.Exp(xi[i]);
        for (int i = 0; i < z.Length; i++) z[i] /= sum;
        return z;
    }
}
