using Coldwright.Fluids.EquationsOfState;
using Coldwright.Machine.Charge;
using Coldwright.Simulation.ClosedLoop;

namespace Coldwright.Simulation.Cooldown;

/// <summary>What the loop holds of each substance at the moment last evaluated.</summary>
internal static class SpeciesContent
{
    private const int CoilParts = 8;

    /// <summary>mol of each.</summary>
    public static double[] Of(Plant plant, PlantEquations f, HelmholtzModel model, in PlantPoint at)
    {
        var (h, t) = (plant.Hardware, f.Loop.Tables);
        var total = new HoldUp(model, h.Knobs.LiquidHoldUp);
        double mass = at.Flow * t.High.MolarMass, dx = h.Recuperator.LengthM / plant.Layout.Cells;
        var (hot, cold) = (h.Recuperator.Hot, h.Recuperator.Cold);
        for (int i = 0; i < plant.Layout.Cells; i++)
        {
            total.Add(t.High, 0.5 * (f.Hot.Enthalpy[i] + f.Hot.Enthalpy[i + 1]), 0.5 * (f.Hot.PressurePa[i] + f.Hot.PressurePa[i + 1]), hot.AreaM2 * dx, mass / hot.AreaM2);
            total.Add(t.Low, 0.5 * (f.Cold.Enthalpy[i] + f.Cold.Enthalpy[i + 1]), 0.5 * (f.Cold.PressurePa[i] + f.Cold.PressurePa[i + 1]), cold.AreaM2 * dx, mass / cold.AreaM2);
        }
        if (h.Coil is { } coil)
            for (int i = 0; i < CoilParts; i++)
            {
                double w = (i + 0.5) / CoilParts;
                total.Add(t.Low, (1 - w) * at.ThrottleEnthalpy + w * at.CoilOutEnthalpy, (1 - w) * at.CoilPa + w * at.CoilOutPa, coil.VolumeM3 / CoilParts, mass / (Math.PI / 4 * coil.BoreM * coil.BoreM));
            }
        double aftercooled = f.Loop.AftercooledEnthalpy(at.HighPa), warm = t.High.At(aftercooled, at.HighPa) is var w0 ? w0.Density / w0.MolarMass : 0;
        double mixedDensity = t.Low.At(t.Low.Enthalpy(Math.Min(at.SuctionK, t.Low.WarmestK), at.SuctionPa), at.SuctionPa) is var s ? s.Density / s.MolarMass : 0;
        foreach (var v in h.Volumes)
        {
            double flux = v.AreaM2 > 0 ? mass / v.AreaM2 : 0;
            switch (v.State)
            {
                case VolumeState.Discharge: total.AddGas(t.Z, f.Loop.HotGas * warm * h.AftercooledK / at.DischargeK * at.DischargePa / at.HighPa, v.VolumeM3); break;
                case VolumeState.Suction: total.AddGas(t.Z, mixedDensity, v.VolumeM3); break;
                case VolumeState.Aftercooled: total.Add(t.High, aftercooled, at.HighPa, v.VolumeM3, flux); break;
                case VolumeState.Precooled: total.Add(t.High, at.RecuperatorInlet, at.HighPa, v.VolumeM3, flux); break;
                case VolumeState.ColdHigh: total.Add(t.High, at.ThrottleEnthalpy, at.ThrottlePa, v.VolumeM3, flux); break;
                case VolumeState.Throttled: total.Add(t.Low, at.ThrottleEnthalpy, at.CoilPa, v.VolumeM3, flux); break;
                case VolumeState.ColdLow: total.Add(t.Low, at.CoilOutEnthalpy, at.CoilOutPa, v.VolumeM3, flux); break;
                default:
                    total.Add(t.High, at.ThrottleEnthalpy, at.ThrottlePa, 0.5 * v.VolumeM3, 0);
                    total.Add(t.Low, at.ThrottleEnthalpy, at.CoilPa, 0.5 * v.VolumeM3, 0);
                    break;
            }
        }
        if (h.Buffer is { } buffer) total.AddGas(t.Z, at.BufferContent / buffer.VolumeM3, buffer.VolumeM3);
        return total.Moles;
    }
}
