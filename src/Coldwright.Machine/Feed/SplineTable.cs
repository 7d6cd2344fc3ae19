namespace Coldwright.Machine.Feed;

/// <summary>Several functions on one evenly spaced grid, as cubic splines: value, slope and curvature continuous; end slopes from the cubic through the four end nodes.</summary>
internal sealed class SplineTable
{
    private readonly double _start, _step;
    private readonly int _nodes, _columns;
    private readonly double[] _values, _slopes;

    /// <param name="start">First abscissa.</param>
    /// <param name="step">Distance of the nodes, above 0.</param>
    /// <param name="rows">Values of all functions at each node, four nodes or more.</param>
    public SplineTable(double start, double step, IReadOnlyList<double[]> rows)
    {
        (_start, _step, _nodes, _columns) = (start, step, rows.Count, rows[0].Length);
        (_values, _slopes) = (new double[_nodes * _columns], new double[_nodes * _columns]);
        for (int i = 0; i < _nodes; i++) rows[i].CopyTo(_values, i * _columns);
        for (int c = 0; c < _columns; c++) Slopes(c);
    }

    public double End => _start + (_nodes - 1) * _step;

    /// <summary>All functions at an abscissa; the end cubics are followed a little beyond the grid.</summary>
    public void At(double x, Span<double> result)
    {
        double place = (x - _start) / _step;
        int i = Math.Clamp((int)place, 0, _nodes - 2);
        double t = place - i, u = 1 - t, a = u * u * (1 + 2 * t), b = t * t * (3 - 2 * t), p = u * u * t, q = -t * t * u;
        int left = i * _columns, right = left + _columns;
        for (int c = 0; c < _columns; c++) result[c] = a * _values[left + c] + b * _values[right + c] + p * _slopes[left + c] + q * _slopes[right + c];
    }

    // slopes times the step: s[i-1] + 4 s[i] + s[i+1] = 3 (y[i+1] - y[i-1])
    private void Slopes(int c)
    {
        int n = _nodes;
        double Y(int i) => _values[i * _columns + c];
        double[] diagonal = new double[n], right = new double[n];
        (diagonal[0], right[0]) = (1, (-11 * Y(0) + 18 * Y(1) - 9 * Y(2) + 2 * Y(3)) / 6);
        for (int i = 1; i < n - 1; i++)
        {
            double factor = (i == 1 ? 0 : 1) / diagonal[i - 1];
            diagonal[i] = 4 - factor;
            right[i] = 3 * (Y(i + 1) - Y(i - 1)) - (i == 1 ? right[0] : factor * right[i - 1]);
        }
        double next = (11 * Y(n - 1) - 18 * Y(n - 2) + 9 * Y(n - 3) - 2 * Y(n - 4)) / 6;
        _slopes[(n - 1) * _columns + c] = next;
        for (int i = n - 2; i >= 1; i--) _slopes[i * _columns + c] = next = (right[i] - next) / diagonal[i];
        _slopes[c] = right[0];
    }
}
