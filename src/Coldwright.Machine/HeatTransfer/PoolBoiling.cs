using Coldwright.Machine.Flow;

namespace Coldwright.Machine.HeatTransfer;

/// <summary>Nucleate boiling without flow, W/(m2 K): the bubble part of the flow boiling correlations.</summary>
public static class PoolBoiling
{
    private const double FluxExponent = 0.67;

    /// <summary>Source and uncertainty of Cooper's two forms.</summary>
    public static Correlation CooperCorrelation { get; } = new(
        "Cooper (1984) pool boiling",
        "M. G. Cooper, Adv. Heat Transfer 16, 1984, 157-239; uncertainty: our assumption",
        0.30,
        "reduced pressure 0.001 to 0.9, molar mass 2 to 200 g/mol, roughness 1 micrometre");

    /// <summary>h = 55 pr^0.12 (-log10 pr)^(-0.55) M^(-1/2) q^0.67, M in g/mol, roughness 1 micrometre.</summary>
    /// <param name="reducedPressure">0.001 to 0.9.</param>
    /// <param name="molarMass">kg/mol.</param>
    /// <param name="heatFlux">W/m2, at least 0.</param>
    /// <returns>W/(m2 K). One standard deviation 30 %.</returns>
    /// <remarks>Source: Cooper, Adv. Heat Transfer 16 (1984) 157.</remarks>
    public static double CooperAtFlux(double reducedPressure, double molarMass, double heatFlux)
    {
        FlowGuard.NotNegative(heatFlux, nameof(heatFlux), "W/m2");
        return Constant(reducedPressure, molarMass) * Math.Pow(heatFlux, FluxExponent);
    }

    /// <summary>The same law solved for a given wall superheat: with q = h dT, h = C^(1/0.33) dT^(0.67/0.33).</summary>
    /// <param name="reducedPressure">0.001 to 0.9.</param>
    /// <param name="molarMass">kg/mol.</param>
    /// <param name="wallSuperheatK">K, at least 0.</param>
    /// <returns>W/(m2 K). One standard deviation 90 %: the third power of the 30 % above.</returns>
    public static double CooperAtSuperheat(double reducedPressure, double molarMass, double wallSuperheatK)
    {
        FlowGuard.NotNegative(wallSuperheatK, nameof(wallSuperheatK), "K");
        return Math.Pow(Constant(reducedPressure, molarMass) * Math.Pow(wallSuperheatK, FluxExponent), 1 / (1 - FluxExponent));
    }

    /// <summary>
    /// h = 0.00122 kL^0.79 cpL^0.45 rhoL^0.49 / (sigma^0.5 muL^0.29 h_fg^0.24 rhoV^0.24) dT^0.24 dp^0.75.
    /// </summary>
    /// <param name="flow">Needs both densities, liquid viscosity, conductivity and heat capacity, latent heat, surface tension.</param>
    /// <param name="wallSuperheatK">K, at least 0.</param>
    /// <param name="saturationPressureRisePa">Saturation pressure at the wall temperature less the pressure, Pa, at least 0.</param>
    /// <returns>W/(m2 K). About 30 %.</returns>
    /// <remarks>Source: H. K. Forster, N. Zuber, AIChE J. 1 (1955) 531.</remarks>
    public static double ForsterZuber(in TwoPhaseFlow flow, double wallSuperheatK, double saturationPressureRisePa)
    {
        FlowGuard.NotNegative(wallSuperheatK, nameof(wallSuperheatK), "K");
        FlowGuard.NotNegative(saturationPressureRisePa, nameof(saturationPressureRisePa), "Pa");
        FlowGuard.Positive(flow.LatentHeat, nameof(flow.LatentHeat), "J/kg");
        double above = Math.Pow(flow.LiquidConductivity, 0.79) * Math.Pow(flow.LiquidHeatCapacity, 0.45) * Math.Pow(flow.LiquidDensity, 0.49);
        double below = Math.Sqrt(flow.SurfaceTension) * Math.Pow(flow.LiquidViscosity, 0.29)
            * Math.Pow(flow.LatentHeat * flow.VapourDensity, 0.24);
        return 0.00122 * above / below * Math.Pow(wallSuperheatK, 0.24) * Math.Pow(saturationPressureRisePa, 0.75);
    }

    private static double Constant(double reducedPressure, double molarMass)
    {
        FlowGuard.Positive(molarMass, nameof(molarMass), "kg/mol");
        if (!(reducedPressure is > 0 and < 1))
        {
            throw new ArgumentException($"reducedPressure is {reducedPressure}; it must lie between 0 and 1 (dimensionless)", nameof(reducedPressure));
        }

        return 55 * Math.Pow(reducedPressure, 0.12) * Math.Pow(-Math.Log10(reducedPressure), -0.55) / Math.Sqrt(molarMass * 1000);
    }
}
