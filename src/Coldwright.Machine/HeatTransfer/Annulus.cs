using Coldwright.Machine.Flow;

namespace Coldwright.Machine.HeatTransfer;

/// <summary>Which wall of an annulus takes part in the heat transfer; the other is taken as insulated.</summary>
public enum AnnulusWall
{
    /// <summary>The outside of the inner tube: a tube-in-tube recuperator.</summary>
    Inner,

    /// <summary>The inside of the outer tube: leak from the room.</summary>
    Outer,
}

/// <summary>
/// One phase flowing between two concentric tubes. Reynolds and Nusselt numbers are on the hydraulic diameter, outer bore less inner
/// outside diameter; a = inner outside diameter / outer bore.
/// </summary>
public static class Annulus
{
    /// <summary>Source and uncertainty of <see cref="Nusselt"/>.</summary>
    public static Correlation NusseltCorrelation { get; } = new(
        "Gnielinski (2009) concentric annulus",
        "V. Gnielinski, Heat Transfer Eng. 30, 2009, 431-436; laminar limits from K. Stephan as in the VDI Heat Atlas; constants from memory",
        0.12,
        "smooth, fully developed, diameter ratio 0.02 to 1; the tube is assumed centred");

    /// <summary>
    /// Turbulent: (f/8) Re Pr / [k1 + 12.7 (f/8)^(1/2) (Pr^(2/3) - 1)] F, k1 = 1.07 + 900/Re - 0.63/(1 + 10 Pr),
    /// f = (1.8 log10 Re* - 1.5)^(-2), F = 0.75 a^(-0.17) (inner wall) or 0.9 - 0.15 a^0.6 (outer wall). Laminar: 3.66 + 1.2 a^(-0.8)
    /// (inner) or 3.66 + 1.2 a^0.5 (outer). Linear in Re between 2300 and 4000.
    /// </summary>
    /// <param name="reynolds">On the hydraulic diameter, at least 0.</param>
    /// <param name="prandtl">0.5 to 2000.</param>
    /// <param name="diameterRatio">a, above 0 and below 1.</param>
    /// <param name="wall">The wall that transfers heat.</param>
    /// <returns>Nusselt number on the hydraulic diameter. One standard deviation 12 %, more where the inner tube lies off centre.</returns>
    /// <remarks>Source: Gnielinski (2009), after Petukhov and Roizen; constants from memory.</remarks>
    public static double Nusselt(double reynolds, double prandtl, double diameterRatio, AnnulusWall wall)
    {
        FlowGuard.NotNegative(reynolds, nameof(reynolds), "(dimensionless)");
        FlowGuard.Positive(prandtl, nameof(prandtl), "(dimensionless)");
        CheckRatio(diameterRatio);
        double laminar = wall == AnnulusWall.Inner
            ? 3.66 + (1.2 * Math.Pow(diameterRatio, -0.8))
            : 3.66 + (1.2 * Math.Sqrt(diameterRatio));
        if (reynolds <= SinglePhase.LaminarEnd)
        {
            return laminar;
        }

        double re = Math.Max(reynolds, SinglePhase.TurbulentStart);
        double eighth = Math.Pow((1.8 * Math.Log10(re * ShapeFactor(diameterRatio))) - 1.5, -2) / 8;
        double k1 = 1.07 + (900 / re) - (0.63 / (1 + (10 * prandtl)));
        double factor = wall == AnnulusWall.Inner ? 0.75 * Math.Pow(diameterRatio, -0.17) : 0.9 - (0.15 * Math.Pow(diameterRatio, 0.6));
        double turbulent = eighth * re * prandtl / (k1 + (12.7 * Math.Sqrt(eighth) * (Math.Pow(prandtl, 2.0 / 3) - 1))) * factor;
        return SinglePhase.Transition(reynolds, laminar, turbulent);
    }

    /// <summary>
    /// Factor on the tube's turbulent Nusselt number: 0.86 a^(-0.16) at the inner wall, 1 - 0.14 a^0.6 at the outer. For comparison,
    /// and for two-phase flow in an annulus, whose film is computed as in a tube of the hydraulic diameter.
    /// </summary>
    /// <param name="diameterRatio">a, above 0 and below 1.</param>
    /// <param name="wall">The wall that transfers heat.</param>
    /// <returns>Dimensionless; about 10 %.</returns>
    /// <remarks>Source: B. S. Petukhov, L. I. Roizen, High Temperature 2 (1964) 65; constants from memory.</remarks>
    public static double PetukhovRoizenFactor(double diameterRatio, AnnulusWall wall)
    {
        CheckRatio(diameterRatio);
        return wall == AnnulusWall.Inner ? 0.86 * Math.Pow(diameterRatio, -0.16) : 1 - (0.14 * Math.Pow(diameterRatio, 0.6));
    }

    /// <summary>Darcy friction factor on the hydraulic diameter: Churchill's at Re* = Re K(a), exact when laminar.</summary>
    /// <param name="reynolds">On the hydraulic diameter, above 0.</param>
    /// <param name="relativeRoughness">Roughness over hydraulic diameter.</param>
    /// <param name="diameterRatio">a, above 0 and below 1.</param>
    /// <returns>Darcy friction factor; 1.5 x 64/Re for a narrow laminar gap. One standard deviation 6 % (our assumption).</returns>
    /// <remarks>Source: O. C. Jones, J. C. M. Leung, J. Fluids Eng. 103 (1981) 615, for the equivalent Reynolds number.</remarks>
    public static double DarcyFriction(double reynolds, double relativeRoughness, double diameterRatio)
    {
        CheckRatio(diameterRatio);
        return Friction.Churchill(reynolds * ShapeFactor(diameterRatio), relativeRoughness);
    }

    /// <summary>Re*/Re = [(1 + a^2) ln a + (1 - a^2)] / [(1 - a)^2 ln a]: 1 for a vanishing core, 2/3 for a narrow gap.</summary>
    private static double ShapeFactor(double a)
    {
        // The closed form loses all digits in a narrow gap; 2/3 is its limit, reached to 1e-5 there.
        if (a > 0.99)
        {
            return 2.0 / 3;
        }

        double logarithm = Math.Log(a);
        return (((1 + (a * a)) * logarithm) + (1 - (a * a))) / ((1 - a) * (1 - a) * logarithm);
    }

    private static void CheckRatio(double diameterRatio)
    {
        if (!(diameterRatio is > 0 and < 1))
        {
            throw new ArgumentException($"diameterRatio is {diameterRatio}; it must lie between 0 and 1 (dimensionless)", nameof(diameterRatio));
        }
    }
}
