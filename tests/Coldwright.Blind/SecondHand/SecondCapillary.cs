using S = Coldwright.Blind.SecondHand.CoolerSizes;

namespace Coldwright.Blind.SecondHand;

/// <summary>
/// Flow of the capillary by a friction law over three densities on the line of constant enthalpy: at the inlet, half-way down and at the throat, which is taken at three tenths of
/// the inlet pressure or where the tube ends (our assumption). Blasius (1913), with Ito's rise for a coiled tube (1959).
/// </summary>
internal static class SecondCapillary
{
    private const double LiquidViscosity = 9e-5, GasViscosity = 1.1e-5, EndLosses = 1.4;

    /// <summary>mol/s.</summary>
    public static double Flow(SoaveTable t, double inletK, double inletPa, double outletPa, double friction)
    {
        double h = t.Enthalpy(inletK, inletPa), throat = Math.Max(outletPa, 0.3 * inletPa), middle = 0.5 * (inletPa + throat);
        double Density(double pa) => t.MolarMass / t.Volume(t.Temperature(h, pa), pa);
        double first = Density(inletPa), half = Density(middle), last = Density(throat), integral = (inletPa - throat) * (first + 4 * half + last) / 6;
        // liquid where dense; the viscosities mix by volume of the middle density
        double wet = Math.Clamp((half - 15) / 350, 0, 1), viscosity = GasViscosity + wet * (LiquidViscosity - GasViscosity), flux = 3500, area = Math.PI / 4 * S.CapillaryBoreM * S.CapillaryBoreM;
        for (int i = 0; i < 4; i++)
        {
            double re = Math.Max(flux * S.CapillaryBoreM / viscosity, 3000), straight = 0.316 * Math.Pow(re, -0.25), coiled = straight * Math.Max(1, Math.Pow(re * S.CapillaryOverCoilM * S.CapillaryOverCoilM, 0.05));
            flux = Math.Sqrt(2 * integral / (friction * coiled * S.CapillaryLengthM / S.CapillaryBoreM + EndLosses + 2 * Math.Log(first / last)));
        }
        return flux * area / t.MolarMass;
    }
}
