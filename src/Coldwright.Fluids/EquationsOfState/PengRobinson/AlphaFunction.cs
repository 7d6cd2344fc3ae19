using Coldwright.Numerics.Scalars;

namespace Coldwright.Fluids.EquationsOfState.PengRobinson;

/// <summary>alpha(T) of the attraction a(T) = a_c alpha, with a shape m from the acentric factor.</summary>
public enum AlphaKind
{
    /// <summary>
    /// Peng and Robinson, Ind. Eng. Chem. Fundam. 15 (1976) 59, at all temperatures: alpha = (1 + m (1 - sqrt(Tr)))^2,
    /// m = 0.37464 + 1.54226 w - 0.26992 w^2.
    /// </summary>
    PengRobinson1976,
    /// <summary>
    /// Below the critical temperature as Robinson and Peng (GPA RR-28, 1978), which has its own m above w = 0.491;
    /// above it the exponential of Boston and Mathias (2nd Int. Conf. Phase Equilibria, Berlin 1980, 823), which meets
    /// it with equal slope and falls towards zero instead of turning up again far above the critical temperature.
    /// </summary>
    BostonMathias,
}

/// <summary>The alpha functions, written once for any scalar.</summary>
public static class AlphaFunction
{
    /// <summary>The shape constant m (dimensionless).</summary>
    public static double Shape(AlphaKind kind, double acentricFactor)
    {
        double w = acentricFactor;
        return kind == AlphaKind.PengRobinson1976 || w <= 0.491
            ? 0.37464 + w * (1.54226 - w * 0.26992)
            : 0.379642 + w * (1.48503 + w * (-0.164423 + w * 0.016666));
    }

    /// <summary>alpha at reduced temperature <paramref name="tr"/>; 1 at the critical point.</summary>
    public static T Evaluate<T>(AlphaKind kind, double shape, T tr) where T : struct, IScalar<T>
    {
        if (kind == AlphaKind.BostonMathias && tr.Value > 1)
        {
            double d = 1 + shape / 2, c = 1 - 1 / d;
            return T.Exp(2 * c * (T.From(1) - T.Pow(tr, d)));
        }
        var s = T.From(1 + shape) - shape * T.Pow(tr, 0.5);
        return s * s;
    }
}
