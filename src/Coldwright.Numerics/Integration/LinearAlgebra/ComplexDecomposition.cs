namespace Coldwright.Numerics.Integration.LinearAlgebra;

/// <summary>LU decomposition of (shiftRe + i shiftIm) M - J with row exchanges, full or banded; real and imaginary parts in arrays of their own.</summary>
internal sealed class ComplexDecomposition
{
    private readonly MatrixLayout _layout;
    private readonly double[] _re, _im;
    private readonly int[] _pivot;

    public ComplexDecomposition(in MatrixLayout jacobian)
    {
        _layout = MatrixLayout.ForDecomposition(jacobian);
        _re = new double[_layout.Length];
        _im = new double[_layout.Length];
        _pivot = new int[_layout.Count];
    }

    /// <summary>False when the matrix is singular.</summary>
    public bool TryDecompose(double shiftRe, double shiftIm, ReadOnlySpan<double> mass, JacobianMatrix jacobian)
    {
        int n = _layout.Count;
        Array.Clear(_re);
        Array.Clear(_im);
        for (int i = 0; i < n; i++)
        {
            int first = jacobian.Layout.First(i), length = jacobian.Layout.Last(i) - first + 1, diagonal = _layout.Row(i) + i;
            VectorKernels.Subtract(_re.AsSpan(_layout.Row(i) + first, length), 1, jacobian.Values.AsSpan(jacobian.Layout.Row(i) + first, length));
            double m = mass.IsEmpty ? 1 : mass[i];
            _re[diagonal] += shiftRe * m;
            _im[diagonal] += shiftIm * m;
        }
        for (int k = 0; k < n; k++)
        {
            int end = Math.Min(n - 1, k + _layout.Lower), last = _layout.Last(k), p = k;
            for (int i = k + 1; i <= end; i++) if (Size(_layout.Row(i) + k) > Size(_layout.Row(p) + k)) p = i;
            _pivot[k] = p;
            double size = Size(_layout.Row(p) + k);
            if (!(size > 0 && double.IsFinite(size))) return false;
            if (p != k) Exchange(k, p, _layout.Full ? 0 : k, last);
            int row = _layout.Row(k), length = last - k;
            double topRe = _re[row + k], topIm = _im[row + k], square = topRe * topRe + topIm * topIm;
            double inverseRe = topRe / square, inverseIm = -topIm / square;
            Span<double> upperRe = _re.AsSpan(row + k + 1, length), upperIm = _im.AsSpan(row + k + 1, length);
            for (int i = k + 1; i <= end; i++)
            {
                int at = _layout.Row(i) + k;
                double re = _re[at], im = _im[at];
                if (re == 0 && im == 0) continue;
                (_re[at], _im[at]) = (re * inverseRe - im * inverseIm, re * inverseIm + im * inverseRe);
                VectorKernels.Subtract(_re.AsSpan(at + 1, length), _im.AsSpan(at + 1, length), _re[at], _im[at], upperRe, upperIm);
            }
        }
        return true;
    }

    /// <summary>Replaces re + i im by the solution.</summary>
    public void Solve(Span<double> re, Span<double> im)
    {
        int n = _layout.Count;
        for (int k = 0; k < n; k++)
        {
            int p = _pivot[k];
            if (p != k) (re[k], re[p], im[k], im[p]) = (re[p], re[k], im[p], im[k]);
            if (_layout.Full) continue;
            for (int i = k + 1; i <= Math.Min(n - 1, k + _layout.Lower); i++)
            {
                int at = _layout.Row(i) + k;
                (re[i], im[i]) = (re[i] - _re[at] * re[k] + _im[at] * im[k], im[i] - _re[at] * im[k] - _im[at] * re[k]);
            }
        }
        if (_layout.Full) for (int i = 1; i < n; i++) SubtractRow(i, 0, i, re, im);
        for (int i = n - 1; i >= 0; i--)
        {
            SubtractRow(i, i + 1, _layout.Last(i) - i, re, im);
            int at = _layout.Row(i) + i;
            double square = _re[at] * _re[at] + _im[at] * _im[at];
            (re[i], im[i]) = ((re[i] * _re[at] + im[i] * _im[at]) / square, (im[i] * _re[at] - re[i] * _im[at]) / square);
        }
    }

    private void SubtractRow(int i, int from, int length, Span<double> re, Span<double> im)
    {
        ReadOnlySpan<double> aRe = _re.AsSpan(_layout.Row(i) + from, length), aIm = _im.AsSpan(_layout.Row(i) + from, length);
        ReadOnlySpan<double> xRe = re.Slice(from, length), xIm = im.Slice(from, length);
        re[i] -= VectorKernels.Dot(aRe, xRe) - VectorKernels.Dot(aIm, xIm);
        im[i] -= VectorKernels.Dot(aRe, xIm) + VectorKernels.Dot(aIm, xRe);
    }

    private double Size(int at) => Math.Abs(_re[at]) + Math.Abs(_im[at]);

    private void Exchange(int k, int p, int from, int last)
    {
        for (int j = from; j <= last; j++)
        {
            int a = _layout.Row(k) + j, b = _layout.Row(p) + j;
            (_re[a], _re[b], _im[a], _im[b]) = (_re[b], _re[a], _im[b], _im[a]);
        }
    }
}
