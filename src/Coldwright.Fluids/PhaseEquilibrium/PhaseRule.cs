using Coldwright.Numerics.LinearAlgebra;

namespace Coldwright.Fluids.PhaseEquilibrium;

/// <summary>
/// At given temperature and pressure no more phases than components coexist (but for single points). With one phase too
/// many, the amounts can be shifted between the phases without changing any composition, along one direction only;
/// the Gibbs energy changes linearly along it, so one way leads down until a phase is used up.
/// </summary>
internal static class PhaseRule
{
    /// <summary>
    /// Shifts amounts downhill until a phase is empty. The phases must be evaluated and balanced, one more than the
    /// components. Returns the index of the emptied phase, or -1 when the compositions leave no such direction.
    /// </summary>
    public static int Empty(ReadOnlySpan<PhaseBuffer> phases)
    {
        int n = phases.Length - 1;
        if (n > FlashWorkspace.MaximumPhases || phases[0].X.Length != n) return -1;
        // sum_j v_j x_j = 0 with v = -1 for the last phase
        Span<double> a = stackalloc double[n * n], v = stackalloc double[n + 1];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++) a[i * n + j] = phases[j].X[i];
            v[i] = phases[n].X[i];
        }
        if (!Dense.TrySolve(a, v[..n], n)) return -1;
        v[n] = -1;
        double slope = 0;
        for (int j = 0; j <= n; j++)
        {
            if (!double.IsFinite(v[j])) return -1;
            slope += v[j] * PhaseSums.Gibbs(phases[j]);
        }
        double sign = slope > 0 ? -1 : 1, length = double.PositiveInfinity;
        int emptied = -1;
        for (int j = 0; j <= n; j++)
            if (sign * v[j] < 0 && phases[j].Fraction / (-sign * v[j]) < length) (length, emptied) = (phases[j].Fraction / (-sign * v[j]), j);
        if (emptied < 0) return -1;
        for (int j = 0; j <= n; j++) phases[j].Fraction = j == emptied ? 0 : phases[j].Fraction + length * sign * v[j];
        return PhaseSums.AllPositive(phases[..emptied]) && PhaseSums.AllPositive(phases[(emptied + 1)..]) ? emptied : -1;
    }
}
