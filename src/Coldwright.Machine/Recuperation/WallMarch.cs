using Coldwright.Machine.Streams;
using Coldwright.Numerics;

namespace Coldwright.Machine.Recuperation;

/// <summary>Factors on what the correlations of a march give, each 1.</summary>
/// <param name="Film">On the film, above 0.</param>
/// <param name="Friction">On friction, at least 0.</param>
/// <param name="HoldUp">On the liquid's share of the cross-section, above 0.</param>
public readonly record struct MarchScales(double Film, double Friction, double HoldUp);

/// <summary>
/// One stream of an exchanger marched along a wall whose temperatures are given, as time-dependent solvers need it: the same cells and balances as
/// <see cref="DistributedRecuperator"/> (n (h_out - h_in) = G (T_wall - T at the mean enthalpy) + leak), so that a wall at rest reproduces its answer.
/// Keeps its storage and the last march's slopes; not thread-safe.
/// </summary>
public sealed class WallMarch
{
    // conductances of the first cell are settled in rounds; every other starts from its neighbour's rise, which is second order in the cell like the balance itself
    private const int FirstRounds = 4, MostNewton = 30;
    private const double LeastRise = 1e-3, LeastPressureShare = 0.2, Settled = 1e-9, LeastStep = 0.5;

    private readonly RecuperatorGeometry _geometry;
    private readonly FlowChannel _channel;
    private readonly bool _hot;
    private readonly double _dx;
    private readonly Func<double, double> _wallConductivity;

    /// <param name="geometry">The exchanger.</param>
    /// <param name="hot">True for the warm stream, which enters at cell 0; the cold one enters at the last cell.</param>
    /// <param name="cells">Cells along it, 4 or more.</param>
    /// <param name="wallConductivity">Of the metal, W/(m K), at a temperature in K.</param>
    public WallMarch(RecuperatorGeometry geometry, bool hot, int cells, Func<double, double> wallConductivity)
    {
        if (cells < 4) throw new ArgumentException($"an exchanger is marched over 4 cells or more, got {cells}", nameof(cells));
        (_geometry, _hot, Cells, _wallConductivity) = (geometry, hot, cells, wallConductivity);
        _channel = hot ? geometry.Hot : geometry.Cold;
        _dx = geometry.LengthM / cells;
        (Enthalpy, Temperature, HeatW, Moles) = (new double[cells + 1], new double[cells], new double[cells], new double[cells]);
        (Conductance, ByInlet, ByWall, MolesByEnthalpy, PressurePa) = (new double[cells], new double[cells], new double[cells], new double[cells], new double[cells + 1]);
    }

    /// <summary>Cells.</summary>
    public int Cells { get; }
    /// <summary>At the borders of the cells from the warm end on, J/mol.</summary>
    public double[] Enthalpy { get; }
    /// <summary>At the borders, Pa.</summary>
    public double[] PressurePa { get; }
    /// <summary>At the middle of the cells, K.</summary>
    public double[] Temperature { get; }
    /// <summary>From the wall into the stream, leak not counted, W.</summary>
    public double[] HeatW { get; }
    /// <summary>Held in every cell, slip included, mol.</summary>
    public double[] Moles { get; }
    /// <summary>Stream to the middle of the wall, W/K.</summary>
    public double[] Conductance { get; }
    /// <summary>Slope of a cell's outlet enthalpy by its inlet's; filled when asked for.</summary>
    public double[] ByInlet { get; }
    /// <summary>Slope of a cell's outlet enthalpy by its wall, J/(mol K); filled when asked for.</summary>
    public double[] ByWall { get; }
    /// <summary>Slope of a cell's content by its mean enthalpy, mol2/J; filled when asked for.</summary>
    public double[] MolesByEnthalpy { get; }
    /// <summary>Held in every cell of every substance, mol, cell after cell; empty for constant properties.</summary>
    public double[] SpeciesMoles { get; private set; } = [];
    /// <summary>Slope of <see cref="SpeciesMoles"/> by the cell's mean enthalpy, mol2/J; filled when asked for.</summary>
    public double[] SpeciesByEnthalpy { get; private set; } = [];
    /// <summary>Leaving, J/mol.</summary>
    public double OutletEnthalpy => Enthalpy[_hot ? Cells : 0];
    /// <summary>Leaving, Pa.</summary>
    public double OutletPressurePa => PressurePa[_hot ? Cells : 0];

    /// <summary>Marches from the inlet.</summary>
    /// <param name="inlet">As it enters.</param>
    /// <param name="wallK">Wall of every cell, K.</param>
    /// <param name="leakConductanceW">From the room into the stream, W/K in a cell; 0 for none.</param>
    /// <param name="roomK">K.</param>
    /// <param name="scales">Factors on the correlations.</param>
    /// <param name="slopes">True: also the slopes.</param>
    /// <param name="passage">The same passage tabulated, with its own factor on the hold-up; null: every correlation at every place.</param>
    /// <exception cref="SolveException">The stream loses its pressure.</exception>
    public void Run(StreamInlet inlet, ReadOnlySpan<double> wallK, double leakConductanceW, double roomK, MarchScales scales, bool slopes, PassageTable? passage = null)
    {
        var table = inlet.Table;
        double n = inlet.MolarFlow, mass = inlet.MassFlow, floor = LeastPressureShare * inlet.PressurePa, h = inlet.MolarEnthalpy, p = inlet.PressurePa, rise = 0, gradient = 0, momentum = double.NaN;
        int species = table.Composition.Count;
        if (SpeciesMoles.Length != species * Cells) (SpeciesMoles, SpeciesByEnthalpy) = (new double[species * Cells], new double[species * Cells]);
        Enthalpy[_hot ? 0 : Cells] = h;
        PressurePa[_hot ? 0 : Cells] = p;
        for (int step = 0; step < Cells; step++)
        {
            int i = _hot ? step : Cells - 1 - step;
            double middleP = p - 0.5 * _dx * gradient, x = h + rise, g = 0, t = 0, slope = 0, middleSlope = 0, wall = wallK[i], k = _wallConductivity(wall);
            PassageAnswer local = default;
            var held = SpeciesMoles.AsSpan(i * species, species);
            for (int round = step == 0 ? 0 : FirstRounds - 1; round < FirstRounds; round++)
            {
                // the slope over the whole cell, as the steady exchanger takes it
                double glide = double.NaN;
                if (Math.Abs(x - h) > LeastRise) glide = Math.Max(0, (table.Temperature(x, middleP, out _) - table.Temperature(h, middleP, out _)) / (x - h));
                local = Local(table, passage, 0.5 * (h + x), middleP, mass, ref glide, n * (x - h), scales.HoldUp, held);
                slope = glide;
                g = _dx * Side(local.Film * scales.Film, k);
                x = Outlet(table, h, middleP, n, g, wall, leakConductanceW, roomK, x, out t, out middleSlope);
            }
            Conductance[i] = g;
            Temperature[i] = t;
            HeatW[i] = n * (x - h) - leakConductanceW * (roomK - t);
            Moles[i] = _channel.AreaM2 * _dx * local.MolarDensity;
            for (int s = 0; s < species; s++) held[s] *= Moles[i];
            if (slopes) Slopes(i, table, passage, middleP, n, mass, g, k, t, middleSlope, slope, wall, h, x, leakConductanceW, scales, local);
            if (step == 0) momentum = local.MomentumFlux;
            gradient = local.FrictionGradient * scales.Friction;
            double next = p - _dx * gradient - (local.MomentumFlux - momentum);
            if (!(next > floor)) throw new SolveException(new SolveReport(SolveStatus.NoSolution, step, next, FormattableString.Invariant(
                $"the {(_hot ? "high" : "low")} side loses more than {100 * (1 - LeastPressureShare):0} % of its {inlet.PressurePa / 1e5:0.###} bar absolute in the recuperator at {n:0.####} mol/s")));
            (momentum, p, rise, h) = (local.MomentumFlux, next, x - h, x);
            Enthalpy[_hot ? i + 1 : i] = h;
            PressurePa[_hot ? i + 1 : i] = p;
        }
    }

    // At an enthalpy and a pressure, with the heat in W that the cell takes up; a slope that is not a number is taken from the table. The shares of what is held are filled.
    private PassageAnswer Local(StreamTable table, PassageTable? passage, double h, double p, double mass, ref double slope, double heatW, double holdUp, Span<double> shares)
    {
        double flux = heatW / (_channel.HeatedPerimeterM * _dx);
        if (passage is not null)
        {
            var place = table.Locate(h, p);
            if (double.IsNaN(slope)) slope = place.TemperatureSlope;
            return passage.At(place, mass, slope, flux, shares);
        }
        var point = table.At(h, p);
        if (double.IsNaN(slope)) slope = point.TemperatureSlope;
        else point = point with { TemperatureSlope = slope };
        var local = LocalTransfer.At(point, _channel, mass, _hot, flux, table.PseudoCriticalPressurePa);
        PassageContent.Shares(table, point, local.MeanDensity, holdUp, shares);
        return new(local.Film, local.FrictionGradient, local.MomentumFlux, PassageContent.MolarDensity(point, local.MeanDensity, holdUp));
    }

    private double Side(double film, double k) => _hot ? _geometry.HotConductance(film, k) : _geometry.ColdConductance(film, k);

    // n (x - h) = g (wall - T((h + x)/2)) + leak: rising in x, so one root; Newton, held in its bracket
    private static double Outlet(StreamTable table, double h, double p, double n, double g, double wall, double leak, double roomK, double x, out double t, out double slope)
    {
        double low = double.NegativeInfinity, high = double.PositiveInfinity;
        for (int i = 0; ; i++)
        {
            t = table.Temperature(0.5 * (h + x), p, out slope);
            double f = n * (x - h) - g * (wall - t) - leak * (roomK - t), d = n + 0.5 * (g + leak) * slope, change = f / d;
            if (Math.Abs(change) < Settled * (1 + Math.Abs(x - h)) || i >= MostNewton) return x;
            if (f > 0) high = x; else low = x;
            double next = x - change;
            if (!(next > low && next < high) && double.IsFinite(low) && double.IsFinite(high)) next = 0.5 * (low + high);
            x = next;
        }
    }

    private void Slopes(int i, StreamTable table, PassageTable? passage, double p, double n, double mass, double g, double k, double t, double middleSlope, double glide, double wall, double h, double x, double leak, MarchScales scales, in PassageAnswer local)
    {
        double step = Math.Max(LeastStep, 0.1 * Math.Abs(x - h));
        int species = table.Composition.Count;
        var held = SpeciesByEnthalpy.AsSpan(i * species, species);
        var there = Local(table, passage, 0.5 * (h + x) + step, p, mass, ref glide, n * (x - h), scales.HoldUp, held);
        for (int s = 0; s < species; s++) held[s] = (_channel.AreaM2 * _dx * there.MolarDensity * held[s] - SpeciesMoles[i * species + s]) / step;
        double byEnthalpy = (_dx * Side(there.Film * scales.Film, k) - g) / step;
        double both = 0.5 * ((g + leak) * middleSlope - byEnthalpy * (wall - t));
        // a conductance that falls steeply must not turn the sign of the balance
        both = Math.Max(both, -0.5 * n);
        ByInlet[i] = (n - both) / (n + both);
        ByWall[i] = g / (n + both);
        MolesByEnthalpy[i] = _channel.AreaM2 * _dx * (there.MolarDensity - local.MolarDensity) / step;
    }
}
