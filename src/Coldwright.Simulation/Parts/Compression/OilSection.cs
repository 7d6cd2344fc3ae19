using Coldwright.Machine.Compression;
using Coldwright.Machine.Description;
using Coldwright.Machine.Oil;

namespace Coldwright.Simulation.Parts.Compression;

/// <summary>The oil circuit of the loop's compressor.</summary>
internal static class OilSection
{
    public static PartSection Of(PartContext c, CompressorPart part, OilDescription oil, CompressorPerformance at, CompressorDuty duty)
    {
        var r = OilCircuit.Run(Input(c, part, oil, at, duty));
        return new("oil", "Oil",
        [
            Band("oil_flow_kg_s", "Leaves with the gas", r.OilFlow, "kg/s"),
            Band("fill_time_s", "Used share of the sump fills in", r.FillTimeS, "s"),
            new("interval_s", "Interval to set on the timer", r.IntervalS, "s"),
            new("open_time_s", "Open time to set", r.OpenTimeS, "s"),
            Band("drain_time_s", "Used share flows back in", r.DrainTimeS, "s"),
            Band("gas_per_opening_kg", "Gas lost to suction per opening", r.GasPerOpeningKg, "kg"),
            Band("lost_capacity", "Capacity lost with it", r.LostCapacityShare, "1"),
            Band("to_cold_end_share", "Reaches the cold end, of the gas by mass", r.ToColdEndShare, "1"),
            Band("plug_time_s", "Frozen oil closes the throttle in", r.PlugTimeS, "s"),
            new("half_lost_without_return_s", "Without return half of the oil is gone in", r.HalfLostWithoutReturnS, "s"),
        ], ["bands of this group are factors, not standard deviations", .. r.Warnings]);
    }

    private static OilCircuitInput Input(PartContext c, CompressorPart part, OilDescription oil, CompressorPerformance at, CompressorDuty duty)
    {
        var gas = at.Discharge;
        var usual = new OilCircuitInput
        {
            Kind = part.Type == CompressorType.Rotary ? CompressorKind.Rotary : CompressorKind.Reciprocating,
            GasMassFlow = at.MassFlow,
            HighPressurePa = duty.DischargePressurePa,
            SuctionPressurePa = duty.SuctionPressurePa,
            GasDensityKgPerM3 = gas.MolarDensity * gas.MolarMass,
            GasViscosityPaS = c.Transport.Viscosity(gas.TemperatureK, gas.MolarDensity, c.Z).Value,
            SumpVolumeM3 = oil.SumpVolumeM3,
            ReturnBoreM = oil.ReturnBoreM,
            ReturnLengthM = oil.ReturnLengthM,
        };
        double efficiency = oil.SeparatorEfficiency ?? usual.SeparatorEfficiency;
        return usual with
        {
            Circulation = oil.Circulation,
            SeparatorEfficiency = efficiency,
            // a given efficiency keeps the usual band in what passes: three times more, a fifth
            SeparatorEfficiencyLow = oil.SeparatorEfficiency is null ? usual.SeparatorEfficiencyLow : Math.Max(0, 1 - 3 * (1 - efficiency)),
            SeparatorEfficiencyHigh = oil.SeparatorEfficiency is null ? usual.SeparatorEfficiencyHigh : Math.Min(0.9999, 1 - (1 - efficiency) / 5),
            UsedShare = oil.UsedShare ?? usual.UsedShare,
            OilDensityKgPerM3 = oil.DensityKgPerM3 ?? usual.OilDensityKgPerM3,
            OilViscosityM2PerS = oil.ViscosityM2PerS ?? usual.OilViscosityM2PerS,
            OilChargeKg = oil.ChargeKg ?? usual.OilChargeKg,
            ColdTrapEfficiency = oil.ColdTrapEfficiency ?? usual.ColdTrapEfficiency,
            ColdBoreM = c.Layout.Throttle.Capillary?.BoreM ?? usual.ColdBoreM,
        };
    }

    private static PartFigure Band(string id, string name, Banded b, string unit) => new(id, name, b.Value, unit, new(b.Low, b.High));
}
