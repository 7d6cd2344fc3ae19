using Coldwright.Numerics.Roots;

namespace Coldwright.Machine.Precooling;

/// <summary>
/// Root of a rising function near a guess: secant steps from the slope of the last question until it is bracketed or found, then Brent's method.
/// Meant where a slower search stands behind it: it gives up early. Not thread-safe.
/// </summary>
internal sealed class OneRoot
{
    private const int MostSteps = 8;
    private const double MostStep = 0.3, DifferenceStep = 1e-4;
    private double _slope = double.NaN;

    /// <summary>Moves x to the root; false, and nothing moved, when that did not work at once.</summary>
    /// <param name="f">Not a number where it has no value.</param>
    /// <param name="x">Guess, then root; the function was asked last there.</param>
    /// <param name="tolerance">On x.</param>
    /// <param name="bracketed">True when values of both signs lie that near to it; false: the steps only became as small.</param>
    public bool Find(Func<double, double> f, ref double x, double tolerance, out bool bracketed)
    {
        bracketed = false;
        double guess = x, a = x, fa = f(a);
        if (!(_slope > 0)) _slope = (f(a + DifferenceStep) - fa) / DifferenceStep;
        for (int i = 0; i < MostSteps && double.IsFinite(fa) && _slope > 0; i++)
        {
            double b = a - Math.Clamp(fa / _slope, -MostStep, MostStep), fb = f(b);
            if (Math.Abs(b - a) <= tolerance && double.IsFinite(fb))
            {
                x = b;
                return true;
            }
            _slope = (fb - fa) / (b - a);
            if (fa > 0 != fb > 0 && _slope > 0)
            {
                x = Brent.Solve(f, a, fa, b, fb, tolerance);
                if (double.IsFinite(f(x))) return bracketed = true;
                break;
            }
            (a, fa) = (b, fb);
        }
        (x, _slope) = (guess, double.NaN);
        return false;
    }
}
