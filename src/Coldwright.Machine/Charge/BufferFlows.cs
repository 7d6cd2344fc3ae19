using Coldwright.Machine.Compression;

namespace Coldwright.Machine.Charge;

/// <summary>Flows into and out of a buffer on one gas, mol/s.</summary>
internal sealed class BufferFlows(BufferInput input, BufferContent gas)
{
    public BufferContent Gas => gas;

    /// <summary>Through the valve from the high side.</summary>
    public double Fill(double highPa, double bufferPa, double opening) => opening * input.ValveAreaM2 / gas.MolarMass
        * GasRestriction.Nozzle(highPa, gas.MolarDensity(highPa) * gas.MolarMass, bufferPa, gas.Exponent(highPa));

    /// <summary>Through the bleed to the suction.</summary>
    public double Bleed(double bufferPa, double suctionPa)
    {
        var bleed = input.Bleed;
        double area = Math.PI / 4 * bleed.BoreM * bleed.BoreM, density = gas.MolarDensity(bufferPa) * gas.MolarMass;
        double flux = bleed.LengthM > 0
            ? GasLine.MassFlux(bufferPa, density, suctionPa, bleed.BoreM, bleed.LengthM, bleed.GasViscosityPaS)
            : bleed.DischargeCoefficient * GasRestriction.Nozzle(bufferPa, density, suctionPa, gas.Exponent(bufferPa));
        return flux * area / gas.MolarMass;
    }
}
