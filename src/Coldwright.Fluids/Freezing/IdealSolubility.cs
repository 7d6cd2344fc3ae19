using Coldwright.Fluids.Substances;

namespace Coldwright.Fluids.Freezing;

/// <summary>Solubility of a solid in an ideal solution: needs nothing of the solvent. A yardstick, and the solid's part of every answer here.</summary>
public static class IdealSolubility
{
    /// <summary>
    /// ln(f_solid/f_liquid) of a pure substance below its triple point, the liquid subcooled:
    /// -(H_fus/R)(1/T - 1/T_t) - sum (H_tr/R)(1/T - 1/T_tr) over transitions passed, with constant heats. The difference in
    /// heat capacity between liquid and solid is left out (not in the sources); see docs/theory/freezing.md for its size.
    /// J. M. Prausnitz, R. N. Lichtenthaler, E. G. de Azevedo, Molecular Thermodynamics of Fluid-Phase Equilibria, ch. 11.
    /// </summary>
    /// <param name="solid">The substance.</param>
    /// <param name="temperatureK">Temperature, K; above the triple point the formula is continued (positive values).</param>
    public static double LnFugacityRatio(SolidSubstance solid, double temperatureK)
    {
        double sum = Term(solid.HeatOfFusion, temperatureK, solid.TripleTemperatureK);
        foreach (var t in solid.Transitions)
            if (t.Heat is { } heat && temperatureK < t.TemperatureK) sum += Term(heat, temperatureK, t.TemperatureK);
        return sum;
    }

    /// <summary>Mole fraction in an ideal solution saturated with the solid; 1 from the triple point up.</summary>
    public static double MoleFraction(SolidSubstance solid, double temperatureK) => Math.Min(1, Math.Exp(LnFugacityRatio(solid, temperatureK)));

    private static double Term(double heat, double t, double at) => -heat / GasConstant.Mixture * (1 / t - 1 / at);
}
