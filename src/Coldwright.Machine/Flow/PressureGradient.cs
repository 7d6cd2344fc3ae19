namespace Coldwright.Machine.Flow;

/// <summary>Frictional pressure gradient of one phase.</summary>
public static class PressureGradient
{
    /// <summary>dp/dz = f G^2 / (2 rho D), positive in the direction of loss; 0 at no flow.</summary>
    /// <param name="massFlux">kg/(m2 s), at least 0.</param>
    /// <param name="diameterM">Bore or hydraulic diameter, m.</param>
    /// <param name="density">kg/m3.</param>
    /// <param name="viscosity">Pa s.</param>
    /// <param name="relativeRoughness">Roughness over bore, 0 to 0.05.</param>
    /// <param name="diameterOverCoil">Bore over mean coil diameter, 0 for straight.</param>
    /// <returns>Pa/m. Tends to Hagen-Poiseuille, 32 viscosity velocity / D^2, at low flow.</returns>
    /// <remarks>Friction factor: <see cref="Friction"/>.</remarks>
    public static double SinglePhase(
        double massFlux, double diameterM, double density, double viscosity, double relativeRoughness = 0, double diameterOverCoil = 0)
    {
        FlowGuard.NotNegative(massFlux, nameof(massFlux), "kg/(m2 s)");
        FlowGuard.Positive(diameterM, nameof(diameterM), "m");
        FlowGuard.Positive(density, nameof(density), "kg/m3");
        FlowGuard.Positive(viscosity, nameof(viscosity), "Pa s");
        double reynolds = massFlux * diameterM / viscosity;
        if (reynolds < 1e-3)
        {
            return 32 * viscosity * massFlux / density / (diameterM * diameterM);
        }

        double factor = diameterOverCoil > 0
            ? Friction.Coiled(reynolds, relativeRoughness, diameterOverCoil)
            : Friction.Churchill(reynolds, relativeRoughness);
        return factor * massFlux * massFlux / (2 * density * diameterM);
    }
}
