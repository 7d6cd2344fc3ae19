using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Machine.Charge;
using Coldwright.Machine.Compression;
using Coldwright.Machine.Oil;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>Counts what the loop holds of each substance, place by place.</summary>
internal sealed class Inventory(HelmholtzModel model, Flash flash)
{
    public LoopPass Fill(LoopPass p, Hardware h)
    {
        var total = new HoldUp(model, h.Knobs.LiquidHoldUp);
        var contents = new List<PlaceContent>();
        double before = 0, liquidBefore = 0, kgBefore = 0, liquidKgBefore = 0;
        void Close(string place)
        {
            double now = total.Moles.Sum(), liquid = total.LiquidMoles.Sum(), kg = Mass(total.Moles), liquidKg = Mass(total.LiquidMoles);
            contents.Add(new(place, now - before, liquid - liquidBefore, kg - kgBefore, liquidKg - liquidKgBefore));
            (before, liquidBefore, kgBefore, liquidKgBefore) = (now, liquid, kg, liquidKg);
        }

        double mass = p.Flow * p.MolarMass;
        var (hot, cold) = (h.Recuperator.Hot, h.Recuperator.Cold);
        double dx = h.Recuperator.LengthM / p.Recuperator.Profile.Count;
        foreach (var s in p.Recuperator.Profile) total.Add(p.Tables.High, s.HotEnthalpy, s.HotPressurePa, hot.AreaM2 * dx, mass / hot.AreaM2);
        Close($"{h.Layout.Recuperator.Name}, high side");
        foreach (var s in p.Recuperator.Profile) total.Add(p.Tables.Low, s.ColdEnthalpy, s.ColdPressurePa, cold.AreaM2 * dx, mass / cold.AreaM2);
        Close($"{h.Layout.Recuperator.Name}, low side");
        if (p.Coil is { } coil)
        {
            double volume = h.Coil!.VolumeM3 / coil.Cells.Count, area = Math.PI / 4 * h.Coil.BoreM * h.Coil.BoreM;
            foreach (var (enthalpy, pressure) in coil.Cells) total.Add(p.Tables.Low, enthalpy, pressure, volume, mass / area);
            Close(h.Layout.Coil.Name);
        }
        Passages(p, h, total, mass);
        Close("lines, shell and warm parts");
        if (p.Buffer is { } buffer)
        {
            total.AddGas(p.Tables.Z, buffer.Content / h.Buffer!.VolumeM3, h.Buffer.VolumeM3);
            Close(h.Layout.Buffer!.Name);
        }
        if (h.OilMol > 0)
        {
            // the sump stands in what fills the shell
            bool discharge = h.Compressor.Machine.Traits.Kind == CompressorKind.Rotary;
            DissolvedGas.Add(model.Substances, p.Tables.Z, discharge ? p.DischargePa : p.State.SuctionPa, p.Compressor.ShellTemperatureK, h.OilMol, total.Moles);
            Close("dissolved in the oil");
        }
        return p with { Moles = total.Moles, LiquidMoles = total.LiquidMoles, Contents = contents };
    }

    private double Mass(double[] moles)
    {
        double kg = 0;
        for (int i = 0; i < moles.Length; i++) kg += moles[i] * model.Substances[i].MolarMass;
        return kg;
    }

    private void Passages(LoopPass p, Hardware h, HoldUp total, double mass)
    {
        var (s, t) = (p.State, p.Tables);
        double highOut = p.Recuperator.Hot.OutletPressurePa;
        double Gas(double k, double pressure) => flash.TemperaturePressure(k, pressure, t.Z).MolarDensity;
        double? hotGas = null, coolGas = null;
        foreach (var v in h.Volumes)
        {
            double flux = v.AreaM2 > 0 ? mass / v.AreaM2 : 0;
            switch (v.State)
            {
                case VolumeState.Discharge:
                    total.AddGas(t.Z, hotGas ??= Gas(p.Compressor.Discharge.TemperatureK, p.DischargePa), v.VolumeM3);
                    break;
                case VolumeState.Suction:
                    total.AddGas(t.Z, coolGas ??= p.Compressor.Suction.MolarDensity, v.VolumeM3);
                    break;
                case VolumeState.Aftercooled:
                    total.Add(t.High, p.Aftercooled, p.AftercooledPa, v.VolumeM3, flux);
                    break;
                case VolumeState.Precooled:
                    total.Add(t.High, p.RecuperatorInlet, p.AftercooledPa, v.VolumeM3, flux);
                    break;
                case VolumeState.ColdHigh:
                    total.Add(t.High, s.ThrottleEnthalpy, highOut, v.VolumeM3, flux);
                    break;
                case VolumeState.Throttled:
                    total.Add(t.Low, s.ThrottleEnthalpy, s.CoilPa, v.VolumeM3, flux);
                    break;
                case VolumeState.ColdLow:
                    total.Add(t.Low, p.CoilOutlet, p.CoilOutletPa, v.VolumeM3, flux);
                    break;
                case VolumeState.Capillary:
                    // pressure falls evenly while all is liquid and steeply at the end: half as what enters, half as what leaves
                    total.Add(t.High, s.ThrottleEnthalpy, highOut, 0.5 * v.VolumeM3, 0);
                    total.Add(t.Low, s.ThrottleEnthalpy, s.CoilPa, 0.5 * v.VolumeM3, 0);
                    break;
            }
        }
    }
}
