using Coldwright.Machine.ColdVessel;

namespace Coldwright.Machine.Feed;

/// <summary>
/// Shell of a compressor in still water: free convection at an upright wall (Churchill and Chu 1975) with water near 310 K: expansion 3.6e-4 1/K, viscosity
/// 7.0e-7 m2/s, conductivity 0.628 W/(m K), Prandtl number 4.6 (F. P. Incropera, D. P. DeWitt, Fundamentals of Heat and Mass Transfer, table A.6; from memory).
/// The bath itself stays at the room's temperature: our assumption, true for a large bucket or for running water.
/// </summary>
internal sealed class WaterBath(double areaM2)
{
    private const double Expansion = 3.6e-4, Viscosity = 7.0e-7, Conductivity = 0.628, Prandtl = 4.6, Gravity = 9.80665;

    /// <summary>W; negative when the shell is the colder.</summary>
    public double HeatW(double shellK, double bathK)
    {
        // a cylinder twice as high as wide: area 2.5 pi d^2
        double height = 2 * Math.Sqrt(areaM2 / (2.5 * Math.PI)), difference = shellK - bathK;
        double rayleigh = Gravity * Expansion * Math.Abs(difference) * height * height * height / (Viscosity * Viscosity) * Prandtl;
        return areaM2 * FreeConvection.VerticalPlate(Math.Min(rayleigh, 1e12), Prandtl) * Conductivity / height * difference;
    }
}
