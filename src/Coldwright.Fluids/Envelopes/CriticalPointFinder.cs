using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;

namespace Coldwright.Fluids.Envelopes;

/// <summary>
/// Critical points by the conditions of Heidemann and Khalil (AIChE J. 26 (1980) 769): at given temperature and density the
/// matrix of second derivatives of the Helmholtz energy in the molar concentrations has a zero eigenvalue, and the third
/// derivative along its eigenvector vanishes. Densities are scanned from dilute to dense; at each the spinodal temperature
/// (highest zero of the least eigenvalue) is found, then the sign changes of the third derivative along it.
/// </summary>
internal static class CriticalPointFinder
{
    private const int Densities = 36;

    public static IEnumerable<CriticalPoint> Find(HelmholtzModel model, double[] z, CancellationToken cancel)
    {
        var e = model.CreateEvaluation();
        var used = Enumerable.Range(0, z.Length).Where(i => z[i] > 0).ToArray();
        double typical = 1 / used.Sum(i => z[i] / model.Substances[i].CriticalDensity);
        double hottest = 1.15 * used.Max(i => model.Substances[i].CriticalTemperatureK);
        double? previousCubic = null, previousRho = null;
        for (int k = 0; k <= Densities; k++)
        {
            cancel.ThrowIfCancellationRequested();
            double rho = typical * (0.35 + 2.0 * k / Densities);
            double? cubic = Cubic(rho, out double t);
            if (cubic is { } c && previousCubic is { } pc && c > 0 != pc > 0)
            {
                double low = previousRho!.Value, high = rho, at = rho;
                for (int i = 0; i < 60 && high - low > 1e-10 * high; i++)
                {
                    at = 0.5 * (low + high);
                    if (Cubic(at, out t) is not { } m) break;
                    if (m > 0 == pc > 0) low = at; else high = at;
                }
                e.SetIsotherm(t, z);
                double p = e.ReducedPressure(at, out _) * e.GasConstant * t;
                if (p > 0)
                {
                    var point = new CriticalPoint(t, p, at, Stable: false);
                    yield return point with { Stable = IsStable(model, z, point, 0.3, 0.15) };
                }
            }
            (previousCubic, previousRho) = (cubic, rho);
        }

        // third derivative along the soft direction on the spinodal at this density; null without a spinodal
        double? Cubic(double rho, out double t)
        {
            double high = hottest, low = double.NaN;
            t = double.NaN;
            for (double trial = hottest; trial > 60; trial *= 0.97)
            {
                if (Least(trial, rho, z, out _) < 0) { low = trial; break; }
                high = trial;
            }
            if (double.IsNaN(low)) return null;
            for (int i = 0; i < 60 && high - low > 1e-11 * high; i++)
            {
                double middle = 0.5 * (low + high);
                if (Least(middle, rho, z, out _) < 0) low = middle; else high = middle;
            }
            t = 0.5 * (low + high);
            Least(t, rho, z, out var direction);
            double spinodal = t;
            // the least eigenvalue's slope along its own direction, in concentrations rho z_i + s sqrt(z_i) u_i
            const double s = 1e-4;
            return (Along(s) - Along(-s)) / (2 * s);

            double Along(double step)
            {
                var x = new double[z.Length];
                double total = 0;
                for (int i = 0; i < x.Length; i++) total += x[i] = Math.Max(z[i] + step * Math.Sqrt(z[i]) * direction[i], 0);
                for (int i = 0; i < x.Length; i++) x[i] /= total;
                return Quadratic(spinodal, rho * total, x, direction);
            }
        }

        double Quadratic(double t, double rho, double[] x, double[] u)
        {
            e.SetIsotherm(t, x);
            e.Hessian(rho);
            double q = 0;
            for (int i = 0; i < x.Length; i++)
                for (int j = 0; j < x.Length; j++)
                    q += Math.Sqrt(z[i] * z[j]) * u[i] * u[j] * (e.H[i * x.Length + j] + (i == j && x[i] > 0 ? 1 / x[i] : 0)) / rho;
                return q;
        }

        double Least(double t, double rho, double[] x, out double[] direction)
        {
            e.SetIsotherm(t, x);
            e.Hessian(rho);
            int n = x.Length;
            var b = new double[n * n];
            for (int i = 0; i < n; i++)
                for (int j = 0; j < n; j++)
                    b[i * n + j] = (i == j ? 1 : 0) + Math.Sqrt(x[i] * x[j]) * e.H[i * n + j];
            return Coldwright.Numerics.LinearAlgebra.SymmetricEigen.Least(b, n, out direction);
        }
    }

    /// <summary>True when a flash next to the point finds nothing but the critical phase itself, or two phases close to it.</summary>
    public static bool StandsAlone(HelmholtzModel model, double[] z, CriticalPoint point) => IsStable(model, z, point, 0.06, 0.03);

    // next to a critical point phases part fast: this only sorts out what other phases clearly hide
    private static bool IsStable(HelmholtzModel model, double[] z, CriticalPoint point, double densityReach, double compositionReach)
    {
        var (t, p, rho) = (point.TemperatureK, point.PressurePa, point.MolarDensity);
        var flash = new Flash(model);
        if (!flash.TrySolve(t * (1 + 1e-6), p, z)) return false;
        foreach (var phase in flash.Solver.Phases)
        {
            if (Math.Abs(phase.Density / rho - 1) > densityReach) return false;
            for (int i = 0; i < z.Length; i++) if (Math.Abs(phase.X[i] - z[i]) > compositionReach) return false;
        }
        return true;
    }
}
