using Coldwright.Numerics.Integration.LinearAlgebra;

namespace Coldwright.Numerics.Integration;

/// <summary>df/dy, stored full or as a band.</summary>
public sealed class JacobianMatrix
{
    internal JacobianMatrix(int count, int lower, int upper)
    {
        Layout = MatrixLayout.ForJacobian(count, lower, upper);
        Values = new double[Layout.Length];
    }

    /// <summary>Number of components.</summary>
    public int Count => Layout.Count;

    internal MatrixLayout Layout { get; }

    internal double[] Values { get; }

    /// <summary>df of the row's component by dy of the column's.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The entry lies outside the band.</exception>
    public double this[int row, int column]
    {
        get => InBand(row, column) ? Values[Layout.Row(row) + column] : 0;
        set
        {
            if (!InBand(row, column))
                throw new ArgumentOutOfRangeException(nameof(column), column, $"entry ({row}, {column}) lies outside the band of {Layout.Lower} diagonals below and {Layout.Upper} above in a matrix of {Count} rows");
            Values[Layout.Row(row) + column] = value;
        }
    }

    internal void Clear() => Array.Clear(Values);

    /// <summary>result = J x.</summary>
    internal void Multiply(ReadOnlySpan<double> x, Span<double> result)
    {
        for (int i = 0; i < Count; i++)
        {
            int first = Layout.First(i), length = Layout.Last(i) - first + 1;
            result[i] = VectorKernels.Dot(Values.AsSpan(Layout.Row(i) + first, length), x.Slice(first, length));
        }
    }

    private bool InBand(int row, int column) => (uint)row < Count && (uint)column < Count && column >= Layout.First(row) && column <= Layout.Last(row);
}
