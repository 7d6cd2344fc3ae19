using Coldwright.Machine.Flow;

namespace Coldwright.Machine.ColdVessel;

/// <summary>Nusselt numbers of free convection at a surface in a large fluid, laminar and turbulent in one formula.</summary>
public static class FreeConvection
{
    /// <summary>Source and uncertainty of <see cref="HorizontalCylinder"/>.</summary>
    public static Correlation HorizontalCylinderCorrelation { get; } = new(
        "Churchill-Chu (1975) free convection round a horizontal cylinder",
        "S. W. Churchill, H. H. S. Chu, Int. J. Heat Mass Transfer 18, 1975, 1049-1053; uncertainty: our assumption",
        0.15,
        "Rayleigh number on the diameter 1e-5 to 1e12, any Prandtl number; single tube");

    /// <summary>Source and uncertainty of <see cref="VerticalPlate"/>.</summary>
    public static Correlation VerticalPlateCorrelation { get; } = new(
        "Churchill-Chu (1975) free convection along a vertical plate",
        "S. W. Churchill, H. H. S. Chu, Int. J. Heat Mass Transfer 18, 1975, 1323-1329; uncertainty: our assumption",
        0.15,
        "Rayleigh number on the height up to 1e12, any Prandtl number");

    /// <summary>Nu = {0.60 + 0.387 Ra^(1/6) / [1 + (0.559/Pr)^(9/16)]^(8/27)}^2, mean round the cylinder, on the diameter.</summary>
    /// <param name="rayleigh">g (density difference) D^3 cp / (kinematic viscosity x conductivity), 0 to 1e12; dimensionless.</param>
    /// <param name="prandtl">Prandtl number, above 0.</param>
    /// <returns>Nusselt number. One standard deviation 15 %.</returns>
    /// <remarks>Source: Churchill and Chu, Int. J. Heat Mass Transfer 18 (1975) 1049.</remarks>
    public static double HorizontalCylinder(double rayleigh, double prandtl) => Both(rayleigh, prandtl, 0.60, 0.559);

    /// <summary>Nu = {0.825 + 0.387 Ra^(1/6) / [1 + (0.492/Pr)^(9/16)]^(8/27)}^2, mean over the height, on the height.</summary>
    /// <param name="rayleigh">With the height in place of the diameter, 0 to 1e12; dimensionless.</param>
    /// <param name="prandtl">Prandtl number, above 0.</param>
    /// <returns>Nusselt number. One standard deviation 15 %.</returns>
    /// <remarks>Source: Churchill and Chu, Int. J. Heat Mass Transfer 18 (1975) 1323.</remarks>
    public static double VerticalPlate(double rayleigh, double prandtl) => Both(rayleigh, prandtl, 0.825, 0.492);

    private static double Both(double rayleigh, double prandtl, double still, double constant)
    {
        FlowGuard.NotNegative(rayleigh, nameof(rayleigh), "(dimensionless)");
        FlowGuard.Positive(prandtl, nameof(prandtl), "(dimensionless)");
        double root = still + 0.387 * Math.Pow(rayleigh, 1.0 / 6) / Math.Pow(1 + Math.Pow(constant / prandtl, 9.0 / 16), 8.0 / 27);
        return root * root;
    }
}
