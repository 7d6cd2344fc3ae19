using System.Globalization;
using Coldwright.Numerics;
using Coldwright.Quantities;

namespace Coldwright.Machine.Compression;

/// <summary>A displacement worked out from a nameplate.</summary>
/// <param name="Machine">The machine with that displacement.</param>
/// <param name="DisplacementM3">Per revolution, m3.</param>
/// <param name="LowM3">Lower end of the band, m3: conditions and model at one standard deviation.</param>
/// <param name="HighM3">Upper end, m3.</param>
/// <param name="CoolingCapacityW">Capacity that the machine gives back at the conditions, W.</param>
/// <param name="Performance">The machine at the rating conditions, on the rated refrigerant.</param>
/// <param name="Assumptions">In words: what was assumed and its spread.</param>
/// <param name="Warnings">What a person must be told.</param>
public sealed record DisplacementEstimate(CompressorMachine Machine, double DisplacementM3, double LowM3, double HighM3, double CoolingCapacityW,
    CompressorPerformance Performance, IReadOnlyList<string> Assumptions, IReadOnlyList<Spoken> Warnings);

/// <summary>
/// Displacement from a rated cooling capacity. Two different ratings exist and are asked apart: that of a whole appliance, whose
/// pressures must be assumed, and that of a compressor alone, whose conditions its sheet states.
/// </summary>
public static class NameplateDisplacement
{
    /// <summary>From a compressor's own rated capacity.</summary>
    /// <param name="capacityW">Cooling capacity at the conditions, W, 10..1e6.</param>
    /// <param name="refrigerant">Rated refrigerant or blend.</param>
    /// <param name="machine">Everything but the displacement, whose value is only where the search starts.</param>
    /// <param name="conditions">State points; <see cref="RatingConditions.Compressor"/> when the sheet says 7.2/54.4 C.</param>
    /// <param name="cancel">Cancels the work.</param>
    public static DisplacementEstimate FromCompressorRating(double capacityW, string refrigerant, CompressorMachine machine, RatingConditions conditions, CancellationToken cancel = default)
    {
        var cycle = new RatingCycle(refrigerant);
        var (sized, performance, capacity) = Match(capacityW, cycle, machine, conditions, cancel);
        double v = sized.DisplacementM3, spread = machine.Traits.FlowUncertainty;
        string said = string.Create(CultureInfo.InvariantCulture,
            $"compressor rating on {refrigerant}: evaporating {C(conditions.EvaporatingK):0.#} C, condensing {C(conditions.CondensingK):0.#} C (dew points), return gas {C(conditions.ReturnGasK):0.#} C, gas counted to {C(conditions.UsefulGasK):0.#} C, liquid {C(conditions.LiquidK):0.#} C");
        return new DisplacementEstimate(sized, v, v / (1 + spread), v * (1 + spread), capacity, performance, [said, .. cycle.Notes, machine.Traits.Provenance], performance.Warnings);
    }

    /// <summary>From the rated cooling capacity of an appliance (room test).</summary>
    /// <param name="capacityW">Cooling capacity on the appliance's nameplate, W, 100..1e6.</param>
    /// <param name="refrigerant">Refrigerant or blend on the nameplate.</param>
    /// <param name="machine">Everything but the displacement, whose value is only where the search starts.</param>
    /// <param name="assumptions">The conditions inside the appliance, with their spread.</param>
    /// <param name="cancel">Cancels the work.</param>
    public static DisplacementEstimate FromApplianceRating(double capacityW, string refrigerant, CompressorMachine machine, ApplianceAssumptions assumptions, CancellationToken cancel = default)
    {
        assumptions.Check();
        var cycle = new RatingCycle(refrigerant);
        double gross = InputCheck.Within(capacityW, 100, 1e6, "W", nameof(capacityW)) + assumptions.IndoorFanW, e = assumptions.EvaporatingSpreadK;
        var (sized, performance, capacity) = Match(gross, cycle, machine, Conditions(cycle, assumptions, assumptions.EvaporatingK, assumptions.CondensingK), cancel);
        // thin gas and little cooling per mole need the larger machine
        double small = Match(gross, cycle, sized, Conditions(cycle, assumptions, assumptions.EvaporatingK + e, assumptions.CondensingLowK), cancel).Machine.DisplacementM3;
        double large = Match(gross, cycle, sized, Conditions(cycle, assumptions, assumptions.EvaporatingK - e, assumptions.CondensingHighK), cancel).Machine.DisplacementM3;
        double v = sized.DisplacementM3, spread = machine.Traits.FlowUncertainty;
        double below = Math.Sqrt(Math.Pow(v / small - 1, 2) + spread * spread), above = Math.Sqrt(Math.Pow(large / v - 1, 2) + spread * spread);
        string said = string.Create(CultureInfo.InvariantCulture,
            $"appliance rating on {refrigerant}, conditions assumed by us: evaporating {C(assumptions.EvaporatingK):0.#} C (+-{e:0.#} K), condensing {C(assumptions.CondensingK):0.#} C ({C(assumptions.CondensingLowK):0.#} to {C(assumptions.CondensingHighK):0.#} C), dew points; useful superheat {assumptions.UsefulSuperheatK:0.#} K, {assumptions.LineSuperheatK:0.#} K more to the compressor, subcooling {assumptions.SubcoolingK:0.#} K, indoor fan {assumptions.IndoorFanW:0} W");
        return new DisplacementEstimate(sized, v, v / (1 + below), v * (1 + above), capacity - assumptions.IndoorFanW, performance, [said, .. cycle.Notes, machine.Traits.Provenance], performance.Warnings);
    }

    /// <summary>The state points that the assumptions mean for a refrigerant.</summary>
    /// <param name="cycle">The refrigerant.</param>
    /// <param name="assumptions">Superheats and subcooling.</param>
    /// <param name="evaporatingK">Dew point, K.</param>
    /// <param name="condensingK">Dew point, K.</param>
    public static RatingConditions Conditions(RatingCycle cycle, ApplianceAssumptions assumptions, double evaporatingK, double condensingK) => new()
    {
        EvaporatingK = evaporatingK,
        CondensingK = condensingK,
        UsefulGasK = evaporatingK + assumptions.UsefulSuperheatK,
        ReturnGasK = evaporatingK + assumptions.UsefulSuperheatK + assumptions.LineSuperheatK,
        LiquidK = cycle.BubbleTemperature(cycle.DewPressure(condensingK)) - assumptions.SubcoolingK,
        RoomTemperatureK = assumptions.RoomTemperatureK,
    };

    /// <summary>Cooling capacity of a machine at rating conditions, W, with its performance there.</summary>
    /// <param name="cycle">The refrigerant.</param>
    /// <param name="machine">The compressor.</param>
    /// <param name="conditions">State points.</param>
    /// <param name="cancel">Cancels the work.</param>
    public static (double CapacityW, CompressorPerformance Performance) Capacity(RatingCycle cycle, CompressorMachine machine, RatingConditions conditions, CancellationToken cancel = default)
    {
        conditions.Check();
        var performance = cycle.Compressor(machine).Run(cycle.Duty(conditions), cancel);
        return (performance.MolarFlow * cycle.CoolingPerMole(conditions), performance);
    }

    // capacity is nearly in proportion to the displacement: a few proportional steps
    internal static (CompressorMachine Machine, CompressorPerformance Performance, double CapacityW) Match(double capacityW, RatingCycle cycle, CompressorMachine machine, RatingConditions conditions, CancellationToken cancel)
    {
        Check(capacityW, machine, conditions);
        double perMole = Cooling(cycle, conditions), off = double.NaN;
        var duty = cycle.Duty(conditions);
        for (int i = 0; i < 40; i++)
        {
            var performance = cycle.Compressor(machine).Run(duty, cancel);
            double capacity = performance.MolarFlow * perMole;
            off = capacity / capacityW - 1;
            if (Math.Abs(off) < 1e-10) return (machine, performance, capacity);
            machine = machine with { DisplacementM3 = machine.DisplacementM3 * capacityW / capacity };
        }
        throw new SolveException(new SolveReport(SolveStatus.NotConverged, 40, off, FormattableString.Invariant(
            $"no displacement gives {capacityW:0.#} W on {cycle.Refrigerant}; last {machine.DisplacementM3 * 1e6:0.###} cm3")));
    }

    internal static void Check(double capacityW, CompressorMachine machine, RatingConditions conditions)
    {
        InputCheck.Within(capacityW, 10, 2e6, "W", nameof(capacityW));
        conditions.Check();
        machine.Check();
    }

    // J/mol
    internal static double Cooling(RatingCycle cycle, RatingConditions conditions) => cycle.CoolingPerMole(conditions) is > 0 and var perMole ? perMole
        : throw new ArgumentException(FormattableString.Invariant($"{cycle.Refrigerant} cools nothing between these conditions: {cycle.CoolingPerMole(conditions):0.#} J/mol"), nameof(conditions));

    private static double C(double kelvin) => kelvin - 273.15;
}
