namespace Coldwright.Machine.Insulation;

/// <summary>Temperature profile through a solved wall and the heat stored in it.</summary>
internal static class WallHeat
{
    private const int Shells = 24;

    /// <summary>Heat given up against the wall at room temperature, J, and whether every layer's heat capacity was known.</summary>
    public static (double HeatJ, bool Complete) Of(InsulatedEnclosure box, EnclosureSolver.Wall wall, double[] surfaces)
    {
        double sum = 0;
        var complete = true;
        for (var i = 0; i < box.Layers.Count; i++)
        {
            if (box.Layers[i].HeatPerVolume(surfaces[i], surfaces[i + 1]) is null)
            {
                complete = false;
                continue;
            }
            var fraction = Fractions(box, wall, i, 2 * Shells);
            for (var j = 0; j < Shells; j++)
            {
                var volume = box.Shape.VolumeM3(Depth(wall, i, 2 * j + 2, 2 * Shells)) - box.Shape.VolumeM3(Depth(wall, i, 2 * j, 2 * Shells));
                sum += volume * (box.Layers[i].HeatPerVolume(At(box.Layers[i], surfaces[i], surfaces[i + 1], fraction[2 * j + 1]), box.RoomK) ?? 0);
            }
        }
        return (sum, complete);
    }

    /// <summary>Points through all layers, at their surfaces and between.</summary>
    public static WallPoint[] Profile(InsulatedEnclosure box, EnclosureSolver.Wall wall, double[] surfaces)
    {
        const int parts = 8;
        var points = new List<WallPoint>();
        for (var i = 0; i < box.Layers.Count; i++)
        {
            if (box.Layers[i] is not ConductingLayer)
            {
                points.AddRange([new(wall.Depth[i], surfaces[i]), new(wall.Depth[i + 1], surfaces[i + 1])]);
                continue;
            }
            var fraction = Fractions(box, wall, i, parts);
            for (var j = 0; j <= parts; j++) points.Add(new(Depth(wall, i, j, parts), At(box.Layers[i], surfaces[i], surfaces[i + 1], fraction[j])));
        }
        return points.ToArray();
    }

    private static double Depth(EnclosureSolver.Wall wall, int i, int j, int parts) => wall.Depth[i] + (wall.Depth[i + 1] - wall.Depth[i]) * j / parts;

    // share of the layer's resistance inside depth j; the conductivity integral rises in proportion to it
    private static double[] Fractions(InsulatedEnclosure box, EnclosureSolver.Wall wall, int i, int parts)
    {
        var fraction = new double[parts + 1];
        for (var j = 1; j <= parts; j++) fraction[j] = fraction[j - 1] + 1 / box.Shape.ShapeFactorM(Depth(wall, i, j - 1, parts), Depth(wall, i, j, parts));
        for (var j = 1; j <= parts; j++) fraction[j] /= fraction[parts];
        return fraction;
    }

    private static double At(InsulationLayer layer, double coldK, double warmK, double fraction)
    {
        if (coldK == warmK || fraction <= 0) return coldK;
        if (fraction >= 1) return warmK;
        var aim = fraction * layer.Potential(coldK, warmK);
        return Numerics.Roots.Brent.Solve(t => layer.Potential(coldK, t) - aim, Math.Min(coldK, warmK), Math.Max(coldK, warmK), 1e-9);
    }
}
