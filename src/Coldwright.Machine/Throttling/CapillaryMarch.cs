using Coldwright.Machine.Flow;

namespace Coldwright.Machine.Throttling;

/// <summary>
/// The momentum balance along a tube of one mass flux G: -dp = G^2 dv + f G^2 v/(2 D) dL, hence
/// dL = 2 D/(f v G^2) (-dp - G^2 dv), integrated by the trapezium over a grid of pressures. The length has its greatest value where
/// dp/dL grows without limit: that is the choked exit.
/// </summary>
internal sealed class CapillaryMarch
{
    private const double Settled = 0.9;
    private readonly ExpansionGrid _grid;
    private readonly CapillaryTube _tube;
    private readonly double[] _length, _volume, _friction, _pressure;

    public CapillaryMarch(ExpansionGrid grid, CapillaryTube tube)
    {
        (_grid, _tube) = (grid, tube);
        Entrance = new NozzleFlow(grid, tube.EntranceLoss);
        int n = grid.Count;
        (_length, _volume, _friction, _pressure) = (new double[n], new double[n], new double[n], new double[n]);
    }

    /// <summary>The contraction in front of the tube.</summary>
    public NozzleFlow Entrance { get; }

    /// <summary>Mass flux that a tube of no length passes, kg/(m2 s).</summary>
    public double GreatestFlux => Entrance.GreatestFlux;

    /// <summary>First grid point behind the entrance; the point before it holds the entrance itself.</summary>
    public int First { get; private set; }

    /// <summary>Last grid point of the march.</summary>
    public int Last { get; private set; }

    /// <summary>True when the greatest length lies inside the march.</summary>
    public bool Choked { get; private set; }

    /// <summary>Pressure inside the exit, Pa.</summary>
    public double ExitPressurePa { get; private set; }

    /// <summary>Pressure inside the entrance, Pa.</summary>
    public double EntrancePressurePa => _pressure[First - 1];

    /// <summary>Length from the entrance to a grid point, m.</summary>
    public double LengthAt(int i) => _length[i];

    /// <summary>Volume at a grid point, m3/kg.</summary>
    public double VolumeAt(int i) => _volume[i];

    /// <summary>Darcy friction factor at a grid point.</summary>
    public double FrictionAt(int i) => _friction[i];

    /// <summary>Pressure at a grid point of the march, Pa; the point before <see cref="First"/> is the entrance.</summary>
    public double PressureAt(int i) => _pressure[i];

    /// <summary>Length (m) over which a mass flux (kg/(m2 s)) takes the pressure down to the grid's end or to choking; 0 when the entrance passes no such flux.</summary>
    public double Run(double flux)
    {
        double entrance = Entrance.PressureAt(flux), square = flux * flux;
        (First, Last, Choked) = (1, 1, false);
        if (double.IsNaN(entrance)) return 0;
        while (First < _grid.Count && _grid.Pressure[First] >= entrance) First++;
        if (First == _grid.Count) return 0;
        int start = First - 1;
        double share = (_grid.Pressure[start] - entrance) / (_grid.Pressure[start] - _grid.Pressure[First]);
        double rest = _grid.Rest[start] + share * (_grid.Rest[First] - _grid.Rest[start]), slope = _grid.Slope[start] + share * (_grid.Slope[First] - _grid.Slope[start]);
        _pressure[start] = entrance;
        _length[start] = 0;
        _volume[start] = Volume(rest, slope, square);
        _friction[start] = FrictionFactor(flux, _grid.Viscosity[start] + share * (_grid.Viscosity[First] - _grid.Viscosity[start]));
        int greatest = start;
        for (int i = First; i < _grid.Count; i++)
        {
            _pressure[i] = _grid.Pressure[i];
            _volume[i] = Volume(_grid.Rest[i], _grid.Slope[i], square);
            _friction[i] = FrictionFactor(flux, _grid.Viscosity[i]);
            double driven = _pressure[i - 1] - _pressure[i] - square * (_volume[i] - _volume[i - 1]);
            double weight = 0.5 * (1 / (_friction[i - 1] * _volume[i - 1]) + 1 / (_friction[i] * _volume[i]));
            _length[i] = _length[i - 1] + 2 * _tube.BoreM / square * weight * driven;
            // past choking the length runs backwards; within delayed flashing it may do so for a little without meaning
            if (_length[i] > _length[greatest]) greatest = i;
            else if (_pressure[i] < Settled * Math.Min(_pressure[greatest], _grid.EquilibriumBelowPa)) break;
        }
        Last = greatest;
        if (greatest == _grid.Count - 1)
        {
            ExitPressurePa = _pressure[greatest];
            return _length[greatest];
        }
        Choked = true;
        if (greatest <= First)
        {
            ExitPressurePa = _pressure[greatest];
            return _length[greatest];
        }
        (ExitPressurePa, double length) = Parabola.Peak(_pressure, _length, greatest);
        return length;
    }

    // energy h + G^2 v^2/2 = h0 with v linear in h
    private static double Volume(double rest, double slope, double square) => 2 * rest / (1 + Math.Sqrt(1 + 2 * slope * square * rest));

    private double FrictionFactor(double flux, double viscosity) =>
        Friction.Coiled(flux * _tube.BoreM / viscosity, _tube.RoughnessM / _tube.BoreM, _tube.Curvature);
}
