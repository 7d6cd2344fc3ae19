using Coldwright.Numerics.LinearAlgebra;

namespace Coldwright.Simulation.Cooldown;

/// <summary>
/// How pressures, flow and returning gas come to the loop's balances G(x) = 0: dx/dt = -J^-1 G/<see cref="TimeS"/>, Newton's direction with a Jacobian taken now and then.
/// Whatever the sign of the couplings between them, all then die away alike, within seconds; a relaxation of each by its own balance swings where a buffer regulates.
/// </summary>
/// <param name="size">Number of balances: high, suction, coil, flow, return, then the ratios of the substances.</param>
internal sealed class LoopRelaxation(int size)
{
    /// <summary>Number of balances.</summary>
    public int Size => size;
    /// <summary>s; far below anything that stores heat.</summary>
    public const double TimeS = 3;

    private const double Far = 0.3;
    private readonly double[] _inverse = new double[size * size];

    /// <summary>False until a Jacobian was taken.</summary>
    public bool Known { get; private set; }

    /// <summary>Takes a Jacobian dG/dx (row-major); kept as it was when it is singular.</summary>
    public void Take(ReadOnlySpan<double> jacobian)
    {
        Span<double> inverse = stackalloc double[Size * Size];
        double[] column = new double[Size];
        for (int c = 0; c < Size; c++)
        {
            Array.Clear(column);
            column[c] = 1;
            if (!Dense.TrySolve(jacobian.ToArray(), column, Size)) return;
            for (int r = 0; r < Size; r++)
            {
                if (!double.IsFinite(column[r])) return;
                inverse[r * Size + c] = column[r];
            }
        }
        inverse.CopyTo(_inverse);
        Known = true;
    }

    /// <summary>Turns balances into slopes, in place.</summary>
    public void Slopes(Span<double> balances)
    {
        Span<double> x = stackalloc double[Size];
        double square = 0;
        for (int r = 0; r < Size; r++)
        {
            double sum = 0;
            for (int c = 0; c < Size; c++) sum -= _inverse[r * Size + c] * balances[c];
            x[r] = sum;
            square += sum * sum;
        }
        // far from balance no faster than the linear model is good for
        double share = 1 / (TimeS * Math.Sqrt(1 + square / (Far * Far)));
        for (int r = 0; r < Size; r++) balances[r] = share * x[r];
    }

    /// <summary>The same near balance, for a column of derivatives.</summary>
    public void Column(Span<double> balances)
    {
        Span<double> x = stackalloc double[Size];
        for (int r = 0; r < Size; r++)
        {
            x[r] = 0;
            for (int c = 0; c < Size; c++) x[r] -= _inverse[r * Size + c] * balances[c] / TimeS;
        }
        x.CopyTo(balances);
    }
}
