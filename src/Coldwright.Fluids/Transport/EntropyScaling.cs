namespace Coldwright.Fluids.Transport;

/// <summary>
/// Residual entropy scaling: with rho_N the number density, m the mean molecular mass and s = -s_res/R,
/// eta = eta0 + (exp(Y) - 1) rho_N^(2/3) (m k T)^(1/2) / s^(2/3) and
/// lambda = lambda0 + Y rho_N^(2/3) k (k T/m)^(1/2) / s^(2/3), Y = sum x_i Y_i(s).
/// Sources: viscosity Yang, Xiao, Thol, Richter, Bell, Int. J. Thermophys. 43 (2022) 183; conductivity Yang, Kim, May, Bell, Ind. Eng. Chem.
/// Res. 60 (2021) 13052.
/// </summary>
internal static class EntropyScaling
{
    // 2019 SI
    private const double Boltzmann = 1.380649e-23, Avogadro = 6.02214076e23;

    /// <summary>Residual viscosity, Pa s.</summary>
    /// <param name="y">Y.</param>
    /// <param name="s">-s_res/R.</param>
    /// <param name="temperatureK">K.</param>
    /// <param name="molarDensity">mol/m3.</param>
    /// <param name="molarMass">kg/mol.</param>
    public static double Viscosity(double y, double s, double temperatureK, double molarDensity, double molarMass) => s > 0
        ? (Math.Exp(y) - 1) * Length2(molarDensity, s) * Math.Sqrt(molarMass / Avogadro * Boltzmann * temperatureK)
        : 0;

    /// <summary>Residual conductivity, W/(m K); arguments as above.</summary>
    public static double Conductivity(double y, double s, double temperatureK, double molarDensity, double molarMass) => s > 0
        ? y * Length2(molarDensity, s) * Boltzmann * Math.Sqrt(Boltzmann * temperatureK * Avogadro / molarMass)
        : 0;

    /// <summary>The inverse of <see cref="Viscosity"/>: Y of a residual viscosity.</summary>
    public static double ViscosityY(double residual, double s, double temperatureK, double molarDensity, double molarMass) =>
        Math.Log(1 + residual / (Length2(molarDensity, s) * Math.Sqrt(molarMass / Avogadro * Boltzmann * temperatureK)));

    /// <summary>The inverse of <see cref="Conductivity"/>.</summary>
    public static double ConductivityY(double residual, double s, double temperatureK, double molarDensity, double molarMass) =>
        residual / (Length2(molarDensity, s) * Boltzmann * Math.Sqrt(Boltzmann * temperatureK * Avogadro / molarMass));

    private static double Length2(double molarDensity, double s)
    {
        double root = Math.Cbrt(molarDensity * Avogadro / s);
        return root * root;
    }
}
