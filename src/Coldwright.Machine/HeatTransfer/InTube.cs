using Coldwright.Machine.Flow;

namespace Coldwright.Machine.HeatTransfer;

/// <summary>
/// The coefficients a part model should ask for: the default correlations with the mixture correction, joined to the single phases
/// at both ends, so that a small step in quality is a small step in the coefficient.
/// </summary>
public static class InTube
{
    /// <summary>Below this quality the coefficient fades to that of the liquid alone. Our rule, no source.</summary>
    public const double LiquidJoin = 0.05;

    /// <summary>Above this quality a condensing flow fades to the vapour alone. Our rule, no source.</summary>
    public const double CondensingVapourJoin = 0.95;

    /// <summary>Above this quality a boiling flow fades to the vapour alone: the wall dries out. Common practice, no source.</summary>
    public const double DryOut = 0.90;

    /// <summary>A mixture may boil above its pseudo-critical pressure; Shah's law is held at its value here.</summary>
    public const double LargestReducedPressure = 0.9;

    /// <summary>One phase filling a straight or coiled tube.</summary>
    /// <param name="massFlux">kg/(m2 s), at least 0.</param>
    /// <param name="diameterM">Bore, m.</param>
    /// <param name="viscosity">Pa s.</param>
    /// <param name="conductivity">W/(m K).</param>
    /// <param name="heatCapacity">J/(kg K).</param>
    /// <param name="diameterOverCoil">Bore over mean coil diameter, 0 for straight.</param>
    /// <param name="relativeRoughness">Roughness over bore; used for a straight tube only, the coiled law is for smooth tube.</param>
    /// <returns>W/(m2 K). One standard deviation 10 % straight, 15 % coiled.</returns>
    /// <remarks>Source: <see cref="SinglePhase"/>.</remarks>
    public static double OnePhase(
        double massFlux, double diameterM, double viscosity, double conductivity, double heatCapacity,
        double diameterOverCoil = 0, double relativeRoughness = 0)
    {
        FlowGuard.NotNegative(massFlux, nameof(massFlux), "kg/(m2 s)");
        FlowGuard.Positive(diameterM, nameof(diameterM), "m");
        FlowGuard.Positive(viscosity, nameof(viscosity), "Pa s");
        FlowGuard.Positive(conductivity, nameof(conductivity), "W/(m K)");
        double reynolds = massFlux * diameterM / viscosity;
        double prandtl = heatCapacity * viscosity / conductivity;
        double nusselt = diameterOverCoil > 0
            ? SinglePhase.NusseltCoiled(reynolds, prandtl, diameterOverCoil)
            : SinglePhase.Nusselt(reynolds, prandtl, reynolds > SinglePhase.LaminarEnd ? Friction.Churchill(reynolds, relativeRoughness) : 1);
        return nusselt * conductivity / diameterM;
    }

    /// <summary>Condensing flow: Shah's film, not below a laminar liquid, with the Silver-Bell-Ghaly correction.</summary>
    /// <param name="flow">Needs everything but the densities, latent heat, surface tension and molar mass.</param>
    /// <param name="sensibleShare">Z of <see cref="MixtureCorrection.SensibleShare"/>; 0 for a pure fluid.</param>
    /// <param name="diameterOverCoil">Bore over mean coil diameter, 0 for straight; raises the one-phase parts only.</param>
    /// <returns>W/(m2 K). One standard deviation about 27 % (film and correction in quadrature).</returns>
    /// <remarks>Source: <see cref="Condensation.Shah"/>, <see cref="MixtureCorrection.SilverBellGhaly"/>; the joins are ours.</remarks>
    public static double Condensing(in TwoPhaseFlow flow, double sensibleShare, double diameterOverCoil = 0) =>
        CondensingParts(flow, diameterOverCoil).At(0, sensibleShare);

    /// <summary>The parts of <see cref="Condensing"/>.</summary>
    /// <param name="flow">As there.</param>
    /// <param name="diameterOverCoil">As there.</param>
    public static FilmParts CondensingParts(in TwoPhaseFlow flow, double diameterOverCoil = 0)
    {
        TwoPhaseFlow held = flow with { ReducedPressure = Math.Min(flow.ReducedPressure, LargestReducedPressure) };
        return Join(flow, Condensation.Shah(held), 0, diameterOverCoil, CondensingVapourJoin);
    }

    /// <summary>Boiling flow: Gungor-Winterton's film, not below a laminar liquid, with the Silver-Bell-Ghaly correction by analogy.</summary>
    /// <param name="flow">Needs everything but the reduced pressure, surface tension and molar mass.</param>
    /// <param name="heatFlux">Heat into the fluid per bore area, W/m2; counted as 0 if negative.</param>
    /// <param name="sensibleShare">Z of <see cref="MixtureCorrection.SensibleShare"/>; 0 for a pure fluid.</param>
    /// <param name="diameterOverCoil">Bore over mean coil diameter, 0 for straight; raises the one-phase parts only.</param>
    /// <returns>W/(m2 K). One standard deviation about 32 % (film and correction in quadrature).</returns>
    /// <remarks>Source: <see cref="Boiling.GungorWinterton"/>, <see cref="MixtureCorrection.SilverBellGhaly"/>; the joins are ours.</remarks>
    public static double BoilingFlow(in TwoPhaseFlow flow, double heatFlux, double sensibleShare, double diameterOverCoil = 0) =>
        Join(flow, Boiling.GungorWinterton(flow, heatFlux), 0, diameterOverCoil, DryOut).At(0, sensibleShare);

    /// <summary>The parts of <see cref="BoilingFlow"/>.</summary>
    /// <param name="flow">As there.</param>
    /// <param name="diameterOverCoil">As there.</param>
    public static FilmParts BoilingParts(in TwoPhaseFlow flow, double diameterOverCoil = 0)
    {
        double still = Boiling.GungorWinterton(flow, 0);
        return Join(flow, still, Boiling.GungorWinterton(flow, 1) - still, diameterOverCoil, DryOut);
    }

    private static FilmParts Join(in TwoPhaseFlow flow, double film, double perFlux, double diameterOverCoil, double vapourJoin)
    {
        double x = flow.Quality;
        // A film cannot conduct worse than a tube full of the same liquid at rest relative to its wall.
        double floor = SinglePhase.Laminar * flow.LiquidConductivity / flow.DiameterM;
        double vapourAlone = OnePhase(
            flow.MassFlux * x, flow.DiameterM, flow.VapourViscosity, flow.VapourConductivity, flow.VapourHeatCapacity, diameterOverCoil);
        double liquidShare = 1 - SmoothStep(x / LiquidJoin);
        if (liquidShare > 0)
        {
            double liquid = OnePhase(
                flow.MassFlux, flow.DiameterM, flow.LiquidViscosity, flow.LiquidConductivity, flow.LiquidHeatCapacity, diameterOverCoil);
            return new(film, perFlux, floor, vapourAlone, 1 - liquidShare, liquidShare * liquid);
        }

        double vapourShare = SmoothStep((x - vapourJoin) / (1 - vapourJoin));
        return new(film, perFlux, floor, vapourAlone, 1 - vapourShare, vapourShare * vapourAlone);
    }

    private static double SmoothStep(double share)
    {
        double s = Math.Clamp(share, 0, 1);
        return s * s * (3 - (2 * s));
    }
}
