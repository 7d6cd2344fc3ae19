using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;

namespace Coldwright.Machine.Compression;

/// <summary>Isentropic compression of a gas between two pressures.</summary>
/// <param name="MolarWork">h(p2, s1) - h1, J/mol.</param>
/// <param name="MolarDensity">At the suction, mol/m3.</param>
/// <param name="MolarMass">kg/mol.</param>
/// <param name="OutletTemperatureK">K.</param>
/// <param name="DensityRatio">Outlet over suction density.</param>
public sealed record IsentropicPoint(double MolarWork, double MolarDensity, double MolarMass, double OutletTemperatureK, double DensityRatio)
{
    /// <summary>At the suction, kg/m3.</summary>
    public double MassDensity => MolarDensity * MolarMass;

    /// <summary>Compresses; both ends are certified flashes.</summary>
    /// <param name="model">Fluid model.</param>
    /// <param name="z">Mole fractions.</param>
    /// <param name="suctionTemperatureK">K.</param>
    /// <param name="suctionPressurePa">Pa absolute.</param>
    /// <param name="dischargePressurePa">Pa absolute.</param>
    public static IsentropicPoint Of(HelmholtzModel model, IReadOnlyList<double> z, double suctionTemperatureK, double suctionPressurePa, double dischargePressurePa)
    {
        var flash = new Flash(model);
        double[] x = [.. z];
        var suction = flash.TemperaturePressure(suctionTemperatureK, suctionPressurePa, x);
        var end = flash.PressureEntropy(dischargePressurePa, suction.MolarEntropy, x, suctionTemperatureK * Math.Pow(dischargePressurePa / suctionPressurePa, 0.17));
        return new IsentropicPoint(end.MolarEnthalpy - suction.MolarEnthalpy, suction.MolarDensity, suction.MolarMass, end.TemperatureK, end.MolarDensity / suction.MolarDensity);
    }
}
