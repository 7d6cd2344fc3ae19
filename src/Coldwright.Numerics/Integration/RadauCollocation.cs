using System.Numerics;

namespace Coldwright.Numerics.Integration;

/// <summary>
/// Coefficients of the three-stage Radau IIA method, order 5, stage order 3, L-stable, stiffly accurate (Hairer and Wanner, Solving
/// Ordinary Differential Equations II, 2nd ed. 1996, table IV.5.6: nodes and A from memory; the tests verify them by the order
/// conditions). Everything else here is worked out from them.
/// </summary>
internal static class RadauCollocation
{
    private static readonly double _root = Math.Sqrt(6);

    /// <summary>Nodes 0, c1, c2, c3; the method's own are the last three.</summary>
    public static readonly double[] Node = [0, (4 - _root) / 10, (4 + _root) / 10, 1];

    /// <summary>A, row-major 3 x 3. The weights are its last row.</summary>
    public static readonly double[] A =
    [
        (88 - 7 * _root) / 360, (296 - 169 * _root) / 1800, (-2 + 3 * _root) / 225,
        (296 + 169 * _root) / 1800, (88 + 7 * _root) / 360, (-2 - 3 * _root) / 225,
        (16 - _root) / 36, (16 + _root) / 36, 1.0 / 9,
    ];

    /// <summary>Inverse of A.</summary>
    public static readonly double[] Inverse = Invert(A);

    /// <summary>Real eigenvalue of the inverse of A, whose characteristic polynomial is (x - 3)^3 + 9 (x - 3) - 6.</summary>
    public static readonly double RealEigenvalue = 3 + Math.Cbrt(9) - Math.Cbrt(3);

    /// <summary>Complex eigenvalue of the inverse of A with positive imaginary part.</summary>
    public static readonly Complex ComplexEigenvalue = new(3 - 0.5 * (Math.Cbrt(9) - Math.Cbrt(3)), 0.5 * Math.Sqrt(3) * (Math.Cbrt(9) + Math.Cbrt(3)));

    /// <summary>T: columns are the real eigenvector and the real and imaginary part of the complex one, each with last element 1 (or 0 in the imaginary part).</summary>
    public static readonly double[] T = Eigenvectors();

    /// <summary>Inverse of T.</summary>
    public static readonly double[] TInverse = Invert(T);

    /// <summary>Slope at the start of the collocation polynomial through (0, 0) and the stages: weights of the stage increments.</summary>
    public static readonly double[] StartSlope = [Slope(1), Slope(2), Slope(3)];

    // Monomial coefficients of the integrals from 0 of the Lagrange polynomials on the four nodes, [4 m + power - 1].
    private static readonly double[] _integral = Integrals();

    /// <summary>Largest weight of the slope at the start within the dense output: at the first node, where its Lagrange polynomial changes sign.</summary>
    public static readonly double LargestStartWeight = DenseWeight(0, Node[1]);

    /// <summary>Integral from 0 to theta of the Lagrange polynomial of node <paramref name="m"/> (0 to 3).</summary>
    public static double DenseWeight(int m, double theta)
        => theta * (_integral[4 * m] + theta * (_integral[4 * m + 1] + theta * (_integral[4 * m + 2] + theta * _integral[4 * m + 3])));

    /// <summary>Lagrange polynomial of node <paramref name="m"/> (0 to 3) on the four nodes.</summary>
    public static double Lagrange(int m, double theta)
    {
        double value = 1;
        for (int j = 0; j < 4; j++) if (j != m) value *= (theta - Node[j]) / (Node[m] - Node[j]);
        return value;
    }

    private static double Slope(int m)
    {
        double value = 1 / Node[m];
        for (int j = 1; j < 4; j++) if (j != m) value *= -Node[j] / (Node[m] - Node[j]);
        return value;
    }

    private static double[] Integrals()
    {
        var result = new double[16];
        for (int m = 0; m < 4; m++)
        {
            double[] p = [1, 0, 0, 0];
            int degree = 0;
            for (int j = 0; j < 4; j++)
            {
                if (j == m) continue;
                double scale = 1 / (Node[m] - Node[j]);
                degree++;
                for (int q = degree; q >= 0; q--) p[q] = scale * ((q > 0 ? p[q - 1] : 0) - Node[j] * (q < degree ? p[q] : 0));
            }
            for (int q = 0; q < 4; q++) result[4 * m + q] = p[q] / (q + 1);
        }
        return result;
    }

    // A null vector of a singular matrix of rank 2 is the cross product of two of its rows.
    private static double[] Eigenvectors()
    {
        var real = NullVector(RealEigenvalue);
        var complex = NullVector(ComplexEigenvalue);
        var t = new double[9];
        for (int i = 0; i < 3; i++) (t[3 * i], t[3 * i + 1], t[3 * i + 2]) = (real[i].Real, complex[i].Real, complex[i].Imaginary);
        return t;
    }

    private static Complex[] NullVector(Complex eigenvalue)
    {
        Complex a = Inverse[0] - eigenvalue, b = Inverse[1], c = Inverse[2], d = Inverse[3], e = Inverse[4] - eigenvalue, f = Inverse[5];
        Complex[] v = [b * f - c * e, c * d - a * f, a * e - b * d];
        return [v[0] / v[2], v[1] / v[2], 1];
    }

    private static double[] Invert(double[] m)
    {
        double Minor(int i, int j)
        {
            int r = (i + 1) % 3, s = (i + 2) % 3, u = (j + 1) % 3, v = (j + 2) % 3;
            return m[3 * r + u] * m[3 * s + v] - m[3 * r + v] * m[3 * s + u];
        }
        double determinant = m[0] * Minor(0, 0) + m[1] * Minor(0, 1) + m[2] * Minor(0, 2);
        var inverse = new double[9];
        for (int i = 0; i < 3; i++) for (int j = 0; j < 3; j++) inverse[3 * j + i] = Minor(i, j) / determinant;
        return inverse;
    }
}
