namespace Coldwright.Machine.Tests.Insulation;

/// <summary>
/// Conduction shape factor between two boxes about one centre, by seven-point differences on an eighth of the wall. The energy of the potential is taken, so
/// that the error at the inside edges falls as step^(4/3) (the singularity of a 270 degree corner) and two grids can be extrapolated.
/// </summary>
internal static class LaplaceBox
{
    /// <summary>Shape factor extrapolated from two grids.</summary>
    public static double ShapeFactor(int[] halfInside, int wall, double unit)
    {
        var coarse = Solve(halfInside, wall) * unit;
        var fine = Solve(halfInside.Select(h => 2 * h).ToArray(), 2 * wall) * unit / 2;
        var ratio = Math.Pow(2, 4.0 / 3);
        return fine + (fine - coarse) / (ratio - 1);
    }

    // lengths in cells; the answer in cells
    private static double Solve(int[] h, int wall)
    {
        var n = h.Select(x => x + wall).ToArray();
        int nx = n[0] + 1, ny = n[1] + 1, nz = n[2] + 1;
        var u = new double[nx * ny * nz];
        int At(int i, int j, int k) => (i * ny + j) * nz + k;
        bool Cold(int i, int j, int k) => i <= h[0] && j <= h[1] && k <= h[2];
        // first guess: linear in the depth
        for (var i = 0; i < nx; i++)
            for (var j = 0; j < ny; j++)
                for (var k = 0; k < nz; k++)
                    u[At(i, j, k)] = Math.Clamp(Math.Max(i - h[0], Math.Max(j - h[1], k - h[2])) / (double)wall, 0, 1);
        var over = 2 / (1 + Math.PI / (2 * wall));
        for (var sweep = 0; sweep < 40 * wall; sweep++)
        {
            double largest = 0;
            for (var i = 0; i < nx - 1; i++)
                for (var j = 0; j < ny - 1; j++)
                    for (var k = 0; k < nz - 1; k++)
                    {
                        if (Cold(i, j, k)) continue;
                        // symmetry planes mirror the neighbour
                        var mean = (u[At(Math.Abs(i - 1), j, k)] + u[At(i + 1, j, k)] + u[At(i, Math.Abs(j - 1), k)] + u[At(i, j + 1, k)]
                            + u[At(i, j, Math.Abs(k - 1))] + u[At(i, j, k + 1)]) / 6;
                        var step = over * (mean - u[At(i, j, k)]);
                        u[At(i, j, k)] += step;
                        largest = Math.Max(largest, Math.Abs(step));
                    }
            if (largest < 1e-10) break;
        }

        // twice the energy: each link by the share of its cross section inside the eighth
        double energy = 0;
        double Share(int i) => i == 0 ? 0.5 : 1;
        for (var i = 0; i < nx; i++)
            for (var j = 0; j < ny; j++)
                for (var k = 0; k < nz; k++)
                {
                    var here = u[At(i, j, k)];
                    if (i < nx - 1 && j < ny - 1 && k < nz - 1)
                    {
                        energy += Share(j) * Share(k) * Square(u[At(i + 1, j, k)] - here);
                        energy += Share(i) * Share(k) * Square(u[At(i, j + 1, k)] - here);
                        energy += Share(i) * Share(j) * Square(u[At(i, j, k + 1)] - here);
                    }
                }
        return 8 * energy;
    }

    private static double Square(double x) => x * x;
}
