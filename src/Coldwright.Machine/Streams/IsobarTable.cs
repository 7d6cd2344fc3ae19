namespace Coldwright.Machine.Streams;

/// <summary>
/// Properties along one isobar against enthalpy: cubic pieces within a region of unchanging phases, straight lines across
/// the narrow gaps between regions. Slopes at the nodes come from the cubic through the four nearest nodes of the region;
/// that of the temperature is limited as by Fritsch and Carlson (SIAM J. Numer. Anal. 17 (1980) 238), so that temperature
/// never falls with enthalpy.
/// </summary>
internal sealed class IsobarTable
{
    private const int Columns = StreamColumn.Count;
    private readonly double[] _h, _value, _left, _right;
    // the temperature's own columns, close together: the inner loops ask for little else
    private readonly double[] _kelvin, _kelvinLeft, _kelvinRight;

    public double PressurePa { get; }
    /// <summary>First node of every region or gap, rising, and the last node.</summary>
    public int[] Starts { get; }
    /// <summary>Phases of every region or gap.</summary>
    public string[] Names { get; }
    public int NodeCount => _h.Length;
    /// <summary>What it is made of, rising, absent phases filled.</summary>
    public IReadOnlyList<StreamNode> Nodes { get; }
    /// <summary>Mole fractions of the phases; null in a table of constant properties.</summary>
    public PhaseCompositions? Compositions { get; }
    public ReadOnlySpan<double> Enthalpies => _h;
    public double Temperature(int node) => _value[node * Columns];

    /// <param name="pressurePa">Pa.</param>
    /// <param name="nodes">Rising in temperature and enthalpy, absent phases filled.</param>
    public IsobarTable(double pressurePa, IReadOnlyList<StreamNode> nodes)
    {
        PressurePa = pressurePa;
        int n = nodes.Count;
        Nodes = nodes;
        if (nodes.All(node => node.Vapour is not null || node.Liquid is not null)) Compositions = new PhaseCompositions(nodes);
        (_h, _value, _left, _right) = (new double[n], new double[n * Columns], new double[n * Columns], new double[n * Columns]);
        for (int i = 0; i < n; i++)
        {
            _h[i] = nodes[i].MolarEnthalpy;
            if (i > 0 && !(_h[i] > _h[i - 1])) throw new ArgumentException($"enthalpies must rise: node {i} is {_h[i]} J/mol after {_h[i - 1]}");
            nodes[i].Values.CopyTo(_value, i * Columns);
        }
        var starts = new List<int>();
        var names = new List<string>();
        for (int i = 0; i < n;)
        {
            int last = i;
            while (last + 1 < n && nodes[last + 1].Phases == nodes[i].Phases) last++;
            if (last > i)
            {
                starts.Add(i);
                names.Add(nodes[i].Phases);
                Slopes(i, last);
            }
            if (last + 1 < n)
            {
                starts.Add(last);
                names.Add(GapName(nodes[last], nodes[last + 1]));
                Straight(last, last + 1);
            }
            i = last + 1;
        }
        starts.Add(n - 1);
        (Starts, Names) = (starts.ToArray(), names.ToArray());
        (_kelvin, _kelvinLeft, _kelvinRight) = (Column(_value), Column(_left), Column(_right));
    }

    // of the same regions, its values its own
    private IsobarTable(IsobarTable like)
    {
        (PressurePa, Starts, Names, Nodes) = (like.PressurePa, like.Starts, like.Names, like.Nodes);
        (_h, _value, _left, _right) = ([.. like._h], [.. like._value], [.. like._left], [.. like._right]);
        (_kelvin, _kelvinLeft, _kelvinRight) = ([.. like._kelvin], [.. like._kelvinLeft], [.. like._kelvinRight]);
        Compositions = like.Compositions?.Like(_h);
    }

    /// <summary>A copy whose values may be overwritten by <see cref="Settle"/>.</summary>
    public IsobarTable Like() => new(this);

    /// <summary>Everything that hangs on the composition: enthalpies, columns, their slopes on both sides, mole fractions of the phases.</summary>
    public double[][] Values => [_h, _value, _left, _right, Compositions!.Vapour, Compositions.Liquid];

    /// <summary>
    /// After the values of a copy were overwritten: enthalpy and temperature rise again, the temperature's slopes are within their limit. Returns how far a node had to be
    /// pushed at most, K: nodes keep their places between changes of phases, so that this is how far one such change was moved past the next.
    /// </summary>
    /// <param name="leastEnthalpy">Between two nodes, J/mol.</param>
    /// <param name="leastK">Between two nodes, K.</param>
    public double Settle(double leastEnthalpy, double leastK)
    {
        double pushedK = 0, pushed = 0;
        for (int i = 0; i < _h.Length; i++)
        {
            int at = i * Columns;
            if (i > 0)
            {
                (pushed, pushedK) = (Math.Max(pushed, _h[i - 1] + leastEnthalpy - _h[i]), Math.Max(pushedK, _kelvin[i - 1] + leastK - _value[at]));
                _h[i] = Math.Max(_h[i], _h[i - 1] + leastEnthalpy);
                _value[at] = Math.Max(_value[at], _kelvin[i - 1] + leastK);
            }
            _kelvin[i] = _value[at];
        }
        for (int i = 0; i + 1 < _h.Length; i++)
        {
            double most = 3 * (_kelvin[i + 1] - _kelvin[i]) / (_h[i + 1] - _h[i]);
            _kelvinRight[i] = _right[i * Columns] = Math.Clamp(_right[i * Columns], 0, most);
            _kelvinLeft[i + 1] = _left[(i + 1) * Columns] = Math.Clamp(_left[(i + 1) * Columns], 0, most);
        }
        return Math.Max(pushedK, pushed * (_kelvin[^1] - _kelvin[0]) / (_h[^1] - _h[0]));
    }

    private static double[] Column(double[] table) => [.. Enumerable.Range(0, table.Length / Columns).Select(i => table[i * Columns + StreamColumn.Temperature])];

    // what lies between saturated liquid and saturated vapour of a pure fluid is both
    private static string GapName(StreamNode cold, StreamNode warm) =>
        cold.BoilsInto(warm) ? "vapour+liquid" : warm.Fractions.Length > cold.Fractions.Length ? warm.Phases : cold.Phases;

    private void Straight(int a, int b)
    {
        for (int c = 0; c < Columns; c++)
            _right[a * Columns + c] = _left[b * Columns + c] = Secant(a, b, c);
    }

    private double Secant(int a, int b, int c) => (_value[b * Columns + c] - _value[a * Columns + c]) / (_h[b] - _h[a]);

    private void Slopes(int first, int last)
    {
        for (int i = first; i <= last; i++)
        {
            int from = Math.Clamp(i - 2, first, Math.Max(first, last - 4)), to = Math.Min(from + 4, last);
            for (int c = 0; c < Columns; c++)
            {
                double slope = Cubic.Slope(_h, _value, c, Columns, from, to, i);
                if (c == StreamColumn.Temperature)
                {
                    double least = double.PositiveInfinity;
                    if (i > first) least = Secant(i - 1, i, c);
                    if (i < last) least = Math.Min(least, Secant(i, i + 1, c));
                    slope = Math.Clamp(slope, 0, 3 * least);
                }
                // a cubic piece between positive values is positive while its slopes do not fall faster than these
                bool positive = c is >= StreamColumn.SpecificVolume and < StreamColumn.SurfaceTension;
                double value = 3 * _value[i * Columns + c];
                if (i > first) _left[i * Columns + c] = positive ? Math.Min(slope, value / (_h[i] - _h[i - 1])) : slope;
                if (i < last) _right[i * Columns + c] = positive ? Math.Max(slope, -value / (_h[i + 1] - _h[i])) : slope;
            }
        }
    }

    /// <summary>Region or gap that holds an enthalpy.</summary>
    public int RegionOf(double h)
    {
        int low = 0, high = Names.Length;
        while (high - low > 1)
        {
            int middle = (low + high) >> 1;
            if (_h[Starts[middle]] <= h) low = middle; else high = middle;
        }
        return low;
    }

    /// <summary>Phases at an enthalpy (J/mol) and how far, J/mol, from the next change of phases or end of the table, below 0 beyond it.</summary>
    public (string Phases, double Border) Inside(double h)
    {
        int region = RegionOf(h);
        return (Names[region], Math.Min(h - StartOf(region), StartOf(region + 1) - h));
    }

    /// <summary>The node at or below an enthalpy and the share of the way to the next; held within the table.</summary>
    public IsobarPlace Locate(double h)
    {
        int low = 0, high = _h.Length - 1;
        while (high - low > 1)
        {
            int middle = (low + high) >> 1;
            if (_h[middle] <= h) low = middle; else high = middle;
        }
        return new(low, Math.Clamp((h - _h[low]) / (_h[high] - _h[low]), 0, 1));
    }

    /// <summary>Enthalpy at a place, J/mol.</summary>
    public double EnthalpyAt(int node, double share) => _h[node] + share * (_h[node + 1] - _h[node]);

    /// <summary>Temperature (K) and its slope dT/dh at an enthalpy that lies at a place; beyond the table along the last slope, as <see cref="Add"/> has it.</summary>
    public double Temperature(IsobarPlace place, double h, out double slope)
    {
        int a = place.Node, b = a + 1;
        double t = place.Share, u = 1 - t, width = _h[b] - _h[a], rise = _kelvin[b] - _kelvin[a], right = _kelvinRight[a], left = _kelvinLeft[b];
        double value = u * u * (1 + 2 * t) * _kelvin[a] + t * t * (3 - 2 * t) * _kelvin[b] + t * u * width * (u * right - t * left);
        slope = 6 * t * u * rise / width + u * (u - 2 * t) * right + t * (t - 2 * u) * left;
        if (h >= _h[0] && h <= _h[^1]) return value;
        slope = Math.Max(slope, rise / width);
        return value + slope * (h - Math.Clamp(h, _h[0], _h[^1]));
    }

    /// <summary>Puts the value of the node nearest to an enthalpy (J/mol) where a column that can only be positive is not: far beyond the table's pressures or composition.</summary>
    public void Mend(double h, Span<double> values)
    {
        for (int c = StreamColumn.SpecificVolume; c < StreamColumn.SurfaceTension; c++)
        {
            if (values[c] > 0) continue;
            var place = Locate(h);
            values[c] = _value[(place.Share < 0.5 ? place.Node : place.Node + 1) * Columns + c];
        }
    }

    /// <summary>Temperature (K) where vapour first appears above liquid; null where it does not.</summary>
    public double? BoilingK
    {
        get
        {
            int first = Array.FindIndex(Names, n => n.Contains("vapour", StringComparison.Ordinal));
            return first > 0 ? _kelvin[Starts[first]] : null;
        }
    }

    /// <summary>Enthalpy where a region starts; the end of the table for the number of regions.</summary>
    public double StartOf(int region) => _h[Starts[region]];

    /// <summary>Adds weight times all columns, and weight times the slopes dT/dh to <paramref name="slope"/>. Beyond the table: the last slope of the temperature, the last values of the rest.</summary>
    /// <param name="region">Region or gap.</param>
    /// <param name="h">J/mol.</param>
    /// <param name="weight">Of this isobar.</param>
    /// <param name="values">Sums.</param>
    /// <param name="slope">Sum, K mol/J.</param>
    /// <param name="pressureRatio">This isobar's pressure over the one asked for: volumes of all and densities of vapour go over with it, as in a perfect gas.</param>
    public void Add(int region, double h, double weight, Span<double> values, ref double slope, double pressureRatio = 1)
    {
        int low = Starts[region], high = Starts[region + 1];
        while (high - low > 1)
        {
            int middle = (low + high) >> 1;
            if (_h[middle] <= h) low = middle; else high = middle;
        }
        double held = Math.Clamp(h, _h[0], _h[^1]), width = _h[high] - _h[low], t = (held - _h[low]) / width, u = 1 - t;
        int a = low * Columns, b = high * Columns;
        double wa = u * u * (1 + 2 * t), wb = t * t * (3 - 2 * t), sa = u * u * t * width, sb = -t * t * u * width;
        for (int c = 0; c < Columns; c++)
            values[c] += Weight(c, weight, pressureRatio) * (wa * _value[a + c] + wb * _value[b + c] + sa * _right[a + c] + sb * _left[b + c]);
        static double Weight(int c, double w, double ratio) => c switch
        {
            StreamColumn.SpecificVolume => w * ratio,
            StreamColumn.VapourDensity => w / ratio,
            _ => w,
        };
        double d = 6 * t * u * (_value[b] - _value[a]) / width + u * (u - 2 * t) * _right[a] + t * (t - 2 * u) * _left[b];
        // a table may end where its slope is limited to nought: beyond it temperature must go on
        if (h != held) d = Math.Max(d, (_value[b] - _value[a]) / width);
        values[0] += weight * d * (h - held);
        slope += weight * d;
    }
}
