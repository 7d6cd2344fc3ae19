using Coldwright.Machine.Flow;
using Coldwright.Numerics.Roots;

namespace Coldwright.Machine.Throttling;

/// <summary>Critical flow of a homogeneous mixture whose volume follows v/v0 = omega (p0/p - 1) + 1: a check on the nozzle march, and a quick answer.</summary>
public static class OmegaMethod
{
    /// <summary>Source and uncertainty.</summary>
    public static Correlation Correlation { get; } = new(
        "Omega method",
        "J. C. Leung, AIChE J. 32, 1986, 1743-1746; equations from memory",
        0.1,
        "two-phase inlet, p0 below about 0.9 of the critical pressure, omega 1 to 30");

    /// <summary>omega from the volumes at the inlet and at 0.9 of its pressure along the isentrope: omega = 9 (v9/v0 - 1).</summary>
    /// <param name="inletVolume">m3/kg.</param>
    /// <param name="volumeAtNineTenths">m3/kg at 0.9 of the inlet's pressure.</param>
    /// <remarks>The two-point form of API Standard 520 part I, annex C; from memory.</remarks>
    public static double Omega(double inletVolume, double volumeAtNineTenths) => 9 * (volumeAtNineTenths / inletVolume - 1);

    /// <summary>Critical pressure ratio e: e^2 + (w^2 - 2 w)(1 - e)^2 + 2 w^2 ln e + 2 w^2 (1 - e) = 0.</summary>
    /// <param name="omega">Above 0; 1 is an isothermal ideal gas.</param>
    public static double CriticalRatio(double omega)
    {
        double w = ThrottleGuard.Positive(omega, nameof(omega), "(dimensionless)");
        return Brent.Solve(e => e * e + (w * w - 2 * w) * (1 - e) * (1 - e) + 2 * w * w * (Math.Log(e) + 1 - e), 1e-6, 1 - 1e-9, 1e-12);
    }

    /// <summary>Critical mass flux of a frictionless nozzle, kg/(m2 s): e (p0/(omega v0))^0.5.</summary>
    /// <param name="omega">Above 0.</param>
    /// <param name="inletPa">Pa.</param>
    /// <param name="inletVolume">m3/kg.</param>
    public static double CriticalFlux(double omega, double inletPa, double inletVolume) => CriticalRatio(omega) * Math.Sqrt(inletPa / (omega * inletVolume));
}
