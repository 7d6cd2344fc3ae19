using Coldwright.Numerics.LinearAlgebra;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>A square Jacobian kept up to date by Broyden's rank-one corrections (C. G. Broyden, Math. Comp. 19 (1965) 577).</summary>
internal sealed class BroydenMatrix
{
    private readonly int _n;
    private readonly double[] _j;

    public BroydenMatrix(int n, double[] jacobian) => (_n, _j) = (n, jacobian);

    public static BroydenMatrix Identity(int n)
    {
        var j = new double[n * n];
        for (int i = 0; i < n; i++) j[i * n + i] = 1;
        return new BroydenMatrix(n, j);
    }

    public BroydenMatrix Copy() => new(_n, [.. _j]);
    public double[] Values => _j;

    /// <summary>Newton's step for residuals r, times a damping, no element larger than a limit.</summary>
    public double[] Step(double[] r, double damping, double most)
    {
        double[] dx = [.. r], spoilt = [.. _j];
        if (!Dense.TrySolve(spoilt, dx, _n)) r.CopyTo(dx, 0);
        double largest = 0;
        for (int i = 0; i < _n; i++) largest = Math.Max(largest, Math.Abs(dx[i]));
        double share = -Math.Min(damping, most / Math.Max(largest, 1e-300));
        for (int i = 0; i < _n; i++) dx[i] *= share;
        return dx;
    }

    /// <summary>J + (dF - J dx) dx'/(dx' dx).</summary>
    public void Correct(double[] dx, double[] before, double[] after)
    {
        double square = 0;
        for (int i = 0; i < _n; i++) square += dx[i] * dx[i];
        if (!(square > 0)) return;
        for (int r = 0; r < _n; r++)
        {
            double off = after[r] - before[r];
            for (int c = 0; c < _n; c++) off -= _j[r * _n + c] * dx[c];
            for (int c = 0; c < _n; c++) _j[r * _n + c] += off * dx[c] / square;
        }
    }
}
