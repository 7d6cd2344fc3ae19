namespace Coldwright.Fluids.PhaseEquilibrium;

/// <summary>
/// The ways that the starts of one certificate took, each with what it ended in. Where a substitution leads depends on the composition and the
/// density alone, so that a start that comes upon the way of another ends where that one did.
/// </summary>
internal sealed class StartPaths(int count)
{
    /// <summary>False: every start goes to its own end, for the tests that compare.</summary>
    public bool InUse { get; set; } = true;

    /// <summary>Steps of substitution that starts took so far, the last of each left out; for the tests that count.</summary>
    public int Steps { get; private set; }

    // squared distance in square roots of mole fractions, and relative difference of the density, at which a way is met
    private const double Met = 2e-5, SameDensity = 0.02;
    private const int Capacity = 192;

    private readonly double[] _roots = new double[Capacity * count], _density = new double[Capacity], _ends = new double[Capacity];
    // true where a way begins: no line leads there from the point before
    private readonly bool[] _first = new bool[Capacity];
    private int _kept, _points;

    /// <summary>A certificate begins.</summary>
    public void Clear() => _kept = _points = 0;

    /// <summary>A start begins; what one before it left without an end is forgotten.</summary>
    public void Begin() => _points = _kept;

    /// <summary>The start ended: its way is kept with the tangent-plane distance it found, 0 in a known phase.</summary>
    public void End(double distance)
    {
        for (int k = _kept; k < _points; k++) _ends[k] = distance;
        _kept = _points;
    }

    /// <summary>Adds the composition of a start on its way. True when it lies on the way of an earlier one, whose end is given.</summary>
    public bool Meets(PhaseBuffer trial, out double end)
    {
        end = 0;
        Steps++;
        if (_points == Capacity || !InUse) return false;
        Span<double> here = _roots.AsSpan(_points * count, count);
        for (int i = 0; i < count; i++) here[i] = Math.Sqrt(trial.X[i]);
        bool first = _points == _kept;
        (_density[_points], _first[_points]) = (trial.Density, first);
        if (!first)
            for (int k = 1; k < _kept; k++)
            {
                if (_first[k] || !Near(here, trial.Density, k)) continue;
                end = _ends[k];
                return true;
            }
        _points++;
        return false;
    }

    // to the line between the points k - 1 and k
    private bool Near(ReadOnlySpan<double> here, double density, int k)
    {
        ReadOnlySpan<double> a = _roots.AsSpan((k - 1) * count, count), b = _roots.AsSpan(k * count, count);
        double along = 0, length = 0, off = 0;
        for (int i = 0; i < here.Length; i++)
        {
            double ab = b[i] - a[i], ah = here[i] - a[i];
            along += ab * ah;
            length += ab * ab;
            off += ah * ah;
        }
        double share = length > 0 ? Math.Clamp(along / length, 0, 1) : 0;
        if (!(off - 2 * share * along + share * share * length < Met)) return false;
        return Math.Abs(_density[k - 1] + share * (_density[k] - _density[k - 1]) - density) < SameDensity * density;
    }
}
