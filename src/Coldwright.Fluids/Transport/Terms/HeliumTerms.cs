namespace Coldwright.Fluids.Transport.Terms;

/// <summary>Coefficients of helium's viscosity: Arp, McCarty, Friend, NIST Technical Note 1334 (1998). Series in x = ln T from x^-1.</summary>
internal sealed record HeliumViscosity(double[] ZeroDensity, double[] B, double[] C, double[] D, double[] Warm)
{
    // micropoise to Pa s
    private const double Unit = 1e-7;

    private static double Series(double[] a, double x) => a[0] / x + a[1] + x * (a[2] + x * (a[3] + x * a[4]));

    private static double X(double t) => Math.Log(Math.Min(t, 300));

    /// <summary>Pa s at zero density: the series to 100 K, the power law above.</summary>
    public double Dilute(double t) => t <= 100
        ? Unit * Math.Exp(Series(ZeroDensity, X(t)))
        : Unit * Warm[0] * Math.Pow(t, Warm[1]) * Math.Exp(Warm[2] / t + Warm[3] / (t * t) + Warm[4]);

    /// <summary>Pa s more at a density in kg/m3.</summary>
    public double Excess(double t, double massDensity)
    {
        double x = X(t), r = massDensity / 1000;
        return Unit * Math.Exp(Series(ZeroDensity, x)) * (Math.Exp(r * (Series(B, x) + r * (Series(C, x) + r * Series(D, x)))) - 1);
    }
}

/// <summary>Helium at zero density.</summary>
internal sealed class HeliumViscosityDilute(HeliumViscosity data) : TransportTerm
{
    public override double Value(PurePoint p) => data.Dilute(p.T);
}

/// <summary>Helium, what density adds.</summary>
internal sealed class HeliumViscosityDense(HeliumViscosity data) : TransportTerm
{
    public override double Value(PurePoint p) => data.Excess(p.T, p.MassDensity);
}

/// <summary>Dilute helium: factor T^n exp(sum a_k T^-k), Hands and Arp, Cryogenics 21 (1981) 697.</summary>
internal sealed class HeliumConductivityDilute(double factor, double exponent, double[] a) : TransportTerm
{
    public override double Value(PurePoint p)
    {
        double u = 1 / p.T;
        return factor * Math.Pow(p.T, exponent) * Math.Exp(u * (a[0] + u * (a[1] + u * (a[2] + u * a[3]))));
    }
}

/// <summary>
/// Dense helium, Hands and Arp (1981), equation 17. Their critical term (3.5 to 12 K) is left out: helium is a trace or a
/// warm gas in the machines described here.
/// </summary>
internal sealed class HeliumConductivityDense(double reducingDensityKgM3, double[] linear, double[] cubic, double[] logarithmic) : TransportTerm
{
    public override double Value(PurePoint p)
    {
        double r = p.MassDensity, c1 = Math.Cbrt(p.T), c2 = c1 * c1;
        if (!(r > 0)) return 0;
        return (linear[0] + linear[1] * p.T + linear[2] * c1 + linear[3] * c2) * r
            + (cubic[0] + cubic[1] * c1 + cubic[2] * c2) * r * r * r
            + (logarithmic[0] + logarithmic[1] * c1 + logarithmic[2] * c2 + logarithmic[3] / p.T) * r * r * Math.Log(r / reducingDensityKgM3);
    }
}
