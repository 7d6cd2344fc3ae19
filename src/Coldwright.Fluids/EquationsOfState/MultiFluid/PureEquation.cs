namespace Coldwright.Fluids.EquationsOfState.MultiFluid;

/// <summary>Terms n delta^d tau^t exp(-g delta^l) exp(-tau^m); l = 0 and m = 0 mean that the factor is absent.</summary>
public sealed record PowerTerms(double[] N, int[] D, double[] T, int[] L, double[] G, double[] M)
{
    /// <summary>No terms.</summary>
    public static PowerTerms None { get; } = new([], [], [], [], [], []);
}

/// <summary>
/// Terms n delta^d tau^t exp(-eta (delta-epsilon)^2 - betaDelta (delta-gammaDelta) - betaTau (tau-gammaTau)^2):
/// Gaussian bell terms (betaDelta = 0) and the departure terms of Kunz and Wagner (betaTau = 0).
/// </summary>
public sealed record GaussianTerms(double[] N, int[] D, double[] T, double[] Eta, double[] Epsilon,
    double[] BetaTau, double[] GammaTau, double[] BetaDelta, double[] GammaDelta)
{
    /// <summary>No terms.</summary>
    public static GaussianTerms None { get; } = new([], [], [], [], [], [], [], [], []);
}

/// <summary>The non-analytic critical-region terms of Span and Wagner (1996, eq. 6.1) and Wagner and Pruss (2002).</summary>
public sealed record NonAnalyticTerms(double[] N, double[] SmallA, double[] SmallB, double[] Beta, double[] A, double[] B, double[] C, double[] D)
{
    /// <summary>No terms.</summary>
    public static NonAnalyticTerms None { get; } = new([], [], [], [], [], [], [], []);
}

/// <summary>alphar(delta, tau) of one pure fluid or of one departure function.</summary>
public sealed record ResidualTerms(PowerTerms Power, GaussianTerms Gaussian, NonAnalyticTerms NonAnalytic);
