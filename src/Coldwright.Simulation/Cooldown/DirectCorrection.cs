using System.Runtime.InteropServices;

namespace Coldwright.Simulation.Cooldown;

/// <summary>
/// What flashes of the model make of the slopes, of the loop's balances and of what the machine does over the tables, against time within one piece of a run: known at
/// moments, between them cubics whose slopes never overshoot. Not thread-safe.
/// </summary>
internal sealed class DirectCorrection
{
    private static readonly int PointSize = MemoryMarshal.Cast<PlantPoint, double>(new PlantPoint[1]).Length;

    private readonly PlantLayout _layout;
    private readonly int _rows;
    private readonly double[] _timesS, _sum, _ledger;
    private readonly double[][] _values, _slopes;
    private double _atS = double.NaN;

    /// <param name="plant">The machine.</param>
    /// <param name="factors">Of <see cref="PlantParameters"/>.</param>
    /// <param name="timesS">Moments, rising, s.</param>
    /// <param name="values">What is to be added at each: slopes and balances, then <see cref="PlantPoint"/>.</param>
    public DirectCorrection(Plant plant, double[] factors, double[] timesS, double[][] values)
    {
        (_layout, _rows, _timesS, _values) = (plant.Layout, plant.Layout.Count, timesS, values);
        (_sum, _ledger) = (new double[_rows + PointSize], [.. Enumerable.Range(0, _layout.High).Select(i => plant.CapacityOf(i, factors) / PlantLayout.LedgerJ)]);
        _slopes = [.. values.Select((_, k) => Slopes(k))];
    }

    /// <summary>What one moment adds.</summary>
    public static double[] Of(ReadOnlySpan<double> slopes, in PlantPoint at, ReadOnlySpan<double> tableSlopes, in PlantPoint tableAt)
    {
        double[] v = new double[slopes.Length + PointSize];
        for (int i = 0; i < slopes.Length; i++) v[i] = slopes[i] - tableSlopes[i];
        PlantPoint[] both = [at, tableAt];
        var of = MemoryMarshal.Cast<PlantPoint, double>(both);
        for (int i = 0; i < PointSize; i++) v[slopes.Length + i] = of[i] - of[PointSize + i];
        return v;
    }

    /// <summary>What is added at a time, s.</summary>
    public ReadOnlySpan<double> At(double timeS)
    {
        if (timeS == _atS) return _sum;
        _atS = timeS;
        int k = Array.BinarySearch(_timesS, timeS);
        k = Math.Clamp(k < 0 ? ~k - 1 : k, 0, Math.Max(0, _timesS.Length - 2));
        if (_timesS.Length == 1)
        {
            _values[0].CopyTo(_sum, 0);
            return _sum;
        }
        double width = _timesS[k + 1] - _timesS[k], t = Math.Clamp((timeS - _timesS[k]) / width, 0, 1), u = 1 - t;
        double wa = u * u * (1 + 2 * t), wb = t * t * (3 - 2 * t), sa = u * u * t * width, sb = -t * t * u * width;
        double[] a = _values[k], b = _values[k + 1], left = _slopes[k], right = _slopes[k + 1];
        for (int i = 0; i < _sum.Length; i++) _sum[i] = wa * a[i] + wb * b[i] + sa * left[i] + sb * right[i];
        return _sum;
    }

    /// <summary>Adds to slopes and balances.</summary>
    public void Add(double timeS, Span<double> slopes)
    {
        var sum = At(timeS);
        for (int i = 0; i < _rows; i++) slopes[i] += sum[i];
        // energy closes between the moments too, where cubics of single rows would not add up
        double cooled = sum[_layout.Leaked] - sum[_layout.Cooled];
        for (int i = 0; i < _layout.High; i++) cooled -= _ledger[i] * sum[i];
        slopes[_layout.Cooled] += cooled;
    }

    /// <summary>What the machine does.</summary>
    public PlantPoint Mended(double timeS, PlantPoint at)
    {
        Span<PlantPoint> one = [at];
        var of = MemoryMarshal.Cast<PlantPoint, double>(one);
        var sum = At(timeS)[_rows..];
        for (int i = 0; i < of.Length; i++) of[i] += sum[i];
        return one[0];
    }

    // at a moment, by its neighbours: the weighted harmonic mean (Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300)
    private double[] Slopes(int k)
    {
        double[] slopes = new double[_values[k].Length];
        if (_timesS.Length < 2) return slopes;
        for (int i = 0; i < slopes.Length; i++)
        {
            double Secant(int from) => (_values[from + 1][i] - _values[from][i]) / (_timesS[from + 1] - _timesS[from]);
            if (k == 0 || k == _timesS.Length - 1)
            {
                slopes[i] = Secant(Math.Min(k, _timesS.Length - 2));
                continue;
            }
            double before = Secant(k - 1), after = Secant(k), a = _timesS[k] - _timesS[k - 1], b = _timesS[k + 1] - _timesS[k];
            if (before * after > 0) slopes[i] = 3 * (a + b) / ((2 * b + a) / before + (b + 2 * a) / after);
        }
        return slopes;
    }
}
