using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;

namespace Coldwright.Machine.Streams;

/// <summary>A stream's properties by a flash of the model wherever they are asked for: the slow reference that tables are held against. Not thread-safe.</summary>
internal sealed class DirectStates
{
    // J/mol between the two flashes of a slope; answers kept so that one place is not flashed twice in an evaluation
    private const double SlopeStep = 5;
    private const int MostKept = 4000;

    private readonly Flash _flash;
    private readonly StreamNodeMaker _maker;
    private readonly double[] _z;
    private readonly Dictionary<(double H, double P), StreamNode> _nodes = [];
    private readonly Dictionary<(double H, double P), double> _kelvins = [];
    private double _lastK = double.NaN;

    /// <param name="flash">Flash of the fluid's model, its own.</param>
    /// <param name="transport">Transport properties of the same substances.</param>
    /// <param name="z">Mole fractions.</param>
    public DirectStates(Flash flash, TransportModel transport, double[] z) => (_flash, _maker, _z) = (flash, new StreamNodeMaker(flash, transport, z), z);

    /// <summary>All properties, an absent phase with those of the other.</summary>
    public StreamNode At(double h, double p)
    {
        if (_nodes.TryGetValue((h, p), out var known)) return known;
        if (_nodes.Count >= MostKept) _nodes.Clear();
        var node = _maker.Of(_flash.PressureEnthalpy(p, h, _z, _lastK));
        _kelvins[(h, p)] = _lastK = node.TemperatureK;
        if (node.Vapour is null || node.Liquid is null)
        {
            double[] v = node.Values;
            int from = node.Vapour is null ? StreamColumn.LiquidDensity : StreamColumn.VapourDensity, to = node.Vapour is null ? StreamColumn.VapourDensity : StreamColumn.LiquidDensity;
            for (int i = 0; i < 4; i++) v[to + i] = v[from + i];
            (v[StreamColumn.SurfaceTension], v[StreamColumn.PhaseEnthalpyDifference]) = (0, 0);
        }
        return _nodes[(h, p)] = node;
    }

    /// <summary>K.</summary>
    public double Temperature(double h, double p)
    {
        if (_kelvins.TryGetValue((h, p), out double known)) return known;
        if (_kelvins.Count >= MostKept) _kelvins.Clear();
        return _kelvins[(h, p)] = _lastK = _flash.PressureEnthalpy(p, h, _z, _lastK).TemperatureK;
    }

    /// <summary>dT/dh, K mol/J.</summary>
    public double Slope(double h, double p) => (Temperature(h + SlopeStep, p) - Temperature(h, p)) / SlopeStep;

    /// <summary>J/mol at a temperature in K.</summary>
    public double Enthalpy(double temperatureK, double p) => _flash.TemperaturePressure(temperatureK, p, _z).MolarEnthalpy;
}
