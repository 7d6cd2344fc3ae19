using Coldwright.Machine.Flow;
using Coldwright.Numerics.Roots;

namespace Coldwright.Machine.Compression;

/// <summary>Gas through a long thin line that stays at one temperature: an oil return run dry, a bleed capillary.</summary>
public static class GasLine
{
    // entrance 0.5, exit 1.0; textbook values
    internal const double Ends = 1.5;

    /// <summary>
    /// Mass flux, kg/(m2 s): <see cref="GasRestriction.IsothermalLine"/> with f L/D + 1.5, f by Churchill (1977), smooth wall, at the flow's own
    /// Reynolds number.
    /// </summary>
    /// <param name="pressurePa">Upstream, Pa absolute.</param>
    /// <param name="massDensity">Upstream, kg/m3.</param>
    /// <param name="backPressurePa">Downstream, Pa absolute.</param>
    /// <param name="boreM">m.</param>
    /// <param name="lengthM">m.</param>
    /// <param name="viscosityPaS">Pa s.</param>
    public static double MassFlux(double pressurePa, double massDensity, double backPressurePa, double boreM, double lengthM, double viscosityPaS)
    {
        if (!(pressurePa > backPressurePa)) return 0;
        double Flux(double friction) => GasRestriction.IsothermalLine(pressurePa, massDensity, backPressurePa, friction * lengthM / boreM + Ends);
        // ln of the flux that the assumed flux's friction passes, less ln of the assumed: falls throughout, also in transition
        double Off(double lnFlux) => Math.Log(Flux(Friction.Churchill(Math.Exp(lnFlux) * boreM / viscosityPaS, 0))) - lnFlux;
        double high = Math.Log(Flux(0));
        return Math.Exp(Brent.Solve(Off, high - 20, high, 1e-12));
    }
}
