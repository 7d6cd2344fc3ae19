using Coldwright.Fluids.EquationsOfState;
using Coldwright.Numerics;
using Coldwright.Quantities;

namespace Coldwright.Machine.Feed;

/// <summary>
/// What a product is at a temperature and overall density: gas, liquid and vapour together, liquid, dense fluid. Phase boundaries and what lies between them
/// are tabulated along temperature (equal fugacities of the overall composition at several vapour fractions); a single phase is the equation of state itself.
/// The table is shared by its <see cref="Fork"/>s; one fork a thread.
/// </summary>
public sealed class ProductMap
{
    // vapour fractions of the nodes, mol/mol; the ends are as good as bubble and dew point
    private static readonly double[] _mixed = [1e-7, 0.01, 0.06, 0.2, 0.45, 0.75, 0.95, 1 - 1e-7], _pure = [0, 1];
    // per node: ln p, ln of the overall volume, overall internal energy, vapour by mass, density of liquid, ln of that of vapour, enthalpies of liquid and vapour
    private const int Columns = 8, PureRows = 120, MixedRows = 44;
    private const double LeastTheta = 0.012, LeastGap = 0.06;

    private readonly SplineTable _table;
    private readonly double _scaleK;
    private readonly int _fractions;
    private readonly double[] _row;

    private ProductMap(HelmholtzModel model, double[] z, SplineTable table, double scaleK, double warmestK, int fractions)
    {
        (Model, Composition, _table, _scaleK, TwoPhaseEndK, _fractions) = (model, z, table, scaleK, warmestK, fractions);
        (Phase, _row) = (new GasPhase(model, z), new double[fractions * Columns]);
    }

    /// <summary>Fluid model.</summary>
    public HelmholtzModel Model { get; }
    /// <summary>Mole fractions.</summary>
    public IReadOnlyList<double> Composition { get; }
    /// <summary>One phase by its equation of state.</summary>
    public GasPhase Phase { get; }
    /// <summary>Coldest temperature, K: the triple point of the main component.</summary>
    public double ColdestK => _scaleK * (1 - _table.End * _table.End);
    /// <summary>Above this everything counts as one phase, K: a little below the critical point.</summary>
    public double TwoPhaseEndK { get; }

    /// <summary>Makes the table.</summary>
    /// <param name="model">Model of the product, main component first.</param>
    /// <param name="z">Mole fractions.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="SolveException">No saturation where there must be one.</exception>
    public static ProductMap Create(HelmholtzModel model, IReadOnlyList<double> z, CancellationToken cancel = default)
    {
        double[] x = Compression.InputCheck.Fractions(z, model.Count, nameof(z));
        var main = model.Substances[0];
        bool pure = model.Count == 1;
        var fractions = pure ? _pure : _mixed;
        double scale = main.CriticalTemperatureK, end = Math.Sqrt(1 - main.TripleTemperatureK / scale);
        int count = pure ? PureRows : MixedRows;
        double step = (end - LeastTheta) / (count - 1);
        var saturation = new ShareSaturation(model, x);
        var rows = new List<double[]>();
        // from the cold end to the warm one, which of a mixture is where the phases become alike
        for (int i = count - 1; i >= 0; i--)
        {
            cancel.ThrowIfCancellationRequested();
            double theta = LeastTheta + i * step, t = scale * (1 - theta * theta);
            saturation.Begin(main.Saturation.Pressure.At(t));
            if (Row(saturation, t, fractions) is not { } row)
            {
                if (rows.Count < 8) throw new SolveException(SolveReport.Telling(SolveStatus.NoSolution, rows.Count, t, $"{main.Name} has no saturation at {SpokenAmount.Temperature(t, "0.##")}"));
                break;
            }
            rows.Add(row);
        }
        rows.Reverse();
        double start = end - (rows.Count - 1) * step;
        return new ProductMap(model, x, new SplineTable(start, step, rows), scale, scale * (1 - start * start), fractions.Length);
    }

    /// <summary>The same table for another thread.</summary>
    public ProductMap Fork() => new(Model, [.. Composition], _table, _scaleK, TwoPhaseEndK, _fractions);

    private static double[]? Row(ShareSaturation saturation, double t, double[] fractions)
    {
        var row = new double[fractions.Length * Columns];
        for (int k = 0; k < fractions.Length; k++)
        {
            if (saturation.Solve(t, fractions[k]) is not { } at) return null;
            var (l, v) = (at.Liquid, at.Vapour);
            double volume = (1 - at.VapourShare) / l.Density + at.VapourShare / v.Density, enthalpy = (1 - at.VapourShare) * l.Enthalpy + at.VapourShare * v.Enthalpy;
            if (l.Density - v.Density < LeastGap * l.Density) return null;
            double[] values = [Math.Log(at.PressurePa), Math.Log(volume), enthalpy - at.PressurePa * volume, at.VapourShare, l.Density, Math.Log(v.Density), l.Enthalpy, v.Enthalpy];
            values.CopyTo(row, k * Columns);
        }
        return row;
    }

    /// <summary>Saturated liquid and vapour, the state at the bubble point, K; null where nothing condenses.</summary>
    public ContentState? Bubble(double temperatureK) => Edge(temperatureK, 0);

    /// <summary>The state at the dew point, K; null where nothing condenses.</summary>
    public ContentState? Dew(double temperatureK) => Edge(temperatureK, _fractions - 1);

    /// <summary>Bubble point at a pressure (Pa), K; null when the pressure is above or below the table.</summary>
    public double? BubbleTemperature(double pressurePa) => Boundary(pressurePa, Bubble);

    /// <summary>Dew point at a pressure (Pa), K; null when the pressure is above or below the table.</summary>
    public double? DewTemperature(double pressurePa) => Boundary(pressurePa, Dew);

    /// <summary>The state at temperature (K) and overall density (kg/m3).</summary>
    public ContentState At(double temperatureK, double density)
    {
        double v = 1 / density;
        if (temperatureK < TwoPhaseEndK)
        {
            Fill(temperatureK);
            if (v > _row[1] && v < _row[(_fractions - 1) * Columns + 1]) return Between(temperatureK, v);
        }
        var p = Phase.AtDensity(temperatureK, density);
        bool liquid = temperatureK < TwoPhaseEndK ? v <= _row[1] : density * LiquidScale > 1;
        return new()
        {
            TemperatureK = temperatureK, PressurePa = p.PressurePa, InternalEnergy = p.InternalEnergy, LiquidShare = liquid ? 1 : 0,
            LiquidDensity = density, VapourDensity = density, LiquidEnthalpy = p.Enthalpy, VapourEnthalpy = p.Enthalpy,
        };
    }

    private double LiquidScale => 1 / (Model.Substances[0].CriticalDensity * Phase.MolarMass);

    // colder than the table its coldest row stands
    private void Fill(double temperatureK)
    {
        _table.At(Math.Min(Math.Sqrt(Math.Max(0, 1 - temperatureK / _scaleK)), _table.End), _row);
        for (int k = 0; k < _fractions; k++)
        {
            _row[k * Columns + 1] = Math.Exp(_row[k * Columns + 1]);
            _row[k * Columns + 5] = Math.Exp(_row[k * Columns + 5]);
        }
    }

    private ContentState? Edge(double temperatureK, int k)
    {
        if (temperatureK >= TwoPhaseEndK || temperatureK < ColdestK * (1 - 1e-9)) return null;
        Fill(temperatureK);
        return Made(temperatureK, Math.Exp(_row[k * Columns]), _row[k * Columns + 2], k == 0 ? 1 : 0, k, k, 0);
    }

    private double? Boundary(double pressurePa, Func<double, ContentState?> edge)
    {
        double Excess(double t) => Math.Log(edge(t)!.Value.PressurePa / pressurePa);
        double low = ColdestK, high = TwoPhaseEndK * (1 - 1e-9);
        return Excess(low) > 0 || Excess(high) < 0 ? null : Coldwright.Numerics.Roots.Brent.Solve(Excess, low, high, 1e-10 * high);
    }

    // Between nodes of vapour fraction everything runs along the overall volume: of a pure fluid exactly straight.
    private ContentState Between(double t, double v)
    {
        int k = 0;
        while (k < _fractions - 2 && v > _row[(k + 1) * Columns + 1]) k++;
        double a = _row[k * Columns + 1], b = _row[(k + 1) * Columns + 1], s = (v - a) / (b - a);
        double p = Along(0, k, s, b - a), u = Along(2, k, s, b - a), vapour = Along(3, k, s, b - a);
        return Made(t, Math.Exp(p), u, 1 - vapour, k, k + 1, s);
    }

    private ContentState Made(double t, double p, double u, double liquid, int a, int b, double s)
    {
        double Mix(int c) => (1 - s) * _row[a * Columns + c] + s * _row[b * Columns + c];
        return new()
        {
            TemperatureK = t, PressurePa = p, InternalEnergy = u, LiquidShare = liquid, TwoPhase = true,
            LiquidDensity = Mix(4), VapourDensity = Mix(5), LiquidEnthalpy = Mix(6), VapourEnthalpy = Mix(7),
        };
    }

    // cubic Hermite over uneven nodes, slopes weighted as a parabola through three nodes gives them
    private double Along(int column, int k, double s, double h)
    {
        double y0 = _row[k * Columns + column], y1 = _row[(k + 1) * Columns + column], secant = (y1 - y0) / h;
        if (_fractions == 2) return y0 + s * (y1 - y0);
        double m0 = k == 0 ? secant : Slope(column, k), m1 = k + 2 == _fractions ? secant : Slope(column, k + 1);
        double r = 1 - s;
        return r * r * (1 + 2 * s) * y0 + s * s * (3 - 2 * s) * y1 + h * (r * r * s * m0 - s * s * r * m1);
    }

    private double Slope(int column, int k)
    {
        double x0 = _row[(k - 1) * Columns + 1], x1 = _row[k * Columns + 1], x2 = _row[(k + 1) * Columns + 1];
        double d0 = (_row[k * Columns + column] - _row[(k - 1) * Columns + column]) / (x1 - x0), d1 = (_row[(k + 1) * Columns + column] - _row[k * Columns + column]) / (x2 - x1);
        return (d0 * (x2 - x1) + d1 * (x1 - x0)) / (x2 - x0);
    }
}
