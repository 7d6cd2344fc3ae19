using Coldwright.Machine.Compression;
using Coldwright.Machine.Flow;

namespace Coldwright.Machine.Oil;

/// <summary>Oil, and after it gas, through the return line from separator to suction.</summary>
public static class OilReturnLine
{
    /// <summary>
    /// Flow that a pressure difference drives: dp = (f L/D + 1.5) rho u^2/2, f by Churchill (1977), smooth tube. Laminar flow meets
    /// Hagen and Poiseuille.
    /// </summary>
    /// <param name="differencePa">Pa, above 0.</param>
    /// <param name="boreM">m.</param>
    /// <param name="lengthM">m.</param>
    /// <param name="density">kg/m3.</param>
    /// <param name="kinematicViscosity">m2/s.</param>
    /// <returns>Mass flow, kg/s, and Reynolds number.</returns>
    public static (double MassFlow, double Reynolds) Flow(double differencePa, double boreM, double lengthM, double density, double kinematicViscosity)
    {
        InputCheck.Within(differencePa, 1e-3, 1e9, "Pa", nameof(differencePa));
        double Drop(double u) => (Friction.Churchill(u * boreM / kinematicViscosity, 0) * lengthM / boreM + GasLine.Ends) * 0.5 * density * u * u;
        // the drop rises with the velocity: bisection in its logarithm, from creeping to the loss-free velocity
        double low = Math.Log(1e-9), high = Math.Log(Math.Sqrt(2 * differencePa / (GasLine.Ends * density)));
        for (int i = 0; i < 70; i++)
        {
            double middle = 0.5 * (low + high);
            if (Drop(Math.Exp(middle)) < differencePa) low = middle; else high = middle;
        }
        double velocity = Math.Exp(0.5 * (low + high));
        return (density * velocity * Math.PI / 4 * boreM * boreM, velocity * boreM / kinematicViscosity);
    }

    /// <summary>Gas through the dry line, kg/s: isothermal flow with friction, choked where it chokes.</summary>
    /// <param name="input">Line, gas and pressures.</param>
    public static double GasFlow(OilCircuitInput input) => Math.PI / 4 * input.ReturnBoreM * input.ReturnBoreM
        * GasLine.MassFlux(input.HighPressurePa, input.GasDensityKgPerM3, input.SuctionPressurePa, input.ReturnBoreM, input.ReturnLengthM, input.GasViscosityPaS);
}
