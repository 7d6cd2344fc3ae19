namespace Coldwright.Numerics.Integration.LinearAlgebra;

/// <summary>
/// Row-major storage of a band (or of a full matrix, the widest band). Element (i, j) is at Row(i) + j. With room for the fill of
/// row exchanges when made for a decomposition.
/// </summary>
internal readonly struct MatrixLayout
{
    private readonly int _step, _base;

    private MatrixLayout(int count, int lower, int upper, int fill)
    {
        (Count, Lower, Upper) = (count, lower, upper);
        // A wide band saves nothing over a full matrix and costs the exchange of partial rows.
        Full = lower + upper + 1 + fill >= count;
        if (Full) (Lower, Upper, _step, _base, Length) = (count - 1, count - 1, count, 0, count * count);
        else
        {
            int stride = lower + upper + 1 + fill;
            (_step, _base, Length) = (stride - 1, lower, stride * count);
        }
        Reach = Full ? count - 1 : upper + fill;
    }

    public int Count { get; }
    public int Lower { get; }
    public int Upper { get; }
    public bool Full { get; }
    public int Length { get; }

    /// <summary>Diagonals above the main one after row exchanges.</summary>
    public int Reach { get; }

    public static MatrixLayout ForJacobian(int count, int lower, int upper) => new(count, lower, upper, 0);

    public static MatrixLayout ForDecomposition(in MatrixLayout jacobian) => new(jacobian.Count, jacobian.Lower, jacobian.Upper, jacobian.Full ? 0 : jacobian.Lower);

    public int Row(int i) => _base + i * _step;
    public int First(int i) => Math.Max(0, i - Lower);
    public int Last(int i) => Math.Min(Count - 1, i + Reach);
}
