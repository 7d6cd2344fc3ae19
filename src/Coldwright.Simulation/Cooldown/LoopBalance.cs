using Coldwright.Numerics.LinearAlgebra;

namespace Coldwright.Simulation.Cooldown;

/// <summary>
/// Brings pressures, flow and returning gas to the loop's balances with the heats where they are: Newton's method with a Jacobian kept while it serves. A piece of a run
/// that begins in balance has no transient of seconds to resolve.
/// </summary>
internal static class LoopBalance
{
    private const int Size = LoopRelaxation.Size, MostRounds = 12;
    private const double Settled = 1e-6, MostChange = 0.1, Slow = 0.3;

    /// <summary>Changes the loop's unknowns in place and gives the relaxation the last Jacobian; left as they were, and false, where no balance is found.</summary>
    /// <param name="jacobian">Of the equations.</param>
    /// <param name="state">All unknowns.</param>
    /// <param name="factors">Factors of <see cref="PlantParameters"/>.</param>
    public static bool Settle(PlantJacobian jacobian, double[] state, double[] factors)
    {
        int high = jacobian.Equations.Plant.Layout.High;
        double[] before = [.. state], balances = new double[Size];
        Span<double> block = stackalloc double[Size * Size];
        double last = 0;
        for (int round = 0; round < MostRounds; round++)
        {
            if (!(round == 0 ? jacobian.TryLoop(state, factors, block, balances) : jacobian.TryBalances(state, factors, balances))) break;
            double norm = Norm(balances);
            if (norm < Settled)
            {
                jacobian.Equations.Relaxation.Take(block);
                return true;
            }
            if (round > 0 && norm > Slow * last && !jacobian.TryLoop(state, factors, block, balances)) break;
            if (round > 1 && norm > 2 * last) break;
            last = norm;
            if (!Dense.TrySolve(block.ToArray(), balances, Size)) break;
            // far steps only show the way
            double share = Math.Min(1, MostChange / Math.Max(1e-300, Norm(balances)));
            for (int i = 0; i < Size; i++) state[high + i] -= share * balances[i];
        }
        before.CopyTo(state, 0);
        jacobian.Refresh(state, factors);
        return false;
    }

    private static double Norm(ReadOnlySpan<double> x)
    {
        double most = 0;
        foreach (double v in x) most = Math.Max(most, Math.Abs(v));
        return most;
    }
}
