using Coldwright.Machine.Compression;
using Coldwright.Quantities;
using static Coldwright.Quantities.SpokenAmount;

namespace Coldwright.Machine.Precooling;

/// <summary>What a person must be told about a loop's working point.</summary>
internal static class PrecoolerWarnings
{
    private const double Atmosphere = 101325, NearFreezingK = 8, Starved = 20, CloseK = 0.3;

    public static IEnumerable<Spoken> For(PrecoolerMachine machine, LoopRefrigerant fluid, LoopFound found, MixtureLoad load, CompressorPerformance performance, double closestK)
    {
        foreach (var said in performance.Warnings) yield return Spoken.Of($"precooler {said}");
        foreach (string said in load.Warnings) yield return said;
        var at = found.Point;
        double pa = at.EvaporatingPa, entry = EntryK(fluid, at);
        if (pa < Atmosphere) yield return Spoken.Of(
            $"precooler: the low side runs at {Pressure(pa, "0.###")}, below atmospheric: a leak draws in air, and with a combustible refrigerant a mixture that can burn; more load, a smaller compressor or a refrigerant with a lower boiling point raises it");
        if (entry < fluid.TripleK + NearFreezingK) yield return Spoken.Of(
            $"precooler: the refrigerant enters the evaporator at {Temperature(entry, "0.#")}; its {(fluid.Pure ? "" : "least volatile part's ")}triple point is {Temperature(fluid.TripleK, "0.#")}: it is close to freezing");
        if (entry < machine.OilPourPointK) yield return Spoken.Of(
            $"precooler: the evaporator is at {Celsius(entry)}, below the oil's pour point of {Celsius(machine.OilPourPointK)}: oil stays in the evaporator and does not come back (our assumption)");
        if (LoopSearch.HeldUp(at)) yield return Spoken.Of(
            $"precooler: the room is so cold that the condenser would pull its pressure down to that of the evaporator, {Pressure(pa, "0.##")}; it is taken as held just above. The mixture needs no precooler here, or the condenser's fan must be throttled");
        if (found.CutOut) yield return machine.CutOutK is { } k && fluid.LnPressure(k) >= at.LnEvaporating - 1e-9
            ? Spoken.Of($"precooler: the load is too small to keep the evaporator above its cut-out at {Temperature(k, "0.#")}; the compressor runs {100 * found.RunShare:0.#} % of the time and the mixture's temperature swings")
            : Spoken.Of($"precooler: the load is so small that the evaporator would fall to {Temperature(at.Outlet.TemperatureK - at.SuperheatK, "0.#")}, where the compressor delivers next to nothing; cycling there with {100 * found.RunShare:0.#} % running is taken. Set a cut-out, or take a smaller compressor");
        if (machine.Expansion is not ThermostaticExpansion)
        {
            if (at.SuperheatK > Starved) yield return Spoken.Of(
                $"precooler: the expansion device starves the evaporator, {Difference(at.SuperheatK, "0.#")} of superheat: widen or shorten it");
            if (at.Measure < 1 - 1e-9) yield return Spoken.Of(
                $"precooler: the expansion device passes more than the compressor takes dry: the evaporator is full and liquid reaches the accumulator or the compressor; the condenser then holds {(at.Measure >= 0 ? Spoken.Of($"only {Difference(at.Measure * machine.Condenser.SubcoolingK, "0.#")} of subcooling") : "no liquid and vapour enters the device")}. Narrow or lengthen it");
        }
        if (closestK < CloseK) yield return Spoken.Of(
            $"precooler: the streams in the evaporator come within {Difference(closestK, "0.###")}: more conductance brings nothing here, the compressor is the limit");
    }

    /// <summary>Refrigerant behind the expansion device, K.</summary>
    public static double EntryK(LoopRefrigerant fluid, LoopPoint at)
    {
        double bubble = fluid.LiquidEnthalpy(fluid.Bubble(at.LnEvaporating), at.EvaporatingPa), dew = fluid.Gas(fluid.Dew(at.LnEvaporating), at.EvaporatingPa).MolarEnthalpy;
        return fluid.Glide(at.LnEvaporating, (at.LiquidEnthalpy - bubble) / (dew - bubble));
    }
}
