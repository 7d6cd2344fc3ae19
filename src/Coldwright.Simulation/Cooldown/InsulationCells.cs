using Coldwright.Machine.Insulation;

namespace Coldwright.Simulation.Cooldown;

/// <summary>
/// Heat through the wall of the cold box and in it: finite volumes in the shape of the box, finer towards the cold. The cells of a layer share its own shape
/// factor, so that the settled wall lets through what <see cref="EnclosureSolver"/> finds; the nested shapes only say how the layer's resistance and volume lie along it.
/// </summary>
internal sealed class InsulationCells
{
    // the outermost cell of a layer over its innermost
    private const double LastOverFirst = 12, EmptyJPerM3K = 1300;
    private const int LeastCells = 2, SurfaceRounds = 6;

    private readonly InsulatedEnclosure _box;
    private readonly InsulationLayer[] _layer;
    private readonly double[] _inner, _outer;
    private readonly double _outsideM2;

    /// <param name="box">The box.</param>
    /// <param name="cells">About so many cells.</param>
    public InsulationCells(InsulatedEnclosure box, int cells)
    {
        _box = box;
        double wall = box.WallM, depth = 0;
        var (layers, inner, outer, volumes, heats, names) = (new List<InsulationLayer>(), new List<double>(), new List<double>(), new List<double>(), new List<HeatTable>(), new List<int>());
        for (int l = 0; l < box.Layers.Count; l++)
        {
            var layer = box.Layers[l];
            int n = Math.Max(LeastCells, (int)Math.Round(cells * layer.ThicknessM / wall));
            double growth = Math.Pow(LastOverFirst, 1.0 / (n - 1)), first = layer.ThicknessM * (growth - 1) / (Math.Pow(growth, n) - 1), from = depth, width = first, nested = 0;
            int start = inner.Count;
            var table = new HeatTable(k => Volumetric(layer, k));
            for (int i = 0; i < n; i++, width *= growth)
            {
                double to = i == n - 1 ? depth + layer.ThicknessM : from + width, middle = 0.5 * (from + to);
                double a = 1 / box.Shape.ShapeFactorM(from, middle), b = 1 / box.Shape.ShapeFactorM(middle, to);
                nested += a + b;
                layers.Add(layer);
                inner.Add(a);
                outer.Add(b);
                volumes.Add(box.Shape.VolumeM3(to) - box.Shape.VolumeM3(from));
                heats.Add(table);
                from = to;
            }
            double share = 1 / (layer.ShapeM(box.Shape, depth) * nested);
            for (int i = start; i < inner.Count; i++) (inner[i], outer[i]) = (inner[i] * share, outer[i] * share);
            depth += layer.ThicknessM;
        }
        (_layer, _inner, _outer, VolumeM3, Heat) = ([.. layers], [.. inner], [.. outer], [.. volumes], [.. heats]);
        Complete = box.Layers.All(l => l.HeatPerVolume(280, 290) is not null);
        _outsideM2 = box.Shape.AreaM2(depth);
    }

    public int Count => VolumeM3.Length;
    /// <summary>m3 of every cell, cold side first.</summary>
    public double[] VolumeM3 { get; }
    /// <summary>Heat per m3 of every cell.</summary>
    public HeatTable[] Heat { get; }
    /// <summary>kg/m3 of every cell; 0 where not known.</summary>
    public IReadOnlyList<double> DensityKgPerM3 => [.. _layer.Select(l => (l as ConductingLayer)?.DensityKgPerM3 ?? 0)];
    /// <summary>False where a layer's density or specific heat is not known; it then counts as gas.</summary>
    public bool Complete { get; }

    /// <summary>J/K of a cell at <see cref="HeatTable.ReferenceK"/>.</summary>
    public double ReferenceCapacity(int i) => VolumeM3[i] * Heat[i].ReferenceCapacity;

    private static double Volumetric(InsulationLayer layer, double k) => layer.HeatPerVolume(k - 0.5, k + 0.5) ?? EmptyJPerM3K;

    /// <summary>Heat flows inwards, W: into the inside from the first cell, between the cells, from the room into the last.</summary>
    /// <param name="insideK">K.</param>
    /// <param name="t">Cells, K.</param>
    /// <param name="factor">On every flow.</param>
    /// <param name="flow">Filled: one more than cells.</param>
    public void Flows(double insideK, ReadOnlySpan<double> t, double factor, Span<double> flow)
    {
        int n = Count;
        flow[0] = factor * _layer[0].Potential(insideK, t[0]) / _inner[0];
        for (int i = 1; i < n; i++)
        {
            double resistance = _outer[i - 1] + _inner[i];
            if (ReferenceEquals(_layer[i], _layer[i - 1])) flow[i] = factor * _layer[i].Potential(t[i - 1], t[i]) / resistance;
            else
            {
                // two materials: each with its mean conductivity over the pair, in series
                double d = t[i] - t[i - 1], span = Math.Abs(d) < 1e-6 ? 0.5 : 0;
                double a = _layer[i - 1].Potential(t[i - 1] - span, t[i] + span) / (d + 2 * span), b = _layer[i].Potential(t[i - 1] - span, t[i] + span) / (d + 2 * span);
                flow[i] = factor * d / (_outer[i - 1] / a + _inner[i] / b);
            }
        }
        flow[n] = Surface(t[n - 1], factor).FlowW;
    }

    /// <summary>Surface of the box, K, and heat from the room, W.</summary>
    public (double SurfaceK, double FlowW) Surface(double lastK, double factor)
    {
        double room = _box.RoomK, s = room, g = 0;
        // conduction of the last half cell against the film: secant slopes settle in a few rounds
        for (int i = 0; i < SurfaceRounds; i++)
        {
            double d = room - lastK;
            if (Math.Abs(d) < 1e-9) return (room, 0);
            double k = _layer[^1].Potential(lastK, s == lastK ? room : s) / ((s == lastK ? room : s) - lastK) / _outer[^1];
            double film = s == room ? 4 * _outsideM2 : _outsideM2 * _box.Outside.Flux(s, room) / (room - s);
            g = 1 / (1 / k + 1 / film);
            s = lastK + g / k * d;
        }
        return (s, factor * g * (room - lastK));
    }

    /// <summary>Settled temperatures with the inside at a temperature, K.</summary>
    public double[] Settled(double insideK)
    {
        var t = new double[Count];
        double power = EnclosureSolver.Solve(_box, insideK).WallW, from = insideK;
        for (int i = 0; i < t.Length; i++)
        {
            double aim = power * (i == 0 ? _inner[0] : _outer[i - 1] + _inner[i]), at = from;
            var layer = _layer[i];
            double room = _box.RoomK;
            t[i] = insideK == room ? room
                : Math.Abs(layer.Potential(from, room)) <= Math.Abs(aim) ? room
                : Numerics.Roots.Brent.Solve(x => layer.Potential(at, x) - aim, Math.Min(from, room), Math.Max(from, room), 1e-9);
            from = t[i];
        }
        return t;
    }
}
