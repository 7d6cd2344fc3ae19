using System.Numerics;
using System.Runtime.InteropServices;

namespace Coldwright.Machine.Streams;

/// <summary>
/// Gives one table after another along the slopes of a <see cref="StreamFamily"/>, each overwriting the one before: some microseconds a table, for solvers
/// whose composition moves at every evaluation. All that the family's table holds goes over in proportion to the distance; whoever moves it far watches <see cref="PushedK"/>. Not thread-safe.
/// </summary>
public sealed class StreamMover
{
    /// <summary>Distance of the neighbours that slopes are taken from, in ln(z_i/z_1).</summary>
    public const double NeighbourStep = 0.01;
    private const double HairK = 1e-4, HairEnthalpy = 1e-3;

    private readonly StreamTable _moved;
    private readonly double[] _xi, _z, _at;
    // by isobar and kind of value, then by direction
    private readonly (double[] Target, double[] Middle, double[][] Slopes)[][] _parts;
    private readonly (double Mass, double CriticalPa)[] _scalars;

    private StreamMover(StreamTable middle, StreamTable[] neighbours)
    {
        (Middle, Neighbours, _moved) = (middle, neighbours, middle.Like());
        (_z, _at) = (new double[middle.Composition.Count], new double[neighbours.Length]);
        _xi = [.. middle.Composition.Skip(1).Select(z => Math.Log(z / middle.Composition[0]))];
        _scalars = [.. neighbours.Select(n => ((n.MolarMass - middle.MolarMass) / NeighbourStep, (n.PseudoCriticalPressurePa - middle.PseudoCriticalPressurePa) / NeighbourStep))];
        _parts = [.. middle.Isobars.Select((isobar, i) => isobar.Values.Select((values, k) =>
            (_moved.Isobars[i].Values[k], values, neighbours.Select(n => Slope(values, n.Isobars[i].Values[k])).ToArray())).ToArray())];
    }

    private static double[] Slope(double[] from, double[] to) => [.. from.Select((v, i) => (to[i] - v) / NeighbourStep)];

    /// <summary>The mover of a family; null where its neighbours have not the same places.</summary>
    /// <param name="family">Slopes.</param>
    public static StreamMover? Create(StreamFamily family)
    {
        var middle = family.Table;
        int n = middle.Composition.Count;
        var neighbours = new StreamTable[n - 1];
        for (int d = 0; d < n - 1; d++)
        {
            double[] z = [.. middle.Composition];
            z[d + 1] *= Math.Exp(NeighbourStep);
            double sum = z.Sum();
            neighbours[d] = family.At([.. z.Select(v => v / sum)]);
            for (int i = 0; i < middle.Isobars.Count; i++)
                if (neighbours[d].Isobars[i].NodeCount != middle.Isobars[i].NodeCount) return null;
        }
        return new StreamMover(middle, neighbours);
    }

    /// <summary>The table in the middle.</summary>
    public StreamTable Middle { get; }
    /// <summary>Tables a <see cref="NeighbourStep"/> away, one by direction.</summary>
    internal IReadOnlyList<StreamTable> Neighbours { get; }

    /// <summary>How far the table given last had one change of phases beyond the next, K, before its nodes were put in order: a region that it shows as vanished may be that much wide. Little as long as the slopes hold.</summary>
    public double PushedK { get; private set; }

    /// <summary>The table at a distance from the middle; valid until the next call.</summary>
    /// <param name="step">ln(z_i/z_1) less that of the middle, i from the second substance on; a few hundredths.</param>
    public StreamTable At(ReadOnlySpan<double> step)
    {
        if (step.SequenceEqual(_at)) return _moved;
        step.CopyTo(_at);
        PushedK = 0;
        for (int i = 0; i < _parts.Length; i++)
        {
            foreach (var (target, middle, slopes) in _parts[i]) Add(target, middle, slopes, step);
            PushedK = Math.Max(PushedK, _moved.Isobars[i].Settle(HairEnthalpy, HairK));
        }
        double mass = Middle.MolarMass, critical = Middle.PseudoCriticalPressurePa, sum = _z[0] = 1;
        for (int d = 0; d < step.Length; d++)
        {
            sum += _z[d + 1] = Math.Exp(_xi[d] + step[d]);
            mass += step[d] * _scalars[d].Mass;
            critical += step[d] * _scalars[d].CriticalPa;
        }
        _moved.Settle([.. _z.Select(v => v / sum)], mass, critical);
        return _moved;
    }

    // target = middle + sum of step times slope
    private static void Add(double[] target, double[] middle, double[][] slopes, ReadOnlySpan<double> step)
    {
        middle.CopyTo(target, 0);
        for (int d = 0; d < step.Length; d++)
        {
            var factor = new Vector<double>(step[d]);
            var to = MemoryMarshal.Cast<double, Vector<double>>(target.AsSpan());
            var by = MemoryMarshal.Cast<double, Vector<double>>(slopes[d].AsSpan());
            for (int i = 0; i < to.Length; i++) to[i] += factor * by[i];
            for (int i = to.Length * Vector<double>.Count; i < target.Length; i++) target[i] += step[d] * slopes[d][i];
        }
    }
}
