using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Machine.Oil;
using Coldwright.Numerics;
using Coldwright.Numerics.Roots;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>The loop at rest, everything at room temperature and at one pressure.</summary>
internal static class Standstill
{
    private const double HighestPa = 6e7;

    /// <summary>Volume of the whole loop with its buffer, m3.</summary>
    public static double VolumeM3(Hardware h) => h.Volumes.Sum(v => v.VolumeM3) + (h.Coil?.VolumeM3 ?? 0) + (h.Buffer?.VolumeM3 ?? 0)
        + (h.Recuperator.Hot.AreaM2 + h.Recuperator.Cold.AreaM2) * h.Recuperator.LengthM;

    /// <summary>Amount at a pressure (Pa), mol.</summary>
    public static double MolesAt(Hardware h, HelmholtzModel model, double pressurePa) =>
        VolumeM3(h) * new Flash(model).TemperaturePressure(h.RoomK, pressurePa, [.. h.Machine.Charge.Mixture.MoleFractions]).MolarDensity + Dissolved(h, model, pressurePa);

    // in cold oil under gas of the charge's own mixture, mol
    private static double Dissolved(Hardware h, HelmholtzModel model, double pressurePa)
    {
        if (h.OilMol == 0) return 0;
        var moles = new double[model.Count];
        DissolvedGas.Add(model.Substances, [.. h.Machine.Charge.Mixture.MoleFractions], pressurePa, h.RoomK, h.OilMol, moles);
        return moles.Sum();
    }

    /// <summary>Pressure of an amount (mol), Pa, and the share of it that is liquid.</summary>
    public static (double PressurePa, double LiquidShare) Of(Hardware h, HelmholtzModel model, double moles)
    {
        double[] z = [.. h.Machine.Charge.Mixture.MoleFractions];
        var flash = new Flash(model);
        double volume = VolumeM3(h);
        double At(double lnP)
        {
            double pa = Math.Exp(lnP), gas = volume * flash.TemperaturePressure(h.RoomK, pa, z).MolarDensity;
            // more pressure than the oil can bear only matters while there is less gas than was charged
            return Math.Log((gas < moles ? gas + Dissolved(h, model, pa) : gas) / moles);
        }

        double low = Math.Log(1e2), high = Math.Log(HighestPa);
        double offLow = At(low), offHigh = At(high);
        if (offHigh < 0) throw new SolveException(new SolveReport(SolveStatus.NoSolution, 0, offHigh, FormattableString.Invariant($"the charge of {moles:0.##} mol stands above {HighestPa / 1e5:0} bar absolute in the loop")));
        double p = Math.Exp(Brent.Solve(At, low, offLow, high, offHigh, 1e-10));
        var state = flash.TemperaturePressure(h.RoomK, p, z);
        return (p, 1 - state.VapourFraction);
    }
}
