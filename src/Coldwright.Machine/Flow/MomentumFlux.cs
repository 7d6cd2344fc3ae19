namespace Coldwright.Machine.Flow;

/// <summary>Momentum carried by a flow: its change along a tube is the acceleration pressure drop.</summary>
public static class MomentumFlux
{
    /// <summary>Two phases apart: G^2 [x^2 / (eps rhoV) + (1-x)^2 / ((1-eps) rhoL)].</summary>
    /// <param name="massFlux">kg/(m2 s).</param>
    /// <param name="quality">Vapour mass fraction, 0 to 1.</param>
    /// <param name="voidFraction">Vapour area share, 0 to 1, from <see cref="VoidFraction"/>.</param>
    /// <param name="liquidDensity">kg/m3.</param>
    /// <param name="vapourDensity">kg/m3.</param>
    /// <returns>Pa. G^2/rho of the phase alone at quality 0 and 1.</returns>
    /// <remarks>Momentum balance of separated flow; no empirical constant.</remarks>
    public static double Separated(double massFlux, double quality, double voidFraction, double liquidDensity, double vapourDensity)
    {
        FlowGuard.Fraction(quality, nameof(quality));
        FlowGuard.Fraction(voidFraction, nameof(voidFraction));
        double vapour = quality == 0 ? 0 : quality * quality / (voidFraction * vapourDensity);
        double liquid = quality == 1 ? 0 : (1 - quality) * (1 - quality) / ((1 - voidFraction) * liquidDensity);
        return massFlux * massFlux * (vapour + liquid);
    }
}
