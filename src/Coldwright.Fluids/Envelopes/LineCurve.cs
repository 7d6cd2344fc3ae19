namespace Coldwright.Fluids.Envelopes;

/// <summary>Reads a traced line between its points: cubic through four neighbours over the length of the chord.</summary>
internal static class LineCurve
{
    /// <summary>Temperatures (K) at which the line passes a pressure (Pa).</summary>
    public static IEnumerable<double> TemperaturesAt(IReadOnlyList<BoundaryPoint> points, double pressurePa)
    {
        for (int i = 1; i < points.Count; i++)
        {
            double below = points[i - 1].PressurePa - pressurePa, above = points[i].PressurePa - pressurePa;
            // a point exactly on the pressure counts once
            if (below > 0 == above > 0) continue;
            yield return Read(points, i, lnP: Math.Log(pressurePa)).TemperatureK;
        }
    }

    /// <summary>The extreme of a value along the line: from the parabola through the best point and its neighbours.</summary>
    /// <param name="points">The line.</param>
    /// <param name="value">What is to be largest.</param>
    public static BoundaryPoint Highest(IReadOnlyList<BoundaryPoint> points, Func<BoundaryPoint, double> value)
    {
        int best = 0;
        for (int i = 1; i < points.Count; i++) if (value(points[i]) > value(points[best])) best = i;
        if (best == 0 || best == points.Count - 1) return points[best];
        BoundaryPoint a = points[best - 1], b = points[best], c = points[best + 1];
        double h = Chord(a, b), k = Chord(b, c), up = (value(b) - value(a)) / h, down = (value(c) - value(b)) / k;
        double curvature = 2 * (down - up) / (h + k), slope = (up * k + down * h) / (h + k);
        if (!(curvature < 0)) return b;
        double s = Math.Clamp(-slope / curvature, -h, k);
        double Along(double va, double vb, double vc)
        {
            double u = (vb - va) / h, d = (vc - vb) / k;
            return vb + s * ((u * k + d * h) / (h + k) + s * (d - u) / (h + k));
        }
        return new BoundaryPoint(Along(a.TemperatureK, b.TemperatureK, c.TemperatureK), Math.Exp(Along(Math.Log(a.PressurePa), Math.Log(b.PressurePa), Math.Log(c.PressurePa))));
    }

    private static BoundaryPoint Read(IReadOnlyList<BoundaryPoint> points, int i, double lnP)
    {
        int first = Math.Clamp(i - 2, 0, Math.Max(points.Count - 4, 0)), count = Math.Min(4, points.Count - first);
        Span<double> s = stackalloc double[4];
        for (int k = 1; k < count; k++) s[k] = s[k - 1] + Chord(points[first + k - 1], points[first + k]);
        double low = s[i - 1 - first], high = s[i - first];
        double pLow = Math.Log(points[i - 1].PressurePa) - lnP, fallback = low + (high - low) * pLow / (pLow - (Math.Log(points[i].PressurePa) - lnP));
        // next to a corner the cubic overshoots: the chord is read instead
        bool rising = pLow < 0;
        for (int step = 0; step < 60; step++)
        {
            double middle = 0.5 * (low + high), p = Lagrange(points, first, count, s, middle, LnP) - lnP;
            if (p < 0 == rising) low = middle; else high = middle;
        }
        double at = 0.5 * (low + high), t = Lagrange(points, first, count, s, at, q => q.TemperatureK);
        double share = (fallback - s[i - 1 - first]) / Math.Max(s[i - first] - s[i - 1 - first], 1e-300);
        double chord = points[i - 1].TemperatureK + share * (points[i].TemperatureK - points[i - 1].TemperatureK);
        double reach = 0.25 * Math.Abs(points[i].TemperatureK - points[i - 1].TemperatureK) + 0.05;
        return new BoundaryPoint(Math.Abs(t - chord) < reach ? t : chord, Math.Exp(lnP));
    }

    private static double LnP(BoundaryPoint p) => Math.Log(p.PressurePa);

    // a length in which both coordinates count alike: 40 K weigh as much as a factor e in pressure
    private static double Chord(BoundaryPoint a, BoundaryPoint b)
    {
        double dt = (b.TemperatureK - a.TemperatureK) / 40, dp = LnP(b) - LnP(a);
        return Math.Max(Math.Sqrt(dt * dt + dp * dp), 1e-12);
    }

    private static double Lagrange(IReadOnlyList<BoundaryPoint> points, int first, int count, ReadOnlySpan<double> s, double at, Func<BoundaryPoint, double> value)
    {
        double sum = 0;
        for (int j = 0; j < count; j++)
        {
            double weight = value(points[first + j]);
            for (int k = 0; k < count; k++) if (k != j) weight *= (at - s[k]) / (s[j] - s[k]);
            sum += weight;
        }
        return sum;
    }
}
