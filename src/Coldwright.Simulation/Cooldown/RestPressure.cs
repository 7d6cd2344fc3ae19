using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Machine.Oil;
using Coldwright.Numerics;
using Coldwright.Numerics.Interpolation;
using Coldwright.Numerics.Roots;
using Coldwright.Simulation.ClosedLoop;

namespace Coldwright.Simulation.Cooldown;

/// <summary>
/// Pressure of the loop while the compressor stands still and its cold end warms: one pressure everywhere, every place in equilibrium at its own temperature with
/// the charge's composition (liquid does not run off; our assumption), the recuperator linear between load and room.
/// </summary>
internal static class RestPressure
{
    private const int Stations = 9, Slices = 6;
    private const double LowestPa = 2e3, HighestPa = 4e7;

    /// <summary>Pa against the load's temperature in K, between two temperatures, of a charge in mole fractions and mol.</summary>
    public static Func<double, double> Of(Hardware h, HelmholtzModel model, double[] z, double chargeMol, double coldK, double warmK, CancellationToken cancel)
    {
        var flash = new Flash(model);
        double exchanger = (h.Recuperator.Hot.AreaM2 + h.Recuperator.Cold.AreaM2) * h.Recuperator.LengthM, cold = h.Coil?.VolumeM3 ?? 0, warm = h.Buffer?.VolumeM3 ?? 0;
        foreach (var v in h.Volumes)
            if (v.State is VolumeState.ColdHigh or VolumeState.ColdLow or VolumeState.Throttled or VolumeState.Capillary) cold += v.VolumeM3;
            else warm += v.VolumeM3;
        double[] t = new double[Stations], p = new double[Stations];
        double guess = double.NaN;
        for (int i = 0; i < Stations; i++)
        {
            t[i] = coldK + (warmK - coldK) * i / (Stations - 1);
            double load = t[i];
            double Off(double ln)
            {
                cancel.ThrowIfCancellationRequested();
                double Density(double k) => flash.TemperaturePressure(k, Math.Exp(ln), z).MolarDensity;
                double sum = cold * Density(load) + warm * Density(h.RoomK);
                for (int s = 0; s < Slices; s++) sum += exchanger / Slices * Density(load + (h.RoomK - load) * (s + 0.5) / Slices);
                // more pressure than the oil can bear only matters while there is less gas than was charged
                if (h.OilMol > 0 && sum < chargeMol)
                {
                    var dissolved = new double[z.Length];
                    DissolvedGas.Add(model.Substances, z, Math.Exp(ln), h.RoomK, h.OilMol, dissolved);
                    sum += dissolved.Sum();
                }
                return Math.Log(sum / chargeMol);
            }

            p[i] = guess = Root(Off, guess);
        }
        var curve = new MonotoneCubic(t, p, new bool[Stations]);
        return k => Math.Exp(curve.At(Math.Clamp(k, coldK, warmK)));
    }

    private static double Root(Func<double, double> off, double guess)
    {
        double low = Math.Log(LowestPa), high = Math.Log(HighestPa);
        if (!double.IsNaN(guess))
        {
            double a = guess - 0.1, b = guess + 0.6, fa = off(a), fb = off(b);
            if (fa < 0 != fb < 0) return Brent.Solve(off, a, fa, b, fb, 1e-5);
        }
        double fl = off(low), fh = off(high);
        if (fl < 0 == fh < 0) throw new SolveException(new SolveReport(SolveStatus.NoSolution, 0, fh, "the charge does not find room in the loop at rest at any pressure"));
        return Brent.Solve(off, low, fl, high, fh, 1e-5);
    }
}
