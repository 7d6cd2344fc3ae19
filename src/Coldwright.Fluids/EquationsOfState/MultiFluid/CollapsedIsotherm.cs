using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Coldwright.Numerics;

namespace Coldwright.Fluids.EquationsOfState.MultiFluid;

/// <summary>
/// All terms of a mixture on one isotherm as functions of density alone: one polynomial per exponential factor
/// exp(-g delta^l), evaluated with its derivatives by Horner's scheme for four factors at a time, and the bell-shaped terms
/// four at a time. A density step costs the same for one component as for twelve.
/// </summary>
internal sealed class CollapsedIsotherm
{
    private const int Lanes = 4;

    private readonly int _groups, _degrees, _gaussians;
    // [degree][group], groups padded to whole vectors
    private readonly double[] _polynomial;
    private readonly double[] _groupG, _groupL, _power;
    private readonly int[] _groupPower;
    private readonly double[] _coefficient, _d, _eta, _epsilon, _betaDelta, _gammaDelta;

    public CollapsedIsotherm(TermTable t)
    {
        _groups = Padded(t.GroupL.Length);
        _degrees = t.BasisD.DefaultIfEmpty(0).Max() + 1;
        _gaussians = Padded(t.GaussD.Length);
        _polynomial = new double[_degrees * _groups];
        (_groupG, _groupL, _power, _groupPower) = (new double[_groups], new double[_groups], new double[_groups], new int[_groups]);
        for (int g = 0; g < t.GroupL.Length; g++) (_groupG[g], _groupL[g], _groupPower[g]) = (t.GroupG[g], t.GroupL[g], t.GroupL[g]);
        _coefficient = new double[_gaussians];
        (_d, _eta, _epsilon) = (Copy(t.GaussD.Select(d => (double)d)), Copy(t.GaussEta), Copy(t.GaussEpsilon));
        (_betaDelta, _gammaDelta) = (Copy(t.GaussBetaDelta), Copy(t.GaussGammaDelta));
    }

    private static int Padded(int n) => (n + Lanes - 1) / Lanes * Lanes;

    private double[] Copy(IEnumerable<double> values)
    {
        var padded = new double[_gaussians];
        values.ToArray().CopyTo(padded, 0);
        return padded;
    }

    public void Clear()
    {
        Array.Clear(_polynomial);
        Array.Clear(_coefficient);
    }

    /// <summary>Where a power term's coefficient goes.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ref double Power(int d, int group) => ref _polynomial[d * _groups + group];

    /// <summary>Where a bell term's coefficient goes.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ref double Bell(int basis) => ref _coefficient[basis];

    /// <summary>delta a_delta and delta^2 a_deltadelta.</summary>
    public void Evaluate(double delta, out double first, out double second)
    {
        var x = Vector256.Create(delta);
        var s1 = Vector256<double>.Zero;
        var s2 = Vector256<double>.Zero;
        for (int g = 0; g < _groups; g++) _power[g] = WholePower(delta, _groupPower[g]);
        for (int g = 0; g < _groups; g += Lanes)
        {
            // value, first and half the second derivative
            var p0 = Vector256<double>.Zero;
            var p1 = Vector256<double>.Zero;
            var p2 = Vector256<double>.Zero;
            for (int d = _degrees - 1; d >= 0; d--)
            {
                p2 = Vector256.FusedMultiplyAdd(p2, x, p1);
                p1 = Vector256.FusedMultiplyAdd(p1, x, p0);
                p0 = Vector256.FusedMultiplyAdd(p0, x, Vector256.LoadUnsafe(ref _polynomial[d * _groups + g]));
            }
            p1 *= x;
            p2 *= x * x;
            p2 += p2;
            var gl = Vector256.LoadUnsafe(ref _groupG[g]) * Vector256.LoadUnsafe(ref _power[g]);
            var l = Vector256.LoadUnsafe(ref _groupL[g]);
            var u = l * gl;
            var e = VectorExponential.Exp(-gl);
            // with v = d - u: sum C B v and sum C B (v (v - 1) - l u)
            s1 += e * (p1 - u * p0);
            s2 += e * (p2 - (u + u) * p1 + u * (u + Vector256<double>.One - l) * p0);
        }
        var logDelta = Vector256.Create(_gaussians > 0 ? Math.Log(delta) : 0);
        var two = Vector256.Create(2.0);
        for (int j = 0; j < _gaussians; j += Lanes)
        {
            var d = Vector256.LoadUnsafe(ref _d[j]);
            var eta = Vector256.LoadUnsafe(ref _eta[j]);
            var epsilon = Vector256.LoadUnsafe(ref _epsilon[j]);
            var bd = Vector256.LoadUnsafe(ref _betaDelta[j]);
            var away = x - epsilon;
            var exponent = d * logDelta - eta * away * away - bd * (x - Vector256.LoadUnsafe(ref _gammaDelta[j]));
            var cb = Vector256.LoadUnsafe(ref _coefficient[j]) * VectorExponential.Exp(exponent);
            var v = d - x * (two * eta * away + bd);
            var dv = -(x * (two * eta * (x + away) + bd));
            s1 += cb * v;
            s2 += cb * (v * (v - Vector256<double>.One) + dv);
        }
        (first, second) = (Vector256.Sum(s1), Vector256.Sum(s2));
    }

    private static double WholePower(double x, int n)
    {
        double r = 1;
        for (; n > 0; n--) r *= x;
        return r;
    }
}
