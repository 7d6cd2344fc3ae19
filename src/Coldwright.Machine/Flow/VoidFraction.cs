namespace Coldwright.Machine.Flow;

/// <summary>Share of the cross-section filled with vapour. Sets the liquid hold-up and the acceleration pressure drop.</summary>
public static class VoidFraction
{
    private const double StandardGravity = 9.80665;

    /// <summary>Source and uncertainty of <see cref="Rouhani"/>.</summary>
    public static Correlation RouhaniCorrelation { get; } = new(
        "Rouhani-Axelsson (1970) void fraction, Steiner's form for horizontal tubes",
        "S. Z. Rouhani, E. Axelsson, Int. J. Heat Mass Transfer 13, 1970, 383-393; D. Steiner, VDI Heat Atlas, 1993; constants from memory",
        0.10,
        "all qualities, mass flux above about 50 kg/(m2 s)");

    /// <summary>Source and uncertainty of <see cref="Zivi"/>.</summary>
    public static Correlation ZiviCorrelation { get; } = new(
        "Zivi (1964) void fraction",
        "S. M. Zivi, J. Heat Transfer 86, 1964, 247-252",
        0.15,
        "annular flow without entrainment");

    /// <summary>
    /// Default, drift flux: eps = (x/rhoV) / { [1 + 0.12 (1-x)] [x/rhoV + (1-x)/rhoL] + 1.18 (1-x) [g sigma (rhoL - rhoV)]^(1/4) / (G rhoL^(1/2)) }.
    /// </summary>
    /// <param name="massFlux">kg/(m2 s), above 0.</param>
    /// <param name="quality">Vapour mass fraction, 0 to 1.</param>
    /// <param name="liquidDensity">kg/m3.</param>
    /// <param name="vapourDensity">kg/m3, not above the liquid's.</param>
    /// <param name="surfaceTension">N/m, at least 0.</param>
    /// <returns>Vapour area share, 0 at quality 0, 1 at quality 1. One standard deviation 10 % of the liquid or vapour share, whichever is smaller.</returns>
    /// <remarks>Source: Rouhani and Axelsson (1970), horizontal form of Steiner (1993).</remarks>
    public static double Rouhani(double massFlux, double quality, double liquidDensity, double vapourDensity, double surfaceTension)
    {
        Check(quality, liquidDensity, vapourDensity);
        FlowGuard.Positive(massFlux, nameof(massFlux), "kg/(m2 s)");
        FlowGuard.NotNegative(surfaceTension, nameof(surfaceTension), "N/m");
        double x = quality;
        double distribution = (1 + (0.12 * (1 - x))) * ((x / vapourDensity) + ((1 - x) / liquidDensity));
        double drift = 1.18 * (1 - x) * Math.Pow(StandardGravity * surfaceTension * (liquidDensity - vapourDensity), 0.25)
            / (massFlux * Math.Sqrt(liquidDensity));
        return x / vapourDensity / (distribution + drift);
    }

    /// <summary>Least kinetic energy: eps = 1 / [1 + (1-x)/x (rhoV/rhoL)^(2/3)].</summary>
    /// <param name="quality">Vapour mass fraction, 0 to 1.</param>
    /// <param name="liquidDensity">kg/m3.</param>
    /// <param name="vapourDensity">kg/m3, not above the liquid's.</param>
    /// <returns>Vapour area share. For comparison, and where the flow is unknown (standstill hold-up has no meaning).</returns>
    /// <remarks>Source: Zivi (1964), J. Heat Transfer 86, 247.</remarks>
    public static double Zivi(double quality, double liquidDensity, double vapourDensity)
    {
        Check(quality, liquidDensity, vapourDensity);
        return quality / (quality + ((1 - quality) * Math.Pow(vapourDensity / liquidDensity, 2.0 / 3)));
    }

    /// <summary>No slip: eps = (x/rhoV) / [x/rhoV + (1-x)/rhoL].</summary>
    /// <param name="quality">Vapour mass fraction, 0 to 1.</param>
    /// <param name="liquidDensity">kg/m3.</param>
    /// <param name="vapourDensity">kg/m3, not above the liquid's.</param>
    /// <returns>Vapour area share: the upper bound, right for capillaries and very high mass flux.</returns>
    /// <remarks>Definition; both phases at one velocity.</remarks>
    public static double Homogeneous(double quality, double liquidDensity, double vapourDensity)
    {
        Check(quality, liquidDensity, vapourDensity);
        return quality / vapourDensity * HomogeneousDensity(quality, liquidDensity, vapourDensity);
    }

    /// <summary>Density of the flow without slip, 1 / [x/rhoV + (1-x)/rhoL].</summary>
    /// <param name="quality">Vapour mass fraction, 0 to 1.</param>
    /// <param name="liquidDensity">kg/m3.</param>
    /// <param name="vapourDensity">kg/m3.</param>
    /// <returns>kg/m3.</returns>
    public static double HomogeneousDensity(double quality, double liquidDensity, double vapourDensity) =>
        1 / ((quality / vapourDensity) + ((1 - quality) / liquidDensity));

    private static void Check(double quality, double liquidDensity, double vapourDensity)
    {
        FlowGuard.Fraction(quality, nameof(quality));
        FlowGuard.Positive(vapourDensity, nameof(vapourDensity), "kg/m3");
        if (!(liquidDensity >= vapourDensity && double.IsFinite(liquidDensity)))
        {
            throw new ArgumentException(
                $"liquidDensity is {liquidDensity} kg/m3; it must be finite and at least the vapour's, {vapourDensity} kg/m3", nameof(liquidDensity));
        }
    }
}
