namespace Coldwright.Numerics.Roots;

/// <summary>Bracketed scalar root finding (Brent, Algorithms for Minimization without Derivatives, 1973, ch. 4).</summary>
public static class Brent
{
    /// <summary>
    /// Root of <paramref name="f"/> between <paramref name="a"/> and <paramref name="b"/>, whose values must differ in sign.
    /// </summary>
    /// <param name="f">Function.</param>
    /// <param name="a">One end.</param>
    /// <param name="b">Other end.</param>
    /// <param name="tolerance">Absolute tolerance on the root.</param>
    /// <param name="maximumIterations">Limit of evaluations.</param>
    /// <exception cref="ArgumentException">Both ends have one sign.</exception>
    public static double Solve(Func<double, double> f, double a, double b, double tolerance, int maximumIterations = 200)
        => Solve(f, a, f(a), b, f(b), tolerance, maximumIterations);

    /// <summary>As above, with the end values already known.</summary>
    public static double Solve(Func<double, double> f, double a, double fa, double b, double fb, double tolerance, int maximumIterations = 200)
    {
        if (fa == 0) return a;
        if (fb == 0) return b;
        if (!(fa < 0 != fb < 0)) throw new ArgumentException($"no sign change between {a} (value {fa}) and {b} (value {fb})");
        double c = a, fc = fa, d = b - a, e = d;
        for (int i = 0; i < maximumIterations; i++)
        {
            if (Math.Abs(fc) < Math.Abs(fb)) { a = b; b = c; c = a; fa = fb; fb = fc; fc = fa; }
            double tol = 2 * double.Epsilon + 2e-16 * Math.Abs(b) + 0.5 * tolerance;
            double m = 0.5 * (c - b);
            if (Math.Abs(m) <= tol || fb == 0) return b;
            if (Math.Abs(e) < tol || Math.Abs(fa) <= Math.Abs(fb)) d = e = m;
            else
            {
                double p, q, s = fb / fa;
                if (a == c) { p = 2 * m * s; q = 1 - s; }
                else
                {
                    double r = fb / fc, t = fa / fc;
                    p = s * (2 * m * t * (t - r) - (b - a) * (r - 1));
                    q = (t - 1) * (r - 1) * (s - 1);
                }
                if (p > 0) q = -q; else p = -p;
                s = e; e = d;
                if (2 * p < 3 * m * q - Math.Abs(tol * q) && p < Math.Abs(0.5 * s * q)) d = p / q;
                else d = e = m;
            }
            a = b; fa = fb;
            b += Math.Abs(d) > tol ? d : Math.CopySign(tol, m);
            fb = f(b);
            if (fb < 0 == fc < 0) { c = a; fc = fa; d = e = b - a; }
        }
        return b;
    }
}
