using Coldwright.Fluids.Substances;

namespace Coldwright.Machine.Compression;

/// <summary>Closed formulas of a perfect gas (constant heat capacity): the limit that the real-gas model must meet, and the estimate used where only pressures are known.</summary>
public static class PerfectGasCompression
{
    /// <summary>
    /// Steady-flow work R T k/(k-1) (r^((k-1)/k) - 1)/eta, J/mol; R T ln(r)/eta when k is 1. Textbook formula
    /// (W. F. Stoecker, J. W. Jones, Refrigeration and Air Conditioning, 1982, chapter 11; formula from memory).
    /// </summary>
    /// <param name="temperatureK">At the inlet, K, above 0.</param>
    /// <param name="pressureRatio">Outlet over inlet pressure, above 0.</param>
    /// <param name="exponent">k (isentropic) or n (polytropic), 1 or more.</param>
    /// <param name="efficiency">Ideal over actual work, above 0 up to 1.</param>
    public static double Work(double temperatureK, double pressureRatio, double exponent, double efficiency = 1)
    {
        InputCheck.Within(temperatureK, 1e-3, 1e4, "K", nameof(temperatureK));
        InputCheck.Within(pressureRatio, 1e-6, 1e6, "", nameof(pressureRatio));
        InputCheck.Within(exponent, 1, 3, "", nameof(exponent));
        InputCheck.Within(efficiency, 1e-6, 1, "", nameof(efficiency));
        double head = exponent - 1 < 1e-9 ? Math.Log(pressureRatio)
            : exponent / (exponent - 1) * (Math.Pow(pressureRatio, (exponent - 1) / exponent) - 1);
        return GasConstant.Mixture * temperatureK * head / efficiency;
    }

    /// <summary>Temperature after compression, K: T (1 + (r^((k-1)/k) - 1)/eta).</summary>
    /// <param name="temperatureK">At the inlet, K.</param>
    /// <param name="pressureRatio">Outlet over inlet pressure, above 0.</param>
    /// <param name="exponent">k, 1 or more.</param>
    /// <param name="efficiency">Isentropic efficiency, above 0 up to 1.</param>
    public static double OutletTemperature(double temperatureK, double pressureRatio, double exponent, double efficiency = 1)
    {
        InputCheck.Within(exponent, 1, 3, "", nameof(exponent));
        InputCheck.Within(efficiency, 1e-6, 1, "", nameof(efficiency));
        return temperatureK * (1 + (Math.Pow(pressureRatio, (exponent - 1) / exponent) - 1) / efficiency);
    }
}
