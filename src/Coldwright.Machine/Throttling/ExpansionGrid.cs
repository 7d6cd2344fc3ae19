using Coldwright.Numerics.Interpolation;

namespace Coldwright.Machine.Throttling;

/// <summary>
/// The fine grid on which the equations of motion are integrated, falling pressures. Volume at any kinetic energy k (J/kg):
/// v = <see cref="Rest"/> - <see cref="Slope"/> k, exact where k is the one the nodes were flashed with.
/// </summary>
internal sealed class ExpansionGrid
{
    private const double SmallKineticEnergy = 1;
    private const int LateCells = 24;

    /// <summary>Pa, falling.</summary>
    public double[] Pressure { get; }
    /// <summary>Volume at rest, m3/kg.</summary>
    public double[] Rest { get; }
    /// <summary>Growth of volume with enthalpy, m3/J.</summary>
    public double[] Slope { get; }
    /// <summary>Pa s.</summary>
    public double[] Viscosity { get; }
    /// <summary>K.</summary>
    public double[] Temperature { get; }
    /// <summary>Mass of vapour over mass.</summary>
    public double[] Quality { get; }
    /// <summary>Phases in words.</summary>
    public string[] Phases { get; }
    /// <summary>Where vapour first appears; -1 when there is none or some from the start.</summary>
    public int FlashIndex { get; }
    /// <summary>Below this pressure and above the flash point the phases are in equilibrium, Pa; between the two flashing is late.</summary>
    public double EquilibriumBelowPa { get; private init; } = double.PositiveInfinity;
    /// <summary>Number of points.</summary>
    public int Count => Pressure.Length;

    private ExpansionGrid(int count, int flashIndex)
    {
        (Pressure, Rest, Slope, Viscosity, Temperature, Quality, Phases) =
            (new double[count], new double[count], new double[count], new double[count], new double[count], new double[count], new string[count]);
        FlashIndex = flashIndex;
    }

    /// <param name="nodes">Nodes, the kinetic energy of each being <paramref name="kinetic"/> of its pressure.</param>
    /// <param name="kinetic">J/kg at a pressure in Pa.</param>
    /// <param name="atRest">Nodes of zero kinetic energy, from which the slope is taken; null: the nodes' own estimate.</param>
    /// <param name="cells">Cells between neighbouring nodes.</param>
    public static ExpansionGrid Build(List<PathNode> nodes, Func<double, double> kinetic, List<PathNode>? atRest, int cells)
    {
        int n = nodes.Count, flash = -1;
        double top = nodes[0].PressurePa;
        double[] u = [.. nodes.Select(x => Math.Log(top / x.PressurePa))];
        var rest = atRest is null ? null : VolumeCurve(atRest);
        var slopes = new double[n];
        for (int i = 0; i < n; i++)
        {
            double k = kinetic(nodes[i].PressurePa);
            slopes[i] = rest is null || k < SmallKineticEnergy ? nodes[i].VolumeSlope : Math.Max((rest.At(nodes[i].PressurePa) / nodes[i].PressurePa - nodes[i].Volume) / k, 0);
            if (flash < 0 && i > 0 && nodes[i].Quality > 0 && nodes[i - 1].Quality == 0 && nodes[0].Quality == 0) flash = i * cells;
        }
        // the volume at rest is interpolated, not that of the nodes: the kinetic energy has a corner at the tube's entrance
        MonotoneCubic work = VolumeCurve(nodes.Select((x, i) => x with { Volume = x.Volume + slopes[i] * kinetic(x.PressurePa) })), mu = Curve(nodes, u, x => x.ViscosityPaS), t = Curve(nodes, u, x => x.TemperatureK), q = Curve(nodes, u, x => x.Quality);
        var grid = new ExpansionGrid((n - 1) * cells + 1, flash);
        for (int i = 0; i < n; i++)
            for (int j = 0; j < (i == n - 1 ? 1 : cells); j++)
            {
                double share = (double)j / cells, at = j == 0 ? u[i] : u[i] + share * (u[i + 1] - u[i]);
                int m = i * cells + j;
                double p = j == 0 ? nodes[i].PressurePa : top * Math.Exp(-at);
                // as with the volume, slope times pressure bends least
                double slope = j == 0 ? slopes[i] : ((1 - share) * slopes[i] * nodes[i].PressurePa + share * slopes[i + 1] * nodes[i + 1].PressurePa) / p;
                grid.Pressure[m] = p;
                grid.Slope[m] = slope;
                grid.Rest[m] = work.At(p) / p;
                (grid.Viscosity[m], grid.Temperature[m], grid.Quality[m], grid.Phases[m]) = (mu.At(at), t.At(at), q.At(at), nodes[i].Phases);
            }
        return grid;
    }

    /// <summary>
    /// The same expansion with late flashing: frozen phases (the liquid of the flash point, or the inlet's phases with the vapour at
    /// constant temperature) down by an underpressure, then back to equilibrium in proportion over as much again.
    /// </summary>
    /// <param name="underpressurePa">Pa; held below 0.45 of the flash pressure (of the inlet's where vapour is there from the start).</param>
    /// <param name="vapourShare">Vapour at the inlet, volume over volume.</param>
    public ExpansionGrid Delayed(double underpressurePa, double vapourShare = 0)
    {
        if (!(underpressurePa > 0) || vapourShare == 1 || FlashIndex < 0 && vapourShare == 0) return this;
        int f = Math.Max(FlashIndex, 0);
        double top = Pressure[f], width = Math.Min(underpressurePa, 0.45 * top);
        var at = Refined(f, top - 2 * width);
        var grid = new ExpansionGrid(at.Count, FlashIndex) { EquilibriumBelowPa = top - 2 * width };
        for (int i = 0, j = 0; i < at.Count; i++)
        {
            while (j < Count - 2 && Pressure[j + 1] >= at[i]) j++;
            double share = (Pressure[j] - at[i]) / (Pressure[j] - Pressure[j + 1]), p = at[i];
            double Mixed(double[] values) => values[j] + share * (values[j + 1] - values[j]);
            grid.Pressure[i] = p;
            grid.Phases[i] = Phases[j];
            (grid.Rest[i], grid.Slope[i], grid.Viscosity[i], grid.Temperature[i], grid.Quality[i]) = (Mixed(Rest), Mixed(Slope), Mixed(Viscosity), Mixed(Temperature), Mixed(Quality));
            if (i <= f) continue;
            double y = Math.Clamp((top - width - p) / width, 0, 1), frozen = Rest[f] * (1 - vapourShare + vapourShare * top / p);
            double late = vapourShare > 0 ? Quality[f] : 0;
            grid.Rest[i] = frozen + y * (grid.Rest[i] - frozen);
            grid.Slope[i] *= y;
            grid.Viscosity[i] = 1 / (1 / Viscosity[f] + y * (1 / grid.Viscosity[i] - 1 / Viscosity[f]));
            grid.Temperature[i] = Temperature[f] + y * (grid.Temperature[i] - Temperature[f]);
            grid.Quality[i] = late + y * (grid.Quality[i] - late);
            if (y == 0) grid.Phases[i] = Phases[Math.Max(f - 1, 0)];
        }
        return grid;
    }

    // the grid's pressures, with more between the flash point and where equilibrium is back
    private List<double> Refined(int flash, double equilibriumPa)
    {
        var at = new List<double>(Count + 2 * LateCells);
        double step = (Pressure[flash] - equilibriumPa) / LateCells;
        for (int i = 0; i < Count; i++)
        {
            at.Add(Pressure[i]);
            if (i < flash || i == Count - 1 || Pressure[i] <= equilibriumPa) continue;
            int more = (int)Math.Floor((Pressure[i] - Pressure[i + 1]) / step);
            for (int j = 1; j <= more; j++) at.Add(Pressure[i] + (Pressure[i + 1] - Pressure[i]) * j / (more + 1));
        }
        return at;
    }

    /// <summary>True where late flashing keeps the phases from equilibrium.</summary>
    public bool Late(int i) => FlashIndex >= 0 && i > FlashIndex && Pressure[i] > EquilibriumBelowPa;

    /// <summary>Equilibrium quality at a pressure (Pa).</summary>
    public double QualityAt(double pressurePa)
    {
        int i = 1;
        while (i < Count - 1 && Pressure[i] > pressurePa) i++;
        double share = Math.Clamp((Pressure[i - 1] - pressurePa) / (Pressure[i - 1] - Pressure[i]), 0, 1);
        return Quality[i - 1] + share * (Quality[i] - Quality[i - 1]);
    }

    /// <summary>Temperature (K) at a pressure (Pa) by a straight line in the logarithm of pressure.</summary>
    public static double TemperatureAt(List<PathNode> nodes, double pressurePa)
    {
        int i = 1;
        while (i < nodes.Count - 1 && nodes[i].PressurePa > pressurePa) i++;
        PathNode a = nodes[i - 1], b = nodes[i];
        double share = Math.Clamp(Math.Log(a.PressurePa / pressurePa) / Math.Log(a.PressurePa / b.PressurePa), 0, 1);
        return a.TemperatureK + share * (b.TemperatureK - a.TemperatureK);
    }

    // p v against p: constant for a gas, a straight line for a liquid and nearly one for two phases
    private static MonotoneCubic VolumeCurve(IEnumerable<PathNode> nodes)
    {
        var up = nodes.Reverse().ToList();
        return new([.. up.Select(x => x.PressurePa)], [.. up.Select(x => x.PressurePa * x.Volume)], [.. up.Select(x => x.Kink)]);
    }

    private static MonotoneCubic Curve(List<PathNode> nodes, double[] u, Func<PathNode, double> value) =>
        new(u, [.. nodes.Select(value)], [.. nodes.Select(x => x.Kink)]);
}
