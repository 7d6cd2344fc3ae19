using Coldwright.Machine.Flow;

namespace Coldwright.Machine.HeatTransfer;

/// <summary>Film coefficients of a vapour condensing inside a tube, W/(m2 K), before any mixture correction.</summary>
public static class Condensation
{
    /// <summary>Source and uncertainty of <see cref="Shah"/>.</summary>
    public static Correlation ShahCorrelation { get; } = new(
        "Shah (1979) condensation in tubes",
        "M. M. Shah, Int. J. Heat Mass Transfer 22, 1979, 547-556; data base widened in M. M. Shah, HVAC&R Research 15(5), 2009 (mean deviation 14.4 %, revised form)",
        0.18,
        "bore 7 to 40 mm, reduced pressure 0.002 to 0.44, mass flux 11 to 211 kg/(m2 s), liquid Pr 1 to 13; range from memory");

    /// <summary>Source and uncertainty of <see cref="BoykoKruzhilin"/>.</summary>
    public static Correlation BoykoKruzhilinCorrelation { get; } = new(
        "Boyko-Kruzhilin (1967) condensation in tubes",
        "L. D. Boyko, G. N. Kruzhilin, Int. J. Heat Mass Transfer 10, 1967, 361-373; uncertainty: our assumption",
        0.25,
        "steam, vertical and horizontal tubes, shear-controlled film");

    /// <summary>Source and uncertainty of <see cref="CavalliniSmithZecchin"/>.</summary>
    public static Correlation CavalliniSmithZecchinCorrelation { get; } = new(
        "Cavallini-Smith-Zecchin (1974) condensation in tubes",
        "A. Cavallini, J. R. Smith, R. Zecchin, Proc. 5th Int. Heat Transfer Conf., Tokyo 1974; uncertainty: our assumption",
        0.25,
        "annular flow; refrigerants; equivalent Reynolds number 7000 to 53000 (Re_L 5000 to 500000), from memory");

    /// <summary>Source and uncertainty of <see cref="AkersDeansCrosser"/>.</summary>
    public static Correlation AkersDeansCrosserCorrelation { get; } = new(
        "Akers-Deans-Crosser (1959) condensation in tubes",
        "W. W. Akers, H. A. Deans, O. K. Crosser, Chem. Eng. Prog. Symp. Ser. 55(29), 1959, 171-176; uncertainty: our assumption",
        0.30,
        "propane, methanol, refrigerants; jumps by 22 % at an equivalent Reynolds number of 50000");

    /// <summary>
    /// Default. h = h_LO [(1-x)^0.8 + 3.8 x^0.76 (1-x)^0.04 / pr^0.38], h_LO = 0.023 Re_LO^0.8 Pr^0.4 kL/D. Chosen because it is the
    /// most widely tested, gives the liquid alone at x = 0, and lies among the other three: within 15 % of Boyko-Kruzhilin, below the other two.
    /// </summary>
    /// <param name="flow">Needs flux, quality, bore, liquid viscosity, conductivity and heat capacity, reduced pressure (0.002 to 0.44).</param>
    /// <returns>W/(m2 K). One standard deviation 18 %. Falls to 0 at x = 1; <see cref="InTube"/> joins it to the vapour.</returns>
    /// <remarks>Source: Shah, Int. J. Heat Mass Transfer 22 (1979) 547.</remarks>
    public static double Shah(in TwoPhaseFlow flow)
    {
        flow.RequireLiquid();
        flow.RequireReducedPressure();
        double x = flow.Quality;
        double allLiquid = SinglePhase.DittusBoelter(flow.AllLiquidReynolds, flow.LiquidPrandtl) * flow.LiquidConductivity / flow.DiameterM;
        return allLiquid * (Math.Pow(1 - x, 0.8) + (3.8 * Math.Pow(x, 0.76) * Math.Pow(1 - x, 0.04) / Math.Pow(flow.ReducedPressure, 0.38)));
    }

    /// <summary>h = 0.021 (kL/D) Re_LO^0.8 Pr^0.43 [1 + x (rhoL/rhoV - 1)]^(1/2). For comparison.</summary>
    /// <param name="flow">Needs flux, quality, bore, both densities, liquid viscosity, conductivity and heat capacity.</param>
    /// <returns>W/(m2 K). One standard deviation 25 %; finite at x = 1.</returns>
    /// <remarks>Source: Boyko and Kruzhilin, Int. J. Heat Mass Transfer 10 (1967) 361.</remarks>
    public static double BoykoKruzhilin(in TwoPhaseFlow flow)
    {
        flow.RequireLiquid();
        flow.RequireDensities();
        double allLiquid = 0.021 * Math.Pow(flow.AllLiquidReynolds, 0.8) * Math.Pow(flow.LiquidPrandtl, 0.43);
        double twoPhase = Math.Sqrt(1 + (flow.Quality * ((flow.LiquidDensity / flow.VapourDensity) - 1)));
        return allLiquid * twoPhase * flow.LiquidConductivity / flow.DiameterM;
    }

    /// <summary>h = 0.05 (kL/D) Re_e^0.8 Pr^0.33, Re_e = Re_LO [(1-x) + x (rhoL/rhoV)^(1/2)]. For comparison: the highest of the four.</summary>
    /// <param name="flow">Needs flux, quality, bore, both densities, liquid viscosity, conductivity and heat capacity.</param>
    /// <returns>W/(m2 K). One standard deviation 25 %; twice the liquid alone at x = 0.</returns>
    /// <remarks>Source: Cavallini, Smith and Zecchin (1974). The vapour viscosity of the paper cancels.</remarks>
    public static double CavalliniSmithZecchin(in TwoPhaseFlow flow) =>
        0.05 * Math.Pow(EquivalentReynolds(flow), 0.8) * Math.Pow(flow.LiquidPrandtl, 0.33) * flow.LiquidConductivity / flow.DiameterM;

    /// <summary>
    /// h = C (kL/D) Re_e^n Pr^(1/3); C = 0.0265, n = 0.8 above Re_e = 50000, else C = 5.03, n = 1/3. For comparison only: it jumps there.
    /// </summary>
    /// <param name="flow">Needs flux, quality, bore, both densities, liquid viscosity, conductivity and heat capacity.</param>
    /// <returns>W/(m2 K). One standard deviation 30 %.</returns>
    /// <remarks>Source: Akers, Deans and Crosser (1959).</remarks>
    public static double AkersDeansCrosser(in TwoPhaseFlow flow)
    {
        double reynolds = EquivalentReynolds(flow);
        double power = reynolds > 50000 ? 0.0265 * Math.Pow(reynolds, 0.8) : 5.03 * Math.Cbrt(reynolds);
        return power * Math.Cbrt(flow.LiquidPrandtl) * flow.LiquidConductivity / flow.DiameterM;
    }

    /// <summary>Reynolds number of an all-liquid flow with the same wall shear (Akers): Re_LO [(1-x) + x (rhoL/rhoV)^(1/2)].</summary>
    private static double EquivalentReynolds(in TwoPhaseFlow flow)
    {
        flow.RequireLiquid();
        flow.RequireDensities();
        return flow.AllLiquidReynolds * (1 - flow.Quality + (flow.Quality * Math.Sqrt(flow.LiquidDensity / flow.VapourDensity)));
    }
}
