using Coldwright.Numerics.Roots;

namespace Coldwright.Machine.Precooling;

/// <summary>Root of a rising function from a guess: steps outward until the sign changes, then Brent's method; or the end it does not reach.</summary>
internal static class RisingRoot
{
    // a good guess closes quickly, a bad one is left quickly
    private const double Growth = 6;

    /// <summary>The root, or the end of the range when the function has one sign on it.</summary>
    /// <param name="f">Rising (flat parts allowed away from the root).</param>
    /// <param name="guess">Where to start.</param>
    /// <param name="step">First step; grows.</param>
    /// <param name="low">Lower end.</param>
    /// <param name="high">Upper end.</param>
    /// <param name="tolerance">On the root.</param>
    /// <param name="side">0: found; -1: above zero at the lower end; +1: below zero at the upper end.</param>
    public static double Find(Func<double, double> f, double guess, double step, double low, double high, double tolerance, out int side)
    {
        side = 0;
        double a = Math.Clamp(guess, low, high), fa = f(a);
        bool up = fa < 0;
        while (fa != 0)
        {
            double b = up ? Math.Min(a + step, high) : Math.Max(a - step, low);
            if (b == a)
            {
                side = up ? 1 : -1;
                return a;
            }
            double fb = f(b);
            if (fb < 0 != up) return Brent.Solve(f, a, fa, b, fb, tolerance);
            (a, fa) = (b, fb);
            step *= Growth;
        }
        return a;
    }
}
