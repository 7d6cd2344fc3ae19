namespace Coldwright.Machine.Streams;

/// <summary>
/// Two neighbouring isobars and how their enthalpies answer to each other: at both ends, and at every change of phases that both
/// have in the same order counted from the warm end or from the cold one. Between two such places enthalpy goes over in proportion.
/// </summary>
internal sealed class IsobarPair
{
    private readonly IsobarTable _a, _b;
    private readonly double[] _ha, _hb;
    private readonly int[] _startsA, _startsB;

    /// <param name="lower">Isobar of the lower pressure.</param>
    /// <param name="upper">Isobar of the higher pressure.</param>
    public IsobarPair(IsobarTable lower, IsobarTable upper)
    {
        (_a, _b) = (lower, upper);
        string[] a = lower.Names, b = upper.Names;
        int shorter = Math.Min(a.Length, b.Length), warm = 0, cold = 0;
        while (warm < shorter && a[^(warm + 1)] == b[^(warm + 1)]) warm++;
        while (cold < shorter - warm && a[cold] == b[cold]) cold++;
        var places = new List<(double A, double B)> { (lower.StartOf(0), upper.StartOf(0)) };
        for (int i = 1; i <= cold; i++) places.Add((lower.StartOf(i), upper.StartOf(i)));
        // with all alike the first of these is the cold end again
        for (int i = warm; i > 0; i--)
            if (a.Length - i > cold) places.Add((lower.StartOf(a.Length - i), upper.StartOf(b.Length - i)));
        places.Add((lower.StartOf(a.Length), upper.StartOf(b.Length)));
        // a region that only one of the two has leaves two places of the other upon each other: keep the first
        for (int i = places.Count - 1; i > 0; i--)
            if (!(places[i].A > places[i - 1].A) || !(places[i].B > places[i - 1].B)) places.RemoveAt(i == places.Count - 1 ? i - 1 : i);
        _ha = [.. places.Select(p => p.A)];
        _hb = [.. places.Select(p => p.B)];
        (_startsA, _startsB) = (Regions(lower, _ha), Regions(upper, _hb));
    }

    private static int[] Regions(IsobarTable isobar, double[] enthalpies) => [.. enthalpies.Select(h => Enumerable.Range(0, isobar.Names.Length + 1).First(i => isobar.StartOf(i) == h))];

    /// <summary>Takes the enthalpies anew after the isobars' values were overwritten.</summary>
    public void Settle()
    {
        for (int i = 0; i < _ha.Length; i++) (_ha[i], _hb[i]) = (_a.StartOf(_startsA[i]), _b.StartOf(_startsB[i]));
    }

    private double Start(int i, double w) => (1 - w) * _ha[i] + w * _hb[i];

    /// <summary>Lowest and highest enthalpy, J/mol, at a weight of the upper isobar.</summary>
    public (double Lowest, double Highest) Range(double w) => (Start(0, w), Start(_ha.Length - 1, w));

    /// <summary>Mole fractions of the phases at an enthalpy (J/mol) and a weight of the upper isobar, along the same relative places.</summary>
    public void Compositions(double h, double w, Span<double> vapour, Span<double> liquid)
    {
        int low = 0, high = _ha.Length - 1;
        while (high - low > 1)
        {
            int middle = (low + high) >> 1;
            if (Start(middle, w) <= h) low = middle; else high = middle;
        }
        double start = Start(low, w), place = (h - start) / (Start(low + 1, w) - start);
        // a weight beyond the two isobars would make a fraction negative
        double upper = Math.Clamp(w, 0, 1);
        _a.Compositions!.Add(_ha[low] + place * (_ha[low + 1] - _ha[low]), 1 - upper, vapour, liquid);
        _b.Compositions!.Add(_hb[low] + place * (_hb[low + 1] - _hb[low]), upper, vapour, liquid);
    }

    /// <summary>Phases at an enthalpy (J/mol) and a weight of the upper isobar and how far, J/mol, from the next change of phases on either; null and 0 where the two do not agree.</summary>
    public (string? Phases, double Border) Inside(double h, double w)
    {
        var place = Ends(h, w);
        var (a, borderA) = _a.Inside(place.A);
        var (b, borderB) = _b.Inside(place.B);
        return a == b ? (a, Math.Min(borderA, borderB)) : (null, 0);
    }

    // enthalpies of the two isobars that answer to one between them
    private (double A, double B) Ends(double h, double w)
    {
        int low = 0, high = _ha.Length - 1;
        while (high - low > 1)
        {
            int middle = (low + high) >> 1;
            if (Start(middle, w) <= h) low = middle; else high = middle;
        }
        double start = Start(low, w), share = (h - start) / (Start(low + 1, w) - start);
        return (_ha[low] + share * (_ha[low + 1] - _ha[low]), _hb[low] + share * (_hb[low + 1] - _hb[low]));
    }

    /// <summary>Where both isobars answer to an enthalpy (J/mol) at a weight of the upper one, and the temperature there.</summary>
    public StreamPlace Locate(int index, double h, double w)
    {
        int low = 0, high = _ha.Length - 1;
        while (high - low > 1)
        {
            int middle = (low + high) >> 1;
            if (Start(middle, w) <= h) low = middle; else high = middle;
        }
        double start = Start(low, w), width = Start(low + 1, w) - start, share = (h - start) / width, widthA = _ha[low + 1] - _ha[low], widthB = _hb[low + 1] - _hb[low];
        double ha = _ha[low] + share * widthA, hb = _hb[low] + share * widthB;
        IsobarPlace a = _a.Locate(ha), b = _b.Locate(hb);
        double ta = _a.Temperature(a, ha, out double sa), tb = _b.Temperature(b, hb, out double sb);
        return new(index, w, a, b, (1 - w) * ta + w * tb, ((1 - w) * sa * widthA + w * sb * widthB) / width);
    }

    /// <summary>All columns, the slope dT/dh (K mol/J) and the phases at an enthalpy (J/mol), a pressure (Pa) and its weight.</summary>
    public string Evaluate(double h, double p, double w, Span<double> v, ref double slope, out bool outside)
    {
        int low = 0, high = _ha.Length - 1;
        while (high - low > 1)
        {
            int middle = (low + high) >> 1;
            if (Start(middle, w) <= h) low = middle; else high = middle;
        }
        double start = Start(low, w), width = Start(low + 1, w) - start, place = (h - start) / width;
        outside = place < 0 || place > 1;
        double widthA = _ha[low + 1] - _ha[low], widthB = _hb[low + 1] - _hb[low], slopeA = 0, slopeB = 0;
        double ha = _ha[low] + place * widthA, hb = _hb[low] + place * widthB;
        int ra = _a.RegionOf(ha), rb = _b.RegionOf(hb);
        _a.Add(ra, ha, 1 - w, v, ref slopeA, _a.PressurePa / p);
        _b.Add(rb, hb, w, v, ref slopeB, _b.PressurePa / p);
        slope += (slopeA * widthA + slopeB * widthB) / width;
        return w < 0.5 ? _a.Names[ra] : _b.Names[rb];
    }
}
