using Coldwright.Numerics.LinearAlgebra;

namespace Coldwright.Fluids.PhaseEquilibrium;

/// <summary>
/// Phase fractions at given equilibrium ratios K_ij = x_ij/x_i,ref: the minimum of the convex function
/// -sum z_i ln E_i, E_i = 1 + sum_j beta_j (K_ij - 1) (Michelsen, Comput. Chem. Eng. 18 (1994) 545; for two phases
/// Rachford and Rice, J. Pet. Technol. 4 (1952) 19). Fractions outside 0..1 are allowed (a phase that is not there).
/// </summary>
internal static class RachfordRice
{
    /// <summary>Two phases: the fraction of the second, with K = x_second/x_first. False when all K lie on one side of 1.</summary>
    public static bool TrySolve(ReadOnlySpan<double> z, ReadOnlySpan<double> k, ref double beta)
    {
        double largest = 0, smallest = double.PositiveInfinity;
        for (int i = 0; i < z.Length; i++)
        {
            if (z[i] == 0) continue;
            largest = Math.Max(largest, k[i]);
            smallest = Math.Min(smallest, k[i]);
        }
        if (!(largest > 1 && smallest < 1)) return false;
        double low = -1 / (largest - 1), high = 1 / (1 - smallest);
        double b = beta > low && beta < high ? beta : 0.5 * (Math.Max(low, 0) + Math.Min(high, 1));
        for (int iteration = 0; iteration < 200; iteration++)
        {
            double f = 0, slope = 0;
            for (int i = 0; i < z.Length; i++)
            {
                if (z[i] == 0) continue;
                double c = k[i] - 1, t = c / (1 + b * c);
                f += z[i] * t;
                slope -= z[i] * t * t;
            }
            if (f > 0) low = b; else high = b;
            double next = b - f / slope;
            if (!(next > low && next < high)) next = 0.5 * (low + high);
            if (Math.Abs(next - b) <= 1e-15 * Math.Max(Math.Abs(b), 1e-3)) { b = next; break; }
            b = next;
        }
        beta = b;
        return true;
    }

    /// <summary>
    /// Any number of phases: <paramref name="k"/> holds, phase by phase, the ratios to the reference phase;
    /// <paramref name="beta"/> (start and answer) the fractions of those phases. False when Newton does not settle.
    /// </summary>
    public static bool TrySolve(ReadOnlySpan<double> z, ReadOnlySpan<double> k, Span<double> beta)
    {
        int phases = beta.Length, n = z.Length;
        Span<double> gradient = stackalloc double[phases], hessian = stackalloc double[phases * phases], trial = stackalloc double[phases], slope = stackalloc double[phases];
        double value = Objective(z, k, beta);
        if (!double.IsFinite(value)) return false;
        for (int iteration = 0; iteration < 100; iteration++)
        {
            gradient.Clear();
            hessian.Clear();
            for (int i = 0; i < n; i++)
            {
                if (z[i] == 0) continue;
                double e = 1;
                for (int j = 0; j < phases; j++) e += beta[j] * (k[j * n + i] - 1);
                for (int j = 0; j < phases; j++)
                {
                    double t = (k[j * n + i] - 1) / e;
                    gradient[j] += z[i] * t;
                    for (int l = 0; l <= j; l++) hessian[j * phases + l] += z[i] * t * (k[l * n + i] - 1) / e;
                }
            }
            double norm = 0;
            foreach (double g in gradient) norm = Math.Max(norm, Math.Abs(g));
            if (norm < 1e-15) return true;
            for (int j = 0; j < phases; j++) hessian[j * phases + j] *= 1 + 1e-15;
            if (!Dense.TryCholesky(hessian, phases)) return false;
            gradient.CopyTo(slope);
            Dense.SolveCholesky(hessian, gradient, phases);
            double decrement = 0;
            for (int j = 0; j < phases; j++) decrement += slope[j] * gradient[j];
            double step = 1;
            bool moved = false;
            for (int halving = 0; halving < 40; halving++, step *= 0.5)
            {
                for (int j = 0; j < phases; j++) trial[j] = beta[j] + step * gradient[j];
                double next = Objective(z, k, trial);
                // close to the minimum its value is flat to rounding, and full steps double the digits
                if (next <= value + 1e-16 || decrement < 1e-9 && double.IsFinite(next))
                {
                    moved = true;
                    value = next;
                    break;
                }
            }
            if (!moved) return norm < 1e-10;
            double change = 0;
            for (int j = 0; j < phases; j++)
            {
                // relative, so that a phase of a few millionths is known to as many digits as the others
                change = Math.Max(change, Math.Abs(trial[j] - beta[j]) / Math.Max(Math.Abs(trial[j]), 1e-15));
                beta[j] = trial[j];
            }
            if (change < 1e-14) return true;
        }
        return true;
    }

    // infinite outside the region where every E_i is positive
    private static double Objective(ReadOnlySpan<double> z, ReadOnlySpan<double> k, ReadOnlySpan<double> beta)
    {
        double q = 0;
        for (int i = 0; i < z.Length; i++)
        {
            if (z[i] == 0) continue;
            double e = 1;
            for (int j = 0; j < beta.Length; j++) e += beta[j] * (k[j * z.Length + i] - 1);
            if (!(e > 0)) return double.PositiveInfinity;
            q -= z[i] * Math.Log(e);
        }
        return q;
    }
}
