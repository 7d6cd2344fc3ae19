namespace Coldwright.Machine.Compression;

/// <summary>Gas through a restriction, as mass flux, kg/(m2 s), from upstream pressure and density: gaps, orifices, bleed lines.</summary>
public static class GasRestriction
{
    /// <summary>
    /// Critical pressure over stagnation pressure, (2/(k+1))^(k/(k-1)). Textbook formula (Y. A. Cengel, J. M. Cimbala, Fluid Mechanics,
    /// chapter 12; attribution from memory); its worked value p* = 7.66813 bar at 14 bar, k = 1.289 is a test.
    /// </summary>
    /// <param name="exponent">Isentropic exponent, above 1 to 3.</param>
    public static double CriticalPressureRatio(double exponent) => Math.Pow(2 / (exponent + 1), exponent / (exponent - 1));

    /// <summary>
    /// Isentropic nozzle, choked where it chokes: G = sqrt(2 k/(k-1) p rho (r^(2/k) - r^((k+1)/k))). With the real gas's
    /// exponent rho w^2/p it is good to a few per cent away from saturation. 0 when there is no pressure difference.
    /// </summary>
    /// <param name="pressurePa">Upstream, Pa absolute.</param>
    /// <param name="massDensity">Upstream, kg/m3.</param>
    /// <param name="backPressurePa">Downstream, Pa absolute.</param>
    /// <param name="exponent">Isentropic exponent; values below 1.001 are raised to it.</param>
    public static double Nozzle(double pressurePa, double massDensity, double backPressurePa, double exponent)
    {
        if (!(pressurePa > backPressurePa)) return 0;
        double k = Math.Max(exponent, 1.001), r = Math.Max(backPressurePa / pressurePa, CriticalPressureRatio(k));
        return Math.Sqrt(2 * k / (k - 1) * pressurePa * massDensity * (Math.Pow(r, 2 / k) - Math.Pow(r, (k + 1) / k)));
    }

    /// <summary>
    /// Isothermal flow of a perfect gas through a line of resistance K = f L/D + entrance and exit:
    /// G^2 = p rho (1 - r^2)/(K + 2 ln(1/r)), at the r that passes most when the back pressure is below it (choked). Textbook formula
    /// (Crane Technical Paper 410 and Perry's Chemical Engineers' Handbook, section 6; from memory).
    /// </summary>
    /// <param name="pressurePa">Upstream, Pa absolute.</param>
    /// <param name="massDensity">Upstream, kg/m3.</param>
    /// <param name="backPressurePa">Downstream, Pa absolute.</param>
    /// <param name="resistance">K, dimensionless, above 0.</param>
    public static double IsothermalLine(double pressurePa, double massDensity, double backPressurePa, double resistance)
    {
        if (!(pressurePa > backPressurePa)) return 0;
        InputCheck.Within(resistance, 1e-3, 1e18, "", nameof(resistance));
        // d/dr = 0 with u = 1/r^2: u = 1 + K + ln u; Newton from above, where the curve is convex
        double u = 2 + 2 * resistance;
        for (int i = 0; i < 50; i++)
        {
            double step = (u - 1 - resistance - Math.Log(u)) / (1 - 1 / u);
            u -= step;
            if (Math.Abs(step) < 1e-13 * u) break;
        }
        double r = Math.Max(backPressurePa / pressurePa, 1 / Math.Sqrt(u));
        return Math.Sqrt(pressurePa * massDensity * (1 - r * r) / (resistance + 2 * Math.Log(1 / r)));
    }
}
