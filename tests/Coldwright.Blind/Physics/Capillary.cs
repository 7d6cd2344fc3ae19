namespace Coldwright.Blind.Physics;

/// <summary>Flow of a capillary: homogeneous, isenthalpic, friction and acceleration along it, choked where a lower end pressure brings no more.</summary>
internal static class Capillary
{
    private const double BoreM = 0.9e-3, LengthM = 1.7, Viscosity = 6e-5;
    private const int Steps = 16;

    /// <summary>mol/s.</summary>
    public static double MolarFlow(GasTable t, double inletK, double inletPa, double outletPa, double friction)
    {
        double h = t.Enthalpy(inletK, inletPa), area = Math.PI / 4 * BoreM * BoreM, most = 0, integral = 0, p = inletPa, step = Math.Log(inletPa / Math.Max(outletPa, 0.08 * inletPa)) / Steps;
        double first = t.MolarMass / t.Volume(inletK, inletPa), before = first, flux = 3000;
        for (int i = 1; i <= Steps; i++)
        {
            double next = p * Math.Exp(-step), density = t.MolarMass / t.Volume(t.Temperature(h, next), next);
            integral += 0.5 * (before + density) * (p - next);
            // Blasius (1913)
            double f = 0.316 * Math.Pow(Math.Max(3000, flux * BoreM / Viscosity), -0.25) * friction;
            double g = Math.Sqrt(integral / (0.5 * f * LengthM / BoreM + 0.75 + Math.Log(first / density)));
            most = Math.Max(most, g);
            flux = Math.Max(most, 500);
            (p, before) = (next, density);
        }
        return most * area / t.MolarMass;
    }
}
