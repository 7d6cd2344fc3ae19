using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;
using Coldwright.Machine.Description;

namespace Coldwright.Machine.Compression;

/// <summary>A compressor at work.</summary>
/// <param name="MolarFlow">mol/s.</param>
/// <param name="VolumetricEfficiency">Flow over swept volume at suction-port density; NaN when the flow was given.</param>
/// <param name="ElectricalPowerW">W.</param>
/// <param name="ShellHeatW">Heat from the shell to the room, W.</param>
/// <param name="Suction">State at the suction port.</param>
/// <param name="Discharge">State at the discharge port.</param>
public sealed record CompressorResult(double MolarFlow, double VolumetricEfficiency, double ElectricalPowerW, double ShellHeatW, FluidState Suction, FluidState Discharge);

/// <summary>
/// Positive-displacement compressor on a real gas: clearance gas re-expands along the isentrope of the mixture
/// (the classical 1 - c (v_suction/v_discharge - 1), with real densities instead of r^(1/n)), leakage grows with the
/// pressure ratio, the gas is heated in the shell before it is drawn in, and what the motor takes beyond the isentropic
/// work heats the gas except the share that the shell gives to the room.
/// </summary>
public sealed class CompressorModel(CompressorPart part, Flash flash, double[] z)
{
    /// <summary>Works from a suction state (K, Pa) to a discharge pressure (Pa).</summary>
    public CompressorResult Run(double suctionTemperatureK, double suctionPressurePa, double dischargePressurePa)
    {
        var suction = flash.TemperaturePressure(suctionTemperatureK, suctionPressurePa, z);
        var drawn = part.SuctionHeatingK > 0 ? flash.TemperaturePressure(suctionTemperatureK + part.SuctionHeatingK, suctionPressurePa, z) : suction;
        var isentropic = flash.PressureEntropy(dischargePressurePa, drawn.MolarEntropy, z, suctionTemperatureK + 80);
        double ratio = dischargePressurePa / suctionPressurePa, flow, efficiency = double.NaN;
        if (part.FlowMolPerS is { } given) flow = given;
        else
        {
            double swept = part.SweptM3PerS;
            double volumetric = 1 - part.ClearanceFraction * (isentropic.MolarDensity / drawn.MolarDensity - 1) - part.LeakagePerRatio * (ratio - 1);
            flow = Math.Max(volumetric, 0) * swept * drawn.MolarDensity;
            efficiency = flow / (swept * suction.MolarDensity);
        }
        double work = isentropic.MolarEnthalpy - drawn.MolarEnthalpy;
        double electrical = work / (IsentropicEfficiency(ratio) * part.MotorEfficiency);
        double shell = part.ShellHeatFraction * (electrical - work);
        var discharge = flash.PressureEnthalpy(dischargePressurePa, suction.MolarEnthalpy + electrical - shell, z, isentropic.TemperatureK + 20);
        return new CompressorResult(flow, efficiency, flow * electrical, flow * shell, suction, discharge);
    }

    private double IsentropicEfficiency(double ratio)
    {
        var table = part.IsentropicEfficiency;
        if (ratio <= table[0].Ratio) return table[0].Efficiency;
        for (int i = 1; i < table.Count; i++)
            if (ratio <= table[i].Ratio)
                return table[i - 1].Efficiency + (table[i].Efficiency - table[i - 1].Efficiency) * (ratio - table[i - 1].Ratio) / (table[i].Ratio - table[i - 1].Ratio);
        return table[^1].Efficiency;
    }
}
