namespace Coldwright.Machine.Precooling;

/// <summary>
/// Common root of two functions of two variables near a guess, by Newton's method with Broyden's corrections. The Jacobian is kept for
/// the next question, which is often a neighbour. Meant where a slower search stands behind it: it gives up early. Not thread-safe.
/// </summary>
internal sealed class TwoRoots
{
    private const int MostSteps = 12;
    private const double MostStep = 0.3, Hopeful = 0.1, DifferenceStep = 1e-4, Stalled = 1e-10, Finest = 1e-13, Vanishing = 1e-8;

    private double _xx, _xy, _yx, _yy;
    private bool _known;

    /// <summary>Moves x and y to the root; false, and nothing moved, when that did not work at once. The functions were asked last where x and y then stand.</summary>
    /// <param name="f">Both functions, of order one; not a number where they have no value.</param>
    /// <param name="x">Guess, then root.</param>
    /// <param name="y">Guess, then root.</param>
    /// <param name="tolerance">On x.</param>
    /// <param name="weight">What a change of y weighs beside one of x, for the tolerance.</param>
    public bool Find(Func<double, double, (double F, double G)> f, ref double x, ref double y, double tolerance, double weight)
    {
        double a = x, b = y;
        var (u, v) = f(a, b);
        bool fresh = false;
        double last = double.PositiveInfinity, first = 0;
        for (int i = 0; i < MostSteps; i++)
        {
            double size = Math.Abs(u) + Math.Abs(v);
            if (i == 0) first = size;
            // where an edge lies in the way, the slower search is soon the quicker one
            if (!double.IsFinite(size) || i >= 3 && size > Hopeful * first) break;
            if (!_known || i > 0 && !fresh && size > 0.5 * last)
            {
                if (fresh) break;
                Difference(f, a, b, u, v);
                fresh = true;
            }
            double determinant = _xx * _yy - _xy * _yx;
            if (!double.IsFinite(1 / determinant)) break;
            double da = (_xy * v - _yy * u) / determinant, db = (_yx * u - _xx * v) / determinant, most = Math.Max(Math.Abs(da), Math.Abs(db));
            if (!double.IsFinite(most)) break;
            if (most > MostStep) (da, db) = (da * MostStep / most, db * MostStep / most);
            (a, b) = (a + da, b + db);
            var (nextU, nextV) = f(a, b);
            // a Jacobian learns from every step that is more than rounding
            double square = da * da + db * db, moved = Math.Max(Math.Abs(da), weight * Math.Abs(db)), eu = nextU - u - _xx * da - _xy * db, ev = nextV - v - _yx * da - _yy * db;
            if (moved > Stalled && double.IsFinite(eu) && double.IsFinite(ev))
                (_xx, _xy, _yx, _yy) = (_xx + eu * da / square, _xy + eu * db / square, _yx + ev * da / square, _yy + ev * db / square);
            double before = u;
            (last, u, v) = (size, nextU, nextV);
            // a Jacobian gone wrong makes small steps, too: what counts is that both functions vanish
            if (Math.Abs(nextU) + Math.Abs(nextV) <= Vanishing && (moved <= Math.Max(tolerance, Finest) || moved <= Stalled && Math.Abs(nextU) >= 0.3 * Math.Abs(before)))
            {
                (x, y) = (a, b);
                return true;
            }
        }
        _known = false;
        return false;
    }

    private void Difference(Func<double, double, (double F, double G)> f, double a, double b, double u, double v)
    {
        var (xu, xv) = f(a + DifferenceStep, b);
        var (yu, yv) = f(a, b + DifferenceStep);
        (_xx, _yx, _xy, _yy) = ((xu - u) / DifferenceStep, (xv - v) / DifferenceStep, (yu - u) / DifferenceStep, (yv - v) / DifferenceStep);
        _known = true;
    }
}
