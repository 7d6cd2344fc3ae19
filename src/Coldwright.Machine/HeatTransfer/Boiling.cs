using Coldwright.Machine.Flow;

namespace Coldwright.Machine.HeatTransfer;

/// <summary>Coefficients of a liquid boiling in flow inside a tube, W/(m2 K), before any mixture correction.</summary>
public static class Boiling
{
    private const double StandardGravity = 9.80665;

    /// <summary>Source and uncertainty of <see cref="LiuWinterton"/>.</summary>
    public static Correlation LiuWintertonCorrelation { get; } = new(
        "Liu-Winterton (1991) flow boiling",
        "Z. Liu, R. H. S. Winterton, Int. J. Heat Mass Transfer 34, 1991, 2759-2766",
        0.25,
        "bore 3 to 32 mm, mass flux 12 to 8180 kg/(m2 s), quality 0 to 0.95; range and the 20 % mean deviation from memory");

    /// <summary>Source and uncertainty of <see cref="ChenBennett"/>.</summary>
    public static Correlation ChenBennettCorrelation { get; } = new(
        "Chen-Bennett (1980) flow boiling",
        "D. L. Bennett, J. C. Chen, AIChE J. 26, 1980, 454-461; uncertainty: our assumption",
        0.30,
        "vertical tubes, annular flow, quality up to 0.7");

    /// <summary>Source and uncertainty of <see cref="GungorWinterton"/>.</summary>
    public static Correlation GungorWintertonCorrelation { get; } = new(
        "Gungor-Winterton (1987) flow boiling",
        "K. E. Gungor, R. H. S. Winterton, Chem. Eng. Res. Des. 65, 1987, 148-156; constants from memory",
        0.25,
        "bore 3 to 32 mm, saturated boiling before dry-out; range from memory");

    /// <summary>
    /// h^2 = (F h_LO)^2 + (S h_pool)^2; F = [1 + x Pr (rhoL/rhoV - 1)]^0.35, S = 1 / (1 + 0.055 F^0.1 Re_LO^0.16),
    /// h_LO = 0.023 Re_LO^0.8 Pr^0.4 kL/D, h_pool from <see cref="PoolBoiling"/> at the given wall superheat. For comparison.
    /// </summary>
    /// <param name="flow">Needs flux, quality, bore, both densities, the liquid's transport properties, reduced pressure, molar mass.</param>
    /// <param name="wallSuperheatK">Wall less saturation temperature, K, at least 0.</param>
    /// <returns>W/(m2 K). One standard deviation 25 %.</returns>
    /// <remarks>Source: Liu and Winterton, Int. J. Heat Mass Transfer 34 (1991) 2759.</remarks>
    public static double LiuWinterton(in TwoPhaseFlow flow, double wallSuperheatK)
    {
        flow.RequireReducedPressure();
        return LiuWintertonWithPool(flow, PoolBoiling.CooperAtSuperheat(flow.ReducedPressure, flow.MolarMass, wallSuperheatK));
    }

    /// <summary>The same law at a given heat flux, as its authors fitted it; far less sensitive than the form with the superheat.</summary>
    /// <param name="flow">As for <see cref="LiuWinterton"/>.</param>
    /// <param name="heatFlux">Heat into the fluid per bore area, W/m2, at least 0.</param>
    /// <returns>W/(m2 K). One standard deviation 25 %.</returns>
    /// <remarks>Source: Liu and Winterton, Int. J. Heat Mass Transfer 34 (1991) 2759.</remarks>
    public static double LiuWintertonAtFlux(in TwoPhaseFlow flow, double heatFlux)
    {
        flow.RequireReducedPressure();
        return LiuWintertonWithPool(flow, PoolBoiling.CooperAtFlux(flow.ReducedPressure, flow.MolarMass, heatFlux));
    }

    /// <summary>
    /// h = F h_L + S h_fz; F = [(Pr+1)/2]^0.444 (1 + Xtt^(-1/2))^1.78, S = [1 - exp(-F h_L X0/kL)] / (F h_L X0/kL),
    /// X0 = 0.041 [sigma/(g (rhoL - rhoV))]^(1/2), h_fz from <see cref="PoolBoiling"/>. For comparison.
    /// </summary>
    /// <param name="flow">Needs flux, quality (above 0, below 1), bore, both phases' density and viscosity, liquid conductivity and heat capacity, latent heat, surface tension.</param>
    /// <param name="wallSuperheatK">Wall less saturation temperature, K, at least 0.</param>
    /// <param name="saturationPressureRisePa">Saturation pressure at the wall temperature less the pressure, Pa, at least 0.</param>
    /// <returns>W/(m2 K). One standard deviation 30 %.</returns>
    /// <remarks>Source: Bennett and Chen, AIChE J. 26 (1980) 454.</remarks>
    public static double ChenBennett(in TwoPhaseFlow flow, double wallSuperheatK, double saturationPressureRisePa)
    {
        flow.RequireLiquid();
        flow.RequireDensities();
        FlowGuard.Positive(flow.VapourViscosity, nameof(flow.VapourViscosity), "Pa s");
        FlowGuard.Positive(flow.SurfaceTension, nameof(flow.SurfaceTension), "N/m");
        if (!(flow.Quality is > 0 and < 1))
        {
            throw new ArgumentException($"Quality is {flow.Quality}; this form needs it above 0 and below 1 (dimensionless)", nameof(flow));
        }

        double liquid = SinglePhase.DittusBoelter(flow.LiquidReynolds, flow.LiquidPrandtl) * flow.LiquidConductivity / flow.DiameterM;
        double enhancement = Math.Pow((flow.LiquidPrandtl + 1) / 2, 0.444) * Math.Pow(1 + (1 / Math.Sqrt(flow.MartinelliParameter)), 1.78);
        double bubble = 0.041 * Math.Sqrt(flow.SurfaceTension / (StandardGravity * (flow.LiquidDensity - flow.VapourDensity)));
        double y = enhancement * liquid * bubble / flow.LiquidConductivity;
        double suppression = (1 - Math.Exp(-y)) / y;
        return (enhancement * liquid) + (suppression * PoolBoiling.ForsterZuber(flow, wallSuperheatK, saturationPressureRisePa));
    }

    /// <summary>
    /// Default. h = h_L [1 + 3000 Bo^0.86 + 1.12 (x/(1-x))^0.75 (rhoL/rhoV)^0.41], h_L = 0.023 Re_L^0.8 Pr^0.4 kL/D,
    /// Bo = q / (G h_fg). Chosen because it needs neither a critical pressure nor a saturation curve, which a mixture does not have,
    /// and because its nucleate part fades by itself at the small heat fluxes of a recuperator.
    /// </summary>
    /// <param name="flow">Needs flux, quality (below 1), bore, both densities, the liquid's transport properties, latent heat.</param>
    /// <param name="heatFlux">Heat into the fluid per bore area, W/m2; counted as 0 if negative.</param>
    /// <returns>W/(m2 K). One standard deviation 25 %. The liquid alone at x = 0 and no flux; falls to 0 at x = 1, see <see cref="InTube"/>.</returns>
    /// <remarks>Source: Gungor and Winterton, Chem. Eng. Res. Des. 65 (1987) 148; constants from memory.</remarks>
    public static double GungorWinterton(in TwoPhaseFlow flow, double heatFlux)
    {
        flow.RequireLiquid();
        flow.RequireDensities();
        FlowGuard.Positive(flow.LatentHeat, nameof(flow.LatentHeat), "J/kg");
        double x = flow.Quality;
        if (x >= 1)
        {
            return 0;
        }

        double boiling = Math.Max(heatFlux, 0) / (flow.MassFlux * flow.LatentHeat);
        double liquid = SinglePhase.DittusBoelter(flow.LiquidReynolds, flow.LiquidPrandtl) * flow.LiquidConductivity / flow.DiameterM;
        double enhancement = 1 + (3000 * Math.Pow(boiling, 0.86))
            + (1.12 * Math.Pow(x / (1 - x), 0.75) * Math.Pow(flow.LiquidDensity / flow.VapourDensity, 0.41));
        return liquid * enhancement;
    }

    private static double LiuWintertonWithPool(in TwoPhaseFlow flow, double pool)
    {
        flow.RequireLiquid();
        flow.RequireDensities();
        double allLiquid = SinglePhase.DittusBoelter(flow.AllLiquidReynolds, flow.LiquidPrandtl) * flow.LiquidConductivity / flow.DiameterM;
        double enhancement = Math.Pow(1 + (flow.Quality * flow.LiquidPrandtl * ((flow.LiquidDensity / flow.VapourDensity) - 1)), 0.35);
        double suppression = 1 / (1 + (0.055 * Math.Pow(enhancement, 0.1) * Math.Pow(flow.AllLiquidReynolds, 0.16)));
        return Math.Sqrt(Math.Pow(enhancement * allLiquid, 2) + Math.Pow(suppression * pool, 2));
    }
}
