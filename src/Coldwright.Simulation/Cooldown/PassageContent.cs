using Coldwright.Machine.Flow;
using Coldwright.Machine.Streams;

namespace Coldwright.Simulation.Cooldown;

/// <summary>Moles per volume of a passage, slip included, by the same rule as <see cref="Machine.Charge.HoldUp"/>, all substances together.</summary>
internal static class PassageContent
{
    private const double LeastQuality = 1e-6;

    /// <summary>mol/m3.</summary>
    /// <param name="p">State.</param>
    /// <param name="massFlux">kg/(m2 s); 0: at rest.</param>
    /// <param name="liquidScale">Factor on the liquid's share of the cross-section.</param>
    public static double MolarDensity(in StreamPoint p, double massFlux, double liquidScale)
    {
        double x = p.Quality;
        if (x <= LeastQuality || x >= 1 - LeastQuality || !(p.VapourFraction is > 0 and < 1) || !(p.Liquid.Density > p.Vapour.Density)) return p.Density / p.MolarMass;
        double share = massFlux > 0 ? VoidFraction.Rouhani(massFlux, x, p.Liquid.Density, p.Vapour.Density, p.SurfaceTension) : VoidFraction.Homogeneous(x, p.Liquid.Density, p.Vapour.Density);
        share /= share + liquidScale * (1 - share);
        double light = p.MolarMass * x / p.VapourFraction, heavy = p.MolarMass * (1 - x) / (1 - p.VapourFraction);
        return share * p.Vapour.Density / light + (1 - share) * p.Liquid.Density / heavy;
    }
}
