namespace Coldwright.Machine.Flow;

/// <summary>Frictional pressure gradient of liquid and vapour flowing together in a tube.</summary>
/// <remarks>
/// Both forms equal the liquid alone at quality 0 and the vapour alone at quality 1. The phase gradients use <see cref="Friction"/>
/// (laminar to turbulent, rough, coiled) in place of the smooth-tube laws of the papers; with a smooth straight turbulent tube they agree.
/// </remarks>
public static class TwoPhaseGradient
{
    private const double StandardGravity = 9.80665;

    /// <summary>Source and uncertainty of <see cref="MuellerSteinhagenHeck(double, double, double, double, double, double, double, double, double)"/>.</summary>
    public static Correlation MuellerSteinhagenHeckCorrelation { get; } = new(
        "Mueller-Steinhagen and Heck (1986) two-phase friction",
        "H. Mueller-Steinhagen, K. Heck, Chem. Eng. Process. 20, 1986, 297-308; uncertainty: our assumption",
        0.30,
        "bore 4 to 392 mm, mass flux 50 to 2490 kg/(m2 s), quality 0 to 1; range from memory");

    /// <summary>Source and uncertainty of <see cref="Friedel"/>.</summary>
    public static Correlation FriedelCorrelation { get; } = new(
        "Friedel (1979) two-phase friction",
        "L. Friedel, European Two-Phase Flow Group Meeting, Ispra 1979, paper E2; uncertainty: our assumption",
        0.35,
        "viscosity ratio liquid to vapour below 1000, bore above 4 mm; range from memory");

    /// <summary>
    /// Default. dp/dz = [a + 2 (b - a) x] (1 - x)^(1/3) + b x^3, with a and b the gradients of the whole flow as liquid and as vapour.
    /// </summary>
    /// <param name="massFlux">Whole flow, kg/(m2 s), at least 0.</param>
    /// <param name="quality">Vapour mass fraction, 0 to 1.</param>
    /// <param name="diameterM">Bore, m.</param>
    /// <param name="liquidDensity">kg/m3.</param>
    /// <param name="vapourDensity">kg/m3.</param>
    /// <param name="liquidViscosity">Pa s.</param>
    /// <param name="vapourViscosity">Pa s.</param>
    /// <param name="relativeRoughness">Roughness over bore, 0 to 0.05.</param>
    /// <param name="diameterOverCoil">Bore over mean coil diameter, 0 for straight.</param>
    /// <returns>Pa/m, positive. One standard deviation 30 %.</returns>
    /// <remarks>Source: Mueller-Steinhagen and Heck, Chem. Eng. Process. 20 (1986) 297.</remarks>
    public static double MuellerSteinhagenHeck(
        double massFlux, double quality, double diameterM, double liquidDensity, double vapourDensity,
        double liquidViscosity, double vapourViscosity, double relativeRoughness = 0, double diameterOverCoil = 0)
    {
        double a = PressureGradient.SinglePhase(massFlux, diameterM, liquidDensity, liquidViscosity, relativeRoughness, diameterOverCoil);
        double b = PressureGradient.SinglePhase(massFlux, diameterM, vapourDensity, vapourViscosity, relativeRoughness, diameterOverCoil);
        return MuellerSteinhagenHeck(quality, a, b);
    }

    /// <summary>The same law from the two phase gradients themselves.</summary>
    /// <param name="quality">Vapour mass fraction, 0 to 1.</param>
    /// <param name="allLiquidGradient">Gradient of the whole flow as liquid, Pa/m.</param>
    /// <param name="allVapourGradient">Gradient of the whole flow as vapour, Pa/m.</param>
    /// <returns>Pa/m, positive.</returns>
    public static double MuellerSteinhagenHeck(double quality, double allLiquidGradient, double allVapourGradient)
    {
        FlowGuard.Fraction(quality, nameof(quality));
        double line = allLiquidGradient + (2 * (allVapourGradient - allLiquidGradient) * quality);
        return (line * Math.Cbrt(1 - quality)) + (allVapourGradient * quality * quality * quality);
    }

    /// <summary>
    /// dp/dz = a [E + 3.24 F H Fr^(-0.0454) We^(-0.035)], E = (1-x)^2 + x^2 b/a, F = x^0.78 (1-x)^0.224,
    /// H = (rhoL/rhoV)^0.91 (muV/muL)^0.19 (1 - muV/muL)^0.7; Fr and We with the homogeneous density.
    /// </summary>
    /// <param name="massFlux">Whole flow, kg/(m2 s), at least 0.</param>
    /// <param name="quality">Vapour mass fraction, 0 to 1.</param>
    /// <param name="diameterM">Bore, m.</param>
    /// <param name="liquidDensity">kg/m3.</param>
    /// <param name="vapourDensity">kg/m3.</param>
    /// <param name="liquidViscosity">Pa s.</param>
    /// <param name="vapourViscosity">Pa s; below the liquid's, else the interaction term is dropped.</param>
    /// <param name="surfaceTension">N/m.</param>
    /// <param name="relativeRoughness">Roughness over bore, 0 to 0.05.</param>
    /// <param name="diameterOverCoil">Bore over mean coil diameter, 0 for straight.</param>
    /// <returns>Pa/m, positive. One standard deviation 35 %. For comparison: needs a surface tension, which near a critical point is the least known.</returns>
    /// <remarks>Source: Friedel (1979); worked example of S. M. Ghiaasiaan, Two-Phase Flow, Boiling and Condensation.</remarks>
    public static double Friedel(
        double massFlux, double quality, double diameterM, double liquidDensity, double vapourDensity,
        double liquidViscosity, double vapourViscosity, double surfaceTension, double relativeRoughness = 0, double diameterOverCoil = 0)
    {
        FlowGuard.Fraction(quality, nameof(quality));
        FlowGuard.Positive(surfaceTension, nameof(surfaceTension), "N/m");
        double a = PressureGradient.SinglePhase(massFlux, diameterM, liquidDensity, liquidViscosity, relativeRoughness, diameterOverCoil);
        double b = PressureGradient.SinglePhase(massFlux, diameterM, vapourDensity, vapourViscosity, relativeRoughness, diameterOverCoil);
        double x = quality;
        double phases = (a * (1 - x) * (1 - x)) + (b * x * x);
        double viscosityRatio = vapourViscosity / liquidViscosity;
        if (massFlux == 0 || viscosityRatio >= 1)
        {
            return phases;
        }

        double homogeneous = VoidFraction.HomogeneousDensity(x, liquidDensity, vapourDensity);
        double froude = massFlux * massFlux / (StandardGravity * diameterM * homogeneous * homogeneous);
        double weber = massFlux * massFlux * diameterM / (surfaceTension * homogeneous);
        double f = Math.Pow(x, 0.78) * Math.Pow(1 - x, 0.224);
        double h = Math.Pow(liquidDensity / vapourDensity, 0.91) * Math.Pow(viscosityRatio, 0.19) * Math.Pow(1 - viscosityRatio, 0.7);
        return phases + (a * 3.24 * f * h / (Math.Pow(froude, 0.0454) * Math.Pow(weber, 0.035)));
    }
}
