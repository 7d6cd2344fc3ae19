using Coldwright.Numerics;
using Coldwright.Numerics.Roots;
using Coldwright.Quantities;

namespace Coldwright.Machine.Insulation;

/// <summary>Solves the layers of a wall in series with the film of the room.</summary>
/// <remarks>
/// One unknown, the heat flow Q. From the room inwards each surface follows from Q (film, then layer by layer); Q is right when the innermost one has
/// the inside temperature. Every step is monotone, so bracketing always ends; nothing is linearised, k(T) enters through its integral.
/// </remarks>
public static class EnclosureSolver
{
    private const double FloorK = 1;
    private const double CeilingK = 1000;

    /// <summary>Heat leak, temperatures and stored heat at one inside temperature.</summary>
    /// <param name="enclosure">The enclosure.</param>
    /// <param name="insideK">Inside temperature, K, 4 to 400.</param>
    /// <exception cref="ArgumentException">A figure outside its range.</exception>
    /// <exception cref="SolveException">The flows of neighbouring layers do not agree to 1e-9.</exception>
    public static EnclosureLeak Solve(InsulatedEnclosure enclosure, double insideK)
    {
        enclosure.Validate(insideK);
        var wall = new Wall(enclosure);
        var ones = Enumerable.Repeat(1.0, enclosure.Layers.Count + 1).ToArray();
        var (power, surfaces) = wall.Flow(insideK, ones);
        var error = wall.Imbalance(power, surfaces);
        if (error > 1e-9) throw new SolveException(SolveReport.Telling(SolveStatus.NotConverged, 1, error,
            $"the flows through the layers of the wall differ by {error:0.#e+0} at {SpokenAmount.Temperature(insideK, "0.##")} inside; a layer whose conductivity is nearly zero there is the likely cause"));

        var warnings = new List<Spoken>();
        var paths = new List<LeakPath> { new("insulation", power, Deviation(wall, insideK, power, ones)) };
        foreach (var p in enclosure.Penetrations)
        {
            var inner = p.InnerK ?? insideK;
            var value = p.PowerW(inner, enclosure.RoomK);
            paths.Add(new(p.Name, value, Math.Abs(value) * p.Material.ConductivityCurve.RelativeUncertainty));
            warnings.AddRange(Spoken.All(new[] { p.Material.Caveat, p.Material.Integral(inner, enclosure.RoomK).Warning }.OfType<string>()));
        }

        var layers = wall.Results(surfaces, insideK, enclosure.RoomK);
        foreach (var (layer, result) in enclosure.Layers.Zip(layers))
        {
            warnings.AddRange(Spoken.All(layer.Warnings(result.InnerK, result.OuterK)));
            if (layer is ConductingLayer && enclosure.Shape.Warning(result.InnerDepthM, result.OuterDepthM) is { } rule) warnings.Add(rule);
        }
        if (enclosure.Shape is BoxWall box && layers.Length > 1)
            warnings.Add(FormattableString.Invariant($"the leak through the box's {layers.Length} layers is an upper bound, at most {100 * box.NestingExcess(wall.Depth):0.#} % too high: the surfaces between them are taken as of one temperature"));
        var dew = DewPoint.Of(enclosure.RoomK, enclosure.RelativeHumidity);
        if (surfaces[^1] < dew) warnings.Add(Spoken.Of(
            $"the outside of the wall is at {SpokenAmount.Celsius(surfaces[^1])}, below the room's dew point of {SpokenAmount.Celsius(dew)}: it sweats, and the insulation takes up water if it is open"));
        var (stored, complete) = WallHeat.Of(enclosure, wall, surfaces);
        return new(paths, insideK, surfaces[^1], dew, layers, WallHeat.Profile(enclosure, wall, surfaces), stored, complete, error, warnings.Distinct().ToArray());
    }

    /// <summary>Heat the wall gives up when its inside goes from one temperature to another, each time settled, J; negative when it warms.</summary>
    /// <param name="enclosure">The enclosure.</param>
    /// <param name="fromK">First inside temperature, K.</param>
    /// <param name="toK">Second inside temperature, K.</param>
    public static double StoredHeatJ(InsulatedEnclosure enclosure, double fromK, double toK) => Solve(enclosure, toK).StoredHeatJ - Solve(enclosure, fromK).StoredHeatJ;

    // each conductance and the film moved by one standard deviation, alone; squares added
    private static double Deviation(Wall wall, double insideK, double power, double[] ones)
    {
        double sum = 0;
        for (var i = 0; i < ones.Length; i++)
        {
            var moved = (double[])ones.Clone();
            moved[i] += wall.RelativeUncertainty(i);
            var step = wall.Flow(insideK, moved).PowerW - power;
            sum += step * step;
        }
        return Math.Sqrt(sum);
    }

    /// <summary>The layers with their shape factors.</summary>
    internal sealed class Wall
    {
        private readonly InsulatedEnclosure _box;
        private readonly double _outsideM2;

        public double[] Depth { get; }
        public double[] Shape { get; }

        public Wall(InsulatedEnclosure box)
        {
            _box = box;
            Depth = new double[box.Layers.Count + 1];
            Shape = new double[box.Layers.Count];
            for (var i = 0; i < Shape.Length; i++)
            {
                Shape[i] = box.Layers[i].ShapeM(box.Shape, Depth[i]);
                Depth[i + 1] = Depth[i] + box.Layers[i].ThicknessM;
            }
            _outsideM2 = box.Shape.AreaM2(Depth[^1]);
        }

        public double RelativeUncertainty(int i) => i < Shape.Length ? _box.Layers[i].RelativeUncertainty : _box.Outside.RelativeUncertainty;

        /// <summary>Heat flow, W, and the temperatures of all surfaces from inside to outside, K; the factors multiply each layer's flow and the film's.</summary>
        public (double PowerW, double[] SurfacesK) Flow(double insideK, double[] factor)
        {
            var surfaces = new double[Shape.Length + 1];
            Array.Fill(surfaces, insideK);
            if (insideK == _box.RoomK) return (0, surfaces);
            double Miss(double q)
            {
                March(q, factor, surfaces);
                return surfaces[0] - insideK;
            }

            var limit = Film(insideK, factor);
            var power = Brent.Solve(Miss, 0, _box.RoomK - insideK, limit, Miss(limit), 0);
            March(power, factor, surfaces);
            surfaces[0] = insideK;
            return (power, surfaces);
        }

        /// <summary>Largest difference of a layer's flow or the film's from the heat flow, divided by it.</summary>
        public double Imbalance(double power, double[] surfaces)
        {
            if (power == 0) return 0;
            double worst = 0;
            for (var i = 0; i < Shape.Length; i++)
                worst = Math.Max(worst, Math.Abs(Shape[i] * _box.Layers[i].Potential(surfaces[i], surfaces[i + 1]) / power - 1));
            return Math.Max(worst, Math.Abs(_outsideM2 * _box.Outside.Flux(surfaces[^1], _box.RoomK) / power - 1));
        }

        public LayerResult[] Results(double[] surfaces, double insideK, double roomK) => _box.Layers
            .Select((layer, i) => new LayerResult(layer.Name, Depth[i], Depth[i + 1], Shape[i], surfaces[i], surfaces[i + 1],
                insideK == roomK ? 0 : (surfaces[i + 1] - surfaces[i]) / (roomK - insideK)))
            .ToArray();

        private double Film(double surfaceK, double[] factor) => factor[^1] * _outsideM2 * _box.Outside.Flux(surfaceK, _box.RoomK);

        private void March(double q, double[] factor, double[] surfaces)
        {
            surfaces[^1] = Inverse(t => Film(t, factor) - q, _box.RoomK, q);
            for (var i = Shape.Length - 1; i >= 0; i--)
            {
                var (warm, scale, layer) = (surfaces[i + 1], factor[i] * Shape[i], _box.Layers[i]);
                surfaces[i] = Inverse(t => scale * layer.Potential(t, warm) - q, warm, q);
            }
        }

        // temperature on the inner side at which the falling function meets zero; the floor when it never does
        private static double Inverse(Func<double, double> miss, double outerK, double q)
        {
            if (q == 0) return outerK;
            var end = q > 0 ? FloorK : CeilingK;
            if (outerK <= FloorK) return FloorK;
            var atEnd = miss(end);
            if (q > 0 ? atEnd <= 0 : atEnd >= 0) return end;
            return Brent.Solve(miss, outerK, -q, end, atEnd, 0);
        }
    }
}
