using System.Numerics;
using System.Runtime.InteropServices;

namespace Coldwright.Numerics.Integration.LinearAlgebra;

/// <summary>The inner loops of the decompositions, as wide as the processor allows.</summary>
internal static class VectorKernels
{
    public static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        int n = a.Length, i = 0, width = Vector<double>.Count;
        if (b.Length < n) throw new ArgumentException($"{b.Length} numbers against {n}");
        ref double ra = ref MemoryMarshal.GetReference(a), rb = ref MemoryMarshal.GetReference(b);
        var sum = Vector<double>.Zero;
        for (; i <= n - width; i += width) sum += Vector.LoadUnsafe(ref ra, (nuint)i) * Vector.LoadUnsafe(ref rb, (nuint)i);
        double total = Vector.Sum(sum);
        for (; i < n; i++) total += a[i] * b[i];
        return total;
    }

    /// <summary>y -= factor x.</summary>
    public static void Subtract(Span<double> y, double factor, ReadOnlySpan<double> x)
    {
        int n = y.Length, i = 0, width = Vector<double>.Count;
        if (x.Length < n) throw new ArgumentException($"{x.Length} numbers against {n}");
        ref double ry = ref MemoryMarshal.GetReference(y), rx = ref MemoryMarshal.GetReference(x);
        var f = new Vector<double>(factor);
        for (; i <= n - width; i += width) (Vector.LoadUnsafe(ref ry, (nuint)i) - f * Vector.LoadUnsafe(ref rx, (nuint)i)).StoreUnsafe(ref ry, (nuint)i);
        for (; i < n; i++) y[i] -= factor * x[i];
    }

    /// <summary>y -= (factorRe + i factorIm) x, real and imaginary parts in arrays of their own.</summary>
    public static void Subtract(Span<double> yRe, Span<double> yIm, double factorRe, double factorIm, ReadOnlySpan<double> xRe, ReadOnlySpan<double> xIm)
    {
        int n = yRe.Length, i = 0, width = Vector<double>.Count;
        if (yIm.Length < n || xRe.Length < n || xIm.Length < n) throw new ArgumentException($"{yIm.Length}, {xRe.Length} and {xIm.Length} numbers against {n}");
        ref double ryr = ref MemoryMarshal.GetReference(yRe), ryi = ref MemoryMarshal.GetReference(yIm);
        ref double rxr = ref MemoryMarshal.GetReference(xRe), rxi = ref MemoryMarshal.GetReference(xIm);
        Vector<double> fr = new(factorRe), fi = new(factorIm);
        for (; i <= n - width; i += width)
        {
            Vector<double> xr = Vector.LoadUnsafe(ref rxr, (nuint)i), xi = Vector.LoadUnsafe(ref rxi, (nuint)i);
            (Vector.LoadUnsafe(ref ryr, (nuint)i) - fr * xr + fi * xi).StoreUnsafe(ref ryr, (nuint)i);
            (Vector.LoadUnsafe(ref ryi, (nuint)i) - fr * xi - fi * xr).StoreUnsafe(ref ryi, (nuint)i);
        }
        for (; i < n; i++)
        {
            yRe[i] += factorIm * xIm[i] - factorRe * xRe[i];
            yIm[i] -= factorRe * xIm[i] + factorIm * xRe[i];
        }
    }
}
