namespace Coldwright.Numerics.Integration.LinearAlgebra;

/// <summary>LU decomposition of shift M - J with row exchanges, full or banded.</summary>
internal sealed class RealDecomposition
{
    private readonly MatrixLayout _layout;
    private readonly double[] _a;
    private readonly int[] _pivot;

    public RealDecomposition(in MatrixLayout jacobian)
    {
        _layout = MatrixLayout.ForDecomposition(jacobian);
        _a = new double[_layout.Length];
        _pivot = new int[_layout.Count];
    }

    /// <summary>False when the matrix is singular.</summary>
    public bool TryDecompose(double shift, ReadOnlySpan<double> mass, JacobianMatrix jacobian)
    {
        int n = _layout.Count;
        Array.Clear(_a);
        for (int i = 0; i < n; i++)
        {
            int first = jacobian.Layout.First(i), length = jacobian.Layout.Last(i) - first + 1;
            VectorKernels.Subtract(_a.AsSpan(_layout.Row(i) + first, length), 1, jacobian.Values.AsSpan(jacobian.Layout.Row(i) + first, length));
            _a[_layout.Row(i) + i] += mass.IsEmpty ? shift : shift * mass[i];
        }
        for (int k = 0; k < n; k++)
        {
            int end = Math.Min(n - 1, k + _layout.Lower), last = _layout.Last(k), p = k;
            for (int i = k + 1; i <= end; i++) if (Math.Abs(_a[_layout.Row(i) + k]) > Math.Abs(_a[_layout.Row(p) + k])) p = i;
            _pivot[k] = p;
            double top = _a[_layout.Row(p) + k];
            if (!(Math.Abs(top) > 0 && double.IsFinite(top))) return false;
            if (p != k)
            {
                // The multipliers of a band stay where they are: their exchange would leave the band.
                int from = _layout.Full ? 0 : k;
                Span<double> a = _a.AsSpan(_layout.Row(k) + from, last - from + 1), b = _a.AsSpan(_layout.Row(p) + from, last - from + 1);
                for (int j = 0; j < a.Length; j++) (a[j], b[j]) = (b[j], a[j]);
            }
            var upper = _a.AsSpan(_layout.Row(k) + k + 1, last - k);
            double inverse = 1 / top;
            for (int i = k + 1; i <= end; i++)
            {
                ref double head = ref _a[_layout.Row(i) + k];
                if (head == 0) continue;
                head *= inverse;
                VectorKernels.Subtract(_a.AsSpan(_layout.Row(i) + k + 1, last - k), head, upper);
            }
        }
        return true;
    }

    /// <summary>Replaces b by the solution.</summary>
    public void Solve(Span<double> b)
    {
        int n = _layout.Count;
        if (_layout.Full)
        {
            for (int k = 0; k < n; k++) if (_pivot[k] != k) (b[k], b[_pivot[k]]) = (b[_pivot[k]], b[k]);
            for (int i = 1; i < n; i++) b[i] -= VectorKernels.Dot(_a.AsSpan(_layout.Row(i), i), b[..i]);
        }
        else
        {
            for (int k = 0; k < n; k++)
            {
                if (_pivot[k] != k) (b[k], b[_pivot[k]]) = (b[_pivot[k]], b[k]);
                for (int i = k + 1; i <= Math.Min(n - 1, k + _layout.Lower); i++) b[i] -= _a[_layout.Row(i) + k] * b[k];
            }
        }
        for (int i = n - 1; i >= 0; i--)
        {
            int length = _layout.Last(i) - i;
            b[i] = (b[i] - VectorKernels.Dot(_a.AsSpan(_layout.Row(i) + i + 1, length), b.Slice(i + 1, length))) / _a[_layout.Row(i) + i];
        }
    }
}
